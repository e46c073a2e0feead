import { describe, expect, test } from 'vitest';
import { hasUsualTempo } from '../../shared-theory/beat-draw.ts';
import { BEAT_GROOVES } from '../../shared-theory/beat-grooves.ts';
import { BEAT_LEVELS, beatLevelOf, kindsToBeat } from '../../shared-theory/beat-levels.ts';
import { generate, type GeneratedVamp } from '../../shared-theory/generate.ts';
import { grooveById, grooveLine, GROOVES, parseGroove } from '../../shared-theory/grooves.ts';
import { kindsOfLevel } from '../../shared-theory/levels.ts';
import { readyLesson } from '../../shared-theory/lessons.ts';
import { askableQuestions } from '../../shared-theory/questions/judges.ts';
import { RHYTHM_KINDS } from '../../shared-theory/questions/question.ts';
import type { RhythmTruth } from '../../shared-theory/rhythm/rhythm-truth.ts';
import { shares } from './made-vamps.ts';

const SETTINGS = { policy: 'majors', qualities: ['major', 'minor'] } as const;

test('grooves beside the catalogue are read, written back and named apart', () => {
  const ids = [...GROOVES, ...BEAT_GROOVES].map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const groove of BEAT_GROOVES) expect(grooveLine(parseGroove(grooveLine(groove)))).toBe(grooveLine(groove));
});

test('eight levels, each with a kind that is asked of the groove, and grooves that there are', () => {
  expect(BEAT_LEVELS.map(({ level }) => level)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  for (const { kinds, grooves } of BEAT_LEVELS) {
    expect(kinds.length).toBeGreaterThan(0);
    expect(kinds.every((kind) => RHYTHM_KINDS.has(kind))).toBe(true);
    for (const id of grooves) expect(grooveById(id, BEAT_GROOVES).id).toBe(id);
  }
  expect(kindsToBeat(2)).toEqual(['tempo', 'steadiness', 'bar-count']);
  expect(() => beatLevelOf(9)).toThrow(/no beat level 9.*1 to 8/);
  expect(() => generate({ level: 1, seed: 1, beat: 0 })).toThrow(/no beat level 0/);
});

/** Vamps of a beat level over many levels of chords. */
function drawn(beat: number, chordLevels: readonly number[], each: number): readonly GeneratedVamp[] {
  return chordLevels.flatMap((level) =>
    Array.from({ length: each }, (_, index) => generate({ level, seed: 1000 * beat + 17 * index + level, beat })),
  );
}

const LEVELS = [2, 5, 9, 11];
/** Four standard errors of a half, among so many. */
const wide = (count: number) => 4 * Math.sqrt(0.25 / count);

describe.each(BEAT_LEVELS)('vamps for beat level $level', ({ level: beat, kinds }) => {
  const made = drawn(beat, LEVELS, 40);
  const known = made.flatMap(({ truth: { rhythm } }) => rhythm ?? []);

  test('what the level asks can be asked of every one', () => {
    for (const { truth } of made) {
      const asked = askableQuestions(truth, SETTINGS).map(({ kind }) => kind);
      expect(asked.some((kind) => kinds.includes(kind))).toBe(true);
    }
  });

  test('half of them at least are not counted near 120, however they are counted', () => {
    expect(made.filter(({ truth }) => !hasUsualTempo(truth)).length / made.length).toBeGreaterThanOrEqual(0.5);
  });

  test('both sides of every pair that it asks come equally often', () => {
    const pairs: Partial<Record<string, keyof RhythmTruth>> = {
      drive: 'drive',
      pendulum: 'pendulum',
      swing: 'swing',
      'half-time': 'halfTime',
      threes: 'threes',
      'change-place': 'changePlace',
    };
    for (const kind of kinds) {
      const field = pairs[kind];
      if (field === undefined) continue;
      const sides = known.flatMap((rhythm) => (rhythm[field] === null ? [] : [String(rhythm[field])]));
      const found = shares(sides, (side) => side);
      expect([kind, found.size]).toEqual([kind, 2]);
      for (const share of found.values()) expect(Math.abs(share - 0.5)).toBeLessThan(wide(sides.length));
    }
    if (kinds.includes('strokes')) {
      const feels = made.flatMap(({ truth }) => truth.strokes ?? []);
      const downs = feels.filter((feel) => feel === 'all-downs').length / feels.length;
      expect(Math.abs(downs - 0.5)).toBeLessThan(wide(feels.length));
    }
  });

  test('no lazy grid wins: strict alternation, heavy on 1 and 3', () => {
    const strict = known.filter(({ strokes }) =>
      strokes?.every((slot, place) => slot.length === 1 && slot[0] === (place % 2 === 0 ? 'down' : 'up')),
    );
    if (kinds.includes('stroke-grid')) expect(strict.length / known.length).toBeLessThanOrEqual(1 / 3);
    const oneAndThree = known.filter(({ accents }) => {
      const heavy = accents.flatMap(([usual], slot) => (usual === 3 ? [slot] : []));
      return heavy.join() === `0,${accents.length / 2}`;
    });
    if (kinds.includes('accents')) expect(oneAndThree.length / known.length).toBeLessThan(0.25);
  });

  test('the same seed gives the same vamp', () => {
    expect(generate({ level: 5, seed: 77, beat })).toEqual(generate({ level: 5, seed: 77, beat }));
  });
});

test('a groove that is asked for goes before the beat level', () => {
  const request = { level: 2, seed: 4, groove: 'waltz' };
  expect(generate({ ...request, beat: 8 })).toEqual(generate(request));
});

test('the chords do not hang on the beat level', () => {
  for (const { level: beat } of BEAT_LEVELS) {
    expect(generate({ level: 6, seed: 12, beat }).chords).toEqual(generate({ level: 6, seed: 12 }).chords);
  }
});

test('with a beat level a lesson asks in every round what that asks, first', () => {
  for (const { level: beat, kinds } of BEAT_LEVELS) {
    for (const { level, kinds: asked } of readyLesson(4, beat)) {
      expect(asked.slice(0, kinds.length).toSorted()).toEqual(kinds.toSorted());
      expect(kindsOfLevel(level, beat)).toEqual(expect.arrayContaining([...asked]));
    }
  }
  expect(() => readyLesson(4, 9)).toThrow(/no beat level 9/);
});

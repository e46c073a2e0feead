import { assert, constantFrom, nat, property } from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CONTRASTS, contrastVamp } from '../../shared-theory/contrast.ts';
import { grooveOf } from '../../shared-theory/perform.ts';
import { beatsPerSlot } from '../../shared-theory/grooves.ts';
import { besideAll } from '../../shared-theory/questions/beside.ts';
import { judgeOf } from '../../shared-theory/questions/judges.ts';
import type { GeneratedVamp } from '../../shared-theory/generate.ts';

const SETTINGS = { policy: 'majors', qualities: ['major', 'minor'] } as const;

/** One chord held, two, and rounds, with opening bars and without. */
const CHORD_LEVELS = [1, 3, 6, 8, 11];

/** Seconds of one slot of the grid. */
function slotSeconds({ vamp }: GeneratedVamp): number {
  const groove = grooveOf(vamp);
  return groove ? (beatsPerSlot(groove) * 60) / vamp.tempo : 0;
}

describe.each(CONTRASTS)('$id', ({ id, kind }) => {
  test('both sides sound the same chords as fast, and differ in what is asked', () => {
    assert(
      property(constantFrom(...CHORD_LEVELS), nat(), (level, seed) => {
        const [one, other] = ([0, 1] as const).map((side) => contrastVamp({ contrast: id, side, level, seed }));
        if (!one || !other) throw new RangeError('A pair has two sides.');
        expect(one.chords).toEqual(other.chords);
        expect(one.truth.qualities).toEqual(other.truth.qualities);
        expect(one.vamp.slots.map(({ frets }) => frets)).toEqual(other.vamp.slots.map(({ frets }) => frets));
        expect(slotSeconds(one)).toBeCloseTo(slotSeconds(other), 9);
        if (kind !== 'threes') expect(one.vamp.tempo).toBe(other.vamp.tempo);
        const right = [one, other].map(({ truth }) => judgeOf(kind).truth({ truth, target: 0, settings: SETTINGS }));
        expect(right).not.toContain(null);
        expect(right[0]).not.toEqual(right[1]);
      }),
      { numRuns: 12 },
    );
  });

  test('one seed always gives the same vamp, and another tempo than the last', () => {
    const request = { contrast: id, side: 1, level: 5, seed: 3 } as const;
    const made = contrastVamp(request);
    expect(contrastVamp(request)).toEqual(made);
    expect(contrastVamp({ ...request, side: 0, recent: [made.vamp] }).chords).not.toEqual(made.chords);
  });
});

test('who leaves the dead strokes out of a groove that has them is told that they were no rests', () => {
  for (const level of CHORD_LEVELS) {
    const { truth } = contrastVamp({ contrast: 'with-or-without-dead-strokes', side: 1, level, seed: 4 });
    // The struck chords come three, three, three, three and four slots apart; all between is dead (common practice).
    expect(truth.rhythm?.muted).toEqual([1, 2, 4, 5, 7, 8, 10, 11, 13, 14, 15]);
    const hits = [0, 3, 6, 9, 12];
    const answer = Array.from({ length: 16 }, (_, slot) =>
      hits.includes(slot) ? (slot % 2 === 0 ? 'down' : 'up') : 'silent',
    );
    const marked = (of: typeof truth) =>
      judgeOf('stroke-grid').mark(answer, { truth: of, target: 0, settings: SETTINGS, beside: besideAll(of), own: {} });
    expect(marked(truth).errors).toEqual(['mute-heard-as-rest']);
    const without = contrastVamp({ contrast: 'with-or-without-dead-strokes', side: 0, level, seed: 4 }).truth;
    expect(marked(without).exact).toBe(true);
  }
});

// Driving and relaxed differ in the hand, the others in one thing alone.
test.each([
  ['straight-or-swung', ['swing']],
  ['change-on-one-or-pushed', ['changePlace', 'accents', 'strokes']],
  ['ands-or-numbers-heavy', ['accents', 'drive', 'counts']],
])('%s differ in nothing else of the groove', (id, fields) => {
  const [one, other] = ([0, 1] as const).map((side) => contrastVamp({ contrast: id, side, level: 4, seed: 8 }));
  const here = one?.truth.rhythm ?? {};
  const there = other?.truth.rhythm ?? {};
  const differing = Object.entries(here).flatMap(([field, value]) =>
    JSON.stringify(value) === JSON.stringify(Object.entries(there).find(([name]) => name === field)?.[1])
      ? []
      : [field],
  );
  expect(fields).toEqual(expect.arrayContaining(differing));
  expect(differing).toContain(fields[0]);
});

test('a pair, a side, a level that there is not', () => {
  const request = { contrast: 'straight-or-swung', side: 0, level: 3, seed: 1 } as const;
  expect(() => contrastVamp({ ...request, contrast: 'loud-or-soft' })).toThrow(
    /No contrast "loud-or-soft".*straight-or-swung/,
  );
  expect(() => contrastVamp({ ...request, side: 2 as 1 })).toThrow(/sides 0 and 1, not 2/);
  expect(() => contrastVamp({ ...request, level: 13 })).toThrow(/no level 13/);
});

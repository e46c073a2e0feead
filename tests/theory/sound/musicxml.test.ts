import * as fc from 'fast-check';
import { parseMidi } from 'midi-file';
import { VerovioToolkit } from 'verovio/esm';
import createVerovio from 'verovio/wasm';
import { beforeAll, describe, expect, test } from 'vitest';
import { grooveById, beatsPerSlot, GROOVES } from '../../../shared-theory/grooves.ts';
import { layoutOf, sectionsOf } from '../../../shared-theory/notation/sections.ts';
import { grooveOf, type Performance } from '../../../shared-theory/perform.ts';
import { meterFacts, velocityOf } from '../../../shared-theory/sound/midi.ts';
import type { VoicedVamp } from '../../../shared-theory/vamps.ts';
import { anySymbolChord } from '../../support/theory-arbitraries.ts';
import { everyGroove, scoreOf, vampIn, vampOf, type Score } from './scores.ts';

let verovio: VerovioToolkit;
beforeAll(async () => {
  verovio = new VerovioToolkit(await createVerovio());
  // It lays the page out before it plays; nobody looks at it here.
  verovio.setOptions({ breaks: 'none', header: 'none', footer: 'none', expandNever: true });
});

type Heard = readonly [quarters: number, midi: number, velocity: number];

const inOrder = (one: Heard, other: Heard) => one[0] - other[0] || one[1] - other[1];

/** What Verovio 6.3.0 plays of a score, by parts: onsets in quarters, MIDI notes, velocities; each bar once. */
function played(xml: string): { readonly parts: readonly (readonly Heard[])[]; readonly tempos: readonly number[] } {
  expect(Boolean(verovio.loadData(xml))).toBe(true);
  expect(verovio.getLog()).toBe('');
  const { header, tracks } = parseMidi(Buffer.from(verovio.renderToMIDI(), 'base64'));
  const parts = tracks.map((track) => {
    let tick = 0;
    return track
      .flatMap((event): Heard[] => {
        tick += event.deltaTime;
        if (event.type !== 'noteOn' || event.velocity === 0) return [];
        return [[tick / (header.ticksPerBeat ?? 1), event.noteNumber, event.velocity]];
      })
      .toSorted(inOrder);
  });
  const tempos = tracks.flatMap((track) =>
    track.flatMap((event) => (event.type === 'setTempo' ? [60_000_000 / event.microsecondsPerBeat] : [])),
  );
  return { parts: parts.slice(1), tempos };
}

/**
 * The guitar on the grid, once through all that is written and the last loop `more` times: a stroke stands on its slot without swing
 * and spread, a pitch on two strings is one.
 */
function onGrid({ vamp, performance }: Pick<Score, 'vamp' | 'performance'>, more = 0): readonly Heard[] {
  const { quarters } = meterFacts(vamp.meter);
  const groove = grooveOf(vamp);
  const slot = groove ? beatsPerSlot(groove) : 0.5 / quarters;
  const seconds = (slot * 60) / vamp.tempo;
  const loop = performance.seconds / performance.loops;
  const loops = sectionsOf(layoutOf(vamp), performance).length + more;
  const heard = performance.notes
    .filter(({ time }) => time < loops * loop - 0.01)
    .map(({ time, midi, accent }): Heard => {
      const quarter = Math.floor(time / seconds + 0.01) * slot * quarters;
      return [Math.round(quarter * 96) / 96, midi, velocityOf(accent)];
    })
    .toSorted(inOrder);
  return heard.filter(([at, midi], index) => at !== heard[index - 1]?.[0] || midi !== heard[index - 1]?.[1]);
}

/** Verovio counts 120 ticks to a quarter and velocities in steps of one. */
function expectPlayed(heard: readonly Heard[], wanted: readonly Heard[]): void {
  expect(heard.map(([at, midi]) => [at, midi])).toEqual(wanted.map(([at, midi]) => [at, midi]));
  for (const [index, [, , velocity]] of heard.entries())
    expect(Math.abs(velocity - (wanted[index]?.[2] ?? 0))).toBeLessThanOrEqual(1.5);
}

describe('a score as Verovio 6.3.0 plays it', () => {
  test('every groove: the notes, onsets and loudness of the performance on the grid', () => {
    const scores = everyGroove('Em D/F#');
    expect(scores).toHaveLength(GROOVES.length);
    for (const [id, score] of scores) {
      const { parts, tempos } = played(score.xml);
      expect([id, parts.length]).toEqual([id, 1]);
      expectPlayed(parts[0] ?? [], onGrid(score));
      // Quarters a minute: half as many again where the beat is dotted.
      const wanted = score.vamp.tempo * meterFacts(score.vamp.meter).quarters;
      expect(Math.abs((tempos[0] ?? 0) - wanted)).toBeLessThan(0.01);
    }
  });

  test('any chords in any groove', () => {
    const any = fc.record({
      chords: fc.array(anySymbolChord, { minLength: 1, maxLength: 4 }),
      groove: fc.constantFrom(...GROOVES),
      half: fc.boolean(),
    });
    fc.assert(
      fc.property(any, ({ chords, groove, half }) => {
        const score = scoreOf(vampOf(groove, chords, half && groove.meter === '4/4' ? 2 : undefined));
        expectPlayed(played(score.xml).parts[0] ?? [], onGrid(score));
      }),
      { numRuns: 10 },
    );
  });

  test('chords without a groove', () => {
    const vamp: VoicedVamp = { ...vampIn(grooveById('quarter-downs'), 'C G Am F'), grooveText: '' };
    const score = scoreOf(vamp);
    expectPlayed(played(score.xml).parts[0] ?? [], onGrid(score));
  });

  test('a program that goes through repeats goes through the loop again', () => {
    verovio.setOptions({ expandNever: false });
    const score = scoreOf(vampIn(grooveById('campfire-strum'), 'C'));
    expectPlayed(played(score.xml).parts[0] ?? [], onGrid(score, 1));
    verovio.setOptions({ expandNever: true });
  });

  test('bass and kit: parts of their own', () => {
    const score = scoreOf(vampIn(grooveById('quarter-downs'), 'Em D'), band);
    const { parts } = played(score.xml);
    expect(parts).toHaveLength(3);
    const [guitar = [], bass = [], kit = []] = parts;
    expectPlayed(guitar, onGrid(score));
    expect(bass.map(([at, midi]) => [at, midi]).slice(0, 4)).toEqual([
      [0, 28],
      [2, 28],
      [4, 38],
      [6, 38],
    ]);
    expect(new Set(kit.map(([at]) => at))).toEqual(new Set(Array.from({ length: 16 }, (_, eighth) => eighth / 2)));
  });
});

/** A kick and a hat by turns, and the root twice a bar. */
function band(performance: Performance): Performance {
  const eighth = (performance.bars[1]?.time ?? 0) / 8;
  const count = Math.round(performance.seconds / eighth);
  const chordAt = (time: number) => performance.bars.findLast((bar) => bar.time <= time + 0.001)?.chord ?? 0;
  return {
    ...performance,
    kit: Array.from({ length: count }, (_, n) => ({
      time: n * eighth,
      piece: n % 4 === 0 ? ('kick' as const) : n % 4 === 2 ? ('snare' as const) : ('closed-hat' as const),
      accent: 2 as const,
      trim: 0,
      chord: chordAt(n * eighth),
    })),
    bass: Array.from({ length: count / 4 }, (_, n) => {
      const chord = chordAt(n * 4 * eighth);
      return { time: n * 4 * eighth, duration: 3.9 * eighth, midi: chord === 0 ? 28 : 38, accent: 3, trim: 0, chord };
    }),
  };
}

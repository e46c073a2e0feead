import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { asks } from '../../../shared-theory/questions/asks.ts';
import { judgeOf } from '../../../shared-theory/questions/judges.ts';
import type { Kind } from '../../../shared-theory/questions/question.ts';
import { analyseTaps, roomTaps } from '../../../shared-theory/taps/analysis.ts';
import { readTaps } from '../../../shared-theory/taps/taps.ts';
import { RELAXED } from '../questions/given-rhythm.ts';
import { context, SETTINGS } from '../questions/given.ts';
import { tapAlong } from '../../support/tappers.ts';

const SEEDS = fc.nat(100_000);

/** Hands good and bad. */
const hands = fc
  .record({
    tempo: fc.integer({ min: 45, max: 210 }),
    beats: fc.integer({ min: 10, max: 40 }),
    jitter: fc.constantFrom(0, 10, 30, 60),
    drift: fc.constantFrom(0, 0, -6, 4),
    missed: fc.constantFrom([], [4], [5, 6]),
    seed: SEEDS,
  })
  .map(({ seed, ...tapper }) => tapAlong(tapper, seed));

/** What a phone sends of taps at times of its own clock, in milliseconds. */
function sent(times: readonly number[]) {
  const [first = 0] = times;
  return readTaps(times.map((time) => Math.round((time - first) * 10) / 10));
}

const GROOVE = context(0, { tempo: 100, rhythm: RELAXED });

function markOf(kind: Kind, value: unknown) {
  const answer = asks[kind].read(value, SETTINGS);
  return answer === null ? null : judgeOf<Kind>(kind).mark(answer, GROOVE);
}

describe('nothing depends on when something reached somebody', () => {
  test('a delay of network, speaker or glass that is the same for all taps changes neither tempo nor mark, to the last digit', () => {
    fc.assert(
      fc.property(hands, fc.integer({ min: -40_000_000, max: 40_000_000 }), (taps, tenths) => {
        // Times of a page's clock stand in tenths of a millisecond at best; added to them, any delay leaves what lies between.
        const times = taps.map((tap) => Math.round(tap * 10));
        const here = sent(times.map((time) => time / 10));
        const later = sent(times.map((time) => (time + tenths) / 10));
        expect(later).toEqual(here);
        if (here === null || later === null) return;
        expect(analyseTaps(later)).toEqual(analyseTaps(here));
        for (const kind of ['tempo', 'steadiness'] as const) expect(markOf(kind, later)).toEqual(markOf(kind, here));
        expect(markOf('drop-out', { taps: later, silentFrom: 3 })).toEqual(
          markOf('drop-out', { taps: here, silentFrom: 3 }),
        );
      }),
      { numRuns: 40 },
    );
  });

  test('a shift that a phone does not take away changes what is read by rounding alone', () => {
    fc.assert(
      fc.property(hands, fc.double({ min: 0, max: 60_000, noNaN: true }), (taps, shift) => {
        const [here, later] = [taps, taps.map((tap) => tap + shift)].map((each) => analyseTaps(each));
        expect(later === null).toBe(here === null);
        if (!here || !later) return;
        expect(later.period / here.period).toBeCloseTo(1, 9);
        expect(later.unevenness).toBeCloseTo(here.unevenness, 9);
      }),
      { numRuns: 40 },
    );
  });

  test('stamps that are a few milliseconds off move the tempo no further than a line can be moved', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 60, max: 180 }),
        fc.integer({ min: 9, max: 24 }),
        SEEDS,
        fc.infiniteStream(fc.double({ min: -4, max: 4, noNaN: true })),
        (tempo, beats, seed, offs) => {
          const taps = tapAlong({ tempo, beats, jitter: 8 }, seed);
          const moved = taps.map((tap) => tap + (offs.next().value ?? 0));
          const [here, there] = [analyseTaps(taps), analyseTaps(moved)];
          expect(here?.kept).toBe(beats);
          expect(there?.kept).toBe(beats);
          // At worst all early taps are late by 4 ms and all late ones early.
          const middle = (beats - 1) / 2;
          const numbers = taps.map((_, beat) => beat - middle);
          const most =
            (4 * numbers.reduce((sum, number) => sum + Math.abs(number), 0)) /
            numbers.reduce((sum, number) => sum + number ** 2, 0);
          expect(Math.abs((there?.period ?? 0) - (here?.period ?? 0))).toBeLessThanOrEqual(most + 1e-9);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('when a phone heard of the silence changes no mark, and of the room nothing but the drawing', () => {
    fc.assert(
      fc.property(hands, fc.nat(40), fc.option(fc.nat(40)), (taps, from, other) => {
        const read = sent(taps);
        if (read === null) return;
        const [one, two] = [from, other].map((place) => ({
          taps: read,
          silentFrom: place === null || place === undefined ? null : Math.min(place, read.length),
        }));
        if (!one || !two) return;
        expect(markOf('drop-out', two)).toEqual(markOf('drop-out', one));
        const room = [one, two].map((answer) => {
          const taps = roomTaps([answer], { kind: 'drop-out', tempo: 100, beatsPerBar: 4 });
          return { ...taps, curve: null };
        });
        expect(room[1]).toEqual(room[0]);
      }),
      { numRuns: 40 },
    );
  });
});

test('whatever numbers arrive, nothing is thrown: they are read or they are not', () => {
  fc.assert(
    fc.property(fc.array(fc.oneof(fc.double(), fc.nat(5000), fc.constant(0)), { maxLength: 80 }), (values) => {
      const sorted = values.toSorted((one, other) => one - other);
      for (const taps of [values, sorted, sorted.map((value) => value - (sorted[0] ?? 0))]) {
        const read = analyseTaps(taps);
        if (read === null) continue;
        expect(Number.isFinite(read.tempo)).toBe(true);
        expect(read.confidence).toBeGreaterThan(0);
        expect(read.confidence).toBeLessThanOrEqual(1);
        expect(Number.isFinite(read.unevenness)).toBe(true);
      }
    }),
    { numRuns: 300 },
  );
});

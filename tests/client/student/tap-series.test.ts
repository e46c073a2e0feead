import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  answerOf,
  isFull,
  NO_TAPS,
  PAUSE_MS,
  tapsIn,
  tapTime,
  withSilence,
  withTap,
  type TapKind,
  type TapSeries,
} from '../../../client/student/pads/tap-series.ts';
import { dropOutAsk } from '../../../shared-theory/questions/drop-out/ask.ts';
import { LEAST_TAPS, MOST_TAPS, readTaps, tappedTempo } from '../../../shared-theory/taps/taps.ts';

const SETTINGS = { policy: 'majors', qualities: [] } as const;
const NEVER = { heard: false, droppedOut: false };

/** Taps at the given times, one by one. */
const series = (kind: TapKind, times: readonly number[], from: TapSeries = NO_TAPS): TapSeries =>
  times.reduce((before, time) => withTap(kind, before, time, false), from);

const beats = (count: number, first = 50_000, step = 600): number[] =>
  Array.from({ length: count }, (_, index) => first + index * step);

test.each(['tempo', 'steadiness', 'together'] as const)('%s: eight taps are an answer, seven are none', (kind) => {
  expect(answerOf(kind, series(kind, beats(LEAST_TAPS - 1)), NEVER)).toBeNull();
  expect(answerOf(kind, series(kind, beats(LEAST_TAPS)), NEVER)).toEqual([0, 600, 1200, 1800, 2400, 3000, 3600, 4200]);
});

test.each([
  ['tempo', 32],
  ['steadiness', 32],
  ['together', 16],
] as const)('%s: the last %i taps count, from the first of them on', (kind, kept) => {
  const long = series(kind, [...beats(20, 50_000, 500), ...beats(40, 60_000, 700)]);
  expect(long.count).toBe(60);
  expect(answerOf(kind, long, NEVER)).toEqual(Array.from({ length: kept }, (_, index) => index * 700));
});

test('a pause of more than four seconds counts from one again, one of four does not', () => {
  const before = series('tempo', beats(10));
  const last = before.taps.at(-1) ?? 0;
  expect(withTap('tempo', before, last + PAUSE_MS, false)).toMatchObject({ count: 11, anew: false });
  expect(withTap('tempo', before, last + PAUSE_MS + 1, false)).toEqual({
    taps: [last + PAUSE_MS + 1],
    count: 1,
    silentFrom: null,
    anew: true,
  });
});

test('a second finger that lands with the first is one tap, a later one is two: the marks sort out doubles', () => {
  const once = series('tempo', [1000]);
  expect(withTap('tempo', once, 1000, false)).toBe(once);
  expect(withTap('tempo', once, 1000.4, false)).toBe(once);
  expect(withTap('tempo', once, 1030, false).count).toBe(2);
});

test('whatever was tapped, the server can read the answer, and no shift of the clock changes it', () => {
  fc.assert(
    fc.property(
      fc.constantFrom<TapKind>('tempo', 'steadiness', 'together'),
      fc.array(fc.double({ min: 0, max: 4200, noNaN: true }), { minLength: 8, maxLength: 90 }),
      fc.double({ min: 1, max: 1e7, noNaN: true }),
      (kind, gaps, shift) => {
        let time = 5;
        const times = gaps.map((gap) => (time += gap));
        const answer = answerOf(kind, series(kind, times), NEVER);
        if (answer !== null) expect(readTaps(answer)).toEqual(answer);
        const moved = answerOf(
          kind,
          series(
            kind,
            times.map((each) => Math.round(each) + Math.round(shift)),
          ),
          NEVER,
        );
        expect(moved).toEqual(answerOf(kind, series(kind, times.map(Math.round)), NEVER));
      },
    ),
    { numRuns: 200 },
  );
});

test('drop-out: an answer only once the groove is back, with the first tap of the silence in it', () => {
  const before = withSilence(series('drop-out', beats(9)));
  const through = beats(8, 55_400).reduce((taps, time) => withTap('drop-out', taps, time, true), before);
  expect(answerOf('drop-out', through, { heard: true, droppedOut: true })).toBeNull();
  const answer = answerOf('drop-out', series('drop-out', beats(3, 60_200), through), {
    heard: true,
    droppedOut: false,
  });
  expect(answer).toMatchObject({ silentFrom: 9 });
  expect(tapsIn(answer)).toHaveLength(20);
  expect(tapsIn(answer)[9]).toBe(5400);
  expect(dropOutAsk.read(answer, SETTINGS)).toEqual(answer);
});

test('drop-out: who falls silent with the groove has none of the silence in what is written', () => {
  const answer = answerOf('drop-out', withSilence(series('drop-out', beats(9))), { heard: true, droppedOut: false });
  expect(answer).toMatchObject({ silentFrom: 9 });
  expect(dropOutAsk.read(answer, SETTINGS)).toEqual(answer);
});

test('drop-out: one who was silent for long, and taps again in the silence, has it from the first tap on', () => {
  const late = withTap('drop-out', withSilence(series('drop-out', beats(9))), 70_000, true);
  expect(late).toMatchObject({ taps: [70_000], count: 1, silentFrom: 0, anew: true });
});

test('drop-out: a phone that was never told of the silence may write in the end', () => {
  expect(answerOf('drop-out', series('drop-out', beats(31)), NEVER)).toBeNull();
  expect(answerOf('drop-out', series('drop-out', beats(32)), NEVER)).toMatchObject({ silentFrom: null });
});

test('drop-out: old taps make room, but eight before the silence stay', () => {
  const long = series('drop-out', beats(60, 58_000), withSilence(series('drop-out', beats(12, 50_000))));
  expect(long.taps).toHaveLength(MOST_TAPS);
  expect(long).toMatchObject({ silentFrom: 8 });
  expect(isFull(long)).toBe(true);
  const after = withTap('drop-out', long, (long.taps.at(-1) ?? 0) + 600, false);
  expect(after).toBe(long);
  expect(dropOutAsk.read(answerOf('drop-out', after, { heard: true, droppedOut: false }), SETTINGS)).not.toBeNull();
});

test.each([
  ['its own clock', 12_345.6, 12_350, 12_345.6],
  ['its own clock, half a second late', 12_345.6, 12_845, 12_345.6],
  // Chrome below 49 and others of its time stamped events on the wall's clock.
  ["the wall's clock", 1_700_000_012_345, 12_350, 12_345],
  ['no clock', 0, 12_350, 12_350],
  ['the time since the phone was switched on', 987_654_321, 12_350, 12_350],
  ['nothing', Number.NaN, 12_350, 12_350],
])('an event is stamped by %s', (_clock, stamp, now, time) => {
  expect(tapTime(stamp, now, 1_700_000_000_000)).toBe(time);
});

test('taps of any answer, and the tempo that they say', () => {
  expect(tapsIn(null)).toEqual([]);
  expect(tapsIn('not-sure')).toEqual([]);
  expect(tapsIn({ taps: [0, 1], silentFrom: null })).toEqual([0, 1]);
  expect(tappedTempo(tapsIn(answerOf('tempo', series('tempo', beats(12)), NEVER)))).toBe(100);
});

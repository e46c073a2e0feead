import { describe, expect, test } from 'vitest';
import { asks } from '../../../shared-theory/questions/asks.ts';
import { judges, markAnswer } from '../../../shared-theory/questions/judges.ts';
import { analyseTaps } from '../../../shared-theory/taps/analysis.ts';
import { tapAlong } from '../../support/tappers.ts';
import { tapsAt } from '../../support/rhythm-answers.ts';
import { RELAXED } from './given-rhythm.ts';
import { context, SETTINGS } from './given.ts';

const GROOVE = context(0, { tempo: 100, rhythm: RELAXED });

/** Intervals of 600 ms by turns longer and shorter, so that their standard deviation is so many percent of them. */
function byTurns(percent: number, count = 33) {
  const intervals = count - 1;
  const off = ((600 * percent) / 100) * Math.sqrt((intervals - 1) / intervals);
  return Array.from({ length: count }, (_, beat) => beat * 600 + (beat % 2 === 0 ? 0 : off));
}

test('the right answer is taps exactly on the beat, which a phone could have sent', () => {
  const right = judges.steadiness.truth(GROOVE);
  expect(asks.steadiness.read(right, SETTINGS)).toEqual(right);
  expect(markAnswer('steadiness', right ?? [], GROOVE)).toMatchObject({ credit: 1, exact: true });
  expect(judges.steadiness.truth(context(0))).toBeNull();
  expect(() => judges.steadiness.mark(tapsAt(100), context(0))).toThrow(RangeError);
});

describe('marks', () => {
  // All up to 4 percent, nothing from 12, the fault named above 8: common practice.
  test.each([
    [0, 1, []],
    [3.99, 1, []],
    [6, 0.75, []],
    [7.9, 0.51, []],
    [8.1, 0.48, ['taps-unevenly']],
    [10, 0.25, ['taps-unevenly']],
    [12.1, 0, ['taps-unevenly']],
  ])('intervals that stray by %d percent earn %d', (percent, credit, errors) => {
    const taps = byTurns(percent);
    expect(analyseTaps(taps)?.unevenness).toBeCloseTo(percent / 100, 4);
    const mark = judges.steadiness.mark(taps, GROOVE);
    expect(mark).toMatchObject({ exact: credit === 1, errors });
    expect(Math.abs(mark.credit - credit)).toBeLessThanOrEqual(0.0101);
  });

  test('at whatever tempo: it is not the tempo that is asked', () => {
    for (const tempo of [50, 87, 125, 200]) expect(judges.steadiness.mark(tapsAt(tempo), GROOVE).exact).toBe(true);
  });

  test.each([
    [6, 'rushes'],
    [-6, 'drags'],
  ] as const)(
    'a tempo that changes by %d percent over eight beats %s, and is named before it is uneven',
    (drift, error) => {
      const even = judges.steadiness.mark(tapAlong({ tempo: 100, beats: 24, jitter: 5, drift }, 1), GROOVE);
      expect(even).toMatchObject({ exact: false, errors: [error] });
      expect(even.credit).toBeLessThan(0.7);
      const both = judges.steadiness.mark(tapAlong({ tempo: 100, beats: 32, jitter: 42, drift: drift * 2 }, 1), GROOVE);
      expect(both.errors).toEqual([error]);
    },
  );

  test('a drift that could be chance is held against nobody', () => {
    const taps = tapAlong({ tempo: 100, beats: 10, jitter: 12, drift: 3 }, 8);
    expect(analyseTaps(taps)?.drift?.sure).toBe(false);
    expect(judges.steadiness.mark(taps, GROOVE)).toMatchObject({ exact: true, errors: [] });
  });

  test('missed and doubled taps are no unevenness', () => {
    const even = tapsAt(100, 20);
    const taps = [...even.slice(0, 7), (even[6] ?? 0) + 70, ...even.slice(8)];
    expect(judges.steadiness.mark(taps, GROOVE)).toMatchObject({ credit: 1, exact: true });
  });

  test('taps without a beat are as uneven as can be', () => {
    const scattered = [0, 90, 1310, 1400, 1990, 3900, 4020, 4700, 6900, 7060];
    expect(judges.steadiness.mark(scattered, GROOVE)).toEqual({ credit: 0, exact: false, errors: ['taps-unevenly'] });
  });
});

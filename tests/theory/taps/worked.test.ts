import { describe, expect, test } from 'vitest';
import { analyseTaps, tempoLevel } from '../../../shared-theory/taps/analysis.ts';
import { layOnBeats } from '../../../shared-theory/taps/beats.ts';
import { isWithin, tempoError } from '../../../shared-theory/taps/level.ts';
import { median } from '../../../shared-theory/taps/statistics.ts';
import { lineOf } from '../../../shared-theory/taps/fit.ts';

const NINE = [0, 505, 998, 1507, 2001, 2498, 3004, 3502, 4000];
const MISSED = [0, 500, 1000, 2000, 2500, 3000];
const intervals = (taps: readonly number[]) => taps.slice(1).map((tap, index) => tap - (taps[index] ?? 0));

// Worked by hand: the least-squares slope of tap times on beat numbers.
describe('nine taps of a careful hand', () => {
  test('lie on a line of 499.9 ms a beat; the middle interval says 120.48, the mean 120.00 beats a minute', () => {
    const read = analyseTaps(NINE);
    // Σ(k - 4) t / Σ(k - 4)² = 29 994 / 60.
    expect(read?.period).toBeCloseTo(29_994 / 60, 9);
    expect(read?.period.toFixed(1)).toBe('499.9');
    expect((60_000 / median(intervals(NINE))).toFixed(2)).toBe('120.48');
    expect(60_000 / (4000 / 8)).toBe(120);
    expect(read).toMatchObject({ kept: 9, missed: 0, doubled: 0 });
    expect(read?.tempo).toBeCloseTo(120.02, 2);
  });

  test('are even: the standard deviation of the intervals is 5.9 ms of 500', () => {
    // Squares of 5, -7, 9, -6, -3, 6, -2, -2 add up to 244; of eight, seven are free.
    expect(analyseTaps(NINE)?.unevenness).toBeCloseTo(Math.sqrt(244 / 7) / 500, 9);
  });
});

test('one missed tap of seven leaves the tempo alone: 120, where the mean interval says 100', () => {
  expect(intervals(MISSED).reduce((all, each) => all + each, 0) / 5).toBe(600);
  const read = analyseTaps(MISSED);
  expect(read?.period).toBeCloseTo(500, 9);
  expect(read).toMatchObject({ kept: 6, missed: 1, doubled: 0 });
});

// Standard error of the tempo from the first and last of n taps, sqrt(2) s / (n - 1): arithmetic. All taps together say it better.
test.each([
  [30, 5, 2.12],
  [30, 9, 1.06],
  [30, 17, 0.53],
  [15, 5, 1.06],
  [15, 9, 0.53],
  [15, 17, 0.27],
])(
  'taps that stray by %d ms: the ends of %d say 120 beats a minute to %d percent, the line to less',
  (jitter, taps, percent) => {
    const ends = (100 * Math.SQRT2 * jitter) / (taps - 1) / 500;
    const line = (100 * jitter) / Math.sqrt((taps * (taps ** 2 - 1)) / 12) / 500;
    expect(ends.toFixed(2)).toBe(percent.toFixed(2));
    expect(line).toBeLessThan(ends);
  },
);

test('the standard error of the line is its textbook one', () => {
  const beats = NINE.map((time, beat) => ({ time, beat, part: 0 }));
  const strays = NINE.map((time, beat) => time - (18_015 / 9 + (29_994 / 60) * (beat - 4)));
  const squares = strays.reduce((all, stray) => all + stray ** 2, 0);
  const line = lineOf(beats);
  expect(line?.jitter).toBeCloseTo(Math.sqrt(squares / 7), 6);
  expect(line?.error).toBeGreaterThanOrEqual(Math.sqrt(squares / 7 / 60) - 1e-9);
});

describe('bad taps', () => {
  const even = [0, 500, 1000, 1500, 2000, 2500, 3000, 3500, 4000, 4500];
  test.each<[string, readonly number[], Readonly<Record<string, number>>]>([
    ['a bounce', [...even.slice(0, 4), 1580, ...even.slice(4)], { missed: 0, doubled: 1, kept: 10 }],
    [
      'four of ten bounce',
      even.flatMap((tap, beat) => (beat % 3 === 0 ? [tap, tap + 60] : [tap])),
      { missed: 0, doubled: 4, kept: 10 },
    ],
    ['two misses in a row', [...even.slice(0, 4), ...even.slice(6), 5000, 5500], { missed: 2, doubled: 0, kept: 10 }],
    ['a first tap that is late', [0, ...even.slice(1).map((tap) => tap - 210)], { missed: 0, doubled: 1, kept: 9 }],
    [
      'two first taps too close',
      [0, 300, ...even.slice(2).map((tap) => tap - 340)],
      { missed: 0, doubled: 2, kept: 8 },
    ],
    [
      'a pause',
      [...even.slice(0, 6), ...even.slice(1, 7).map((tap) => tap + 5777)],
      { missed: 0, doubled: 0, kept: 12 },
    ],
    [
      'all of them',
      [0, 280, 780, 1280, 1360, 1780, 2780, 3280, 3780, 4280, 4780, 8213, 8713, 9213, 9713],
      { missed: 1, doubled: 2, kept: 13 },
    ],
  ])('%s: the beat stays 500 ms', (_name, taps, expected) => {
    const read = analyseTaps(taps);
    expect(read?.period).toBeCloseTo(500, 6);
    expect(read).toMatchObject(expected);
    expect(read?.unevenness).toBeLessThan(1e-9);
  });

  test('what has to be explained away makes less sure', () => {
    const sure = analyseTaps(even)?.confidence ?? 0;
    const less = analyseTaps([...even.slice(0, 4), 1580, ...even.slice(4)])?.confidence ?? 0;
    expect(sure).toBeGreaterThan(less);
    expect(less).toBeGreaterThan(0.8);
  });

  test.each<[string, readonly number[]]>([
    ['none', []],
    ['one', [0]],
    ['five', [0, 500, 1000, 1500, 2000]],
    ['all at once', Array.from({ length: 12 }, () => 0)],
    ['not rising', [0, 500, 400, 1500, 2000, 2500, 3000, 3500]],
    ['not a number', [0, 500, Number.NaN, 1500, 2000, 2500, 3000, 3500]],
    ['without end', [0, 500, 1000, 1500, 2000, 2500, 3000, Infinity]],
    ['huge', [0, 500, 1000, 1500, 2000, 2500, 3000, 1e300]],
    ['in no time at all', Array.from({ length: 20 }, (_, tap) => tap * 1e-9)],
    ['faster than any hand', Array.from({ length: 20 }, (_, tap) => tap * 20)],
    ['without any beat', [0, 90, 1310, 1400, 1990, 3900, 4020, 4700, 6900, 7060]],
  ])('taps cannot be read: %s', (_name, taps) => {
    expect(analyseTaps(taps)).toBeNull();
  });

  test('taps at one time are bounces', () => {
    expect(layOnBeats([...even.slice(0, 5), 2000, ...even.slice(5)])).toMatchObject({ doubled: 1, missed: 0 });
  });
});

describe('levels of the beat', () => {
  test.each([
    [100, 'same'],
    [92, 'same'],
    [108, 'same'],
    [91, 'other'],
    [109, 'other'],
    [200, 'double'],
    [188, 'double'],
    [212, 'double'],
    [187, 'other'],
    [50, 'half'],
    [47, 'half'],
    [53, 'half'],
    [150, 'three-against-two'],
    [66.7, 'three-against-two'],
    [300, 'three-against-two'],
    [33.3, 'three-against-two'],
    [125, 'other'],
    [400, 'other'],
  ] as const)('%d against 100 is %s', (tempo, level) => {
    expect(tempoLevel(tempo, 100, [1])).toBe(level);
  });

  test('where another count is lawful it is that, also where it is three against two', () => {
    expect(tempoLevel(200, 100, [1, 2])).toBe('lawful');
    expect(tempoLevel(185, 100, [1, 2])).toBe('lawful');
    expect(tempoLevel(50, 100, [1, 2])).toBe('half');
    expect(tempoLevel(180, 60, [1, 3])).toBe('lawful');
    expect(tempoLevel(66, 100, [1, 2 / 3])).toBe('lawful');
  });
});

describe('conventions of tempo estimation', () => {
  // Accuracy1: within 4 percent of the reference (Gouyon and others 2006, after the ISMIR 2004 contest). Windows worked by hand.
  test.each([
    [120, 115.2, 124.8],
    [100, 96, 104],
    [80, 76.8, 83.2],
  ])('at %d beats a minute the strict window goes from %d to %d', (truth, low, high) => {
    for (const tempo of [low, high]) expect(isWithin(tempoError(tempo, truth), 0.04)).toBe(true);
    for (const tempo of [low - 0.1, high + 0.1]) expect(isWithin(tempoError(tempo, truth), 0.04)).toBe(false);
  });

  // 8 percent: the default tolerance of mir_eval.tempo.detection (Raffel and others 2014).
  test.each([
    [120, 110.4, 129.6],
    [100, 92, 108],
    [80, 73.6, 86.4],
  ])('at %d beats a minute the wide window goes from %d to %d', (truth, low, high) => {
    for (const tempo of [low, high]) expect(tempoLevel(tempo, truth, [1])).toBe('same');
    for (const tempo of [low - 0.1, high + 0.1]) expect(tempoLevel(tempo, truth, [1])).toBe('other');
  });

  // Accuracy2 accepts twice, three times, half and a third as well (the same); here each has its name.
  test.each([2, 3, 1 / 2, 1 / 3])('%d times the tempo is no other tempo', (factor) => {
    expect(tempoLevel(90 * factor, 90, [1])).not.toBe('other');
  });
});

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { wilsonInterval } from '../../../shared-theory/diagnosis/wilson.ts';

// R. G. Newcombe, "Two-sided confidence intervals for the single proportion: comparison of seven methods", Statistics in Medicine
// 17 (1998), table of score intervals without correction (the four data sets, from memory); the rest by the formula in R's
// prop.test(correct = FALSE).
test.each([
  [81, 263, 0.255289, 0.36621],
  [15, 148, 0.062386, 0.160487],
  [0, 20, 0, 0.161125],
  [1, 29, 0.006113, 0.171755],
  [5, 5, 0.565518, 1],
  [5, 10, 0.236593, 0.763407],
  [18, 24, 0.551006, 0.880006],
  [682, 925, 0.707996, 0.764636],
  [1, 1, 0.206549, 1],
])('%i of %i lies between %f and %f', (times, chances, low, high) => {
  const interval = wilsonInterval(times, chances);
  expect(interval[0]).toBeCloseTo(low, 5);
  expect(interval[1]).toBeCloseTo(high, 5);
});

test('it holds the share, lies within 0 and 1, and mirrors', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1000 }), fc.nat(1000), (chances, some) => {
      const times = some % (chances + 1);
      const [low, high] = wilsonInterval(times, chances);
      const [otherLow, otherHigh] = wilsonInterval(chances - times, chances);
      expect(low).toBeGreaterThanOrEqual(0);
      expect(low).toBeLessThanOrEqual(times / chances);
      expect(high).toBeGreaterThanOrEqual(times / chances);
      expect(high).toBeLessThanOrEqual(1);
      expect(otherLow).toBeCloseTo(1 - high, 12);
      expect(otherHigh).toBeCloseTo(1 - low, 12);
    }),
  );
});

test.each([
  [0, 0],
  [3, 2],
  [-1, 2],
  [Number.NaN, 2],
])('%f of %f is no share', (times, chances) => {
  expect(() => wilsonInterval(times, chances)).toThrow(/a share needs/);
});

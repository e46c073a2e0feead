import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pickOne, seededRandom, xoshiro128 } from '../../shared-theory/random.ts';

describe('chance from a seed', () => {
  test('xoshiro128** from the state 1 2 3 4 (first outputs of the reference implementation, from memory)', () => {
    const next = xoshiro128([1, 2, 3, 4]);
    expect(Array.from({ length: 6 }, next)).toEqual([11520, 0, 5927040, 70819200, 2031721883, 1637235492]);
  });

  test('equal seeds and streams give equal numbers, others do not', () => {
    const take = (seed: number, stream?: string) => Array.from({ length: 4 }, seededRandom(seed, stream));
    expect(take(7)).toEqual(take(7));
    expect(take(7, 'loop')).toEqual(take(7, 'loop'));
    expect(take(7)).not.toEqual(take(8));
    expect(take(7, 'loop')).not.toEqual(take(7, 'groove'));
    expect(take(1)).not.toEqual(take(1 + 2 ** 32));
  });

  test('numbers lie from 0 up to 1, also over neighbouring seeds', () => {
    fc.assert(
      fc.property(fc.maxSafeInteger(), (seed) => {
        const random = seededRandom(seed);
        for (let index = 0; index < 20; index += 1) {
          const number = random();
          expect(number >= 0 && number < 1).toBe(true);
        }
      }),
    );
    const firsts = Array.from({ length: 4000 }, (_, seed) => seededRandom(seed)());
    const mean = firsts.reduce((sum, number) => sum + number, 0) / firsts.length;
    // The mean of 4000 even numbers strays 0.0046 by one standard error.
    expect(Math.abs(mean - 0.5)).toBeLessThan(0.02);
    expect(firsts.filter((number) => number < 0.1).length).toBeGreaterThan(320);
    expect(firsts.filter((number) => number < 0.1).length).toBeLessThan(480);
  });

  test.each([1.5, Number.NaN, Infinity, 2 ** 53])('%s is no seed', (seed) => {
    expect(() => seededRandom(seed)).toThrow(RangeError);
  });

  test('nothing is picked from nothing', () => {
    expect(() => pickOne(seededRandom(1), [])).toThrow(RangeError);
    expect(pickOne(seededRandom(1), ['only'])).toBe('only');
  });
});

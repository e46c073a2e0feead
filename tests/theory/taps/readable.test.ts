import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { LEAST_TAPS, LONGEST_TAPPING, MOST_TAPS, readTaps, tappedTempo } from '../../../shared-theory/taps/taps.ts';

const beats = (count: number, period = 500) => Array.from({ length: count }, (_, beat) => beat * period);

test.each<[string, unknown]>([
  ['nothing', null],
  ['a text', '0,500,1000'],
  ['too few', beats(LEAST_TAPS - 1)],
  ['too many', beats(MOST_TAPS + 1)],
  ['not from 0', beats(9).map((tap) => tap + 1)],
  ['not a number', [...beats(8), Number.NaN]],
  ['without end', [...beats(8), Infinity]],
  ['huge', [...beats(8), 1e300]],
  ['over too long a time', [...beats(8), LONGEST_TAPPING + 1]],
  ['a text among numbers', [...beats(8), '4000']],
  ['twice the same', [...beats(8), 3500]],
  ['twice the same to a tenth of a millisecond', [...beats(8), 3500.04]],
  ['backwards', [...beats(8), 3400]],
  ['below the first', [0, -5, ...beats(8, 300).slice(1)]],
])('%s is no answer', (_name, value) => {
  expect(readTaps(value)).toBeNull();
});

test('taps are kept to a tenth of a millisecond, and read again they are the same', () => {
  expect(
    readTaps([
      0,
      ...beats(9)
        .slice(1)
        .map((tap) => tap + 0.04),
    ]),
  ).toEqual(beats(9));
  expect(Object.is(readTaps([-0, ...beats(8).slice(1)])?.[0], 0)).toBe(true);
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0, max: 1e5, noNaN: true }), { minLength: 8, maxLength: 64 }), (times) => {
      const sorted = times.toSorted((one, other) => one - other);
      const read = readTaps(sorted.map((time) => time - (sorted[0] ?? 0)));
      if (read !== null) expect(readTaps(read)).toEqual(read);
    }),
  );
});

test('answers are counted by the whole beats a minute of the intervals near the middle one', () => {
  expect(tappedTempo(beats(8))).toBe(120);
  expect(tappedTempo([0, 505, 998, 1507, 2001, 2498, 3004, 3502, 4000])).toBe(120);
  // A wide hand: its middle interval alone, 510 ms, would be 118.
  expect(tappedTempo([0, 530, 1000, 1480, 2010, 2490, 3000, 3520, 4000])).toBe(120);
  // One tap missed.
  expect(tappedTempo([0, 500, 1000, 2000, 2500, 3000, 3500, 4000])).toBe(120);
});

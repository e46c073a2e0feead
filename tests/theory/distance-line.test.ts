import { expect, test } from 'vitest';
import { distanceNumber, lineNumber } from '../../shared-theory/distance-line.ts';

// common practice: the degrees of the major scale are 0 2 4 5 7 9 11 semitones above its first note.
test.each([
  [0, '1'],
  [2, '2'],
  [4, '3'],
  [5, '4'],
  [7, '5'],
  [9, '6'],
  [11, '7'],
] as const)('%i semitones above home is degree %s of its major scale, in every octave', (semitones, number) => {
  expect(distanceNumber(semitones)).toBe(number);
  expect(distanceNumber(semitones - 12)).toBe(number);
  expect(distanceNumber(semitones + 12)).toBe(number);
});

test('the line counts down to the same names, and on to 8 above', () => {
  const line = Array.from({ length: 25 }, (_, place) => lineNumber(place - 12));
  expect(line.join(' ')).toBe('1 b2 2 b3 3 4 #4 5 b6 6 b7 7 1 b2 2 b3 3 4 #4 5 b6 6 b7 7 8');
});

import { modulo } from '../pitch.ts';

/** Scale digits of the semitones above home: a flat or sharp degree has the digit that it is written with. */
const DIGITS = [1, 2, 2, 3, 3, 4, 4, 5, 6, 6, 7, 7] as const;

/** The digit of a distance in semitones from home, on either side: 3 of b3, 4 of #4; the octave is home again. */
export function digitOf(semitones: number): number {
  return DIGITS[modulo(semitones, 12)] ?? 1;
}

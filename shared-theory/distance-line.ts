import { modulo } from './pitch.ts';

/** Distance numbers on the major scale of the first chord's root, by semitones above it. */
const DISTANCES = ['1', 'b2', '2', 'b3', '3', '4', '#4', '5', 'b6', '6', 'b7', '7'] as const;

/** Distance number on the major scale of the first chord's root. */
export type Distance = (typeof DISTANCES)[number];

/** The distance number of a root so many semitones above or below the first one, within one octave: both 5 and -7 semitones give 4. */
export function distanceNumber(semitones: number): Distance {
  return DISTANCES[modulo(semitones, 12)] ?? '1';
}

/** What stands at a place of the distance line: as `distanceNumber`, but 8 an octave above home. */
export function lineNumber(semitones: number): Distance | '8' {
  return semitones === 12 ? '8' : distanceNumber(semitones);
}

/** The digit at a place of the distance line, whatever its sign: 7 of b7, 4 of #4, 8 an octave above home. */
export function lineDigit(semitones: number): number {
  return Number(lineNumber(semitones).at(-1));
}

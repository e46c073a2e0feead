import type { Chord } from '../../chords.ts';
import { numeralSuffix } from '../../degrees.ts';
import { readNumeral, says, writeNumeral } from './numerals.ts';

/**
 * Right numerals with what more their chords have, in ASCII: `iio V i` of Bm7b5 E7 Am is `iim7b5 V7 i`. `chords` are the different
 * chords of the loop in order of first sounding, one for each numeral and more behind them; a numeral that reads a chord from another
 * root stays as it is, and so do all where they are not one for each chord.
 */
export function withAdditions(numerals: readonly string[], chords: readonly Chord[]): readonly string[] {
  return numerals.map((numeral, index) => {
    const chord = chords[index];
    if (chord?.addition === undefined) return numeral;
    const read = readNumeral(numeral);
    return says(read, chord.quality) ? writeNumeral({ ...read, suffix: '' }) + numeralSuffix(chord) : numeral;
  });
}

import type { WireTruth } from '../../server/protocol/views.ts';
import { printNumeral } from '../../shared-theory/printer.ts';

/** Numerals in a row, in ASCII, as printed: `vi – V`. */
export const numeralsText = (numerals: readonly string[]): string =>
  numerals.map((numeral) => printNumeral(numeral).text).join(' – ');

/** The triads that stand on the degrees of a major key. */
const MAJOR_KEY = /^(?:I|ii|iii|IV|V|vi|viio)$/;

/**
 * The right readings of the numerals that are shown, in ASCII, the first one first: those in major keys. Readings from a relative
 * minor are as right, and stand where they are one's own, as do those that write a chord in each of its bars; shown all together they
 * would bury the others.
 */
export function rightReadings({ key, also = [] }: Pick<WireTruth, 'key' | 'also'>): readonly (readonly string[])[] {
  // The key of such an answer is the numerals themselves.
  const [first = [], ...others] = [key, ...also].map((reading) => reading.split(' '));
  const shown = (reading: readonly string[]) =>
    reading.length === first.length && reading.every((numeral) => MAJOR_KEY.test(numeral));
  return [first, ...others.filter(shown)];
}

import { itemAt } from '../items.ts';
import { words } from './signs.ts';

export const NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const;

/** Parts of suffixes, of chords and of numerals, as they are said; digits are said as numbers. */
const SAID: Readonly<Record<string, string>> = {
  m7b5: 'half diminished seven',
  maj: 'major',
  m: 'minor',
  dim: 'diminished',
  o: 'diminished',
  aug: 'augmented',
  '+': 'augmented',
};

/** The suffix of a chord or numeral as it is said: `m7` is “minor seven”. */
export function saidSuffix(suffix: string): string {
  if (suffix === '5') return 'power chord';
  const parts = suffix.match(/m7b5|[a-z]+|\+|\d/g) ?? [];
  return words(...parts.map((part) => SAID[part] ?? (/\d/.test(part) ? itemAt(NUMBERS, Number(part) - 1) : part)));
}

/** A suffix in the signs that musicians write: °, + and ø. */
export function inSigns(suffix: string): string {
  return suffix.replace(/dim|o/, '°').replace('aug', '+').replace('m7b5', 'ø7');
}

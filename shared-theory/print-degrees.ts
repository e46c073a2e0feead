import { itemAt } from './items.ts';
import { inSigns, NUMBERS, saidSuffix } from './namings/suffixes.ts';
import { withSign, words } from './namings/signs.ts';

/** A printed degree: its flat or sharp stands before it (`♭7`, `vii°`). */
export type PrintedDegree = {
  readonly sign: string;
  readonly degree: string;
  readonly suffix: string;
  readonly text: string;
  readonly spoken: string;
};

const ROMAN: readonly string[] = ['i', 'ii', 'iii', 'iv', 'v', 'vi', 'vii'];

/**
 * Prints a numeral from its ASCII form: `viio` is vii°, “seven diminished”; `viim7b5` is viiø7; `bVII` is ♭VII. It is the same
 * however notes are named. RangeError where it is none.
 */
export function printNumeral(numeral: string): PrintedDegree {
  const found = /^([#b]?)(VI{0,2}|I[IV]?|III|vi{0,2}|i[iv]?|iii)(|7|maj7|add[69]|o7?|\+|5|sus[24]|m7b5)$/.exec(numeral);
  if (!found) throw new RangeError(`Not a numeral such as viio: ${JSON.stringify(numeral)}.`);
  const [, accidental = '', roman = '', suffix = ''] = found;
  const small = roman.toLowerCase();
  // A small numeral is minor unless its suffix says what it is instead.
  const minor = roman === small && /^(?!.*5)[7ma]|^$/.test(suffix) ? 'minor' : '';
  return degree(accidental, roman, ROMAN.indexOf(small), inSigns(suffix), words(minor, saidSuffix(suffix)));
}

/** Prints a distance number: `b7` is ♭7, “flat seven”; 8 is the octave. RangeError where it is none. */
export function printDistance(distance: string): PrintedDegree {
  const found = /^([#b](?=[1-7])|)([1-8])$/.exec(distance);
  if (!found) throw new RangeError(`Not a distance such as b7: ${JSON.stringify(distance)}.`);
  const [, accidental = '', digit = ''] = found;
  return degree(accidental, digit, Number(digit) - 1, '', '');
}

function degree(accidental: string, base: string, place: number, suffix: string, said: string): PrintedDegree {
  const { sign, spoken } = withSign('', '', accidental === '#' ? 1 : accidental === 'b' ? -1 : 0);
  return {
    sign,
    degree: base,
    suffix,
    text: sign + base + suffix,
    spoken: words(spoken, itemAt(NUMBERS, place), said),
  };
}

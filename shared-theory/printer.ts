import { withSign, words } from './namings/signs.ts';
import type { NoteParts } from './namings/signs.ts';
import { inSigns, saidSuffix } from './namings/suffixes.ts';
import { readNote } from './pitch.ts';
import type { SpelledNote } from './pitch.ts';

export { printDistance, printNumeral } from './print-degrees.ts';
export type { PrintedDegree } from './print-degrees.ts';

/** Ways of naming notes that a class can choose; `english` stands here, the others in `namings/`. */
export const NAMINGS = ['english', 'german', 'mixed', 'dutch', 'fixed-do'] as const;
export type Naming = (typeof NAMINGS)[number];

/**
 * One way of naming notes. It is handed to the print functions as their last argument; without it they name in English. Pages
 * that load early get theirs by `lateNames(naming)`, all others by `namesOf(naming)`.
 */
export type Names = (note: SpelledNote) => NoteParts;

/** A printed name: what follows the note is set small. `text` is all of it in one line. */
export type Printed = NoteParts & { readonly suffix: string; readonly text: string };

/** Letters A to G with real signs. */
export const english: Names = ({ letter, alteration }) => withSign(letter, letter, alteration);

/** Prints a note without octave: `Bb` is B♭, “B flat”. RangeError where it is none. */
export function printNote(name: string, names: Names = english): Printed {
  return joined(names(readNote(name)), '', '');
}

/** Prints a chord from its ASCII symbol: `F#m` is F♯m, “F sharp minor”; `Bm7b5/D` is Bø7/D. RangeError where it is none. */
export function printChord(symbol: string, names: Names = english): Printed {
  const found = /^([A-G](?:#{1,3}|b{0,3}))(m?[67]?|maj7|m\(maj7\)|m7b5|dim7?|aug|5|sus[24]|add9)(?:\/(.*))?$/.exec(
    symbol,
  );
  if (!found) throw new RangeError(`Not a chord such as F#m: ${JSON.stringify(symbol)}.`);
  const [, root = '', suffix = '', over] = found;
  const chord = joined(names(readNote(root)), inSigns(suffix), saidSuffix(suffix));
  if (over === undefined) return chord;
  const bass = printNote(over, names);
  return joined(chord, `${chord.suffix}/${bass.text}`, `over ${bass.spoken}`);
}

/** Prints a key from its ASCII name: `Gb major` is G♭ major, `A dorian` A dorian. RangeError where it is none. */
export function printKey(name: string, names: Names = english): Printed {
  const [tonic = '', mode = ''] = name.split(/ (?=(?:m(?:aj|in)or|ionian|dorian|phrygian|(?:mixo)?lydian|aeolian)$)/);
  if (mode === '') throw new RangeError(`Not a key such as Gb major: ${JSON.stringify(name)}.`);
  return joined(names(readNote(tonic)), ` ${mode}`, mode);
}

function joined(note: NoteParts, suffix: string, said: string): Printed {
  const { letter, sign, spoken } = note;
  return { letter, sign, suffix, text: letter + sign + suffix, spoken: words(spoken, said) };
}

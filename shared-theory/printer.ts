import { itemAt } from './items.ts';
import { readNote } from './pitch.ts';
import type { SpelledNote } from './pitch.ts';

/** How notes, chords, degrees and keys are named: each naming is one entry of `NAMINGS`. */
export type Naming = 'english';

/**
 * A printed name, in parts that a screen can set apart: letter large, sign raised, suffix small.
 * `text` is all of it in one line; `spoken` is for screen readers.
 */
export type Printed = {
  readonly letter: string;
  readonly sign: string;
  readonly suffix: string;
  readonly text: string;
  readonly spoken: string;
};

/** A printed degree: its flat or sharp stands before it (`♭7`, `vii°`). */
export type PrintedDegree = {
  readonly sign: string;
  readonly degree: string;
  readonly suffix: string;
  readonly text: string;
  readonly spoken: string;
};

/** How a suffix is printed and said. */
type Suffix = { readonly print: string; readonly say: string };
type Suffixes = Readonly<Record<string, Suffix>>;

/** All that one way of naming says. Tables by alteration run from three flats to three sharps. */
type Names = {
  readonly note: (note: SpelledNote) => { readonly letter: string; readonly sign: string; readonly spoken: string };
  readonly chords: Suffixes;
  readonly numerals: Suffixes;
  readonly keys: Suffixes;
  /** One to eight. */
  readonly numbers: readonly string[];
  /** What a numeral in small letters is called. */
  readonly minor: string;
  readonly alterations: readonly string[];
};

const ROMAN: readonly string[] = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'];
/** Real signs by alteration, from three flats to three sharps. */
const SIGNS = ['♭𝄫', '𝄫', '♭', '', '♯', '𝄪', '♯𝄪'] as const;
const MOST_FLATS = 3;

const ENGLISH_ALTERATIONS = [
  'triple flat',
  'double flat',
  'flat',
  '',
  'sharp',
  'double sharp',
  'triple sharp',
] as const;

const NAMINGS: Readonly<Record<Naming, Names>> = {
  english: {
    note: ({ letter, alteration }) => ({
      letter,
      sign: itemAt(SIGNS, alteration + MOST_FLATS),
      spoken: words(letter, itemAt(ENGLISH_ALTERATIONS, alteration + MOST_FLATS)),
    }),
    chords: {
      '': { print: '', say: '' },
      m: { print: 'm', say: 'minor' },
      dim: { print: '°', say: 'diminished' },
      aug: { print: '+', say: 'augmented' },
      '5': { print: '5', say: 'five' },
      sus2: { print: 'sus2', say: 'sus two' },
      sus4: { print: 'sus4', say: 'sus four' },
    },
    numerals: {
      '': { print: '', say: '' },
      o: { print: '°', say: 'diminished' },
      '+': { print: '+', say: 'augmented' },
      '5': { print: '5', say: 'power chord' },
      sus2: { print: 'sus2', say: 'sus two' },
      sus4: { print: 'sus4', say: 'sus four' },
    },
    keys: { major: { print: ' major', say: 'major' }, minor: { print: ' minor', say: 'minor' } },
    numbers: ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight'],
    minor: 'minor',
    alterations: ENGLISH_ALTERATIONS,
  },
};

/** Prints a note without octave: `Bb` is B♭, “B flat”. RangeError where it is none. */
export function printNote(name: string, naming: Naming = 'english'): Printed {
  const { letter, sign, spoken } = NAMINGS[naming].note(readNote(name));
  return { letter, sign, suffix: '', text: letter + sign, spoken };
}

/** Prints a chord from its ASCII symbol: `F#m` is F♯m, “F sharp minor”; `Bdim` is B°. RangeError where it is none. */
export function printChord(symbol: string, naming: Naming = 'english'): Printed {
  const [, root = '', suffix = ''] = /^([A-G](?:#{1,3}|b{0,3}))(.*)$/.exec(symbol) ?? [];
  return joined(printNote(root, naming), suffixIn(NAMINGS[naming].chords, suffix, symbol));
}

/** Prints a key from its ASCII name: `Gb major` is G♭ major. RangeError where it is none. */
export function printKey(name: string, naming: Naming = 'english'): Printed {
  const [, tonic = '', mode = ''] = /^(\S+) (\S+)$/.exec(name) ?? [];
  return joined(printNote(tonic, naming), suffixIn(NAMINGS[naming].keys, mode, name));
}

/** Prints a numeral from its ASCII form: `viio` is vii°, “seven diminished”; `bVII` is ♭VII. RangeError where it is none. */
export function printNumeral(numeral: string, naming: Naming = 'english'): PrintedDegree {
  const found = /^([#b]?)(VII|VI|V|IV|III|II|I|vii|vi|v|iv|iii|ii|i)(.*)$/.exec(numeral);
  if (!found) throw new RangeError(`Not a numeral: ${JSON.stringify(numeral)}. Write such as IV, vi or viio.`);
  const [, accidental = '', roman = '', suffix = ''] = found;
  const names = NAMINGS[naming];
  const { print, say } = suffixIn(names.numerals, suffix, numeral);
  const small = roman !== roman.toUpperCase();
  const quality = suffix === '' && small ? names.minor : say;
  return degree(names, accidental, { base: roman, place: ROMAN.indexOf(roman.toUpperCase()) }, { print, say: quality });
}

/** Prints a distance number: `b7` is ♭7, “flat seven”; 8 is the octave. RangeError where it is none. */
export function printDistance(distance: string, naming: Naming = 'english'): PrintedDegree {
  const found = /^([#b](?=[1-7])|)([1-8])$/.exec(distance);
  if (!found)
    throw new RangeError(`Not a distance number: ${JSON.stringify(distance)}. 1 to 7 with #, b or neither, or 8.`);
  const [, accidental = '', digit = ''] = found;
  return degree(NAMINGS[naming], accidental, { base: digit, place: Number(digit) - 1 }, { print: '', say: '' });
}

function joined(root: Printed, { print, say }: Suffix): Printed {
  return { ...root, suffix: print, text: root.text + print, spoken: words(root.spoken, say) };
}

function degree(
  names: Names,
  accidental: string,
  { base, place }: { readonly base: string; readonly place: number },
  { print, say }: Suffix,
): PrintedDegree {
  const { alteration } = readNote(`C${accidental}`);
  const sign = itemAt(SIGNS, alteration + MOST_FLATS);
  const before = itemAt(names.alterations, alteration + MOST_FLATS);
  const spoken = words(before, itemAt(names.numbers, place), say);
  return { sign, degree: base, suffix: print, text: sign + base + print, spoken };
}

function suffixIn(suffixes: Suffixes, suffix: string, whole: string): Suffix {
  // Own keys only; not by `Object.hasOwn`, which the oldest phones that print names lack.
  const found = Object.keys(suffixes).includes(suffix) ? suffixes[suffix] : undefined;
  if (!found) throw new RangeError(`Cannot print ${JSON.stringify(whole)}: not a name of ours.`);
  return found;
}

function words(...parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(' ');
}

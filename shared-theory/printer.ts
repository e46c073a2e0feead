import { readNote } from './pitch.ts';
import type { SpelledNote } from './pitch.ts';

/** How notes, chords, degrees and keys are named. Each naming is one entry of `NAMINGS`. */
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

const ROMAN: readonly string[] = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'];

/** Real signs by alteration in semitones. */
const SIGNS: Readonly<Record<number, string>> = { [-3]: '♭𝄫', [-2]: '𝄫', [-1]: '♭', 0: '', 1: '♯', 2: '𝄪', 3: '♯𝄪' };

/** Names of one way of naming: chord suffixes with how each is printed and spoken, and the words around letters. */
type Names = {
  readonly note: (note: SpelledNote) => { readonly letter: string; readonly sign: string; readonly spoken: string };
  readonly suffixes: Readonly<Record<string, { readonly print: string; readonly say: string }>>;
  readonly numeralSuffixes: Readonly<Record<string, { readonly print: string; readonly say: string }>>;
  readonly numbers: readonly string[];
  readonly small: string;
  readonly modes: Readonly<Record<string, { readonly print: string; readonly say: string }>>;
  readonly flat: string;
  readonly sharp: string;
};

const ENGLISH_SIGNS: Readonly<Record<number, string>> = {
  [-3]: ' triple flat',
  [-2]: ' double flat',
  [-1]: ' flat',
  0: '',
  1: ' sharp',
  2: ' double sharp',
  3: ' triple sharp',
};

const NAMINGS: Readonly<Record<Naming, Names>> = {
  english: {
    note: ({ letter, alteration }) => ({
      letter,
      sign: SIGNS[alteration] ?? '',
      spoken: letter + (ENGLISH_SIGNS[alteration] ?? ''),
    }),
    suffixes: {
      '': { print: '', say: '' },
      m: { print: 'm', say: 'minor' },
      dim: { print: '°', say: 'diminished' },
      aug: { print: '+', say: 'augmented' },
      '5': { print: '5', say: 'five' },
      sus2: { print: 'sus2', say: 'sus two' },
      sus4: { print: 'sus4', say: 'sus four' },
    },
    numeralSuffixes: {
      '': { print: '', say: '' },
      o: { print: '°', say: 'diminished' },
      '+': { print: '+', say: 'augmented' },
      '5': { print: '5', say: 'power chord' },
      sus2: { print: 'sus2', say: 'sus two' },
      sus4: { print: 'sus4', say: 'sus four' },
    },
    numbers: ['one', 'two', 'three', 'four', 'five', 'six', 'seven'],
    small: 'minor',
    modes: { major: { print: ' major', say: 'major' }, minor: { print: ' minor', say: 'minor' } },
    flat: 'flat',
    sharp: 'sharp',
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
  return joined(printNote(root, naming), named(NAMINGS[naming].suffixes, suffix, symbol));
}

/** Prints a key from its ASCII name: `Gb major` is G♭ major. RangeError where it is none. */
export function printKey(name: string, naming: Naming = 'english'): Printed {
  const [tonic = '', mode = ''] = name.split(' ', 2);
  return joined(printNote(tonic, naming), named(NAMINGS[naming].modes, mode, name));
}

/** Prints a numeral from its ASCII form: `viio` is vii°, “seven diminished”; `bVII` is ♭VII. RangeError where it is none. */
export function printNumeral(numeral: string, naming: Naming = 'english'): PrintedDegree {
  const names = NAMINGS[naming];
  const [, accidental = '', roman = '', suffix = ''] =
    /^([#b]?)(VII|VI|V|IV|III|II|I|vii|vi|v|iv|iii|ii|i)(.*)$/.exec(numeral) ?? [];
  const { print, say } = named(names.numeralSuffixes, suffix, numeral);
  const number = names.numbers[ROMAN.indexOf(roman.toUpperCase())];
  if (number === undefined) throw new RangeError(`Not a numeral: ${JSON.stringify(numeral)}.`);
  const minor = suffix === '' && roman !== roman.toUpperCase() ? names.small : '';
  return degree(names, accidental, roman, print, [number, minor || say]);
}

/** Prints a distance number or scale degree: `b7` is ♭7, “flat seven”. RangeError where it is none. */
export function printDistance(distance: string, naming: Naming = 'english'): PrintedDegree {
  const names = NAMINGS[naming];
  const [, accidental = '', digit = ''] = /^([#b]?)([1-7])$/.exec(distance) ?? [];
  const number = names.numbers[Number(digit) - 1];
  if (number === undefined)
    throw new RangeError(`Not a distance number: ${JSON.stringify(distance)}. 1 to 7 with #, b or neither.`);
  return degree(names, accidental, digit, '', [number]);
}

/** Prints notes in a row, with a space between: C F♯. */
export function printNotes(names: readonly string[], naming: Naming = 'english'): string {
  return names.map((name) => printNote(name, naming).text).join(' ');
}

function joined(root: Printed, { print, say }: { readonly print: string; readonly say: string }): Printed {
  return {
    ...root,
    suffix: print,
    text: root.text + print,
    spoken: say === '' ? root.spoken : `${root.spoken} ${say}`,
  };
}

function named<T>(table: Readonly<Record<string, T>>, name: string, whole: string): T {
  const entry = Object.hasOwn(table, name) ? table[name] : undefined;
  if (entry === undefined) throw new RangeError(`Cannot print ${JSON.stringify(whole)}.`);
  return entry;
}

function degree(
  names: Names,
  accidental: string,
  base: string,
  suffix: string,
  words: readonly string[],
): PrintedDegree {
  const sign = SIGNS[{ '#': 1, b: -1 }[accidental] ?? 0] ?? '';
  const before = { '#': names.sharp, b: names.flat }[accidental] ?? '';
  const spoken = [before, ...words].filter((word) => word !== '').join(' ');
  return { sign, degree: base, suffix, text: sign + base + suffix, spoken };
}

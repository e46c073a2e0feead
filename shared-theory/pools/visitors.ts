import type { Chord } from '../chords.ts';
import { itemAt } from '../items.ts';
import { modeScale, type Key } from '../keys.ts';
import type { Form, Level } from '../level.ts';
import { fifthsFromC, transpose } from '../pitch.ts';
import { rotations, thereAndBack, type Loop } from './loops.ts';
import { roundLoops } from './rounds.ts';

/** Two chords with another home than the first or sixth degree of their parent scale: modal vamps (common practice). */
const MODAL_PAIRS: readonly string[] = [
  'i IV',
  'i ii',
  'I bVII',
  'I v',
  'i bII',
  'i bvii',
  'I II',
  'I vii',
  'i bVII',
  'i bVI',
];
/** Rounds of the same kind: there and back, or from home to two others. */
const MODAL_BACKS: readonly string[] = [
  'i bVII bVI',
  'I bVII IV',
  'i bIII IV',
  'i ii bIII',
  'i bII bIII',
  'I II iii',
  'I v IV',
];
const MODAL_ROUNDS: readonly string[] = [
  'i bVII IV bIII',
  'I bVII IV v',
  'i bVI bIII bVII',
  'I II vi V',
  'i ii bIII IV',
];

/** Pairs with a chord borrowed from the minor of the same root or applied to another chord (common practice). */
const VISITOR_PAIRS: readonly string[] = [
  'I iv',
  'I bVI',
  'I bIII',
  'I III',
  'I III7',
  'I II7',
  'i V',
  'i V7',
  'i bII7',
  'i IV7',
  'I bvii',
];
/** Home, a chord, home, another; the same the other way round. */
const VISITOR_RETURNS: readonly string[] = [
  'I IV I iv',
  'I bVI I bVII',
  'I bIII I IV',
  'I v I iv',
  'I II7 I V',
  'I III7 I vi',
  'I bVII I iv',
  'i V7 i iv',
  'i V i bVI',
  'i iv i V',
];
const VISITOR_ROUNDS: readonly string[] = [
  'I IV iv V',
  'I vi IV iv',
  'I bVII bVI V',
  'I bIII IV iv',
  'I bIII IV bVII',
  'I bVI bIII bVII',
  'I II7 IV V',
  'I vi II7 V',
  'I III7 vi IV',
  'I III7 vi iv',
  'I III IV iv',
  'I v vi iv',
  'i bVII bVI V',
  'i bVII bVI V7',
  'i iv bVI V',
  'i iv V bVI',
  'i bIII iv V7',
];

const ROMAN = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'] as const;
const MAJOR_SCALE = modeScale('major');

/** The chord of a numeral counted from home on the major scale: `bVI`, `iv`, `II7`. */
function chordFrom(tonic: string, numeral: string): Chord {
  const [, flat = '', roman = '', seventh] = /^(b?)([IV]+|[iv]+)(7?)$/.exec(numeral) ?? [];
  const steps = ROMAN.findIndex((each) => each === roman.toUpperCase());
  if (steps < 0) throw new RangeError(`Not a numeral: ${JSON.stringify(numeral)}. Write such as bVI or II7.`);
  const semitones = itemAt(MAJOR_SCALE, steps) - flat.length;
  return {
    root: transpose(tonic, { steps, semitones }),
    quality: roman === roman.toUpperCase() ? 'major' : 'minor',
    ...(seventh === '7' ? { addition: 'seventh' } : {}),
  };
}

/** Chords are written with roots from Gb to F#, minor ones from Eb to D#. */
function isWritten({ root, quality }: Chord): boolean {
  const fifths = fifthsFromC(root);
  return quality === 'minor' ? fifths >= -3 && fifths <= 9 : fifths >= -6 && fifths <= 6;
}

/** A loop of numerals on each tonic of the mode that its home chord is in, where all its chords are written by musicians. */
function onTonics(keys: readonly Key[], numerals: string): readonly Loop[] {
  const mode = numerals.startsWith('i') ? 'minor' : 'major';
  return keys
    .filter((key) => key.mode === mode)
    .map(({ tonic }) => numerals.split(' ').map((numeral) => chordFrom(tonic, numeral)))
    .filter((loop) => loop.every(isWritten));
}

/** Loops of other homes, loops with a visitor, and rounds of one key beside them. */
export function visitorLoops(level: Level, form: Form): readonly Loop[] {
  const on = (texts: readonly string[]) => texts.flatMap((numerals) => onTonics(level.keys, numerals));
  switch (form) {
    case 'pair':
      return [...on(MODAL_PAIRS), ...on(VISITOR_PAIRS).flatMap(rotations)];
    case 'return':
      return [...on(VISITOR_RETURNS), ...roundLoops(level, form)];
    case 'back':
      return [
        ...on(MODAL_BACKS).map((loop): Loop => [...loop, ...loop.slice(1, 2)]),
        ...on(VISITOR_RETURNS).flatMap(thereAndBack),
      ];
    case 'round':
      return [...on(MODAL_ROUNDS), ...on(VISITOR_ROUNDS).flatMap(rotations), ...roundLoops(level, form)];
    case 'held':
      return roundLoops(level, form);
    case 'turn':
    case 'twelve':
      return [];
  }
}

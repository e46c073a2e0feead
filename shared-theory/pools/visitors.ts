import type { Chord } from '../chords.ts';
import { itemAt } from '../items.ts';
import { modeScale, type Key } from '../keys.ts';
import type { Form, Level } from '../level.ts';
import { fifthsFromC, transpose } from '../pitch.ts';
import { rotations, thereAndBack, type Loop } from './loops.ts';
import { roundLoops } from './rounds.ts';

// Loops that a level of other homes draws (common practice), by numerals counted from home on the major scale.

/** Two chords with another home than the first degree of their parent scale: modal vamps. */
const MODAL_PAIRS: readonly string[] = [
  'i IV',
  'i IV7',
  'i ii',
  'I bVII',
  'I v',
  'i bII',
  'I II',
  'I vii',
  'i bVII',
  'i bVI',
];
/** Of the same kind: home, another, home, a third. */
const MODAL_RETURNS: readonly string[] = [
  'i IV i bVII',
  'i IV i bIII',
  'i ii i IV',
  'i ii i bIII',
  'I bVII I IV',
  'I bVII I v',
  'I v I IV',
  'i bII i bIII',
  'I II I V',
  'I II I vi',
  'i bVII i bVI',
];
/** From home to two others and back the same way. */
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
  'i bIII bVII IV',
  'i ii bIII IV',
  'i bIII IV bVI',
  'I bVII IV v',
  'I v bVII IV',
  'I II vi V',
  'I II iii V',
  'i bVII bVI v',
  'i ii IV v',
  'i IV bVII v',
  'i IV bIII bVII',
  'i v IV bVII',
  'i bII bIII bVI',
  'i bIII bII bvii',
  'I bVII vi IV',
  'I IV bVII ii',
  'I IV v bVII',
  'I v ii IV',
  'I iii II V',
  'I vi II V',
];

/** Pairs with one chord borrowed from the minor of the same root or applied to another chord, from either of them. */
const VISITOR_PAIRS: readonly string[] = ['I iv', 'I bVI', 'I bIII', 'I III', 'I III7', 'I II7', 'i V', 'i V7'];
/** Home, a chord, home, another, one of them a visitor; and the same the other way round. */
const VISITOR_RETURNS: readonly string[] = [
  'I IV I iv',
  'I vi I iv',
  'I bIII I IV',
  'I bVI I V',
  'I II7 I V',
  'I III7 I vi',
  'I III7 I IV',
  'i V7 i iv',
  'i V i bVI',
  'i iv i V',
];
/** Two borrowed alike: their home is heard where it stands first. */
const RETURNS_FROM_HOME: readonly string[] = ['I bVI I bVII', 'I v I iv', 'I bVII I iv', 'I bIII I iv'];
/** Rounds with one visitor, from any of their chords. */
const VISITOR_ROUNDS: readonly string[] = [
  'I IV iv V',
  'I vi IV iv',
  'I V IV iv',
  'I iii IV iv',
  'I vi iv V',
  'I V bVII IV',
  'I bVII IV V',
  'I II7 IV V',
  'I vi II7 V',
  'I III7 vi IV',
  'I III7 IV V',
  'i bVII bVI V',
  'i bVII bVI V7',
  'i iv bVI V',
  'i iv V bVI',
  'i bIII iv V7',
];
/** Rounds with chords borrowed alike. */
const ROUNDS_FROM_HOME: readonly string[] = ['I bVII bVI V', 'I bIII IV iv', 'I bIII IV bVII', 'I bVI bIII bVII'];

/** Pairs that one key owns and its first chord rests in. */
const FAMILIAR_PAIRS: readonly string[] = ['I IV', 'I V', 'I vi', 'I ii', 'I iii', 'i iv', 'i v', 'i bIII'];

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

/** Loops of other homes and loops with a visitor. */
export function visitorLoops(level: Level, form: Form): readonly Loop[] {
  const on = (texts: readonly string[]) => texts.flatMap((numerals) => onTonics(level.keys, numerals));
  switch (form) {
    case 'pair':
      return [...on(MODAL_PAIRS), ...on(VISITOR_PAIRS).flatMap(rotations)];
    case 'return':
      return [...on(MODAL_RETURNS), ...on(VISITOR_RETURNS), ...on(RETURNS_FROM_HOME)];
    case 'back':
      return [
        ...on(MODAL_BACKS).map((loop): Loop => [...loop, ...loop.slice(1, 2)]),
        ...on(VISITOR_RETURNS).flatMap(thereAndBack),
      ];
    case 'round':
      return [...on(MODAL_ROUNDS), ...on(VISITOR_ROUNDS).flatMap(rotations), ...on(ROUNDS_FROM_HOME)];
    case 'held':
    case 'turn':
    case 'twelve':
      return [];
  }
}

/** Loops that one key owns, as the levels before know them: they stand beside those of other homes. */
export function familiarLoops(level: Level, form: Form): readonly Loop[] {
  if (form !== 'pair') return roundLoops(level, form);
  return FAMILIAR_PAIRS.flatMap((numerals) => onTonics(level.keys, numerals));
}

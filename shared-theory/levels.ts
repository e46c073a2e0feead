import type { Quality } from './chords.ts';
import type { Key } from './keys.ts';
import type { Kind } from './questions/question.ts';
import type { Distance } from './distance-line.ts';

/** Lowest and highest share, 0 to 1. */
export type ShareRange = readonly [number, number];

/** How the vamps of a level fall out in the long run: shares of all its vamps, or of its vamps of two chords where said. */
type Balance = {
  /** Vamps that hold one chord alone. */
  readonly alone: number;
  /** Of the vamps of two chords: the bass stays. Up and down share the rest evenly. */
  readonly stays: number;
  /** Of the vamps of two chords, by distance number; a distance not named goes free up to a quarter. */
  readonly distances: Readonly<Partial<Record<Distance, ShareRange>>>;
  /** Chords in a slot that are power chords; the others are major and minor by halves. */
  readonly power: number;
  /** Vamps that exactly one major key owns; null where it is left to fall as it may. */
  readonly oneKey: number | null;
};

export const LEVELS_THAT_STAND = [2, 3, 4, 5, 6, 7] as const;
type LevelNumber = (typeof LEVELS_THAT_STAND)[number];

/** A step of the ladder: what sounds and what is asked. */
export type Level = {
  readonly level: LevelNumber;
  readonly name: string;
  /** Keys whose triads are used. */
  readonly keys: readonly Key[];
  /** Groove ids; as many draws go to those in downstrokes alone as to those with ups. */
  readonly grooves: readonly string[];
  readonly barsPerChord: 1 | 2;
  /** Chords open with their groove's opening bar, where it has one, so that their quality is heard. */
  readonly opening: boolean;
  /** Barres go no higher than this fret. */
  readonly highestFret: number;
  /** The bass moves no further than so many semitones. */
  readonly largestMove: number;
  /** Qualities on the pad. */
  readonly qualities: readonly Quality[];
  /** Kinds asked, in the order of a round. */
  readonly questions: readonly Kind[];
  /** Tempos are drawn within the groove's range in steps of so many beats a minute. */
  readonly tempoStep: number;
  readonly balance: Balance;
};

const major = (...tonics: readonly string[]): Key[] => tonics.map((tonic) => ({ tonic, mode: 'major' }));
const minor = (...tonics: readonly string[]): Key[] => tonics.map((tonic) => ({ tonic, mode: 'minor' }));

/** Keys that lie easily on the guitar, and those that follow. */
const FIRST_RING = [...major('E', 'A', 'D', 'G', 'C'), ...minor('A', 'E', 'D')];
const SECOND_RING = [...major('F', 'Bb', 'B'), ...minor('B', 'F#', 'G', 'C')];

/** The levels of two chords, from hearing the bass move to naming every key that owns both. */
export const LEVELS: readonly Level[] = [
  {
    level: 2,
    name: 'The bass goes up, goes down or stays',
    keys: FIRST_RING,
    // First those whose bass stands alone where the chord changes.
    grooves: [
      'waltz',
      'foot-and-closed-hat',
      'quarter-downs',
      'foot-and-open-hat',
      'relaxed-alternate',
      'campfire-strum',
    ],
    barsPerChord: 2,
    opening: false,
    highestFret: 5,
    largestMove: 7,
    qualities: ['major', 'minor'],
    questions: ['direction', 'strokes'],
    tempoStep: 2,
    balance: {
      alone: 0,
      stays: 1 / 3,
      distances: { '4': [0.2, 0.2], '5': [0.2, 0.2], b3: [0.02, 1], '3': [0.02, 1], b6: [0.02, 1], '6': [0.02, 1] },
      power: 0,
      oneKey: null,
    },
  },
  {
    level: 3,
    name: 'Major, minor or no third',
    keys: FIRST_RING,
    grooves: ['quarter-downs', 'foot-and-closed-hat', 'relaxed-alternate', 'campfire-strum'],
    barsPerChord: 2,
    opening: true,
    highestFret: 5,
    largestMove: 7,
    qualities: ['major', 'minor', 'power'],
    questions: ['direction', 'quality', 'strokes'],
    tempoStep: 2,
    balance: {
      alone: 0.25,
      stays: 1 / 3,
      distances: { '4': [0.22, 0.24], '5': [0.22, 0.24] },
      power: 0.1,
      oneKey: null,
    },
  },
  {
    level: 4,
    name: 'The root on the low strings',
    keys: [...FIRST_RING, ...SECOND_RING],
    grooves: ['quarter-downs', 'waltz', 'foot-and-closed-hat', 'relaxed-alternate', 'foot-and-open-hat'],
    barsPerChord: 2,
    opening: true,
    highestFret: 5,
    largestMove: 7,
    qualities: ['major', 'minor'],
    questions: ['direction', 'quality', 'root', 'strokes'],
    tempoStep: 2,
    balance: { alone: 0.25, stays: 0, distances: { '4': [0.2, 0.22], '5': [0.2, 0.22] }, power: 0, oneKey: null },
  },
  {
    level: 5,
    name: 'From a major home chord, up or down, and how far',
    keys: FIRST_RING,
    grooves: ['quarter-downs', 'foot-and-closed-hat', 'relaxed-alternate', 'campfire-strum'],
    barsPerChord: 2,
    opening: true,
    highestFret: 5,
    largestMove: 7,
    qualities: ['major', 'minor'],
    questions: ['direction', 'root', 'strokes'],
    tempoStep: 2,
    balance: {
      alone: 0,
      stays: 0,
      distances: {
        '4': [0.18, 0.19],
        '5': [0.22, 0.23],
        b7: [0.14, 0.16],
        '2': [0.14, 0.16],
        '6': [0.12, 0.14],
        '3': [0.08, 0.12],
        '7': [0.04, 0.06],
      },
      power: 0,
      oneKey: null,
    },
  },
  {
    level: 6,
    name: 'Two chords of one key, from its major or minor home',
    keys: [...FIRST_RING, ...SECOND_RING],
    grooves: ['driving-eighths', 'relaxed-alternate'],
    barsPerChord: 2,
    opening: true,
    highestFret: 7,
    largestMove: 7,
    qualities: ['major', 'minor'],
    questions: ['direction', 'quality', 'root', 'keys', 'strokes'],
    tempoStep: 2,
    balance: { alone: 0, stays: 0, distances: { '4': [0.18, 0.22], '5': [0.18, 0.22] }, power: 0, oneKey: null },
  },
  {
    level: 7,
    name: 'Every key that owns both chords',
    keys: major('C', 'G', 'D', 'A', 'E', 'F', 'Bb'),
    grooves: [
      'quarter-downs',
      'driving-eighths',
      'foot-and-closed-hat',
      'waltz',
      'relaxed-alternate',
      'foot-and-open-hat',
      'campfire-strum',
    ],
    barsPerChord: 1,
    opening: true,
    highestFret: 7,
    largestMove: 9,
    qualities: ['major', 'minor'],
    questions: ['direction', 'quality', 'root', 'keys', 'strokes'],
    tempoStep: 2,
    balance: { alone: 0, stays: 0, distances: { '4': [0.16, 0.24], '5': [0.16, 0.24] }, power: 0, oneKey: 0.36 },
  },
];

/** The level of that number. Throws `RangeError` naming the levels there are. */
export function levelOf(number: number): Level {
  const level = LEVELS.find((known) => known.level === number);
  if (!level) throw new RangeError(`There is no level ${number}: levels go from 2 to 7.`);
  return level;
}

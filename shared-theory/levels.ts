import type { FormShares, Level } from './level.ts';
import type { Key } from './keys.ts';
import { KINDS, type Kind } from './questions/question.ts';

export { LEVELS_THAT_STAND, type Level } from './level.ts';

const major = (...tonics: readonly string[]): Key[] => tonics.map((tonic) => ({ tonic, mode: 'major' }));
const minor = (...tonics: readonly string[]): Key[] => tonics.map((tonic) => ({ tonic, mode: 'minor' }));

/** Keys that lie easily on the guitar, and those that follow. */
const FIRST_RING = [...major('E', 'A', 'D', 'G', 'C'), ...minor('A', 'E', 'D')];
const SECOND_RING = [...major('F', 'Bb', 'B'), ...minor('B', 'F#', 'G', 'C')];

/** Where chords are counted, one, two and three are about as usual. */
const EVEN: FormShares = { held: 0.31, pair: 0.36, return: 0.33 };
const TWO_CHORDS: FormShares = { pair: 1 };
const SOME_HELD: FormShares = { held: 0.25, pair: 0.75 };

/** From telling one chord from two to naming every key that owns them. */
export const LEVELS: readonly Level[] = [
  {
    level: 1,
    name: 'One chord or two',
    keys: FIRST_RING,
    grooves: ['quarter-downs', 'relaxed-alternate'],
    tempo: [60, 90],
    barsPerChord: 2,
    opening: true,
    openShapes: true,
    highestFret: 3,
    largestMove: 7,
    leadsOn: false,
    qualities: ['major', 'minor'],
    questions: ['strokes', 'count'],
    tempoStep: 2,
    balance: {
      forms: { held: 0.5, pair: 0.5 },
      counting: { forms: EVEN, stays: 0 },
      stays: 0,
      distances: {},
      power: 0,
      oneKey: {},
    },
  },
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
    tempo: null,
    barsPerChord: 2,
    opening: false,
    openShapes: false,
    highestFret: 5,
    largestMove: 7,
    leadsOn: false,
    qualities: ['major', 'minor'],
    questions: ['strokes', 'direction'],
    tempoStep: 2,
    balance: {
      forms: TWO_CHORDS,
      counting: { forms: { pair: 0.72, return: 0.28 }, stays: 1 / 2 },
      stays: 1 / 3,
      distances: { '4': [0.2, 0.2], '5': [0.2, 0.2], b3: [0.02, 1], '3': [0.02, 1], b6: [0.02, 1], '6': [0.02, 1] },
      power: 0,
      oneKey: {},
    },
  },
  {
    level: 3,
    name: 'Major, minor or no third',
    keys: FIRST_RING,
    grooves: ['quarter-downs', 'foot-and-closed-hat', 'relaxed-alternate', 'campfire-strum'],
    tempo: null,
    barsPerChord: 2,
    opening: true,
    openShapes: false,
    highestFret: 5,
    largestMove: 7,
    leadsOn: false,
    qualities: ['major', 'minor', 'power'],
    questions: ['strokes', 'direction', 'quality'],
    tempoStep: 2,
    balance: {
      forms: SOME_HELD,
      counting: { forms: EVEN, stays: 1 / 3 },
      stays: 1 / 3,
      distances: { '4': [0.22, 0.24], '5': [0.22, 0.24] },
      power: 0.1,
      oneKey: {},
    },
  },
  {
    level: 4,
    name: 'The root on the low strings',
    keys: [...FIRST_RING, ...SECOND_RING],
    grooves: ['quarter-downs', 'waltz', 'foot-and-closed-hat', 'relaxed-alternate', 'foot-and-open-hat'],
    tempo: null,
    barsPerChord: 2,
    opening: true,
    openShapes: false,
    highestFret: 5,
    largestMove: 7,
    leadsOn: false,
    qualities: ['major', 'minor'],
    questions: ['strokes', 'direction', 'quality', 'root'],
    tempoStep: 2,
    balance: {
      forms: SOME_HELD,
      counting: { forms: EVEN, stays: 0 },
      stays: 0,
      distances: { '4': [0.2, 0.22], '5': [0.2, 0.22] },
      power: 0,
      oneKey: {},
    },
  },
  {
    level: 5,
    name: 'From a major home chord, up or down, and how far',
    keys: FIRST_RING,
    grooves: ['quarter-downs', 'foot-and-closed-hat', 'relaxed-alternate', 'campfire-strum'],
    tempo: null,
    barsPerChord: 2,
    opening: true,
    openShapes: false,
    highestFret: 5,
    largestMove: 7,
    leadsOn: false,
    qualities: ['major', 'minor'],
    questions: ['strokes', 'direction', 'root', 'distance'],
    tempoStep: 2,
    balance: {
      forms: TWO_CHORDS,
      counting: { forms: EVEN, stays: 0 },
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
      oneKey: {},
    },
  },
  {
    level: 6,
    name: 'Two chords of one key, from its major or minor home',
    keys: [...FIRST_RING, ...SECOND_RING],
    grooves: ['driving-eighths', 'relaxed-alternate'],
    tempo: null,
    barsPerChord: 2,
    opening: true,
    openShapes: false,
    highestFret: 7,
    largestMove: 7,
    leadsOn: false,
    qualities: ['major', 'minor'],
    questions: ['strokes', 'count', 'direction', 'quality', 'root', 'distance', 'numeral', 'keys'],
    tempoStep: 2,
    balance: {
      forms: TWO_CHORDS,
      counting: { forms: { held: 0.26, pair: 0.37, return: 0.37 }, stays: 0 },
      stays: 0,
      distances: { '4': [0.18, 0.25], '5': [0.18, 0.25] },
      power: 0,
      oneKey: {},
    },
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
    tempo: null,
    barsPerChord: 1,
    opening: true,
    openShapes: false,
    highestFret: 7,
    largestMove: 9,
    leadsOn: false,
    qualities: ['major', 'minor'],
    questions: ['strokes', 'direction', 'quality', 'root', 'distance', 'numeral', 'one-or-several', 'keys', 'settler'],
    tempoStep: 2,
    balance: {
      forms: TWO_CHORDS,
      counting: { forms: { held: 0.27, pair: 0.37, return: 0.36 }, stays: 0 },
      stays: 0,
      distances: { '4': [0.16, 0.24], '5': [0.16, 0.24] },
      power: 0,
      oneKey: { pair: 0.5, return: 0.8 },
    },
  },
  {
    level: 8,
    name: 'The settler: who is still in',
    keys: major('C', 'G', 'D', 'A', 'E', 'F', 'Bb'),
    grooves: [
      'quarter-downs',
      'boom-chick',
      'foot-and-closed-hat',
      'waltz',
      'relaxed-alternate',
      'boom-chicka',
      'campfire-strum',
    ],
    tempo: null,
    barsPerChord: 1,
    opening: true,
    openShapes: false,
    highestFret: 7,
    largestMove: 9,
    leadsOn: false,
    qualities: ['major', 'minor'],
    questions: ['strokes', 'quality', 'root', 'keys', 'settler'],
    tempoStep: 2,
    balance: {
      forms: TWO_CHORDS,
      counting: { forms: { held: 0.27, pair: 0.37, return: 0.36 }, stays: 0 },
      stays: 0,
      distances: { '4': [0.16, 0.24], '5': [0.16, 0.24] },
      power: 0,
      // Mostly loops that are open: what a settler does is heard there. Some are not, so that "several" is never sure.
      oneKey: { pair: 0.2, return: 0.4 },
    },
  },
  {
    level: 9,
    name: 'Rounds of three and four chords',
    keys: [...FIRST_RING, ...SECOND_RING],
    grooves: [
      'quarter-downs',
      'boom-chick',
      'driving-eighths',
      'foot-and-closed-hat',
      'relaxed-alternate',
      'campfire-strum',
      'foot-and-open-hat',
      'boom-chicka',
    ],
    tempo: null,
    barsPerChord: 1,
    opening: true,
    openShapes: false,
    highestFret: 7,
    largestMove: 9,
    leadsOn: true,
    qualities: ['major', 'minor'],
    questions: ['strokes', 'count', 'order', 'distance', 'numeral', 'keys', 'home'],
    tempoStep: 2,
    balance: {
      forms: { pair: 0.1, return: 0.25, back: 0.25, round: 0.4 },
      counting: { forms: { held: 0.08, pair: 0.26, return: 0.19, back: 0.19, round: 0.28 }, stays: 0 },
      stays: 0,
      distances: {},
      power: 0,
      oneKey: {},
      owners: 0.12,
    },
  },
];

/** The level of that number. Throws `RangeError` naming the levels there are. */
export function levelOf(number: number): Level {
  const level = LEVELS.find((known) => known.level === number);
  if (!level) throw new RangeError(`There is no level ${number}: levels go from 1 to ${LEVELS.length}.`);
  return level;
}

/** Every kind that a round of a level can ask, in the order of a round: its own, and how many chords there are. */
export function kindsOfLevel(number: number): readonly Kind[] {
  const { questions } = levelOf(number);
  return KINDS.filter((kind) => kind === 'count' || questions.includes(kind));
}

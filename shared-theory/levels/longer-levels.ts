import type { Level } from '../level.ts';
import { FIRST_RING, major, minor, SECOND_RING } from './rings.ts';

/** Where sevenths are asked: triads, leaning and soft sevenths by thirds; the diminished one is never asked. */
const BY_THIRDS = {
  none: [0.28, 0.36],
  seventh: [0.27, 0.36],
  'major-seventh': [0.25, 0.36],
  'diminished-seventh': [0, 0],
} as const;
/** In longer rounds fewer chords are I or IV, which alone have a soft seventh. */
const IN_ROUNDS = { ...BY_THIRDS, none: [0.3, 0.39], 'major-seventh': [0.2, 0.36], seventh: [0.3, 0.38] } as const;
/** Major and minor by halves, with suspended chords and half-diminished ones as visitors. */
const WITH_VISITORS = {
  major: [0.4, 0.44],
  minor: [0.45, 0.5],
  diminished: [0, 0.06],
  'suspended-fourth': [0, 0.05],
  'suspended-second': [0, 0.05],
} as const;
const RATHER_MINOR_HOME = { major: [0.41, 0.43], minor: [0.57, 0.59] } as const;
const RATHER_MAJOR = { major: [0.5, 0.53], minor: [0.47, 0.5] } as const;
const ABOUT_EVEN = { major: [0.46, 0.53], minor: [0.47, 0.54] } as const;
const RATHER_MINOR = { major: [0.44, 0.47], minor: [0.53, 0.56] } as const;

/** Rounds of three and four chords, sevenths, basses off the root, other homes and visitors. */
export const LONGER_LEVELS: readonly Level[] = [
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
      'mute-and-open',
      'pushed-change',
      'sixteenth-ballad',
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
  {
    level: 10,
    name: 'Sevenths, leaning and soft',
    keys: [...major('C', 'G', 'F', 'Bb', 'D', 'A'), ...minor('A', 'E', 'D')],
    grooves: [
      'quarter-downs',
      'boom-chick',
      'foot-and-closed-hat',
      'low-string-shuffle',
      'relaxed-alternate',
      'campfire-strum',
      'boom-chicka',
      'four-to-the-bar-chop',
      'bossa-like',
    ],
    // A twelve-bar goes by in half a minute, and no tempo tells of one.
    tempo: [84, 140],
    barsPerChord: 1,
    opening: true,
    openShapes: false,
    highestFret: 7,
    // From the open E up to D, as in a twelve-bar on A.
    largestMove: 10,
    leadsOn: true,
    qualities: ['major', 'minor', 'suspended-fourth', 'diminished', 'suspended-second'],
    questions: ['strokes', 'quality', 'root', 'seventh', 'numeral', 'keys'],
    tempoStep: 2,
    balance: {
      forms: { pair: 0.3, turn: 0.2, return: 0.09, round: 0.36, twelve: 0.05 },
      counting: { forms: { held: 0.1, pair: 0.22, turn: 0.2, return: 0.1, round: 0.33, twelve: 0.05 }, stays: 0 },
      stays: 0,
      distances: {},
      power: 0,
      qualities: {
        held: WITH_VISITORS,
        pair: WITH_VISITORS,
        turn: WITH_VISITORS,
        return: WITH_VISITORS,
        round: WITH_VISITORS,
        twelve: { major: [1, 1] },
      },
      sevenths: { held: BY_THIRDS, pair: BY_THIRDS, turn: IN_ROUNDS, return: BY_THIRDS, round: IN_ROUNDS },
      oneKey: {},
      owners: 0.12,
    },
  },
  {
    level: 11,
    name: 'The bass off the root',
    keys: major('C', 'G', 'D', 'A', 'F'),
    // Bass and chord are heard apart.
    grooves: ['waltz', 'boom-chick', 'slow-twelve-eight', 'boom-chicka', 'foot-and-open-hat', 'campfire-strum'],
    tempo: null,
    barsPerChord: 1,
    opening: true,
    openShapes: false,
    highestFret: 7,
    largestMove: 9,
    leadsOn: true,
    qualities: ['major', 'minor'],
    questions: ['strokes', 'bass', 'quality', 'root', 'distance'],
    tempoStep: 2,
    balance: {
      forms: { pair: 0.4, return: 0.15, back: 0.1, round: 0.35 },
      counting: { forms: { held: 0.15, pair: 0.3, return: 0.15, back: 0.1, round: 0.3 }, stays: 0 },
      stays: 0,
      distances: {},
      power: 0,
      // A chord that lies well off its root is major: home, over its own, is rather minor.
      home: RATHER_MINOR_HOME,
      qualities: { pair: RATHER_MAJOR, return: ABOUT_EVEN, back: ABOUT_EVEN, round: ABOUT_EVEN },
      offRoot: { home: [0.08, 0.12], later: [0.6, 0.9], minor: 0.45 },
      oneKey: {},
    },
  },
  {
    level: 12,
    name: 'Other homes and visitors',
    keys: [...FIRST_RING, ...SECOND_RING],
    grooves: [
      'quarter-downs',
      'driving-eighths',
      'boom-chick',
      'foot-and-closed-hat',
      'relaxed-alternate',
      'campfire-strum',
      'low-string-shuffle',
      'boom-chicka',
      'three-three-two',
      'funk-sixteenths',
      'seven-in-two-two-three',
    ],
    tempo: null,
    barsPerChord: 1,
    opening: true,
    openShapes: false,
    highestFret: 7,
    largestMove: 9,
    leadsOn: true,
    qualities: ['major', 'minor'],
    questions: ['strokes', 'quality', 'distance', 'keys', 'home'],
    tempoStep: 2,
    balance: {
      forms: { pair: 0.4, return: 0.15, back: 0.15, round: 0.3 },
      counting: { forms: { held: 0.08, pair: 0.34, return: 0.14, back: 0.16, round: 0.28 }, stays: 0 },
      stays: 0,
      distances: {},
      power: 0,
      home: RATHER_MINOR_HOME,
      // Three and four chords with a visitor are rather major: what can be minor is so a little oftener.
      qualities: { pair: RATHER_MINOR, return: RATHER_MINOR, back: RATHER_MINOR, round: RATHER_MINOR },
      noKey: { pair: 0.42, return: 0.42, back: 0.42, round: 0.42 },
      familiar: { pair: 0.33, return: 0.33, back: 0.33, round: 0.33 },
      oneKey: {},
    },
  },
];

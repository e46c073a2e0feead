import { soundsAs, type Chord } from '../chords.ts';
import { itemAt } from '../items.ts';
import type { Key } from '../keys.ts';
import type { Form, Level } from '../level.ts';
import { transpose, type Interval } from '../pitch.ts';
import { chordOnDegree, dressed, everyChoice, type Dress } from './degree-chords.ts';
import { returnsTo, rotations, type Loop } from './loops.ts';
import { parentsOf } from './rounds.ts';

const BARE: Dress = {};
const SEVENTH: Dress = { addition: 'seventh' };
const SOFT: Dress = { addition: 'major-seventh' };

/** The sevenths that a major key gives its degrees (arithmetic): major sevenths to I and IV, minor ones to the others. */
const OWN_SEVENTH: readonly Dress[] = [SOFT, SEVENTH, SEVENTH, SOFT, SEVENTH, SEVENTH, SEVENTH];

/** What stands in for a triad on some degrees now and then (common practice): sixth and ninth of I and IV, V and I suspended. */
const VISITORS: Readonly<Record<number, readonly Dress[]>> = {
  1: [{ addition: 'sixth' }, { addition: 'ninth' }, { quality: 'suspended-second' }],
  4: [{ addition: 'sixth' }, { addition: 'ninth' }],
  5: [{ quality: 'suspended-fourth' }],
};

/** Pairs of degrees that stand well alone (common practice); each is played from either. */
const PAIRS: readonly (readonly [number, number])[] = [
  [1, 4],
  [1, 2],
  [1, 6],
  [1, 5],
  [1, 3],
  [2, 5],
  [2, 6],
  [3, 6],
  [4, 5],
  [4, 6],
  [5, 6],
  [3, 4],
];
/** Three degrees of which the last one stays (common practice); each round is played from any of its chords. */
const TURNS: readonly (readonly number[])[] = [
  [2, 5, 1],
  [4, 5, 1],
  [3, 6, 2],
  [1, 2, 5],
  [1, 4, 2],
  [1, 6, 4],
  [1, 3, 4],
];
const ROUNDS: readonly (readonly number[])[] = [
  [1, 6, 2, 5],
  [3, 6, 2, 5],
  [1, 4, 2, 5],
  [1, 3, 4, 5],
  [6, 2, 5, 1],
  [4, 3, 2, 1],
  [1, 6, 4, 2],
  [7, 3, 6, 4],
];

/** A degree of a key in every dress. Its chords are made once, and what is worked out of one holds for all its loops. */
type Dressed = {
  /** Bare, and with the seventh that its key gives it; the diminished one always has its seventh. */
  readonly usual: readonly Chord[];
  readonly seventh: Chord;
  readonly visitors: readonly Chord[];
};

/** The seven degrees of a key. */
function wardrobe(key: Key): readonly Dressed[] {
  return OWN_SEVENTH.map((own, index) => {
    const degree = index + 1;
    const bare = chordOnDegree(key, String(degree));
    const seventh = dressed(bare, own);
    return {
      usual: degree === 7 ? [seventh] : [dressed(bare, BARE), seventh],
      seventh,
      visitors: (VISITORS[degree] ?? []).map((visitor) => dressed(bare, visitor)),
    };
  });
}

/** A loop by degrees in every dress, with one visitor at most. */
function inEveryDress(chart: readonly Dressed[], degrees: readonly number[]): readonly Loop[] {
  const worn = degrees.map((degree) => itemAt(chart, degree - 1));
  const withVisitor = worn.flatMap(({ visitors }, place) =>
    visitors.map((visitor) => worn.map(({ seventh }, other) => [other === place ? visitor : seventh])),
  );
  return [worn.map(({ usual }) => usual), ...withVisitor].flatMap((choices) => everyChoice(choices));
}

const UP_TO_FOUR: Interval = { steps: 3, semitones: 5 };
const UP_TO_FIVE: Interval = { steps: 4, semitones: 7 };

/** Twelve bars of three dominant sevenths, in the usual ways (common practice). */
function twelveBars({ tonic }: Key): readonly Loop[] {
  const seventh = (root: string): Chord => ({ root, quality: 'major', addition: 'seventh' });
  const one = seventh(tonic);
  const four = seventh(transpose(tonic, UP_TO_FOUR));
  const five = seventh(transpose(tonic, UP_TO_FIVE));
  return [
    [one, four, one, five, four, one],
    [one, four, one, five, four, one, five],
    [one, four, one, four, one, five, four, one],
  ];
}

/** One chord of each degree in each dress. */
function alone(key: Key): readonly Loop[] {
  const chart = wardrobe(key);
  return chart.flatMap((_, index) => inEveryDress(chart, [index + 1]));
}

/** Loops with sevenths and without, of the major keys with the notes of a level's keys; twelve-bars on its own major tonics. */
export function seventhLoops(level: Level, form: Form): readonly Loop[] {
  const parents = parentsOf(level);
  const dressedRounds = (rounds: readonly (readonly number[])[]) =>
    parents
      .map(wardrobe)
      .flatMap((chart) => rounds.flatMap((degrees) => inEveryDress(chart, degrees).flatMap(rotations)));
  switch (form) {
    case 'held':
      return parents.flatMap(alone);
    case 'pair':
      return dressedRounds(PAIRS);
    case 'turn':
      return dressedRounds(TURNS);
    case 'return':
      return parents.flatMap(returnsOf);
    case 'round':
      return dressedRounds(ROUNDS);
    case 'twelve':
      return level.keys.filter(({ mode }) => mode === 'major').flatMap(twelveBars);
    case 'back':
      return [];
  }
}

/** I between two others of its key, all with their sevenths or without. */
function returnsOf(key: Key): readonly Loop[] {
  return [BARE, null].flatMap((dress) => {
    const chart = [1, 2, 3, 4, 5, 6].map((degree) =>
      dressed(chordOnDegree(key, String(degree)), dress ?? itemAt(OWN_SEVENTH, degree - 1)),
    );
    return chart.flatMap((home) =>
      returnsTo(
        home,
        chart.filter((other) => !soundsAs(other, home)),
      ),
    );
  });
}

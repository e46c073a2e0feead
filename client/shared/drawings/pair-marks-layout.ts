import type { BarCount } from '../../../shared-theory/rhythm/rhythm-truth.ts';

/** One stroke of a drawn bar: where it stands, 0 its beginning to 1 its end, and how heavy it is. */
export type DrawnStroke = {
  readonly at: number;
  readonly weight: 1 | 2;
  /** The chord before the change. */
  readonly hollow?: true;
};

/** A bar by which one choice is told from the other: strokes, and what else stands in it. */
export type DrawnBar = {
  readonly strokes: readonly DrawnStroke[];
  /** Beams over strokes that belong together, by first and last. */
  readonly beams?: readonly (readonly [number, number])[];
  /** A bar line inside, 0 to 1. */
  readonly line?: number;
  /** The hand's way, down on true: one entry a stroke. */
  readonly hand?: readonly boolean[];
};

const even = (count: number, heavy: readonly number[], first = 0): DrawnStroke[] =>
  Array.from({ length: count }, (_, index) => ({
    at: (index + 0.5) / count,
    weight: heavy.includes(index + first) ? 2 : 1,
  }));

/** Strokes of which the second of each two comes late. */
const swung = (count: number): DrawnStroke[] =>
  even(count, []).map(({ at }, index) => ({
    at: index % 2 === 0 ? at : at + 0.34 / count,
    weight: index % 2 === 0 ? 2 : 1,
  }));

const threes = (size: number): readonly (readonly [number, number])[] =>
  Array.from({ length: 6 / size }, (_, group) => [group * size, (group + 1) * size - 1] as const);

/** The chord changes at a stroke. */
const changed = (at: number): DrawnStroke[] =>
  even(8, [at]).map((stroke, index) => (index < at ? { ...stroke, hollow: true } : stroke));

/** Bars by kind and choice. */
export const PAIR_BARS = {
  threes: {
    'two-threes': { strokes: even(6, [0, 3]), beams: threes(3) },
    'three-twos': { strokes: even(6, [0, 2, 4]), beams: threes(2) },
  },
  'half-time': {
    'full-time': { strokes: even(4, [1, 3]) },
    'half-time': { strokes: even(4, [2]) },
  },
  swing: {
    straight: {
      strokes: even(8, [0, 2, 4, 6]),
      beams: [
        [0, 1],
        [2, 3],
        [4, 5],
        [6, 7],
      ],
    },
    swung: {
      strokes: swung(8),
      beams: [
        [0, 1],
        [2, 3],
        [4, 5],
        [6, 7],
      ],
    },
  },
  drive: {
    driving: { strokes: even(8, [0, 1, 2, 3, 4, 5, 6, 7]) },
    relaxed: { strokes: even(8, [2, 6]).filter((_, index) => index !== 1 && index !== 4) },
  },
  pendulum: {
    keeps: { strokes: even(8, []), hand: [true, false, true, false, true, false, true, false] },
    breaks: { strokes: even(8, []), hand: [true, false, true, true, true, false, true, true] },
  },
  'change-place': {
    'on-one': { strokes: changed(4), line: 0.5 },
    pushed: { strokes: changed(3), line: 0.5, beams: [[3, 4]] },
  },
} as const satisfies Readonly<Record<string, Readonly<Record<string, DrawnBar>>>>;

/** Kinds of two choices that are drawn as bars. */
export type PairKind = keyof typeof PAIR_BARS;

/** A bar that is counted so: its numbers, one heavy. */
const countedBar = (count: BarCount): DrawnBar => ({ strokes: even(count, [0]) });

/** The bar of a choice: `two-threes`, or a number for `bar-count`. Throws RangeError for what is no choice of the kind. */
export function pairBar(kind: string, choice: string | number): DrawnBar {
  if (kind === 'bar-count') return countedBar(choice as BarCount);
  const bars: Readonly<Record<string, DrawnBar>> | undefined = PAIR_BARS[kind as PairKind];
  const bar = bars?.[choice];
  if (!bar) throw new RangeError(`No bar is drawn for ${choice} of ${kind}.`);
  return bar;
}

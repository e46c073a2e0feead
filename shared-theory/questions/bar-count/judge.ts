import type { BarCount } from '../../rhythm/rhythm-truth.ts';
import { firstShown, needed, notRight, RIGHT } from '../marks.ts';
import type { AskedOf, Judge } from '../question.ts';
import { BAR_COUNTS } from './ask.ts';

const UNEVEN: BarCount = 7;

/** How many numbers a bar has: every lawful count is right, and a bar's twos are no threes. */
export const barCountJudge: Judge<'bar-count'> = {
  kind: 'bar-count',
  truth: (context) => lawful(context)?.[0] ?? null,
  mark: (answer, context) => {
    const counts = needed(lawful(context), 'bar-count', context.target);
    if (answer === counts[0]) return RIGHT;
    if (counts.includes(answer)) return { ...RIGHT, note: 'other-lawful-count' };
    // Sevens are neither twos nor threes, and no even part of anything else.
    const isEven = !counts.includes(UNEVEN);
    const some = (holds: (count: BarCount) => boolean) => isEven && counts.some(holds);
    return notRight(
      0,
      firstShown([
        ['counts-the-bar-twice', some((count) => answer === 2 * count)],
        ['swaps-threes-and-twos', some((count) => isSwap(count, answer))],
        ['counts-half-the-bar', some((count) => 2 * answer === count)],
      ]),
    );
  },
  also: (context) => lawful(context)?.slice(1) ?? [],
  heard: String,
  chance: (context) => (lawful(context)?.length ?? 0) / BAR_COUNTS.length,
};

function lawful({ truth: { rhythm } }: AskedOf): readonly BarCount[] | null {
  return rhythm?.barCounts ?? null;
}

/** Bars that last alike, one counted by twos, one by threes. */
const SWAPPED: readonly (readonly [BarCount, BarCount])[] = [
  [2, 3],
  [4, 3],
  [4, 6],
];

function isSwap(one: BarCount, other: BarCount): boolean {
  return SWAPPED.some(([twos, threes]) => (one === twos && other === threes) || (one === threes && other === twos));
}

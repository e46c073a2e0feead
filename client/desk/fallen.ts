import type { DeskView, WireSpread } from '../../server/protocol/views.ts';

/** Share of hands that were right: below `FEW` play it again, above `MOST` show it, between them let the neighbours talk. */
export const FEW = 0.3;
export const MOST = 0.7;

type Fallen = Pick<DeskView, 'spread' | 'truth' | 'letStand' | 'students'>;

/** Whether an answer counts as right: it is, it says the same, or the teacher let it stand. */
export function countsAsRight({ truth, letStand }: Pick<Fallen, 'truth' | 'letStand'>, key: string): boolean {
  return truth !== null && (truth.key === key || (truth.also ?? []).includes(key) || letStand.includes(key));
}

/** Hands whose answer counts as right; null before the close. */
export function rightHands({ spread, truth, letStand, students }: Fallen): number | null {
  if (!spread || !truth) return null;
  // Taps are not told apart by what they say: each hand has a mark.
  if (spread.taps) return students.filter(({ mark, instead }) => instead === undefined && mark?.exact).length;
  return spread.counts.reduce(
    (sum, { key, count }) => (countsAsRight({ truth, letStand }, key) ? sum + count : sum),
    0,
  );
}

/** Hands that were in, not sure among them. */
export function handsIn({ counts, notSure, taps }: WireSpread): number {
  if (taps) return taps.of + notSure;
  return counts.reduce((sum, { count }) => sum + count, notSure);
}

/** Share of the hands that were in and right; null where none was in. */
export function shareRight(fallen: Fallen): number | null {
  const right = rightHands(fallen);
  const hands = fallen.spread ? handsIn(fallen.spread) : 0;
  return hands === 0 || right === null ? null : right / hands;
}

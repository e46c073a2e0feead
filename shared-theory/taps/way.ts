import type { Taps } from './taps.ts';

/** A tap is at home at most so many of the taps before it further on, and at most so many beats. */
const FURTHEST_TAP = 4;
const FURTHEST_BEAT = 4;

/**
 * What is rare costs as much as its surprise: twice the logarithm of one in so many taps, or of first taps. How rare each is was set by
 * hand, and holds against simulated hands.
 */
export const surprise = (oneIn: number) => 2 * Math.log(oneIn);
export const MISSED = surprise(60);
const MISSED_AGAIN = surprise(5);
export const DOUBLED = surprise(50);
const NOT_SETTLED = surprise(5);
export const BROKEN = surprise(300);

/** How one tap goes on from another one: over how many beats, or null where it begins anew. */
type Step = { readonly from: number; readonly to: number; readonly beats: number | null };

/** The most likely way through all taps. */
export type Way = {
  readonly first: number;
  readonly steps: readonly Step[];
};

/** The way from tap to tap that is least surprising, for a period and how far single taps stray around it. */
export function likeliestWay(taps: Taps, period: number, jitter: number, care: number): Way {
  const variance = 2 * jitter ** 2;
  // A tap that stands for nothing could lie anywhere within a beat.
  const anywhere = Math.max(0, 2 * Math.log(period / Math.sqrt(2 * Math.PI * variance)));
  const costs: number[] = [];
  // Where each tap is come to from, and over how many beats: a room's taps are worked out while it waits, so nothing is made here.
  const froms: number[] = [];
  const overs: (number | null)[] = [];
  for (let to = 0; to < taps.length; to += 1) {
    const tap = taps[to] ?? 0;
    let best = to * (NOT_SETTLED * care + anywhere);
    let [cameFrom, over]: [number, number | null] = [-1, null];
    for (let from = to - 1; from >= Math.max(0, to - FURTHEST_TAP); from -= 1) {
      const gap = tap - (taps[from] ?? 0);
      const before = (costs[from] ?? 0) + (to - from - 1) * (DOUBLED * care + anywhere);
      const anew = before + BROKEN * care + anywhere;
      // One beat more or fewer: a tap that is very late, and none missed.
      const nearest = Math.floor(gap / period);
      for (let beats = Math.max(1, nearest); beats <= Math.min(FURTHEST_BEAT, nearest + 1); beats += 1) {
        const missed = beats === 1 ? 0 : (MISSED + (beats - 2) * MISSED_AGAIN) * care;
        const on = before + missed + (gap - beats * period) ** 2 / variance;
        if (on < best) [best, cameFrom, over] = [on, from, beats];
      }
      if (gap > period / 2 && anew < best) [best, cameFrom, over] = [anew, from, null];
    }
    costs.push(best);
    froms.push(cameFrom);
    overs.push(over);
  }
  const steps: Step[] = [];
  let first = lastStanding(costs, DOUBLED * care + anywhere);
  for (let from = froms[first] ?? -1; from >= 0; from = froms[first] ?? -1) {
    steps.push({ from, to: first, beats: overs[first] ?? null });
    first = from;
  }
  return { first, steps: steps.toReversed() };
}

/** The last tap that stands for something: after it each costs so much. */
function lastStanding(costs: readonly number[], extra: number): number {
  const total = (last: number) => (costs[last] ?? 0) + (costs.length - 1 - last) * extra;
  let at = costs.length - 1;
  for (let last = at - 1; last >= Math.max(0, costs.length - FURTHEST_TAP); last -= 1)
    if (total(last) < total(at)) at = last;
  return at;
}

import type { Taps } from './taps.ts';
import { mean, sum } from './statistics.ts';

/** Eighths of the groups of a bar of seven. */
const GROUPS = [2, 2, 3] as const;
const BAR = 7;

/** Taps of three bars: fewer could be anything. */
const LEAST_TAPS = 10;

/** Single taps stray from the groups by no more than this part of an eighth (standard deviation). */
const MOST_STRAY = 0.2;

/** By how much nearer to the groups than to even beats they must lie. */
const CLEARLY = 2;

/**
 * Taps on the two, two and three eighths of a bar of seven, whichever of them came first, as they would lie if the third group were no
 * longer than the others: even ones, on pairs of eighths. null where they do not clearly lie so. Every group has its tap.
 */
export function evenedSevens(taps: Taps): Taps | null {
  if (taps.length < LEAST_TAPS) return null;
  const even = lineThrough(
    taps,
    taps.map((_, tap) => tap),
  );
  for (const first of GROUPS.keys()) {
    const eighths = taps.map((_, tap) => eighthsTo(tap + first) - eighthsTo(first));
    const { step: eighth, stray } = lineThrough(taps, eighths);
    if (stray <= MOST_STRAY * eighth && CLEARLY * stray <= even.stray) {
      return taps.map((each, tap) => each - eighth * ((eighths[tap] ?? 0) - 2 * tap));
    }
  }
  return null;
}

/** The line by least squares through taps over places: milliseconds a place, and how far single taps stray from it (standard deviation). */
function lineThrough(taps: Taps, places: readonly number[]): { readonly step: number; readonly stray: number } {
  const [middle, time] = [mean(places), mean(taps)];
  const squares = sum(places.map((place) => (place - middle) ** 2));
  const step = sum(places.map((place, tap) => (place - middle) * ((taps[tap] ?? 0) - time))) / squares;
  const strays = places.map((place, tap) => (taps[tap] ?? 0) - time - step * (place - middle));
  return { step, stray: Math.sqrt(sum(strays.map((each) => each ** 2)) / (taps.length - 2)) };
}

/** Eighths from the beginning of a bar to one of its groups, or of the bars behind it. */
function eighthsTo(group: number): number {
  const inBar = GROUPS.slice(0, group % GROUPS.length);
  return BAR * Math.floor(group / GROUPS.length) + inBar.reduce<number>((all, eighths) => all + eighths, 0);
}

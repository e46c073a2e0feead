/**
 * Taps of one hand in milliseconds of the phone's own steady clock, from the first tap on: 0 first, rising, to a tenth of a
 * millisecond. When the first one fell is not known to anyone: no delay of network, speaker or glass can change what they say.
 */
export type Taps = readonly number[];

/** Taps through a silence. `silentFrom`: index of the first tap after the phone was told of the silence, for drawings alone; null where it was not told. */
export type DropOutTaps = { readonly taps: Taps; readonly silentFrom: number | null };

/** Least and most taps that an answer has. */
export const LEAST_TAPS = 8;
export const MOST_TAPS = 64;

/** Longest time from the first tap to the last, in milliseconds. */
export const LONGEST_TAPPING = 120_000;

/** Reads taps that a phone sent; null where they are none: too few, too many, not from 0, not rising or over too long a time. */
export function readTaps(value: unknown): Taps | null {
  if (!Array.isArray(value) || value.length < LEAST_TAPS || value.length > MOST_TAPS) return null;
  const taps: number[] = [];
  for (const tap of value as readonly unknown[]) {
    if (typeof tap !== 'number' || !(tap >= 0 && tap <= LONGEST_TAPPING)) return null;
    // Taps that are one to a tenth of a millisecond do not rise, also when they are read again.
    const told = Math.round(tap * 10) / 10 + 0;
    if (taps.length === 0 ? tap !== 0 : told <= (taps.at(-1) ?? 0)) return null;
    taps.push(told);
  }
  return taps;
}

/** Intervals further from the middle one than this share of it are no beats: a tap was missed or doubled. */
const NO_BEAT = 0.25;

/** Beats a minute by the intervals near the middle one, rounded: enough to count like answers by, and to tell a hand its own. */
export function tappedTempo(taps: Taps): number {
  const intervals = taps.slice(1).map((tap, index) => tap - (taps[index] ?? 0));
  // Sorting in place: old phones know no other way.
  // oxlint-disable-next-line unicorn/no-array-sort
  const sorted = intervals.sort((one, other) => one - other);
  const middle = sorted[sorted.length >> 1] ?? 60_000;
  const near = sorted.filter((interval) => Math.abs(interval - middle) <= middle * NO_BEAT);
  const mean = near.reduce((sum, interval) => sum + interval, 0) / near.length;
  return Math.round(60_000 / (near.length === 0 ? middle : mean));
}

import { LONGEST_TAPPING, type Taps } from './taps.ts';
import { median, quantile, sum } from './statistics.ts';
import { bendOf, lineOf, periodOf, straysBy } from './fit.ts';
import { BROKEN, DOUBLED, likeliestWay, MISSED, surprise, type Way } from './way.ts';

/** A tap that stands for a beat: its time in milliseconds, the number of its beat, and the part of the taps that it belongs to. */
export type Beat = {
  readonly time: number;
  readonly beat: number;
  /** A new part begins where the hand paused or stumbled: whether it came back in time is not known. */
  readonly part: number;
};

/** Taps laid on beats, and what had to be explained away. */
export type Beats = {
  readonly beats: readonly Beat[];
  /** Milliseconds from beat to beat. */
  readonly period: number;
  /** Beats without a tap. */
  readonly missed: number;
  /** Taps that stand for no beat: bounces of the finger, and taps before the hand had settled. */
  readonly doubled: number;
  /** Pauses and stumbles. */
  readonly breaks: number;
};

/** No hand taps in time outside of these, in milliseconds a beat. */
const PERIODS = [80, 6000] as const;

/** A beat is sought at these shares of all intervals: a few bad ones do not move all. */
const SHARES = [0.5, 0.3, 0.1, 0.7, 0.9];

/** What has to be explained away is believed as readily as it is rare, and far less readily: the taps decide between both. */
const CARES = [1, 3];

/** Guesses that differ by no more than this part are one. */
const SAME_GUESS = 0.04;

/** A tempo that changes evenly. */
const BENT = surprise(30);

/**
 * How far single taps stray, in milliseconds, before anything is known of the hand (30 of taps to clicks every 600, by the tapping experiment at mazurka.org.uk), as so many
 * taps would say; and in parts of the beat never more than so much.
 */
const USUAL_JITTER = 25;
const USUAL_WEIGHS = 4;
const MOST_JITTER = 0.2;

/** First taps stray where they are so many standard errors from the line of what follows, at least so many taps. */
const UNSETTLED = 4.2;
const LEAST_SETTLED = 6;

/** Most often that beats and period are worked out from one another. */
const ROUNDS = 4;

/**
 * Lays taps on whole beats, so that missed taps, bounces, the first taps before a hand has settled, pauses and stumbles are explained by
 * what is least surprising. Nothing hangs on when the first one fell. null where they cannot be taps in time: not rising, over too long
 * or too short a time, too few.
 */
export function layOnBeats(taps: Taps): Beats | null {
  const length = (taps.at(-1) ?? 0) - (taps[0] ?? 0);
  const rising = taps.every((tap, index) => Number.isFinite(tap) && (index === 0 || tap >= (taps[index - 1] ?? 0)));
  if (!rising || taps.length < 3 || !(length > 0 && length <= LONGEST_TAPPING)) return null;
  const intervals = taps.slice(1).map((tap, index) => tap - (taps[index] ?? 0));
  const tried: Tried[] = [];
  for (const share of SHARES) {
    const guess = quantile(intervals, share);
    // Guesses this near to a beat that was found lead there again.
    if (tried.some(({ period }) => Math.abs(guess / period - 1) < SAME_GUESS)) continue;
    for (const care of CARES) {
      const laid = laidFrom(taps, intervals, { period: guess, care }, tried);
      if (laid === null) break;
      if (!tried.includes(laid)) tried.push(laid);
      // Where nothing had to be explained away, more care finds nothing else.
      if (laid.missed + laid.doubled + laid.breaks === 0) break;
    }
  }
  const best = tried
    .map((beats) => ({ beats, cost: surpriseOf(beats) }))
    .toSorted((one, other) => one.cost - other.cost)[0];
  return best === undefined ? null : settled(best.beats);
}

/** Leaves out the first one or two taps where they stray from the line of all that follow: the hand had not settled. */
function settled({ beats, period, missed, doubled, breaks }: Beats): Beats {
  for (const first of [2, 1]) {
    const after = beats.slice(first);
    const part = after.filter((beat) => beat.part === after[0]?.part);
    const last = beats[first - 1];
    const line = part.length < LEAST_SETTLED ? null : lineOf(part);
    if (last === undefined || line === null || last.part !== part[0]?.part) continue;
    if (straysBy(last, part, amongOthers(line.jitter, line.free)) < UNSETTLED) continue;
    const whole = lineOf(after);
    return { beats: after, period: whole?.period ?? period, missed, doubled: doubled + first, breaks };
  }
  return { beats, period, missed, doubled, breaks };
}

/** Beats, and with how much care they were sought. */
type Tried = Beats & { readonly care: number };

/**
 * The beats that a first guess at the period leads to; null where it leads nowhere. Where it comes upon the beats of one that was tried
 * with the same care, it is that one: most guesses meet, and a room of hands is worked out while it waits.
 */
function laidFrom(
  taps: Taps,
  intervals: readonly number[],
  { period: guess, care }: { readonly period: number; readonly care: number },
  tried: readonly Tried[],
): Tried | null {
  let period = guess;
  let jitter = firstJitter(intervals, period);
  let laid: Tried | null = null;
  for (let round = 0; round < ROUNDS; round += 1) {
    if (!(period >= PERIODS[0] && period <= PERIODS[1])) return null;
    const way = likeliestWay(taps, period, Math.min(MOST_JITTER * period, jitter), care);
    const beats = beatsOn(taps, way, period);
    const fitted = periodOf(beats);
    if (fitted === null) return null;
    const same = tried.find((known) => known.period === fitted && known.care === care);
    if (same !== undefined) return same;
    laid = {
      care,
      beats,
      period: fitted,
      missed: sum(way.steps.map((step) => (step.beats ?? 1) - 1)),
      doubled: taps.length - beats.length,
      breaks: way.steps.filter((step) => step.beats === null).length,
    };
    jitter = jitterOn(taps, way, fitted);
    if (round > 0 && Math.abs(fitted / period - 1) < 1e-4) break;
    period = fitted;
  }
  return laid;
}

/**
 * How surprising it is that a hand tapped so, twice the negative logarithm of the likelihood: how far the taps stray from an even or an
 * evenly bending row of beats, and all that had to be explained away.
 */
function surpriseOf({ beats, period, missed, doubled, breaks }: Beats): number {
  const anywhere = Math.log(period ** 2 / (2 * Math.PI));
  const even = straying(lineOf(beats)?.strays ?? [], breaks, period);
  const bent = straying(bendOf(beats)?.strays ?? [], breaks, period) + BENT;
  const explained = missed * MISSED + doubled * (DOUBLED + anywhere) + breaks * (BROKEN + anywhere);
  return Math.min(even, bent) + explained;
}

function straying(strays: readonly number[], breaks: number, period: number): number {
  if (strays.length === 0) return Infinity;
  const squares = sum(strays.map((stray) => stray ** 2)) + USUAL_WEIGHS * USUAL_JITTER ** 2;
  const said = strays.length - breaks - 1 + USUAL_WEIGHS;
  const variance = Math.min(squares / said, (MOST_JITTER * period) ** 2);
  return said * Math.log(variance) + squares / variance;
}

/** How far single taps stray, from the middle one of all intervals around their whole numbers of beats. */
function firstJitter(intervals: readonly number[], period: number): number {
  const strays = intervals.map((interval) => Math.abs(interval - Math.max(1, Math.round(interval / period)) * period));
  // The middle of normal strays is 0.6745 of their standard deviation; an interval strays at both its ends.
  return amongOthers(median(strays) / 0.6745 / Math.SQRT2, intervals.length);
}

/** Few taps say little of how far a hand strays: others count as well. */
function amongOthers(jitter: number, intervals: number): number {
  return Math.sqrt((intervals * jitter ** 2 + USUAL_WEIGHS * USUAL_JITTER ** 2) / (intervals + USUAL_WEIGHS));
}

function jitterOn(taps: Taps, { steps }: Way, period: number): number {
  let squares = 0;
  let counted = 0;
  for (const { from, to, beats } of steps) {
    if (beats === null) continue;
    squares += ((taps[to] ?? 0) - (taps[from] ?? 0) - beats * period) ** 2;
    counted += 1;
  }
  const free = Math.max(1, counted - 1);
  return amongOthers(Math.sqrt(squares / free / 2), free);
}

function beatsOn(taps: Taps, { first, steps }: Way, period: number): readonly Beat[] {
  const beats: Beat[] = [{ time: taps[first] ?? 0, beat: 0, part: 0 }];
  for (const { from, to, beats: over } of steps) {
    const last = beats.at(-1) ?? { beat: 0, part: 0 };
    const gap = (taps[to] ?? 0) - (taps[from] ?? 0);
    const beat = last.beat + (over ?? Math.max(1, Math.round(gap / period)));
    beats.push({ time: taps[to] ?? 0, beat, part: last.part + (over === null ? 1 : 0) });
  }
  return beats;
}

import { layOnBeats, type Beat, type Beats } from './beats.ts';
import { bendOf, isSure, lineOf } from './fit.ts';
import { evenedSevens } from './sevens.ts';
import type { Taps } from './taps.ts';
import { deviation, mean } from './statistics.ts';

/** A change of tempo, in percent; above 0 is faster. */
export type TempoChange = {
  readonly percent: number;
  /** Standard error, in percent. */
  readonly error: number;
  /** Whether it is there beyond doubt, at one in a hundred. */
  readonly sure: boolean;
};

/** What a row of taps says by itself. */
export type TapAnalysis = {
  /** Milliseconds from beat to beat. */
  readonly period: number;
  /** Beats a minute. */
  readonly tempo: number;
  /** How well the taps say it, 0 to 1: by the standard error of the period, and by what had to be explained away. */
  readonly confidence: number;
  /** Standard deviation of the intervals from one beat to the next, as a part of their mean. */
  readonly unevenness: number;
  /** How much faster it is after eight beats; null where too few taps tell how sure that is. */
  readonly drift: TempoChange | null;
  /** Taps that stand for a beat. */
  readonly kept: number;
  /** Beats without a tap. */
  readonly missed: number;
  /** Taps that stand for none: bounces, and the first ones of a hand that had not settled. */
  readonly doubled: number;
  /** The taps that stand for beats, each with its beat. */
  readonly beats: readonly Beat[];
  /** Tapped on the groups of sevens: two, two and three eighths. Period, tempo and beats are those of pairs, the third eighth left out. */
  readonly sevens?: true;
};

/** Fewer taps in time than these say nothing. */
const LEAST_KEPT = 6;

/** A standard error of the period above this part of it leaves open whether the tempo was within 4 percent. */
const MOST_ERROR = 0.04;
/** The standard error at which confidence is half. */
const HALF_SURE = 0.02;

/** More may not be explained away, as a part of the taps that stand. */
const MOST_EXPLAINED = 0.5;

/** Over how many beats a drift is named. */
const DRIFT_BEATS = 8;

/** Unevenness of a row that might be groups of two and three: that of these alone is 0.22. */
const FAR_FROM_EVEN = 0.12;

const known = new WeakMap<Taps, TapAnalysis | null>();

/**
 * What a row of taps says, whenever the first one fell: missed taps, bounces, first taps before the hand had settled and pauses are taken
 * out, and the tempo is that of the least-squares line through the rest. The groups of sevens are read as pairs. null where it cannot be read. Each row is worked out once.
 */
export function analyseTaps(taps: Taps): TapAnalysis | null {
  const last = known.get(taps);
  if (last !== undefined) return last;
  const plain = read(taps);
  // Uneven to anybody's eye, and even to who taps the groups of a seven.
  const sevens = plain === null || plain.unevenness > FAR_FROM_EVEN ? evenedSevens(taps) : null;
  const groups = sevens && read(sevens);
  const result = groups ? { ...groups, sevens: true as const } : plain;
  known.set(taps, result);
  return result;
}

function read(taps: Taps): TapAnalysis | null {
  const laid = layOnBeats(taps);
  return laid === null ? null : analysed(laid);
}

function analysed({ beats, missed, doubled, breaks }: Beats): TapAnalysis | null {
  const line = lineOf(beats);
  const explained = (missed + doubled + breaks) / beats.length;
  if (line === null || beats.length < LEAST_KEPT || explained > MOST_EXPLAINED) return null;
  const error = line.error / line.period;
  if (!(error <= MOST_ERROR)) return null;
  const intervals = beatIntervals(beats);
  return {
    period: line.period,
    tempo: 60_000 / line.period,
    confidence: (1 - explained) / (1 + (error / HALF_SURE) ** 2),
    unevenness: deviation(intervals) / (intervals.length === 0 ? line.period : mean(intervals)),
    drift: driftOf(beats, line.period),
    kept: beats.length,
    missed,
    doubled,
    beats,
  };
}

/** Intervals from each beat to the very next; one that goes over a missed tap is none. */
function beatIntervals(beats: readonly Beat[]): readonly number[] {
  return beats.slice(1).flatMap(({ time, beat, part }, index) => {
    const before = beats[index];
    return before !== undefined && before.part === part && beat - before.beat === 1 ? [time - before.time] : [];
  });
}

function driftOf(beats: readonly Beat[], period: number): TempoChange | null {
  const bend = bendOf(beats);
  if (bend === null) return null;
  const percent = (100 * DRIFT_BEATS) / period;
  // A beat that gets longer is a tempo that falls; nothing falls by minus nothing.
  return { percent: 0 - percent * bend.longer, error: percent * bend.error, sure: bend.sure };
}

/** How much faster than a period, in milliseconds, some beats are; null where too few tell how sure that is. */
export function fasterThan(period: number, beats: readonly Beat[]): TempoChange | null {
  const line = lineOf(beats);
  if (line === null) return null;
  const error = (100 * line.error) / period;
  // By how much more often it beats, not by how much sooner.
  const percent = 100 * (period / line.period - 1);
  return { percent, error, sure: isSure(percent, error, line.free) };
}

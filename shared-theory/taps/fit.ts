import type { Beat } from './beats.ts';
import { mean, sum } from './statistics.ts';

/** A straight line through taps over their beats. */
export type Line = {
  /** Milliseconds from beat to beat, and the standard error. */
  readonly period: number;
  readonly error: number;
  /** How far single taps stray from it, in milliseconds (standard deviation). */
  readonly jitter: number;
  /** Measurements left free. */
  readonly free: number;
  /** Milliseconds by which each tap is late. */
  readonly strays: readonly number[];
};

/** How the period changes along the taps. */
export type Bend = {
  /** Milliseconds by which each beat is longer than the one before, and the standard error. */
  readonly longer: number;
  readonly error: number;
  /** Whether it is there beyond doubt. */
  readonly sure: boolean;
  /** Milliseconds by which each tap is late. */
  readonly strays: readonly number[];
};

/** Takes away the mean of each part: where it began says nothing. The beats of a part follow one another. */
function within(beats: readonly Beat[], value: (beat: Beat) => number): readonly number[] {
  const values = beats.map(value);
  for (let first = 0, end = 0; first < beats.length; first = end) {
    let all = 0;
    for (; end < beats.length && beats[end]?.part === beats[first]?.part; end += 1) all += values[end] ?? 0;
    const middle = all / (end - first);
    for (let index = first; index < end; index += 1) values[index] = (values[index] ?? 0) - middle;
  }
  return values;
}

function dot(one: readonly number[], other: readonly number[]): number {
  let all = 0;
  for (let index = 0; index < one.length; index += 1) all += (one[index] ?? 0) * (other[index] ?? 0);
  return all;
}

const parts = (beats: readonly Beat[]) => new Set(beats.map(({ part }) => part)).size;

/** What is left of one row of numbers when what goes along with another is taken away. */
function without(row: readonly number[], other: readonly number[]): readonly number[] {
  const share = dot(row, other) / dot(other, other);
  return row.map((value, index) => value - share * (other[index] ?? 0));
}

/**
 * By what factor errors grow because strays follow one another, as those of an inner clock do: fewer of them are news. Of a first-order
 * autoregression (Bartlett 1946).
 */
function wandering(strays: readonly number[]): number {
  const all = dot(strays, strays);
  const follows = all > 0 ? Math.min(0.7, Math.max(0, dot(strays.slice(1), strays) / all)) : 0;
  return Math.sqrt((1 + follows) / (1 - follows));
}

/** Milliseconds from beat to beat by least squares; null where no part has two beats. */
export function periodOf(beats: readonly Beat[]): number | null {
  // Sought again and again for each row of taps: nothing is made here.
  let squares = 0;
  let products = 0;
  for (let first = 0, end = 0; first < beats.length; first = end) {
    let [numbers, times] = [0, 0];
    for (; end < beats.length && beats[end]?.part === beats[first]?.part; end += 1) {
      numbers += beats[end]?.beat ?? 0;
      times += beats[end]?.time ?? 0;
    }
    const [number, middle] = [numbers / (end - first), times / (end - first)];
    for (let index = first; index < end; index += 1) {
      const away = (beats[index]?.beat ?? 0) - number;
      squares += away * away;
      products += away * ((beats[index]?.time ?? 0) - middle);
    }
  }
  return squares > 0 ? products / squares : null;
}

/**
 * Whether a value is other than 0 beyond doubt, at one in a hundred, from its standard error and the number of measurements left free.
 * The quantiles of Student's t in short: 3.50 (table 3.50) of seven, 2.79 (2.75) of thirty.
 */
export function isSure(value: number, error: number, free: number): boolean {
  return free > 0 && Math.abs(value) > (2.576 + 6.5 / free) * error;
}

/** The line by least squares, one slope over all parts; null where too few beats say how sure it is. */
export function lineOf(beats: readonly Beat[]): Line | null {
  const numbers = within(beats, ({ beat }) => beat);
  const times = within(beats, ({ time }) => time);
  const period = periodOf(beats);
  const free = beats.length - parts(beats) - 1;
  if (period === null || free < 1) return null;
  const left = without(times, numbers);
  const jitter = Math.sqrt(dot(left, left) / free);
  return { period, error: (jitter * wandering(left)) / Math.sqrt(dot(numbers, numbers)), jitter, free, strays: left };
}

/** The bend by least squares, beside the line; null where too few beats say how sure it is. */
export function bendOf(beats: readonly Beat[]): Bend | null {
  const numbers = within(beats, ({ beat }) => beat);
  const free = beats.length - parts(beats) - 2;
  if (free < 1) return null;
  const squares = without(
    within(beats, ({ beat }) => beat ** 2),
    numbers,
  );
  const times = without(
    within(beats, ({ time }) => time),
    numbers,
  );
  const all = dot(squares, squares);
  if (!(all > 1e-9)) return null;
  const left = without(times, squares);
  const error = Math.sqrt(dot(left, left) / free / all) * wandering(left);
  // Half of the second difference goes with the square of the beat.
  const longer = dot(squares, times) / all;
  return { longer: 2 * longer, error: 2 * error, sure: isSure(longer, error, free), strays: left };
}

/**
 * By how many standard errors a tap strays from the line of other ones, which are all of one part. How far single taps stray is given,
 * in milliseconds.
 */
export function straysBy({ time, beat }: Beat, others: readonly Beat[], jitter: number): number {
  const period = periodOf(others);
  if (period === null || !(jitter > 0)) return 0;
  const middle = mean(others.map((other) => other.beat));
  const all = sum(others.map((other) => (other.beat - middle) ** 2));
  const due = mean(others.map((other) => other.time)) + period * (beat - middle);
  return Math.abs(time - due) / jitter / Math.sqrt(1 + 1 / others.length + (beat - middle) ** 2 / all);
}

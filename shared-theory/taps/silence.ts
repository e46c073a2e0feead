import { analyseTaps } from './analyse.ts';
import type { TappedGroove } from './holding.ts';
import { levelAt } from './level.ts';
import type { DropOutTaps } from './taps.ts';
import { median, quantile } from './statistics.ts';

/** Where a room's taps lie at a beat of the silence, in percent of a beat ahead (above 0) of the groove or behind: middle and quartiles. */
export type CurvePoint = {
  /** Beats from the first one in the silence, which is 1. */
  readonly beat: number;
  readonly middle: number;
  readonly low: number;
  readonly high: number;
};

/** Taps before the silence that say where a hand has the beat: at most so many, the last ones, and at least so many. */
const MOST_BEFORE = 8;
const LEAST_BEFORE = 3;

/** A beat of a hand, and how far ahead of the groove it was tapped, in percent of a beat. */
type Ahead = { readonly beat: number; readonly percent: number };

/**
 * How far ahead of the silent groove a room taps, beat by beat over the two bars and the first beat after. Each hand has the beat where its
 * own taps had it while the groove sounded. A drawing alone: no mark depends on when a phone heard of the silence. null where no hand
 * that can be read was told of it.
 */
export function silenceCurve(hands: readonly DropOutTaps[], groove: TappedGroove): readonly CurvePoint[] | null {
  const all = hands.flatMap((hand) => aheadOf(hand, groove));
  const last = Math.round(2 * groove.beatsPerBar) + 1;
  const curve = Array.from({ length: last }, (_, index) => index + 1).flatMap((beat): readonly CurvePoint[] => {
    const there = all.filter((ahead) => ahead.beat === beat).map(({ percent }) => percent);
    if (there.length === 0) return [];
    return [{ beat, middle: median(there), low: quantile(there, 1 / 4), high: quantile(there, 3 / 4) }];
  });
  return curve.length === 0 ? null : curve;
}

function aheadOf({ taps, silentFrom }: DropOutTaps, groove: TappedGroove): readonly Ahead[] {
  const start = silentFrom === null ? undefined : taps[silentFrom];
  const read = start === undefined ? null : analyseTaps(taps);
  // Groups of sevens lie elsewhere than their pairs do.
  if (start === undefined || read === null || read.sevens) return [];
  const { factor } = levelAt(read.tempo, groove.tempo, groove.counts);
  const period = 60_000 / (groove.tempo * factor);
  const before = read.beats.filter(({ time }) => time < start).slice(-MOST_BEFORE);
  const after = read.beats.filter(({ time }) => time >= start);
  const first = after[0];
  // A hand that stumbled has lost the beat that it had.
  const whole = after.filter(({ part }) => part === before.at(-1)?.part);
  if (first === undefined || before.length < LEAST_BEFORE) return [];
  const due = median(before.map(({ time, beat }) => time - beat * period));
  return whole.flatMap(({ time, beat }) => {
    const beats = (beat - first.beat) / factor + 1;
    const percent = (100 * (due + beat * period - time)) / (period * factor);
    return Math.abs(beats - Math.round(beats)) < 1e-6 ? [{ beat: Math.round(beats), percent }] : [];
  });
}

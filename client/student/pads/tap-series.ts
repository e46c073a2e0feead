import { LEAST_TAPS, MOST_TAPS, type DropOutTaps, type Taps } from '../../../shared-theory/taps/taps.ts';

/** Questions that are answered by tapping. */
export type TapKind = 'tempo' | 'steadiness' | 'drop-out' | 'together';

/** What one hand has tapped since it last stopped. */
export type TapSeries = {
  /** Times of the taps that are kept, the last ones, in milliseconds of one steady clock. */
  readonly taps: readonly number[];
  /** How many there were in all. */
  readonly count: number;
  /** Index of the first kept tap after the groove fell silent, which may be one to come; null where it has not. */
  readonly silentFrom: number | null;
  /** A pause made it begin again. */
  readonly anew: boolean;
};

export const NO_TAPS: TapSeries = { taps: [], count: 0, silentFrom: null, anew: false };

/** A longer pause than this between two taps begins the count again, in milliseconds. */
export const PAUSE_MS = 4000;

/** Taps that are kept: enough to be sure of the tempo, or as many as may be sent through a silence. */
const KEPT: Readonly<Record<TapKind, number>> = { tempo: 32, steadiness: 32, 'drop-out': MOST_TAPS, together: 16 };

export const isTapKind = (kind: string): kind is TapKind => kind in KEPT;

/** Taps before the silence that are never given up. */
const BEFORE_SILENCE = 8;

/** Fingers that land closer together than this, in milliseconds, are one tap: an answer cannot tell them apart. */
const AT_ONCE_MS = 1;

/** Older than this, in milliseconds, no event reaches a page: its stamp is of another clock. */
const STALE_MS = 10_000;

/**
 * When an event happened, in milliseconds of the page's steady clock. Its own stamp where that is of this clock, or of the wall's (as
 * in old browsers) with the clock's `origin` on the wall; else the moment in which the page heard of it, `now`.
 */
export function tapTime(stamp: number, now: number, origin: number): number {
  const ours = [stamp, stamp - origin].find((time) => time > 0 && time <= now + AT_ONCE_MS && now - time < STALE_MS);
  return ours ?? now;
}

/** Whether no more taps are taken: older ones would have to go that tell how it was before the silence. */
export const isFull = ({ taps, silentFrom }: TapSeries): boolean =>
  taps.length === MOST_TAPS && silentFrom !== null && silentFrom <= BEFORE_SILENCE;

/** A series after one more tap. `droppedOut`: the groove is silent just now. */
export function withTap(kind: TapKind, series: TapSeries, time: number, droppedOut: boolean): TapSeries {
  const last = series.taps[series.taps.length - 1];
  if (last !== undefined && time - last < AT_ONCE_MS) return series;
  if (last !== undefined && time - last > PAUSE_MS) {
    return { taps: [time], count: 1, silentFrom: droppedOut ? 0 : null, anew: true };
  }
  if (isFull(series)) return series;
  const taps = [...series.taps, time].slice(-KEPT[kind]);
  const gone = series.taps.length + 1 - taps.length;
  const { silentFrom, count, anew } = series;
  return { taps, count: count + 1, silentFrom: silentFrom === null ? null : Math.max(0, silentFrom - gone), anew };
}

/** A series when the groove falls silent. */
export const withSilence = (series: TapSeries): TapSeries => ({ ...series, silentFrom: series.taps.length });

/**
 * The answer as it stands; null where there are too few taps, and through a silence until the groove is back: `heard` says that it has
 * fallen silent, `droppedOut` that it still is. A phone that was not told of the silence may write what it kept all the same, in the end.
 */
export function answerOf(
  kind: TapKind,
  { taps, silentFrom }: TapSeries,
  { heard, droppedOut }: { readonly heard: boolean; readonly droppedOut: boolean },
): Taps | DropOutTaps | null {
  const [first = 0] = taps;
  const told = taps.map((time) => Math.round((time - first) * 10) / 10);
  if (told.length < LEAST_TAPS) return null;
  if (kind !== 'drop-out') return told;
  const through = heard ? !droppedOut : told.length >= UNTOLD;
  return through ? { taps: told, silentFrom } : null;
}

/** Taps after which a silence that nobody told of must be over. */
const UNTOLD = 32;

/** Beats of a drop-out that are shown afterwards. */
const SHOWN_BEATS = 8;

/** Of an answer through a silence the taps that the silence holds; null where nothing tells which. */
export function throughSilence(answer: unknown): Taps | null {
  if (typeof answer !== 'object' || answer === null || !('silentFrom' in answer)) return null;
  const { silentFrom } = answer;
  if (typeof silentFrom !== 'number') return null;
  const taps = tapsIn(answer).slice(silentFrom, silentFrom + SHOWN_BEATS + 1);
  return taps.length > 2 ? taps : null;
}

/** Taps of an answer that stands. */
export function tapsIn(answer: unknown): Taps {
  const taps = typeof answer === 'object' && answer !== null && 'taps' in answer ? answer.taps : answer;
  return Array.isArray(taps) ? (taps as Taps) : [];
}

import type { SoundedNote } from './perform.ts';

/**
 * Downstrokes closer together than this, in seconds, are fast: a little more than four a second, the pace of eighths at 120 beats a
 * minute, which a relaxed hand keeps up; faster ones, each with its way back through the air, cost the wrist and the forearm (common
 * practice). The margin keeps a player's small differences at that pace from counting.
 */
export const FAST_SECONDS = 0.24;

/** So long in a row, in seconds, a class strikes fast downs at most. Common practice, and no promise: whoever feels pain stops at once. */
export const MOST_FAST_SECONDS = 90;

/** A hand has rested where what is not fast outweighs what is by so much, in seconds: one stroke left out, or one up, is no rest. */
const RESTED_SECONDS = 1;

/** Notes closer than this, in seconds, are one stroke over several strings. */
const ONE_STROKE_SECONDS = 0.06;

/** How a hand has fared up to a bar line. */
export type HandRun = {
  /** Seconds of fast downstrokes in a row, short gaps in them included, up to the last stroke. */
  readonly seconds: number;
  /** How far what was not fast outweighs what was: see `passed`. */
  readonly slow: number;
  /** The last stroke before the bar line: how many seconds before it, and which way; null where there was none. */
  readonly last: { readonly since: number; readonly down: boolean } | null;
};

/** A hand that has struck nothing yet, or has shaken itself out. */
export const RESTED: HandRun = { seconds: 0, slow: 0, last: null };

type Bar = { readonly seconds: number; readonly notes: readonly SoundedNote[] };

/** Strokes of the pick in a bar, in order: when, and which way. What thumb and fingers pluck is none. */
function strokesOf({ notes }: Bar): readonly { readonly time: number; readonly down: boolean }[] {
  const strokes: { time: number; down: boolean; last: number }[] = [];
  for (const { time, stroke, by } of notes.toSorted((one, other) => one.time - other.time)) {
    if (by !== undefined) continue;
    const down = stroke === 'down';
    const before = strokes.at(-1);
    if (before && before.down === down && time - before.last < ONE_STROKE_SECONDS) before.last = time;
    else strokes.push({ time, down, last: time });
  }
  return strokes;
}

type Counted = Pick<HandRun, 'seconds' | 'slow'>;

/** The run when so many seconds more have passed, with a fast downstroke at their end or not. Fast ones undo rest by half their length. */
function passed({ seconds, slow }: Counted, more: number, fast: boolean): Counted {
  if (fast) return { seconds: seconds + more, slow: Math.max(0, slow - more / 2) };
  if (seconds === 0 || slow + more >= RESTED_SECONDS) return { seconds: 0, slow: 0 };
  return { seconds: seconds + more, slow: slow + more };
}

/** The run after one bar more: it grows with fast downstrokes and the short gaps between them, and ends where the hand has rested. */
export function afterBar(run: HandRun, bar: Bar): HandRun {
  let counted: Counted = run;
  let last = run.last && { time: -run.last.since, down: run.last.down };
  for (const { time, down } of strokesOf(bar)) {
    if (last) counted = passed(counted, time - last.time, down && last.down && time - last.time < FAST_SECONDS);
    last = { time, down };
  }
  const since = last ? bar.seconds - last.time : Infinity;
  const { seconds, slow } = since >= RESTED_SECONDS ? RESTED : counted;
  return { seconds, slow, last: last && { since, down: last.down } };
}

/** The run after a bar that the room goes on playing while the strings are not heard: a hand that was at it stays at it. */
export function afterUnheard(run: HandRun, seconds: number): HandRun {
  return run.seconds > 0 ? { ...run, seconds: run.seconds + seconds } : run;
}

/** Seconds of fast downstrokes in a row that one bar holds by itself. */
export function fastSeconds(bar: Bar): number {
  return afterBar(RESTED, bar).seconds;
}

import type { Quality } from './chords.ts';
import type { NoteName } from './pitch.ts';

export type Direction = 'up' | 'down' | 'same';

/** `major`: majors only. `relatives`: majors with their relative minors. */
export type Policy = 'majors' | 'relatives';
export const POLICIES = ['majors', 'relatives'] as const satisfies readonly Policy[];

/** Distance number on the major scale of the first chord's root. */
export type Distance = '1' | 'b2' | '2' | 'b3' | '3' | '4' | '#4' | '5' | 'b6' | '6' | 'b7' | '7';

/** How the sounding strokes go: all down, down and up by turns (with or without misses), or neither asked. */
export type StrokeFeel = 'all-downs' | 'down-up';

/**
 * The right answers, computed from the performance. Arrays have one entry per slot of the loop;
 * `directions` and `distances` one fewer, each from the first chord.
 */
export type Truth = {
  /** Different chords. */
  readonly count: number;
  readonly directions: readonly Direction[];
  readonly qualities: readonly Quality[];
  readonly roots: readonly NoteName[];
  readonly distances: readonly Distance[];
  /** MIDI note of each slot's first bass stroke. */
  readonly bass: readonly number[];
  /** MIDI note of the highest string in each slot's first full stroke. */
  readonly top: readonly number[];
  /** Names such as `G major`, `E minor`; empty where no key owns all. */
  readonly keys: Readonly<Record<Policy, readonly string[]>>;
  /** Beats a minute; null where the teacher plays and named none. */
  readonly tempo: number | null;
  /** null where no groove was named. */
  readonly strokes: StrokeFeel | null;
};

import type { Grid } from '../groove-grid.ts';

/** How heavily a slot is struck, as far as a room can tell: 0 silent, 1 light, 2 heavy. */
export type Weight = 0 | 1 | 2;

/** What the hand does on a slot; silent is a hand that touches nothing. */
export type GridStroke = 'down' | 'up' | 'silent';

/** Which piece of a kit a stroke imitates: low and muted, slapped, short and high, ringing and high; or none. */
export type Role = 'kick' | 'slap' | 'closed' | 'open' | 'silent';

/** Numbers counted in a bar. */
export type BarCount = 2 | 3 | 4 | 6 | 7;

/**
 * What one slot of the pattern was over all bars of the loop: one thing, or several where the bars differ, the most frequent first;
 * of equally frequent ones the last heard, since the first bar of a chord may open it in another way.
 */
export type OnSlot<T> = readonly [T, ...T[]];

/**
 * What the groove of a round was, from the notes that sounded: the right answers to what is asked about it. Whatever is null cannot
 * be asked, because the groove is neither of the two, or does not say. Slots are those of the grid's pattern, from 0.
 */
export type RhythmTruth = {
  readonly grid: Grid;
  /** Lawful counts of its tempo as factors of `Truth.tempo`: the usual one, 1, first; 2 where twice as many may be counted. */
  readonly counts: readonly [1, ...number[]];
  /** Lawful counts of the bar, the usual one first. */
  readonly barCounts: readonly [BarCount, ...BarCount[]];
  /** The accent that sounded: 0 silent to 3 heavy. */
  readonly accents: readonly OnSlot<0 | 1 | 2 | 3>[];
  /** null where fingers pluck. */
  readonly strokes: readonly OnSlot<GridStroke>[] | null;
  /** null where a stroke stands for no piece of a kit. */
  readonly roles: readonly OnSlot<Role>[] | null;
  /** Slots that ring open where others are muted or stopped short, in the usual bar; null where all or none do. */
  readonly opened: readonly number[] | null;
  /**
   * Slots that usually knock, a hand lying on the strings, where others do not. Absent where none does or all do, and in rounds of a
   * time that did not keep them.
   */
  readonly muted?: readonly number[];
  readonly pendulum: 'keeps' | 'breaks' | null;
  readonly drive: 'driving' | 'relaxed' | null;
  readonly swing: 'straight' | 'swung' | null;
  readonly halfTime: 'full-time' | 'half-time' | null;
  readonly threes: 'two-threes' | 'three-twos' | null;
  readonly changePlace: 'on-one' | 'pushed' | null;
};

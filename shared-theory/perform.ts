import type { VoicedVamp } from './vamps.ts';

/** One note that sounds. Times in seconds from the start of the performance. */
export type SoundedNote = {
  readonly time: number;
  /** Seconds until the string is stopped or struck again. */
  readonly duration: number;
  /** 1 (high E) to 6 (low E). */
  readonly string: number;
  readonly fret: number;
  readonly midi: number;
  readonly stroke: 'down' | 'up';
  readonly touch: 'open' | 'palm' | 'dead' | 'choke';
  readonly accent: 1 | 2 | 3;
  /** Loudness trim in decibels beside the accent's own level (human variation, weaker ups). */
  readonly trim: number;
  /** Index of the loop's slot. */
  readonly chord: number;
};

/** What sounds, note by note, for a number of loops of a vamp. */
export type Performance = {
  readonly seconds: number;
  readonly loops: number;
  /** Start of each bar in seconds, and the slot that begins or continues there. */
  readonly bars: readonly { readonly time: number; readonly chord: number }[];
  /** Sorted by time. */
  readonly notes: readonly SoundedNote[];
};

export type PerformOptions = {
  readonly loops?: number;
  /** Timing within ±8 ms and ±1 dB from the vamp's seed; default false: exact. */
  readonly human?: boolean;
};

export type Perform = (vamp: VoicedVamp, options?: PerformOptions) => Performance;

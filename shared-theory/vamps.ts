import type { Chord } from './chords.ts';

/** Beats in a bar and the note value that carries one. Tempo counts quarters; in 6/8 and 12/8 dotted quarters. */
export type Meter = '4/4' | '3/4' | '6/8' | '12/8' | '7/8';

/** One chord of the loop and how many beats it lasts (the beats that the tempo counts). */
export type Slot = { readonly chord: Chord; readonly beats: number };

/** Frets on the strings 6 to 1 (low E first), null where a string is not played. */
export type Frets = readonly (number | null)[];

/** A slot with the shape that plays it. */
export type VoicedSlot = Slot & { readonly frets: Frets };

/**
 * A vamp that can sound: chords with their shapes, a groove in full text, a tempo and a seed for all chance.
 * `grooveText` is empty where the teacher plays his own guitar and named no groove.
 */
export type VoicedVamp = {
  readonly slots: readonly VoicedSlot[];
  readonly meter: Meter;
  readonly grooveText: string;
  /** Beats a minute. */
  readonly tempo: number;
  readonly seed: number;
};

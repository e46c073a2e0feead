import type { Meter } from './vamps.ts';

/** One slot of the grid: what the hand does, where, how, how heavily. */
export type GrooveSlot = {
  /** `down-silent` and `up-silent` move without touching. */
  readonly stroke: 'down' | 'up' | 'down-silent' | 'up-silent' | 'none';
  /** Which strings: root bass, other bass, low three, middle four, high three, all of the chord's. */
  readonly zone: 'root' | 'other-bass' | 'low' | 'middle' | 'high' | 'all' | 'none';
  readonly touch: 'open' | 'palm' | 'dead' | 'choke' | 'none';
  /** 0 silent, 1 light, 2 medium, 3 heavy. */
  readonly accent: 0 | 1 | 2 | 3;
};

/** A strumming pattern read from the grid language. */
export type Groove = {
  /** Kebab name, e.g. `relaxed-alternate`. */
  readonly id: string;
  readonly name: string;
  readonly grid: 'E8' | 'S16' | 'T12' | 'C6' | 'W6' | 'E16' | 'V7';
  readonly meter: Meter;
  /** Lowest and highest tempo, beats a minute. */
  readonly tempo: readonly [number, number];
  /** Long to short eighth, lowest and highest; 1 is straight. */
  readonly swing: readonly [number, number];
  /** One pattern (one bar; two bars for E16). */
  readonly slots: readonly GrooveSlot[];
  /** Replaces `slots` in the first bar of each chord, so that its quality is heard; absent where not needed. */
  readonly opening?: readonly GrooveSlot[];
  /** The text it was read from: a round stores this. */
  readonly text: string;
};

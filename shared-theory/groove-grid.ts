import { BEATS_PER_BAR } from './meters.ts';
import type { Touch } from './perform.ts';
import type { Meter } from './vamps.ts';

/** One slot of the grid: what the hand does, where, how, how heavily. */
export type GrooveSlot = {
  /**
   * `down-silent` and `up-silent` move without touching. Without a pick: the thumb alone, the fingers alone, or both at once, which
   * pinch the bass and the high strings.
   */
  readonly stroke: 'down' | 'up' | 'pinch' | 'thumb' | 'fingers' | 'down-silent' | 'up-silent' | 'none';
  /**
   * Which strings: root bass, other bass (the fifth or the next string), low three, middle four, high three (more where a
   * chord needs them), all.
   */
  readonly zone: 'root' | 'other-bass' | 'low' | 'middle' | 'high' | 'all' | 'none';
  readonly touch: Touch | 'none';
  /** 0 silent, 1 light, 2 medium, 3 heavy. */
  readonly accent: 0 | 1 | 2 | 3;
  /** It sounds what the next bar begins with already, and rings over: the first slot there is then a silent pass. */
  readonly pushes?: true;
};

export type Grid = 'E8' | 'S16' | 'T12' | 'C6' | 'W6' | 'E16' | 'V7';

/** A strumming pattern read from the grid language. */
export type Groove = {
  /** Kebab name, e.g. `relaxed-alternate`. */
  readonly id: string;
  readonly name: string;
  readonly grid: Grid;
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

type GridFacts = {
  readonly meter: Meter;
  /** Slots in the pattern, and bars that it lasts. */
  readonly slots: number;
  readonly bars: number;
  /** Whether its pairs of slots may swing. */
  readonly swings: boolean;
};

export const GRIDS: Readonly<Record<Grid, GridFacts>> = {
  E8: { meter: '4/4', slots: 8, bars: 1, swings: true },
  S16: { meter: '4/4', slots: 16, bars: 1, swings: true },
  T12: { meter: '12/8', slots: 12, bars: 1, swings: false },
  C6: { meter: '6/8', slots: 6, bars: 1, swings: false },
  W6: { meter: '3/4', slots: 6, bars: 1, swings: true },
  E16: { meter: '4/4', slots: 16, bars: 2, swings: true },
  V7: { meter: '7/8', slots: 7, bars: 1, swings: false },
};

/** The tokens of each lane and what they stand for. */
export const STROKES = {
  D: 'down',
  U: 'up',
  P: 'pinch',
  T: 'thumb',
  F: 'fingers',
  d: 'down-silent',
  u: 'up-silent',
  '-': 'none',
} as const;
export const ZONES = { B: 'root', b: 'other-bass', L: 'low', M: 'middle', H: 'high', A: 'all', '.': 'none' } as const;
export const TOUCHES = { o: 'open', r: 'ring', c: 'choke', h: 'half', p: 'palm', x: 'dead', '.': 'none' } as const;
export const ACCENTS = { '0': 0, '1': 1, '2': 2, '3': 3 } as const;
/** Whether a stroke sounds what the next bar begins with. */
export const CHANGES = { '.': false, '>': true } as const;

/** Lowest and highest tempo that a groove may name, beats a minute. */
export const TEMPO_LIMITS = [30, 300] as const;

/** Slots that touch no string. */
const SILENT_SLOT: GrooveSlot = { stroke: 'none', zone: 'none', touch: 'none', accent: 0 };
export const SILENT_DOWN: GrooveSlot = { ...SILENT_SLOT, stroke: 'down-silent' };
const SILENT_UP: GrooveSlot = { ...SILENT_SLOT, stroke: 'up-silent' };

export function slotSounds({ stroke }: GrooveSlot): boolean {
  return stroke !== 'none' && stroke !== 'down-silent' && stroke !== 'up-silent';
}

/** Slots of the groove's grid in one bar. */
export function slotsPerBar({ grid }: Pick<Groove, 'grid'>): number {
  return GRIDS[grid].slots / GRIDS[grid].bars;
}

/** Beats that one slot lasts, swing apart. */
export function beatsPerSlot(groove: Pick<Groove, 'grid'>): number {
  return BEATS_PER_BAR[GRIDS[groove.grid].meter] / slotsPerBar(groove);
}

/** The highest lawful long-to-short ratio: the short note keeps 100 ms. `tempo` in beats a minute. */
export function swingCap(tempo: number): number {
  return (60_000 / tempo - 100) / 100;
}

/** Long and short as a triplet has them: what a shuffle is unless somebody says otherwise. */
const TRIPLET_SWING = 2;

/**
 * Long to short as a groove is played at a tempo of beats a minute: straight where its range lets it be, else as near to a triplet's two
 * to one as the range goes, and never with a short note under 100 ms.
 */
export function swingRatio(groove: Pick<Groove, 'grid' | 'swing'>, tempo: number): number {
  const [low, high] = groove.swing;
  const wanted = low > 1 ? Math.min(high, Math.max(low, TRIPLET_SWING)) : 1;
  return Math.max(1, Math.min(wanted, swingCap(tempo / (2 * beatsPerSlot(groove)))));
}

/**
 * Beats from the beginning of a bar, or of any even slot, to a slot; odd ones come late by the swing, which keeps the short note at
 * 100 ms at a tempo of beats a minute.
 */
export function slotBeats(groove: Groove, place: number, tempo: number): number {
  const step = beatsPerSlot(groove);
  const ratio = swingRatio(groove, tempo);
  const late = step * ((2 * ratio) / (1 + ratio) - 1);
  return place * step + (place % 2 === 1 ? late : 0);
}

/** What the hand does on a slot where it touches nothing: down on one, up on the next, from the beginning of each bar. */
export function silentHand(groove: Pick<Groove, 'grid'>, place: number): GrooveSlot {
  return (place % slotsPerBar(groove)) % 2 === 0 ? SILENT_DOWN : SILENT_UP;
}

/** A grid on which nothing sounds yet, to draw a groove on: straight, the hand passing down and up. It has no text. */
export function emptyGroove(grid: Grid): Groove {
  const { meter, slots } = GRIDS[grid];
  return {
    id: 'own-groove',
    name: 'Own groove',
    grid,
    meter,
    tempo: [60, 120],
    swing: [1, 1],
    slots: Array.from({ length: slots }, (_, place) => silentHand({ grid }, place)),
    text: '',
  };
}

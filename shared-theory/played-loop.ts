import type { Draw } from './draws.ts';
import { beatsPerSlot, swingCap, withOpening, type Groove } from './grooves.ts';
import type { Level } from './level.ts';
import { BEATS_PER_BAR } from './meters.ts';
import { perform } from './perform.ts';
import { pickOne, type Random } from './random.ts';
import { truthOf, type Truth } from './truth.ts';
import type { VoicedVamp } from './vamps.ts';
import { voice } from './voice.ts';

/** Seconds of a bar in which a chord can be heard at leisure. */
const LONG_BAR = 2;

/** A loop in a groove, with its right answers. */
export type PlayedLoop = { readonly vamp: VoicedVamp; readonly truth: Truth };

/** A loop as it sounds in a groove. */
export type Sounding = { readonly groove: Groove; readonly played: PlayedLoop };

/** How a loop is played. */
export type Playing = {
  readonly seed: number;
  /** Bars that each chord lasts, or each part of one that lasts longer. */
  readonly bars: number;
  /** Beats a minute. */
  readonly tempo: number;
  /** Long to short. */
  readonly swing: number;
};

/** A loop as it is played in a groove, with its opening bar or without. Throws `RangeError` where its chords cannot be heard. */
export function playLoop(
  { loop, bars, shapes }: Draw,
  groove: Groove,
  opening: boolean,
  { seed, bars: each, tempo, swing }: Playing,
): PlayedLoop {
  const beats = each * BEATS_PER_BAR[groove.meter];
  const slots = loop.map((chord, slot) => ({ chord, beats: beats * (bars[slot] ?? 1) }));
  const vamp = voice({ slots, groove, tempo, seed, swing, opening, shapes });
  return { vamp, truth: truthOf(vamp, perform(vamp)) };
}

/** A tempo of the groove in the level's steps: within the level's range, where the groove reaches it. */
export function drawTempo(level: Level, groove: Groove, random: Random, last: number | undefined): number {
  const [slowest, fastest] = groove.tempo;
  const [low, high] = level.tempo ?? groove.tempo;
  const count = Math.floor((fastest - slowest) / level.tempoStep) + 1;
  const all = Array.from({ length: count }, (_, index) => slowest + index * level.tempoStep);
  const inRange = all.filter((tempo) => tempo >= low && tempo <= high);
  const tempos = inRange.length > 0 ? inRange : all;
  const others = tempos.filter((tempo) => tempo !== last);
  return pickOne(random, others.length > 0 ? others : tempos);
}

/** Long to short within the groove's range, the short note never under 100 ms. */
export function drawSwing(groove: Groove, tempo: number, random: Random): number {
  const [low, high] = groove.swing;
  const top = Math.max(low, Math.min(high, swingCap(tempo / (2 * beatsPerSlot(groove)))));
  return Math.floor((low + random() * (top - low)) * 10) / 10;
}

/**
 * Bars that each chord lasts. Where chords are counted one bar will do, if it lasts two seconds: then four slots come round in
 * time, and how long a chord lasts tells nothing of how many there are.
 */
export function barsOf(level: Level, counting: boolean, groove: Groove, tempo: number): number {
  const seconds = (BEATS_PER_BAR[groove.meter] * 60) / tempo;
  return counting && seconds >= LONG_BAR ? 1 : level.barsPerChord;
}

/**
 * A loop in a groove asked for, with an opening bar where the level has them, or where nothing is heard without. Throws `RangeError`
 * where its chords cannot be heard in it.
 */
export function playAsAsked(draw: Draw, groove: Groove, level: Level, playing: Playing): PlayedLoop {
  if (!level.opening) {
    try {
      return playLoop(draw, groove, false, playing);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  }
  try {
    return playLoop(draw, withOpening(groove), true, playing);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const sentence = `The chords of level ${level.level} cannot be heard in ${groove.name}: ${error.message}`;
    throw new RangeError(`${sentence} Choose a groove that strikes the bass on one and lets a chord ring.`, {
      cause: error,
    });
  }
}

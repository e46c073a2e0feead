import { chordSymbol } from './chords.ts';
import { drawAt, drawTable, type Draw } from './draws.ts';
import { allDowns, beatsPerSlot, grooveById, swingCap, type Groove } from './grooves.ts';
import { FORMS, type Form, type FormShares, type Level } from './level.ts';
import { levelOf } from './levels.ts';
import { BEATS_PER_BAR } from './meters.ts';
import { perform } from './perform.ts';
import { sameLoop, type Loop } from './pools.ts';
import { pickOne, seededRandom, type Random } from './random.ts';
import { truthOf, type Truth } from './truth.ts';
import type { VoicedVamp } from './vamps.ts';
import { voice } from './voice.ts';

/** What is remembered of a vamp that was played. */
type RecentVamp = Pick<VoicedVamp, 'slots' | 'tempo'>;

export type GenerateRequest = {
  readonly level: number;
  readonly seed: number;
  /** Vamps played before, the last one last; none of the last eight comes again. */
  readonly recent?: readonly RecentVamp[];
  /** Whether it is asked how many chords there are; default where the level itself asks it. */
  readonly counting?: boolean;
};

/** A vamp made for a level, with its right answers. */
export type GeneratedVamp = {
  readonly level: number;
  readonly seed: number;
  readonly vamp: VoicedVamp;
  /** Groove id. */
  readonly groove: string;
  readonly truth: Truth;
  /** Chord symbols, one per slot: `Em`. */
  readonly chords: readonly string[];
  /** Every major key that owns the chords, with their numerals. */
  readonly readings: readonly { readonly key: string; readonly numerals: readonly string[] }[];
};

const REMEMBERED = 8;

/** Seconds of a bar in which a chord can be heard at leisure. */
const LONG_BAR = 2;

/** Enough draws that a level whose vamps outnumber the remembered ones always finds another. */
const TRIES = 1000;

/** A form by its share, and after it the others, for where all its loops were heard just now. */
function drawForms(shares: FormShares, random: Random): readonly Form[] {
  const share = (form: Form) => shares[form] ?? 0;
  const forms = FORMS.filter((form) => share(form) > 0);
  let rest = random();
  const drawn = forms.find((form) => (rest -= share(form)) < 0) ?? forms.at(-1);
  return forms.toSorted((one, other) => Number(other === drawn) - Number(one === drawn));
}

function drawLoop(level: Level, counting: boolean, seed: number, recent: readonly Loop[]): Draw {
  const { forms, stays } = counting ? level.balance.counting : level.balance;
  const random = seededRandom(seed, 'loop');
  for (const form of drawForms(forms, seededRandom(seed, 'form'))) {
    const table = drawTable(level, form, stays);
    for (let attempt = 0; attempt < TRIES; attempt += 1) {
      const draw = drawAt(table, random());
      if (!recent.some((loop) => sameLoop(loop, draw.loop))) return draw;
    }
  }
  throw new RangeError(`Level ${level.level} has no vamp beside the ${recent.length} remembered ones.`);
}

/** As many grooves in downstrokes alone as grooves with ups. */
function drawGroove(level: Level, random: Random): Groove {
  const grooves = level.grooves.map(grooveById);
  const downs = random() < 0.5;
  return pickOne(
    random,
    grooves.filter((groove) => allDowns(groove) === downs),
  );
}

function drawTempo(level: Level, groove: Groove, random: Random, last: number | undefined): number {
  const [slowest, fastest] = groove.tempo;
  const [low, high] = level.tempo ?? groove.tempo;
  const count = Math.floor((fastest - slowest) / level.tempoStep) + 1;
  const tempos = Array.from({ length: count }, (_, index) => slowest + index * level.tempoStep);
  return pickOne(
    random,
    tempos.filter((tempo) => tempo >= low && tempo <= high && tempo !== last),
  );
}

function drawSwing(groove: Groove, tempo: number, random: Random): number {
  const [low, high] = groove.swing;
  const top = Math.max(low, Math.min(high, swingCap(tempo / (2 * beatsPerSlot(groove)))));
  return Math.floor((low + random() * (top - low)) * 10) / 10;
}

/**
 * Bars that each chord lasts. Where chords are counted one bar will do, if it lasts two seconds: then four slots come round in
 * time, and how long a chord lasts tells nothing of how many there are.
 */
function barsOf(level: Level, counting: boolean, groove: Groove, tempo: number): number {
  const seconds = (BEATS_PER_BAR[groove.meter] * 60) / tempo;
  return counting && seconds >= LONG_BAR ? 1 : level.barsPerChord;
}

/**
 * A vamp of a level: the same seed and the same recent vamps always give the same one. Groove, tempo and swing are drawn
 * from streams of their own, so that none hints at the chords. Throws `RangeError` for a level or seed that there is not.
 */
export function generate(request: GenerateRequest): GeneratedVamp {
  const { seed, recent = [] } = request;
  const level = levelOf(request.level);
  const counting = request.counting ?? level.questions.includes('count');
  const loops = recent.slice(-REMEMBERED).map((vamp) => vamp.slots.map((slot) => slot.chord));
  const { loop, bars, shapes, readings } = drawLoop(level, counting, seed, loops);
  const groove = drawGroove(level, seededRandom(seed, 'groove'));
  const timing = seededRandom(seed, 'timing');
  const tempo = drawTempo(level, groove, timing, recent.at(-1)?.tempo);
  const beats = barsOf(level, counting, groove, tempo) * BEATS_PER_BAR[groove.meter];
  const vamp = voice({
    slots: loop.map((chord, slot) => ({ chord, beats: beats * (bars[slot] ?? 1) })),
    groove: groove.id,
    tempo,
    seed,
    swing: drawSwing(groove, tempo, timing),
    opening: level.opening,
    shapes,
  });
  return {
    level: level.level,
    seed,
    vamp,
    groove: groove.id,
    truth: truthOf(vamp, perform(vamp)),
    chords: loop.map(chordSymbol),
    readings: readings.map(({ name, numerals }) => ({ key: name, numerals })),
  };
}

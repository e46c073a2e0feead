import { chordSymbol } from './chords.ts';
import { drawAt, drawTable, type Draw } from './draws.ts';
import { beatsPerSlot, grooveById, readGroove, strokesOf, swingCap, withOpening, type Groove } from './grooves.ts';
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
  /** Plays in this groove instead of one of the level's: an id of the catalogue, or a groove of one's own, read or as text. */
  readonly groove?: string | Groove;
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

/**
 * As many grooves in downstrokes alone as grooves that go down and up; those that do neither, of which no strokes are asked, come as
 * often as they stand among the level's.
 */
function drawGroove(level: Level, random: Random): Groove {
  const grooves = level.grooves.map((id) => grooveById(id));
  const going = (strokes: ReturnType<typeof strokesOf>) => grooves.filter((groove) => strokesOf(groove) === strokes);
  const neither = going(null);
  if (neither.length > 0 && random() < neither.length / grooves.length) return pickOne(random, neither);
  const downs = random() < 0.5;
  return pickOne(random, going(downs ? 'all-downs' : 'down-up'));
}

/** A tempo of the groove in the level's steps: within the level's range, where the groove reaches it. */
function drawTempo(level: Level, groove: Groove, random: Random, last: number | undefined): number {
  const [slowest, fastest] = groove.tempo;
  const [low, high] = level.tempo ?? groove.tempo;
  const count = Math.floor((fastest - slowest) / level.tempoStep) + 1;
  const all = Array.from({ length: count }, (_, index) => slowest + index * level.tempoStep);
  const inRange = all.filter((tempo) => tempo >= low && tempo <= high);
  const tempos = inRange.length > 0 ? inRange : all;
  const others = tempos.filter((tempo) => tempo !== last);
  return pickOne(random, others.length > 0 ? others : tempos);
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
 * from streams of their own, so that none hints at the chords. Throws `RangeError` for a level or seed that there is not, and where
 * the level's chords cannot be heard in the groove asked for.
 */
export function generate(request: GenerateRequest): GeneratedVamp {
  const { seed, recent = [] } = request;
  const level = levelOf(request.level);
  const counting = request.counting ?? level.questions.includes('count');
  const loops = recent.slice(-REMEMBERED).map((vamp) => vamp.slots.map((slot) => slot.chord));
  const { loop, bars, shapes, readings } = drawLoop(level, counting, seed, loops);
  const given = request.groove === undefined ? null : readGroove(request.groove);
  const groove = given ?? drawGroove(level, seededRandom(seed, 'groove'));
  const timing = seededRandom(seed, 'timing');
  const tempo = drawTempo(level, groove, timing, recent.at(-1)?.tempo);
  const beats = barsOf(level, counting, groove, tempo) * BEATS_PER_BAR[groove.meter];
  const swing = drawSwing(groove, tempo, timing);
  const slots = loop.map((chord, slot) => ({ chord, beats: beats * (bars[slot] ?? 1) }));
  const voiced = (played: Groove, opening: boolean) => {
    const vamp = voice({ slots, groove: played, tempo, seed, swing, opening, shapes });
    return { vamp, truth: truthOf(vamp, perform(vamp)) };
  };
  const { vamp, truth } = given ? heardIn(given, level, voiced) : voiced(groove, level.opening);
  return {
    level: level.level,
    seed,
    vamp,
    groove: groove.id,
    truth,
    chords: loop.map(chordSymbol),
    readings: readings.map(({ name, numerals }) => ({ key: name, numerals })),
  };
}

/** A vamp and its truth in a groove asked for, with an opening bar where the level has them, or where nothing is heard without. */
function heardIn<Heard>(groove: Groove, level: Level, voiced: (groove: Groove, opening: boolean) => Heard): Heard {
  if (!level.opening) {
    try {
      return voiced(groove, false);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  }
  try {
    return voiced(withOpening(groove), true);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const sentence = `The chords of level ${level.level} cannot be heard in ${groove.name}: ${error.message}`;
    throw new RangeError(`${sentence} Choose a groove that strikes the bass on one and lets a chord ring.`, {
      cause: error,
    });
  }
}

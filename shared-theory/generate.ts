import { drawBeat } from './beat-draw.ts';
import { chordSymbol } from './chords.ts';
import { drawAt, drawTable, type Draw } from './draws.ts';
import { grooveById, readGroove, strokesOf, type Groove } from './grooves.ts';
import { FORMS, type Form, type FormShares, type Level } from './level.ts';
import { levelOf } from './levels.ts';
import { barsOf, drawSwing, drawTempo, playAsAsked, playLoop, type Sounding } from './played-loop.ts';
import { sameLoop, type Loop } from './pools.ts';
import { pickOne, seededRandom, type Random } from './random.ts';
import type { Truth } from './truth.ts';
import type { VoicedVamp } from './vamps.ts';

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
  /** Plays, where no groove is asked for, in one of this beat level, 1 to 8, so that what it asks can be asked. */
  readonly beat?: number;
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

/** A loop of the level by its seed, with its shapes; none of the recent ones. */
export function drawLoop(level: Level, counting: boolean, seed: number, vamps: readonly RecentVamp[]): Draw {
  const recent = vamps.slice(-REMEMBERED).map((vamp): Loop => vamp.slots.map((slot) => slot.chord));
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

/**
 * A vamp of a level: the same seed and the same recent vamps always give the same one. Groove, tempo and swing are drawn
 * from streams of their own, so that none hints at the chords. Throws `RangeError` for a level or seed that there is not, and where
 * the level's chords cannot be heard in the groove asked for.
 */
export function generate(request: GenerateRequest): GeneratedVamp {
  const { seed, recent = [] } = request;
  const level = levelOf(request.level);
  const counting = request.counting ?? level.questions.includes('count');
  const drawn = drawLoop(level, counting, seed, recent);
  const lastTempo = recent.at(-1)?.tempo;
  const inBeat = request.beat !== undefined && request.groove === undefined;
  const sounding = inBeat
    ? drawBeat({ beat: request.beat, level, counting, seed, lastTempo }, drawn)
    : inGroove(request, level, counting, drawn, lastTempo);
  return generatedVamp(level, seed, drawn, sounding);
}

/** What is told of a loop that is played. */
export function generatedVamp(level: Level, seed: number, drawn: Draw, { groove, played }: Sounding): GeneratedVamp {
  return {
    level: level.level,
    seed,
    vamp: played.vamp,
    groove: groove.id,
    truth: played.truth,
    chords: drawn.loop.map(chordSymbol),
    readings: drawn.readings.map(({ name, numerals }) => ({ key: name, numerals })),
  };
}

/** The loop in the groove asked for, or in one that the level draws. */
function inGroove(
  request: GenerateRequest,
  level: Level,
  counting: boolean,
  drawn: Draw,
  lastTempo: number | undefined,
): Sounding {
  const { seed } = request;
  const given = request.groove === undefined ? null : readGroove(request.groove);
  const groove = given ?? drawGroove(level, seededRandom(seed, 'groove'));
  const timing = seededRandom(seed, 'timing');
  const tempo = drawTempo(level, groove, timing, lastTempo);
  const bars = barsOf(level, counting, groove, tempo);
  const playing = { seed, bars, tempo, swing: drawSwing(groove, tempo, timing) };
  return {
    groove,
    played: given ? playAsAsked(drawn, given, level, playing) : playLoop(drawn, groove, level.opening, playing),
  };
}

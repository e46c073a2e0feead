import { BEAT_GROOVES } from './beat-grooves.ts';
import type { Draw } from './draws.ts';
import { beatsPerSlot, grooveById, withOpening, type Groove } from './grooves.ts';
import { drawLoop, generatedVamp, type GeneratedVamp, type GenerateRequest } from './generate.ts';
import type { Level } from './level.ts';
import { levelOf } from './levels.ts';
import { playLoop } from './played-loop.ts';
import type { Kind } from './questions/question.ts';
import { pickOne, seededRandom } from './random.ts';

/** One side of a pair: its name, and the groove that plays it, of the catalogue or beside it. */
type ContrastSide = { readonly name: string; readonly groove: string };

/** Two grooves that differ in one thing, and what is asked to tell them apart. */
export type Contrast = {
  readonly id: string;
  readonly name: string;
  readonly kind: Kind;
  readonly sides: readonly [ContrastSide, ContrastSide];
};

const pair = (
  id: string,
  name: string,
  kind: Kind,
  one: readonly [string, string],
  other: readonly [string, string],
): Contrast => ({ id, name, kind, sides: [asSide(one), asSide(other)] });

const asSide = ([name, groove]: readonly [string, string]): ContrastSide => ({ name, groove });

/** Pairs worth a lesson each (common practice). */
export const CONTRASTS: readonly Contrast[] = [
  pair('driving-or-relaxed', 'Driving or relaxed', 'drive', ['Driving', 'driving-downs'], ['Relaxed', 'relaxed-strum']),
  pair(
    'closed-or-open-hat',
    'Closed or open hat',
    'roles',
    ['Closed hat', 'foot-and-short-hat'],
    ['Open hat', 'foot-and-open-hat'],
  ),
  pair(
    'accents-on-numbers-or-three-three-two',
    'Accents on numbers or three-three-two',
    'accents',
    ['Accents on numbers', 'relaxed-alternate'],
    ['Three-three-two', 'three-three-two'],
  ),
  pair(
    'straight-or-swung',
    'Straight or swung',
    'swing',
    ['Straight', 'straight-alternate'],
    ['Swung', 'swung-alternate'],
  ),
  pair(
    'two-threes-or-three-twos',
    'Two threes or three twos',
    'threes',
    ['Two threes', 'six-in-two'],
    ['Three twos', 'six-in-three'],
  ),
  pair(
    'full-or-half-time',
    'Full or half time',
    'half-time',
    ['Full time', 'slap-on-two-and-four'],
    ['Half time', 'slap-on-three'],
  ),
  pair(
    'change-on-one-or-pushed',
    'Change on one or pushed',
    'change-place',
    ['On one', 'ringing-last-up'],
    ['Pushed', 'pushed-last-up'],
  ),
  pair(
    'ands-or-numbers-heavy',
    'Ands or numbers heavy',
    'accents',
    ['Numbers heavy', 'heavy-numbers'],
    ['Ands heavy', 'heavy-ands'],
  ),
  pair(
    'slap-or-strum-on-the-backbeat',
    'Slap or strum on the backbeat',
    'opened',
    ['Slap', 'bass-and-slap'],
    ['Strum', 'bass-and-strum'],
  ),
  pair(
    'with-or-without-dead-strokes',
    'With or without dead strokes',
    'stroke-grid',
    ['Without', 'hits-alone'],
    ['With', 'hits-and-dead-strokes'],
  ),
];

/** Each chord lasts so many bars, so that one is heard that does not open it. */
const BARS = 2;
/** Enough loops that one with a change is among them. */
const TRIES = 100;

export type ContrastRequest = Pick<GenerateRequest, 'level' | 'seed' | 'recent'> & {
  /** Id of the pair. */
  readonly contrast: string;
  /** Which of its two sides sounds. */
  readonly side: 0 | 1;
};

/** A loop of two different chords or more, by the seed: where none changes nobody hears where it does. */
function changingLoop(level: Level, seed: number, recent: GenerateRequest['recent'] = []): Draw {
  const random = seededRandom(seed, 'contrast loop');
  for (let attempt = 0; attempt < TRIES; attempt += 1) {
    const draw = drawLoop(level, false, Math.floor(random() * 2 ** 32), recent);
    if (draw.changes.some(({ distance }) => distance !== '1')) return draw;
  }
  throw new RangeError(`Level ${level.level} has no loop in which a chord changes.`);
}

/** Beats of another groove as fast as one of this, slot by slot: six equal slots are two beats or three. */
function beatsBeside(groove: Groove, other: Groove): number {
  return beatsPerSlot(other) / beatsPerSlot(groove);
}

/**
 * Tempos of the first side, in the level's steps, at which both sides can be played; within the level's own range where that can be.
 */
function sharedTempos(level: Level, one: Groove, other: Groove): readonly number[] {
  const factor = beatsBeside(one, other);
  const low = Math.max(one.tempo[0], Math.ceil(other.tempo[0] / factor));
  const high = Math.min(one.tempo[1], Math.floor(other.tempo[1] / factor));
  const count = Math.floor((high - low) / level.tempoStep) + 1;
  const all = Array.from({ length: count }, (_, index) => low + index * level.tempoStep);
  const [slowest, fastest] = level.tempo ?? [low, high];
  const inRange = all.filter((tempo) => tempo >= slowest && tempo <= fastest);
  return inRange.length > 0 ? inRange : all;
}

/** The pair of that id. Throws `RangeError` naming those that there are. */
function contrastOf(id: string): Contrast {
  const found = CONTRASTS.find((known) => known.id === id);
  if (!found) throw new RangeError(`No contrast "${id}"; there are ${CONTRASTS.map((each) => each.id).join(', ')}.`);
  return found;
}

/**
 * One side of a pair: both sides of a seed have the same chords in the same shapes, and their slots go equally fast. Every chord is
 * opened so that its quality is heard, or heard as it is. Throws `RangeError` for a pair, side, level or seed that there is not.
 */
export function contrastVamp({ contrast, side, level: number, seed, recent }: ContrastRequest): GeneratedVamp {
  const { sides } = contrastOf(contrast);
  const level = levelOf(number);
  const played = sides[side];
  if (!played) throw new RangeError(`A contrast has sides 0 and 1, not ${String(side)}.`);
  const [one, other] = sides.map(({ groove }) => grooveById(groove, BEAT_GROOVES)) as [Groove, Groove];
  const drawn = changingLoop(level, seed, recent);
  const last = recent?.at(-1)?.tempo;
  const tempos = sharedTempos(level, one, other);
  const others = tempos.filter((tempo) => tempo !== last);
  const first = pickOne(seededRandom(seed, 'contrast tempo'), others.length > 0 ? others : tempos);
  const groove = side === 0 ? one : other;
  const tempo = first * beatsBeside(one, groove);
  const playing = { seed, bars: BARS, tempo, swing: groove.swing[0] };
  return generatedVamp(level, seed, drawn, { groove, played: playLoop(drawn, withOpening(groove), true, playing) });
}

import type { SoundedNote } from '../perform.ts';
import { midiFrequency } from '../pitch.ts';
import { addBody } from './body.ts';
import { dampingFilter, decayOf } from './decay.ts';
import { loopDelay } from './fractional-delay.ts';
import { STEEL, type Instrument } from './instrument.ts';
import { kWeighted, meanSquare } from './loudness.ts';
import { addPickAttack } from './pick-attack.ts';
import { pluck } from './pluck.ts';

/** One struck string: everything that its sound depends on. */
export type StruckString = Pick<SoundedNote, 'midi' | 'string' | 'fret' | 'touch' | 'accent' | 'stroke' | 'by' | 'bass' | 'free'>;

export type StringOptions = {
  /** Length of the result in seconds; a string still ringing there is faded out. */
  readonly seconds: number;
  /** Samples a second, 22,050 to 192,000. */
  readonly sampleRate: number;
  /** Seed of the pick's noise. */
  readonly seed: number;
  /** What is plucked; default: steel strings at 440 Hz. */
  readonly instrument?: Instrument;
};

/** Accents in decibels: 3 heavy, 2 medium, 1 light. Under four decibels apart a class cannot tell them. */
export const ACCENT_DB = { 3: 0, 2: -4, 1: -9 } as const;

/** Touches beside the open string, in decibels; a choke is so short that it needs a little more to be heard as much. */
const TOUCH_DB = { open: 0, ring: 0, half: -1, choke: 3, palm: -3, dead: -5 } as const;

/**
 * The pick's attack beside a heavy stroke of the same string, in decibels. An up's strings often ring louder than it strikes
 * them, so its attack tells that the hand came by: it hardly follows the accent. A down has more strings and the bass.
 */
const PICK_DB = { down: { 3: -4, 2: -6.5, 1: -11 }, up: { 3: -1, 2: -2, 1: -3 } } as const;

/** Under a palm or dead fingers a string gives the pick little to catch; a dead stroke has a noise of its own. */
const PICK_TOUCH_DB = { open: 0, ring: 0, half: -8, choke: 0, palm: -15, dead: -15 } as const;

/** Bass forward: the ear follows the top voice, and direction is asked of the lowest. Strings 1 to 6, in decibels. */
const STRING_DB = [-2.5, -2.5, -2, 1, 2, 2] as const;

/** K-weighted level of a heavy open stroke over its first moment, before the strings' own balance. */
const REFERENCE = 0.08;
const LEVEL_SECONDS = 0.08;

/** Attack long enough to take the edge off the first sample, short enough to keep the onset where it is. */
const ATTACK_SECONDS = 0.0004;
const FADE_SECONDS = 0.03;

/**
 * A plucked steel string as mono samples, starting with its onset: an extended Karplus-Strong loop in tune within a cent,
 * with the guitar's body round it. The same input gives the same samples; a longer result begins with the shorter one.
 * @throws {RangeError} for a string that a guitar has not, or a note outside 28 to 100
 */
export function renderString(struck: StruckString, options: StringOptions): Float32Array {
  const { midi, string, fret, touch, accent, stroke } = struck;
  const { seconds, sampleRate, seed, instrument = STEEL } = options;
  if (!(midi >= 28 && midi <= 100)) throw new RangeError(`a string sounds the notes 28 to 100, not ${midi}`);
  const balance = STRING_DB[string - 1];
  if (balance === undefined) throw new RangeError(`a guitar has the strings 1 to 6, not ${string}`);
  const frequency = (midiFrequency(midi) * instrument.pitch) / STEEL.pitch;
  const length = Math.max(1, Math.round(seconds * sampleRate));
  const levelSamples = Math.round(LEVEL_SECONDS * sampleRate);
  const samples = new Float64Array(Math.max(length, levelSamples));
  ring(samples, pluck({ frequency, sampleRate, touch, accent, stroke, seed }), {
    ...loopDelay(frequency, sampleRate),
    ...dampingFilter(decayOf(string, fret, touch), frequency, sampleRate),
  });
  if (touch === 'dead') fadeLike(samples, 0.05 * sampleRate);
  addBody(samples, sampleRate);

  const loudness = Math.sqrt(meanSquare(kWeighted(samples.subarray(0, levelSamples), sampleRate), 0, levelSamples));
  const wanted = REFERENCE * 10 ** ((ACCENT_DB[accent] + TOUCH_DB[touch] + balance) / 20);
  const gain = wanted / loudness;
  for (let n = 0; n < samples.length; n++) samples[n] = (samples[n] ?? 0) * gain;
  // Wound strings scrape more than plain ones, as they ring more: the pick follows the strings' balance.
  const pick = PICK_DB[stroke][accent] + PICK_TOUCH_DB[touch] + balance;
  addPickAttack(samples, REFERENCE * 10 ** (pick / 20), sampleRate, seed);
  return shaped(samples.subarray(0, length), sampleRate);
}

type Loop = ReturnType<typeof loopDelay> & ReturnType<typeof dampingFilter>;

/** Runs the string loop: line, damping, all-pass, and the pluck coming in. */
function ring(out: Float64Array, pluck: Float64Array, { line, allPass: [a1, a2, a3], side, middle }: Loop): void {
  const delay = new Float64Array(line);
  let at = 0;
  let d1 = 0;
  let d2 = 0;
  let x1 = 0;
  let x2 = 0;
  let x3 = 0;
  let y1 = 0;
  let y2 = 0;
  let y3 = 0;
  for (let n = 0; n < out.length; n++) {
    const d0 = delay[at] ?? 0;
    const x0 = side * (d0 + d2) + middle * d1;
    d2 = d1;
    d1 = d0;
    const y0 = a3 * (x0 - y3) + a2 * (x1 - y2) + a1 * (x2 - y1) + x3;
    x3 = x2;
    x2 = x1;
    x1 = x0;
    y3 = y2;
    y2 = y1;
    y1 = y0;
    const value = y0 + (n < pluck.length ? (pluck[n] ?? 0) : 0);
    delay[at] = value;
    at = at + 1 === line ? 0 : at + 1;
    out[n] = value;
  }
}

/** An envelope to −60 dB after `samples60` samples. */
function fadeLike(samples: Float64Array, samples60: number): void {
  const step = 10 ** (-3 / samples60);
  let gain = 1;
  for (let n = 0; n < samples.length; n++) {
    samples[n] = (samples[n] ?? 0) * gain;
    gain *= step;
  }
}

/** Attack and the fade at the end. */
function shaped(samples: Float64Array, sampleRate: number): Float32Array {
  const out = new Float32Array(samples.length);
  const attack = ATTACK_SECONDS * sampleRate;
  const fade = Math.min(FADE_SECONDS * sampleRate, samples.length / 2);
  for (let n = 0; n < out.length; n++) {
    const rise = n < attack ? (n + 1) / (attack + 1) : 1;
    const fall = Math.min(1, (samples.length - 1 - n) / fade);
    out[n] = (samples[n] ?? 0) * rise * fall;
  }
  return out;
}

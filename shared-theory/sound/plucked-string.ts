import type { SoundedNote } from '../perform.ts';
import { midiFrequency } from '../pitch.ts';
import { throughInstrument, type SpeakerShare } from './body.ts';
import { dampingFilter, decayOf } from './decay.ts';
import { loopDelay } from './fractional-delay.ts';
import { PITCH_RANGE, STEEL, type Instrument } from './instrument.ts';
import { kWeighted } from './loudness.ts';
import { pickAttack } from './pick-attack.ts';
import { pluck } from './pluck.ts';
import { filtered, highPass } from './second-order.ts';
import { NOISE_TOUCH_DB, STRING_DB, TOUCH_DB } from './string-levels.ts';
import { addRinging } from './string-loop.ts';
import { addSympathy } from './sympathy.ts';
import { pluckerOf, voiceSound, type VoiceSound } from './voices.ts';

/** One struck string: everything that its sound depends on. */
export type StruckString = Pick<
  SoundedNote,
  'midi' | 'string' | 'fret' | 'touch' | 'accent' | 'stroke' | 'by' | 'bass' | 'free'
>;

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
export const ACCENT_DB = { 3: 0, 2: -4.5, 1: -9 } as const;

/** Of a note's level, the pick's noise has this share of the power at most. */
const MOST_NOISE = 0.7;

/** A small speaker's bass: louder, its attack clearer. */
const BASS_DB = 4.5;
const BASS_ATTACK_DB = 3;
const BASS_BRIGHTNESS = 1.25;

/** K-weighted level of a heavy open stroke over its first moment, before the strings' own balance. */
const REFERENCE = 0.08;

/** The ear's first glance at a note: the fast time weighting of a sound level meter (IEC 61672-1). */
const LEVEL_SECONDS = 0.125;

/**
 * The two motions of a string, up and down and along the top, are tuned this far apart: a few of the upper partials beat
 * slowly, as on any guitar, and the pitch stays where it is.
 */
const APART_CENTS = 0.7;
const MOST_APART_HZ = 0.25;

/** How fast loose fingers take the sound from a string, and the least hertz that they leave of it. */
const DEAD_SECONDS = 0.05;
const DEAD_FROM_HZ = 60;

/** Attack long enough to take the edge off the first sample, short enough to keep the onset where it is. */
const ATTACK_SECONDS = 0.0004;
const FADE_SECONDS = 0.03;

/**
 * A plucked string of the instrument as mono samples, starting with its onset: an extended Karplus-Strong loop for each of
 * its two motions, in tune within a cent, with the guitar round it and the open strings that ring along. The same input
 * gives the same samples; a longer result begins with the shorter one.
 * @throws {RangeError} for a string that a guitar has not, a note outside 28 to 100, or a pitch outside `PITCH_RANGE`
 */
export function renderString(struck: StruckString, options: StringOptions): Float32Array {
  const { midi, string, touch, accent, free = [] } = struck;
  const { seconds, sampleRate, seed, instrument = STEEL } = options;
  if (!(midi >= 28 && midi <= 100)) throw new RangeError(`a string sounds the notes 28 to 100, not ${midi}`);
  const [lowest, highest] = PITCH_RANGE;
  if (!(instrument.pitch >= lowest && instrument.pitch <= highest)) {
    throw new RangeError(`A is tuned from ${lowest} to ${highest} Hz, not to ${instrument.pitch}`);
  }
  const sound = voiceSound(instrument.voice);
  const balance = STRING_DB[string - 1];
  if (balance === undefined) throw new RangeError(`a guitar has the strings 1 to 6, not ${string}`);
  const frequency = (note: number) => midiFrequency(note) * (instrument.pitch / STEEL.pitch);
  const share: SpeakerShare = instrument.smallSpeaker ? (struck.bass ? 'bass' : 'other') : null;
  const length = Math.max(1, Math.round(seconds * sampleRate));
  const samples = new Float64Array(Math.max(length, Math.round(LEVEL_SECONDS * sampleRate)));
  const { noise } = addString(samples, struck, { sound, share, sampleRate, seed, frequency: frequency(midi) });
  if (touch === 'dead') deaden(samples, sampleRate);

  const wanted =
    REFERENCE * 10 ** ((ACCENT_DB[accent] + TOUCH_DB[touch] + balance + (share === 'bass' ? BASS_DB : 0)) / 20);
  const attack = pickAttack(noise, sampleRate, seed);
  const noiseDecibels = noise.decibels[accent] + NOISE_TOUCH_DB[touch] + (share === 'bass' ? BASS_ATTACK_DB : 0);
  const level = levels(samples, attack, wanted, 10 ** (noiseDecibels / 20), sampleRate);
  if (free.length > 0) addSympathy(samples, { free, frequency, sound, sampleRate });
  for (let n = 0; n < attack.length; n++) {
    samples[n] = (samples[n] ?? 0) + (attack[n] ?? 0) * (level.attack / level.string);
  }
  return shaped(samples.subarray(0, length), level.string, sampleRate);
}

type Around = {
  readonly sound: VoiceSound;
  readonly share: SpeakerShare;
  readonly sampleRate: number;
  readonly seed: number;
  readonly frequency: number;
};

/** Adds the string's two motions to `samples`; returns what plucked it. */
function addString(samples: Float64Array, struck: StruckString, around: Around) {
  const { string, fret, touch, accent } = struck;
  const { sound, share, sampleRate, seed, frequency } = around;
  const plucked = sound.plucks[pluckerOf(struck)];
  const brightness = share === 'bass' ? BASS_BRIGHTNESS : 1;
  const { pickup } = sound;
  const push = throughInstrument(
    pluck({ frequency, sampleRate, fret, touch, accent, seed, sound: plucked, pickup, brightness }),
    sound,
    share,
    sampleRate,
  );
  const decay = decayOf(sound, string, fret, touch);
  const add = (gain: number, hertz: number, longer: number) =>
    addRinging(samples, push, gain, {
      ...loopDelay(hertz, sampleRate),
      ...dampingFilter({ low: decay.low * longer, high: decay.high * longer }, hertz, sampleRate),
    });
  if (touch === 'half' || touch === 'palm' || touch === 'dead') {
    // A hand on the string damps both motions alike.
    add(1, frequency, 1);
  } else {
    const { share: sideways, longer } = sound.sideways;
    const apart = Math.min(frequency * (2 ** (APART_CENTS / 1200) - 1), MOST_APART_HZ);
    add(1 - sideways, frequency - apart * sideways, 1);
    add(sideways, frequency + apart * (1 - sideways), longer);
  }
  return plucked;
}

/**
 * Factors for the string and for the noise of what plucked it, `beside` times the note's level, so that the two together
 * have the wanted K-weighted root mean square over the first moment.
 */
function levels(
  string: Float64Array,
  attack: Float64Array,
  wanted: number,
  beside: number,
  sampleRate: number,
): { readonly string: number; readonly attack: number } {
  const length = Math.round(LEVEL_SECONDS * sampleRate);
  const heardString = kWeighted(string.subarray(0, length), sampleRate);
  const heardAttack = kWeighted(attack, sampleRate);
  let strings = 0;
  let noises = 0;
  let both = 0;
  for (let n = 0; n < length; n++) {
    const one = heardString[n] ?? 0;
    const other = heardAttack[n] ?? 0;
    strings += one * one;
    noises += other * other;
    both += one * other;
  }
  const power = wanted ** 2 * length;
  const noise = Math.min(wanted * beside, Math.sqrt((MOST_NOISE * power) / noises));
  // string² · strings + 2 · string · noise · both + noise² · noises = power
  const middle = (noise * both) / strings;
  return { string: Math.sqrt(middle ** 2 + (power - noise ** 2 * noises) / strings) - middle, attack: noise };
}

/** Loose fingers: an envelope to −60 dB over `DEAD_SECONDS`, silence after six times as long. */
function deaden(samples: Float64Array, sampleRate: number): void {
  const step = 10 ** (-3 / (DEAD_SECONDS * sampleRate));
  const silent = Math.min(samples.length, Math.round(6 * DEAD_SECONDS * sampleRate));
  let gain = 1;
  for (let n = 0; n < silent; n++) {
    samples[n] = (samples[n] ?? 0) * gain;
    gain *= step;
  }
  samples.fill(0, silent);
  // Half a swing of a low string, cut off by the envelope, would leave direct current.
  samples.set(filtered(samples.subarray(0, silent), highPass(DEAD_FROM_HZ, Math.SQRT1_2, sampleRate)));
}

/** The samples `gain` times, with the rise of the attack and the fade at the end. */
function shaped(samples: Float64Array, gain: number, sampleRate: number): Float32Array {
  const out = new Float32Array(samples.length);
  for (let n = 0; n < out.length; n++) out[n] = (samples[n] ?? 0) * gain;
  const attack = Math.min(out.length, Math.ceil(ATTACK_SECONDS * sampleRate));
  for (let n = 0; n < attack; n++) out[n] = ((out[n] ?? 0) * (n + 1)) / (attack + 1);
  const fade = Math.floor(Math.min(FADE_SECONDS * sampleRate, out.length / 2));
  for (let left = 0; left < fade; left++) {
    const n = out.length - 1 - left;
    out[n] = ((out[n] ?? 0) * left) / fade;
  }
  return out;
}

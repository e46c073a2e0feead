import type { BassNote } from '../perform.ts';
import { midiFrequency } from '../pitch.ts';
import { dampingFilter } from './decay.ts';
import { loopDelay } from './fractional-delay.ts';
import { STEEL, type Instrument } from './instrument.ts';
import { kWeighted, meanSquare } from './loudness.ts';
import { ACCENT_DB } from './plucked-string.ts';
import { addFiltered, bandPass } from './second-order.ts';
import { addRinging } from './string-loop.ts';

/** Lowest and highest MIDI note that the bass guitar plays: its open E, and an octave and a half up the highest string. */
const RANGE = [28, 60] as const;

/** Corner of the finger's low-pass for heavy, medium and light: a soft fingertip is round. */
const FINGER_HZ = { 3: 1300, 2: 950, 1: 700 } as const;

/** Where the finger plucks, as a share of the string's length from the bridge. */
const FINGER_POSITION = 0.21;

/** Seconds to −60 dB of the fundamental on the open low string, and of the partials near 4 kHz; shorter up the neck. */
const RINGING_SECONDS = 5;
const BRIGHT_SECONDS = 0.5;

/** K-weighted level of a heavy note over its first moment: beside a full strum, under it. */
const LEVEL = 0.08;
const LEVEL_SECONDS = 0.15;

const ATTACK_SECONDS = 0.0004;
const FADE_SECONDS = 0.03;

/**
 * What a small speaker gets: more of the harmonics that lie in the lowest band which it plays well, and a brighter finger. The ear finds
 * the note under them; a linear filter leaves its tuning alone.
 */
const PLAYED_BAND = { hertz: 290, q: 0.8, gain: 2.6 } as const;
const SMALL_SPEAKER_BRIGHTER = 3;

/**
 * A round electric bass as mono samples, starting with its onset: a string loop in tune within a cent, plucked by a finger. The
 * same input gives the same samples; `seconds` is their length. RangeError for a note outside the range of a bass guitar, 28 to 60.
 */
export function renderBass(
  { midi, accent }: Pick<BassNote, 'midi' | 'accent'>,
  options: { readonly seconds: number; readonly sampleRate: number; readonly instrument?: Instrument },
): Float32Array {
  const { seconds, sampleRate, instrument = STEEL } = options;
  const [lowest, highest] = RANGE;
  if (!(midi >= lowest && midi <= highest))
    throw new RangeError(`A bass guitar plays the MIDI notes ${lowest} to ${highest}, not ${midi}.`);
  const frequency = (midiFrequency(midi) * instrument.pitch) / STEEL.pitch;
  const length = Math.max(1, Math.round(seconds * sampleRate));
  const levelSamples = Math.round(LEVEL_SECONDS * sampleRate);
  const samples = new Float64Array(Math.max(length, levelSamples));
  const higher = 0.75 ** ((midi - lowest) / 12);
  const decay = { low: RINGING_SECONDS * higher, high: BRIGHT_SECONDS * higher };
  const brightness = FINGER_HZ[accent] * (instrument.smallSpeaker ? SMALL_SPEAKER_BRIGHTER : 1);
  addRinging(samples, fingerPluck(frequency, brightness, sampleRate), 1, {
    ...loopDelay(frequency, sampleRate),
    ...dampingFilter(decay, frequency, sampleRate),
  });
  if (instrument.smallSpeaker) {
    const { hertz, q, gain } = PLAYED_BAND;
    addFiltered(samples, samples.slice(), bandPass(hertz, q, sampleRate), gain);
  }
  const loudness = Math.sqrt(meanSquare(kWeighted(samples.subarray(0, levelSamples), sampleRate), 0, levelSamples));
  const factor = (LEVEL * 10 ** (ACCENT_DB[accent] / 20)) / loudness;
  const attack = ATTACK_SECONDS * sampleRate;
  const fade = Math.min(FADE_SECONDS * sampleRate, length / 2);
  return Float32Array.from(samples.subarray(0, length), (sample, n) => {
    const rise = n < attack ? (n + 1) / (attack + 1) : 1;
    return sample * factor * rise * Math.min(1, (length - 1 - n) / fade);
  });
}

/**
 * One period of a string let go by a finger: high for the share that lies between finger and bridge, low for the rest, rounded off
 * twice. Its sum is zero, so that the string carries no direct current.
 */
function fingerPluck(frequency: number, cornerHz: number, sampleRate: number): Float64Array {
  const period = sampleRate / frequency;
  const high = FINGER_POSITION * period;
  const soft = 1 - Math.exp((-2 * Math.PI * cornerHz) / sampleRate);
  let first = 0;
  let second = 0;
  const out = Float64Array.from({ length: Math.ceil(2 * period) }, (_, n) => {
    const covered = (end: number) => Math.min(1, Math.max(0, end - n));
    const force = covered(high) - FINGER_POSITION * covered(period);
    first += soft * (force - first);
    second += soft * (first - second);
    return second;
  });
  const rest = out.reduce((sum, value) => sum + value, 0) / out.length;
  return out.map((value) => value - rest);
}

import { STANDARD_TUNING } from '../neck/tunings.ts';
import { midiFrequency } from '../pitch.ts';
import { STEEL, type Instrument } from './instrument.ts';
import { limit } from './limiter.ts';
import { matchingGain } from './mix.ts';
import { renderString } from './plucked-string.ts';
import { bandPass, filtered, highPass } from './second-order.ts';

/** Seconds that a tone to tune by lasts, and in which it comes and goes. */
const TONE_SECONDS = 4;
const COMES_SECONDS = 0.04;
const GOES_SECONDS = 0.3;

/** Partials of a tone to tune by, and how they fall with their number: clear, and not sharp. */
const PARTIALS = 8;
const SOFTNESS = 1.25;

/** The two notes of the bass check, and the rest between them, in seconds. */
const CHECK_SECONDS = 2;
const REST_SECONDS = 0.5;

/** Quality factors of the three sections of a sixth-order Butterworth filter. */
const BUTTERWORTH_SIX = [0.5176, Math.SQRT1_2, 1.9319] as const;

/** The A of the class's pitch to tune by: four steady seconds, as loud as a vamp. Mono samples. */
export function referenceTone({ pitch }: Pick<Instrument, 'pitch'>, sampleRate: number): Float32Array {
  return steadyTone(pitch, sampleRate);
}

/**
 * The pitch of an open string, 1 (high E) to 6 (low E), under the class's pitch: four steady seconds, as loud as a vamp. Throws
 * `RangeError` for a string that a guitar has not.
 */
export function openStringTone(string: number, { pitch }: Pick<Instrument, 'pitch'>, sampleRate: number): Float32Array {
  const midi = STANDARD_TUNING[6 - string];
  if (midi === undefined) throw new RangeError(`A guitar has the strings 1 to 6, not ${string}.`);
  return steadyTone(midiFrequency(midi) * (pitch / STEEL.pitch), sampleRate);
}

/**
 * The low E of the guitar as it is, half a second of rest, and the same string without its fundamental, as loud: a speaker on which both
 * sound alike has lost the bass. The switch for small speakers does not touch it. Mono samples, 4.5 s.
 */
export function bassCheck(instrument: Instrument, sampleRate: number): Float32Array {
  const whole = renderString(
    { midi: STANDARD_TUNING[0], string: 6, fret: 0, touch: 'open', accent: 3, stroke: 'down' },
    { seconds: CHECK_SECONDS, sampleRate, seed: 6, instrument: { ...instrument, smallSpeaker: false } },
  );
  const fundamental = midiFrequency(STANDARD_TUNING[0]) * (instrument.pitch / STEEL.pitch);
  const rest = Math.round(REST_SECONDS * sampleRate);
  const out = new Float32Array(2 * whole.length + rest);
  out.set(asLoud(whole, sampleRate));
  out.set(asLoud(withoutFundamental(whole, fundamental, sampleRate), sampleRate), whole.length + rest);
  limit(out, sampleRate);
  return out;
}

/** A notch on the fundamental, and what lies under one and a half times it cut off. */
function withoutFundamental(samples: Float32Array, hertz: number, sampleRate: number): Float32Array {
  const high = BUTTERWORTH_SIX.reduce<Float64Array>(
    (left, q) => filtered(left, highPass(hertz * 1.5, q, sampleRate)),
    Float64Array.from(samples),
  );
  const notched = filtered(high, bandPass(hertz, 2, sampleRate));
  return Float32Array.from(high, (sample, n) => sample - (notched[n] ?? 0));
}

function steadyTone(hertz: number, sampleRate: number): Float32Array {
  const length = Math.round(TONE_SECONDS * sampleRate);
  const tone = Float32Array.from({ length }, (_, n) => {
    let sum = 0;
    for (let partial = 1; partial <= PARTIALS; partial++) {
      sum += Math.sin((2 * Math.PI * partial * hertz * n) / sampleRate) / partial ** SOFTNESS;
    }
    const comes = Math.min(1, n / (COMES_SECONDS * sampleRate));
    const goes = Math.min(1, (length - 1 - n) / (GOES_SECONDS * sampleRate));
    return sum * comes * goes;
  });
  return asLoud(tone, sampleRate);
}

function asLoud(samples: Float32Array, sampleRate: number): Float32Array {
  const gain = matchingGain(samples, sampleRate);
  return samples.map((sample) => sample * gain);
}

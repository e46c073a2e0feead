import { seededRandom } from '../random.ts';
import { kWeighted, meanSquare } from './loudness.ts';
import { SPOKEN_NUMBERS, SPOKEN_SECONDS, type Moment } from './spoken-numbers.ts';
import { countInTick } from './tick.ts';

/** Bandwidths of formants one to three, and two more that belong to the length of a throat, in hertz. */
const BANDWIDTHS = [70, 95, 130] as const;
const HIGHER_FORMANTS = [
  { hertz: 3400, bandwidth: 240 },
  { hertz: 3900, bandwidth: 300 },
] as const;

/** Hertz of the voice where it begins and ends: half sung, higher on one. */
const PITCH = { accented: [196, 165], other: [165, 139] } as const;

/** Share of a period in which the throat is open, and in which it closes. */
const OPENING = 0.4;
const CLOSING = 0.16;

/** Breath beside the voice, whose pulses the throat softens much more than the mouth does the breath. */
const BREATH = 3.5;

/** Two sounds are as loud as each other where their loudest stretches of this length are. */
const LOUDNESS_SECONDS = 0.03;

const ATTACK_SECONDS = 0.0004;
const FADE_SECONDS = 0.03;

/**
 * A number of the count-in, half sung by a voice: a source of pulses through the formants of its vowels, and breath for its
 * consonants, as loud as the tick. Mono samples of 0.28 s that begin with their onset. Throws `RangeError` for a number that no meter
 * counts.
 */
export function countInVoice(number: number, accented: boolean, sampleRate: number): Float32Array {
  const moments = SPOKEN_NUMBERS[number - 1];
  if (!moments) throw new RangeError(`A count-in counts 1 to ${SPOKEN_NUMBERS.length}, not ${number}.`);
  const samples = speak(moments, PITCH[accented ? 'accented' : 'other'], number, sampleRate);
  const gain = Math.sqrt(loudest(countInTick(accented, sampleRate), sampleRate) / loudest(samples, sampleRate));
  return samples.map((sample) => sample * gain);
}

/** Highest K-weighted mean square of any `LOUDNESS_SECONDS`. */
function loudest(samples: Float32Array, sampleRate: number): number {
  const weighted = kWeighted(samples, sampleRate);
  const length = Math.round(LOUDNESS_SECONDS * sampleRate);
  let most = 0;
  for (let from = 0; from + length <= weighted.length; from += Math.round(length / 6)) {
    most = Math.max(most, meanSquare(weighted, from, from + length));
  }
  return most;
}

function speak(
  moments: readonly Moment[],
  [first, last]: readonly [number, number],
  seed: number,
  sampleRate: number,
): Float32Array {
  const chance = seededRandom(seed, 'breath');
  const throat = [...BANDWIDTHS, ...HIGHER_FORMANTS].map(() => resonator(sampleRate));
  const mouth = breathBand(sampleRate);
  const attack = ATTACK_SECONDS * sampleRate;
  const fade = FADE_SECONDS * sampleRate;
  let phase = OPENING;
  return Float32Array.from({ length: Math.round(SPOKEN_SECONDS * sampleRate) }, (_, n) => {
    const time = n / sampleRate;
    const now = momentAt(moments, time);
    phase = (phase + (first + ((last - first) * time) / SPOKEN_SECONDS) / sampleRate) % 1;
    let voice = pulse(phase) * now.voice;
    throat.forEach((through, index) => {
      const formant = now.formants[index];
      const higher = HIGHER_FORMANTS[index - BANDWIDTHS.length];
      voice = through(voice, formant ?? higher?.hertz ?? 0, BANDWIDTHS[index] ?? higher?.bandwidth ?? 1);
    });
    const breath = now.breath * mouth(2 * chance() - 1, now.low, now.high);
    const rise = n < attack ? (n + 1) / (attack + 1) : 1;
    const end = SPOKEN_SECONDS * sampleRate - 1 - n;
    return (voice + BREATH * breath) * rise * Math.max(0, Math.min(1, end / fade));
  });
}

/** Everything about the number at a time, between the two moments next to it. */
function momentAt(moments: readonly Moment[], time: number): Moment {
  const next = moments.findIndex(({ at }) => at > time);
  const to = moments.at(next);
  const from = moments[Math.max(0, next < 0 ? moments.length - 1 : next - 1)] ?? to;
  if (!from || !to) throw new RangeError('A spoken number has moments.');
  const share = to.at > from.at ? Math.min(1, (time - from.at) / (to.at - from.at)) : 0;
  const between = (one: number, other: number) => one + share * (other - one);
  return {
    at: time,
    formants: [
      between(from.formants[0], to.formants[0]),
      between(from.formants[1], to.formants[1]),
      between(from.formants[2], to.formants[2]),
    ],
    voice: between(from.voice, to.voice),
    breath: between(from.breath, to.breath),
    low: from.low,
    high: from.high,
  };
}

/**
 * The change of the air's flow through the throat over one period, from its opening on: A. E. Rosenberg, "Effect of glottal pulse
 * shape on the quality of natural vowels" (1971). Its sum over a period is zero.
 */
function pulse(phase: number): number {
  if (phase < OPENING) return Math.sin((Math.PI * phase) / OPENING) * (CLOSING / OPENING);
  const closing = (phase - OPENING) / CLOSING;
  return closing < 1 ? -Math.sin(Math.PI * closing) : 0;
}

/** A resonator of gain one at zero frequency whose place may move from sample to sample. */
function resonator(sampleRate: number): (input: number, hertz: number, bandwidth: number) => number {
  let y1 = 0;
  let y2 = 0;
  return (input, hertz, bandwidth) => {
    const radius = Math.exp((-Math.PI * bandwidth) / sampleRate);
    const b = 2 * radius * Math.cos((2 * Math.PI * hertz) / sampleRate);
    const c = -radius * radius;
    const output = (1 - b - c) * input + b * y1 + c * y2;
    y2 = y1;
    y1 = output;
    return output;
  };
}

/** A band whose ends may move from sample to sample: two first-order sections at either end. */
function breathBand(sampleRate: number): (input: number, low: number, high: number) => number {
  const highs = [0, 0];
  const lows = [0, 0];
  return (input, low, high) => {
    const open = 1 - Math.exp((-2 * Math.PI * high) / sampleRate);
    const shut = 1 - Math.exp((-2 * Math.PI * low) / sampleRate);
    let value = input;
    for (let order = 0; order < 2; order++) {
      const kept = (highs[order] ?? 0) + open * (value - (highs[order] ?? 0));
      const below = (lows[order] ?? 0) + shut * (kept - (lows[order] ?? 0));
      highs[order] = kept;
      lows[order] = below;
      value = kept - below;
    }
    return value;
  };
}

import { seededRandom } from '../random.ts';
import { remembered } from '../remembered.ts';
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

/** The mouth moves in steps of this, far shorter than the ear tells. */
const STEP_SECONDS = 0.0005;

/** Few numbers are counted, over and over. */
const known = new Map<string, Float32Array>();

/**
 * A number of the count-in, half sung by a voice: a source of pulses through the formants of its vowels, and breath for its
 * consonants, as loud as the tick. Mono samples of 0.28 s that begin with their onset; the same array each time, not to be changed. Throws
 * `RangeError` for a number that no meter counts.
 */
export function countInVoice(number: number, accented: boolean, sampleRate: number): Float32Array {
  const moments = SPOKEN_NUMBERS[number - 1];
  if (!moments) throw new RangeError(`A count-in counts 1 to ${SPOKEN_NUMBERS.length}, not ${number}.`);
  return remembered(known, `${number} ${accented} ${sampleRate}`, () => {
    const samples = speak(moments, PITCH[accented ? 'accented' : 'other'], number, sampleRate);
    const gain = Math.sqrt(loudest(countInTick(accented, sampleRate), sampleRate) / loudest(samples, sampleRate));
    return samples.map((sample) => sample * gain);
  });
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
  const out = new Float32Array(Math.round(SPOKEN_SECONDS * sampleRate));
  const attack = ATTACK_SECONDS * sampleRate;
  const fade = FADE_SECONDS * sampleRate;
  const step = Math.round(STEP_SECONDS * sampleRate);
  let phase = OPENING;
  for (let from = 0; from < out.length; from += step) {
    const time = from / sampleRate;
    const now = momentAt(moments, time);
    throat.forEach(({ tune }, index) => {
      const higher = HIGHER_FORMANTS[index - BANDWIDTHS.length];
      tune(now.formants[index] ?? higher?.hertz ?? 0, BANDWIDTHS[index] ?? higher?.bandwidth ?? 1);
    });
    mouth.tune(now.low, now.high);
    const turn = (first + ((last - first) * time) / SPOKEN_SECONDS) / sampleRate;
    for (let n = from; n < Math.min(from + step, out.length); n++) {
      phase = (phase + turn) % 1;
      let voice = pulse(phase) * now.voice;
      for (const { through } of throat) voice = through(voice);
      const breath = now.breath * mouth.through(2 * chance() - 1);
      const rise = n < attack ? (n + 1) / (attack + 1) : 1;
      out[n] = (voice + BREATH * breath) * rise * Math.min(1, (out.length - 1 - n) / fade);
    }
  }
  return out;
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

/** A filter that is tuned again and again while sound goes through it, sample by sample. */
type Moving = {
  readonly tune: (first: number, second: number) => void;
  readonly through: (input: number) => number;
};

/** A resonator of gain one at zero frequency, tuned to a frequency and a bandwidth in hertz. */
function resonator(sampleRate: number): Moving {
  let [b, c, y1, y2] = [0, 0, 0, 0];
  return {
    tune: (hertz, bandwidth) => {
      const radius = Math.exp((-Math.PI * bandwidth) / sampleRate);
      b = 2 * radius * Math.cos((2 * Math.PI * hertz) / sampleRate);
      c = -radius * radius;
    },
    through: (input) => {
      const output = (1 - b - c) * input + b * y1 + c * y2;
      y2 = y1;
      y1 = output;
      return output;
    },
  };
}

/** A band between two frequencies in hertz: two first-order sections at either end. */
function breathBand(sampleRate: number): Moving {
  const highs = [0, 0];
  const lows = [0, 0];
  let [open, shut] = [0, 0];
  return {
    tune: (low, high) => {
      open = 1 - Math.exp((-2 * Math.PI * high) / sampleRate);
      shut = 1 - Math.exp((-2 * Math.PI * low) / sampleRate);
    },
    through: (input) => {
      let value = input;
      for (let order = 0; order < 2; order++) {
        const kept = (highs[order] ?? 0) + open * (value - (highs[order] ?? 0));
        const below = (lows[order] ?? 0) + shut * (kept - (lows[order] ?? 0));
        highs[order] = kept;
        lows[order] = below;
        value = kept - below;
      }
      return value;
    },
  };
}

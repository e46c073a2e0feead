import type { KitPiece, KitStrike } from '../perform.ts';
import { seededRandom } from '../random.ts';
import { kWeighted, meanSquare } from './loudness.ts';
import { ACCENT_DB } from './plucked-string.ts';

/** A sine of a struck skin or plate: hertz at first and in the end, share of the whole, seconds to −60 dB. */
type Mode = { readonly from: number; readonly to: number; readonly share: number; readonly seconds: number };

/** Noise between two frequencies in hertz: share of the whole, seconds to −60 dB. */
type Noise = { readonly low: number; readonly high: number; readonly share: number; readonly seconds: number };

type Piece = {
  readonly seconds: number;
  /** Seconds in which a skin's pitch falls to a third of the way. */
  readonly drop: number;
  readonly modes: readonly Mode[];
  readonly noises: readonly Noise[];
  /** K-weighted level of a heavy stroke over its first moment: light, beside a guitar. */
  readonly level: number;
};

/**
 * Light strokes of brushes and a soft beater. The modes of a round skin stand as 1 : 1.59 : 2.14 (Fletcher and Rossing, "The Physics of
 * Musical Instruments"); a plate has no such order.
 */
const PIECES: Readonly<Record<KitPiece, Piece>> = {
  kick: {
    seconds: 0.4,
    drop: 0.022,
    modes: [
      { from: 150, to: 54, share: 1, seconds: 0.38 },
      { from: 240, to: 86, share: 0.25, seconds: 0.12 },
    ],
    // The beater, which a small speaker plays where it has lost the skin.
    noises: [{ low: 900, high: 3200, share: 0.5, seconds: 0.02 }],
    level: 0.1,
  },
  snare: {
    seconds: 0.32,
    drop: 0.012,
    modes: [
      { from: 230, to: 186, share: 0.6, seconds: 0.16 },
      { from: 366, to: 296, share: 0.35, seconds: 0.1 },
      { from: 492, to: 398, share: 0.2, seconds: 0.07 },
    ],
    noises: [{ low: 1400, high: 7500, share: 1.1, seconds: 0.26 }],
    level: 0.075,
  },
  'closed-hat': {
    seconds: 0.14,
    drop: 0.01,
    modes: [
      { from: 5210, to: 5210, share: 0.12, seconds: 0.06 },
      { from: 7340, to: 7340, share: 0.12, seconds: 0.05 },
    ],
    noises: [{ low: 5800, high: 13_000, share: 1, seconds: 0.085 }],
    level: 0.035,
  },
  'open-hat': {
    seconds: 1,
    drop: 0.01,
    modes: [
      { from: 5210, to: 5210, share: 0.08, seconds: 0.8 },
      { from: 7340, to: 7340, share: 0.08, seconds: 0.7 },
      { from: 8930, to: 8930, share: 0.06, seconds: 0.6 },
    ],
    noises: [{ low: 5200, high: 13_000, share: 1, seconds: 0.9 }],
    level: 0.038,
  },
};

/** A lighter stroke is duller: the upper end of its noise, as a share. */
const BRIGHTNESS = { 3: 1, 2: 0.85, 1: 0.7 } as const;

const LEVEL_SECONDS = 0.08;
const ATTACK_SECONDS = 0.0003;
const FADE_SECONDS = 0.02;

/**
 * One stroke on the kit as mono samples, starting with its onset: modes of skins whose pitch falls, and bands of noise. The same input
 * gives the same samples; `seed` changes the noise only.
 */
export function renderKit(
  { piece, accent }: Pick<KitStrike, 'piece' | 'accent'>,
  { sampleRate, seed }: { readonly sampleRate: number; readonly seed: number },
): Float32Array {
  const { seconds, drop, modes, noises, level } = PIECES[piece];
  const samples = new Float64Array(Math.round(seconds * sampleRate));
  for (const mode of modes) addMode(samples, mode, drop, sampleRate);
  for (const noise of noises) {
    addNoise(samples, { ...noise, high: noise.high * BRIGHTNESS[accent] }, sampleRate, seed);
  }
  const attack = ATTACK_SECONDS * sampleRate;
  const fade = FADE_SECONDS * sampleRate;
  for (let n = 0; n < samples.length; n++) {
    const rise = n < attack ? (n + 1) / (attack + 1) : 1;
    samples[n] = (samples[n] ?? 0) * rise * Math.min(1, (samples.length - 1 - n) / fade);
  }
  withoutDirectCurrent(samples);
  const first = Math.round(LEVEL_SECONDS * sampleRate);
  const loudness = Math.sqrt(meanSquare(kWeighted(samples.subarray(0, first), sampleRate), 0, first));
  const gain = (level * 10 ** (ACCENT_DB[accent] / 20)) / loudness;
  return Float32Array.from(samples, (sample) => sample * gain);
}

/** Adds a decaying sine whose pitch falls; one that lies too near half the sampling rate is left out. */
function addMode(samples: Float64Array, { from, to, share, seconds }: Mode, drop: number, sampleRate: number): void {
  if (from > 0.45 * sampleRate) return;
  const fall = Math.exp(-1 / (drop * sampleRate));
  const decay = 10 ** (-3 / (seconds * sampleRate));
  let above = from - to;
  let phase = 0;
  let size = share;
  for (let n = 0; n < samples.length; n++) {
    samples[n] = (samples[n] ?? 0) + size * Math.sin(phase);
    phase += (2 * Math.PI * (to + above)) / sampleRate;
    above *= fall;
    size *= decay;
  }
}

/** Adds decaying noise between two frequencies: two first-order sections at either end. */
function addNoise(samples: Float64Array, { low, high, share, seconds }: Noise, sampleRate: number, seed: number): void {
  const chance = seededRandom(seed, 'kit noise');
  const open = 1 - Math.exp((-2 * Math.PI * Math.min(high, 0.45 * sampleRate)) / sampleRate);
  const shut = 1 - Math.exp((-2 * Math.PI * low) / sampleRate);
  const decay = 10 ** (-3 / (seconds * sampleRate));
  const highs = [0, 0];
  const lows = [0, 0];
  let size = share;
  for (let n = 0; n < samples.length; n++) {
    let value = 2 * chance() - 1;
    for (let order = 0; order < 2; order++) {
      const kept = (highs[order] ?? 0) + open * (value - (highs[order] ?? 0));
      const below = (lows[order] ?? 0) + shut * (kept - (lows[order] ?? 0));
      highs[order] = kept;
      lows[order] = below;
      value = kept - below;
    }
    samples[n] = (samples[n] ?? 0) + size * value;
    size *= decay;
  }
}

/** Takes the mean out of a sound by an arch over its whole length, which leaves both ends where they are. */
function withoutDirectCurrent(samples: Float64Array): void {
  const sum = samples.reduce((total, sample) => total + sample, 0);
  const arch = (n: number) => 0.5 - 0.5 * Math.cos((2 * Math.PI * n) / (samples.length - 1));
  const whole = (samples.length - 1) / 2;
  for (let n = 0; n < samples.length; n++) samples[n] = (samples[n] ?? 0) - (sum * arch(n)) / whole;
}

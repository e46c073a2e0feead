import { seededRandom } from '../random.ts';

/** Heard as one flick with the string: over before twenty milliseconds are. */
const SECONDS = 0.02;
const FALL_SECONDS = 0.006;

/** Over this the flick has a root mean square of one. */
const LEVEL_SECONDS = 0.01;

export type AttackBand = { readonly low: number; readonly high: number };

/**
 * The flick of a pick, nail or fingertip over a string, beside the string's own motion: 20 ms of noise between two
 * frequencies in hertz, with a root mean square of one over its first 10 ms.
 */
export function pickAttack({ low, high }: AttackBand, sampleRate: number, seed: number): Float64Array {
  const chance = seededRandom(seed, 'pick attack');
  const burst = new Float64Array(Math.round(SECONDS * sampleRate));
  const open = 1 - Math.exp((-2 * Math.PI * high) / sampleRate);
  const shut = 1 - Math.exp((-2 * Math.PI * low) / sampleRate);
  let high1 = 0;
  let low1 = 0;
  let high2 = 0;
  let low2 = 0;
  for (let n = 0; n < burst.length; n++) {
    // Two first-order sections each way: twelve decibels an octave off the band.
    high1 += open * (2 * chance() - 1 - high1);
    low1 += shut * (high1 - low1);
    high2 += open * (high1 - low1 - high2);
    low2 += shut * (high2 - low2);
    burst[n] = (high2 - low2) * Math.exp(-n / (FALL_SECONDS * sampleRate)) * (1 - n / burst.length);
  }
  const half = burst.subarray(0, Math.round(LEVEL_SECONDS * sampleRate));
  const size = Math.sqrt(half.reduce((sum, value) => sum + value * value, 0) / half.length);
  return burst.map((value) => value / size);
}

import { seededRandom } from '../random.ts';

/** The scrape of a pick's edge over a string lies here; below it would blur the bass, above it would hiss. */
const LOWEST_HZ = 1400;
const HIGHEST_HZ = 5000;

/** Heard as one flick with the string: over before twenty milliseconds are. */
const SECONDS = 0.02;
const FALL_SECONDS = 0.006;

/**
 * The bright flick of a pick over a string, beside the string's own motion: noise of 20 ms with a root
 * mean square of one over its first 10 ms. Adds it to `samples` in place, `level` times, without a jump.
 */
export function addPickAttack(samples: Float64Array, level: number, sampleRate: number, seed: number): void {
  const length = Math.min(samples.length, Math.round(SECONDS * sampleRate));
  const chance = seededRandom(seed, 'pick attack');
  const burst = new Float64Array(Math.round(SECONDS * sampleRate));
  const open = 1 - Math.exp((-2 * Math.PI * HIGHEST_HZ) / sampleRate);
  const shut = 1 - Math.exp((-2 * Math.PI * LOWEST_HZ) / sampleRate);
  const highs = [0, 0];
  const lows = [0, 0];
  for (let n = 0; n < burst.length; n++) {
    let value = 2 * chance() - 1;
    // Two first-order sections each way: twelve decibels an octave off the band.
    for (let order = 0; order < 2; order++) {
      const high = (highs[order] ?? 0) + open * (value - (highs[order] ?? 0));
      const low = (lows[order] ?? 0) + shut * (high - (lows[order] ?? 0));
      highs[order] = high;
      lows[order] = low;
      value = high - low;
    }
    const left = 1 - n / burst.length;
    burst[n] = value * Math.exp(-n / (FALL_SECONDS * sampleRate)) * left;
  }
  const half = burst.subarray(0, Math.round(0.01 * sampleRate));
  const size = Math.sqrt(half.reduce((sum, value) => sum + value * value, 0) / half.length);
  for (let n = 0; n < length; n++) samples[n] = (samples[n] ?? 0) + ((burst[n] ?? 0) * level) / size;
}

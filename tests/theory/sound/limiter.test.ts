import { describe, expect, test } from 'vitest';
import { limit } from '../../../shared-theory/sound/limiter.ts';
import { peak } from './estimate.ts';

const RATE = 44100;
const CEILING = 10 ** (-1 / 20);

function quiet(): Float32Array {
  return Float32Array.from({ length: RATE }, (_, n) => 0.4 * Math.sin((2 * Math.PI * 200 * n) / RATE));
}

function limited(samples: Float32Array): Float32Array {
  const out = samples.slice();
  limit(out, RATE);
  return out;
}

describe('limiter', () => {
  test('a peak is held under −1 dBFS', () => {
    const samples = quiet();
    for (let n = 20000; n < 20050; n++) samples[n] = n % 2 === 0 ? 2.5 : -1.7;
    expect(peak(limited(samples))).toBeLessThan(CEILING);
    expect(peak(limited(samples))).toBeGreaterThan(CEILING * 0.95);
  });

  test('also where the sound begins with its peak', () => {
    const samples = quiet();
    for (let n = 0; n < 30; n++) samples[n] = 1.5;
    expect(peak(limited(samples))).toBeLessThan(CEILING);
  });

  test('nothing changes more than a millisecond before a peak, nor long after', () => {
    const samples = quiet();
    samples[20000] = 3;
    const out = limited(samples);
    const first = out.findIndex((sample, n) => sample !== samples[n]);
    expect(first).toBeGreaterThan(20000 - 0.001 * RATE);
    expect(first).toBeLessThanOrEqual(20000);
    const late = Math.round(20000 + 0.6 * RATE);
    for (let n = late; n < out.length; n++) expect(Math.abs((out[n] ?? 0) - (samples[n] ?? 0))).toBeLessThan(1e-3);
  });

  test('the gain moves without a step: no click on a sine', () => {
    const samples = quiet();
    for (let n = 20000; n < 20400; n++) samples[n] = (samples[n] ?? 0) * 4;
    const out = limited(samples);
    let largest = 0;
    for (let n = 1; n < out.length; n++) {
      if (Math.abs(samples[n] ?? 0) < 0.05 || Math.abs(samples[n - 1] ?? 0) < 0.05) continue;
      const gain = (at: number) => (out[at] ?? 0) / (samples[at] ?? 1);
      largest = Math.max(largest, Math.abs(gain(n) - gain(n - 1)));
    }
    expect(largest).toBeLessThan(0.03);
  });

  test('what stays under the ceiling is left as it is', () => {
    expect(limited(quiet())).toEqual(quiet());
    expect(limited(new Float32Array(0))).toHaveLength(0);
  });
});

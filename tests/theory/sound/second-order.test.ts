import { describe, expect, test } from 'vitest';
import {
  addFiltered,
  bandPass,
  filtered,
  highPass,
  lowPass,
  type SecondOrder,
} from '../../../shared-theory/sound/second-order.ts';
import { decibels } from './estimate.ts';

const RATE = 44100;

/** Gain in decibels at one frequency, by the section's answer to a pulse. */
function gainAt(section: SecondOrder, hertz: number): number {
  const pulse = new Float64Array(RATE);
  pulse[0] = 1;
  let real = 0;
  let imaginary = 0;
  for (const [n, value] of filtered(pulse, section).entries()) {
    real += value * Math.cos((2 * Math.PI * hertz * n) / RATE);
    imaginary -= value * Math.sin((2 * Math.PI * hertz * n) / RATE);
  }
  return decibels(Math.hypot(real, imaginary));
}

describe('sections of the second order', () => {
  test('a Butterworth corner is 3 dB down, and an octave past it 12 dB more or so', () => {
    expect(gainAt(lowPass(1000, Math.SQRT1_2, RATE), 1000)).toBeCloseTo(-3.01, 1);
    expect(gainAt(lowPass(1000, Math.SQRT1_2, RATE), 4000)).toBeCloseTo(-24.3, 0);
    expect(gainAt(lowPass(1000, Math.SQRT1_2, RATE), 50)).toBeCloseTo(0, 2);
    expect(gainAt(highPass(200, Math.SQRT1_2, RATE), 200)).toBeCloseTo(-3.01, 1);
    expect(gainAt(highPass(200, Math.SQRT1_2, RATE), 50)).toBeCloseTo(-24.1, 0);
    expect(gainAt(highPass(200, Math.SQRT1_2, RATE), 5000)).toBeCloseTo(0, 2);
  });

  test('a high-pass lets no direct current through; a band-pass is one at its centre', () => {
    expect(gainAt(highPass(60, 1, RATE), 0)).toBeLessThan(-120);
    expect(gainAt(bandPass(300, 4, RATE), 300)).toBeCloseTo(0, 3);
    expect(gainAt(bandPass(300, 4, RATE), 600)).toBeLessThan(-15);
  });

  test('a corner past half the rate is held just within it', () => {
    expect(lowPass(40_000, 0.7, RATE)).toEqual(lowPass(0.45 * RATE, 0.7, RATE));
  });

  test('what is added is the section’s output times the gain', () => {
    const input = Float64Array.from({ length: 50 }, (_, n) => Math.sin(n));
    const section = bandPass(2000, 1, RATE);
    const out = input.slice();
    addFiltered(out, input, section, 0.5);
    const alone = filtered(input, section);
    for (const [n, value] of out.entries()) expect(value).toBeCloseTo((input[n] ?? 0) + 0.5 * (alone[n] ?? 0), 12);
  });
});

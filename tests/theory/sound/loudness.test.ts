import { describe, expect, test } from 'vitest';
import { integratedLoudness, kWeighting } from '../../../shared-theory/sound/loudness.ts';

function sine(hertz: number, amplitude: number, seconds: number, sampleRate: number): Float32Array {
  return Float32Array.from(
    { length: Math.round(seconds * sampleRate) },
    (_, n) => amplitude * Math.sin((2 * Math.PI * hertz * n) / sampleRate),
  );
}

describe('Rec. ITU-R BS.1770-4, annex 1', () => {
  test('coefficients at 48 kHz (tables 1 and 2)', () => {
    const [shelf, pass] = kWeighting(48000);
    const expected = [1.53512485958697, -2.69169618940638, 1.19839281085285, -1.69065929318241, 0.73248077421585];
    [...shelf.b, ...shelf.a].forEach((value, index) => expect(value).toBeCloseTo(expected[index] ?? 0, 8));
    const high = [1, -2, 1, -1.99004745483398, 0.99007225036621];
    [...pass.b, ...pass.a].forEach((value, index) => expect(value).toBeCloseTo(high[index] ?? 0, 8));
  });

  test.each([44100, 48000])('a 997 Hz sine of full scale in one channel is −3.01 LKFS at %i Hz', (sampleRate) => {
    expect(integratedLoudness(sine(997, 1, 3, sampleRate), sampleRate)).toBeCloseTo(-3.01, 1);
  });

  test('silence between two sounds is gated out', () => {
    const tone = sine(997, 0.1, 2, 48000);
    const gapped = new Float32Array(tone.length * 4);
    gapped.set(tone);
    gapped.set(tone, tone.length * 3);
    expect(Math.abs(integratedLoudness(gapped, 48000) - integratedLoudness(tone, 48000))).toBeLessThan(0.6);
  });

  test('silence has no loudness', () => {
    expect(integratedLoudness(new Float32Array(48000), 48000)).toBe(-Infinity);
    expect(integratedLoudness(new Float32Array(0), 48000)).toBe(-Infinity);
  });
});

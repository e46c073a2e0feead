import { describe, expect, test } from 'vitest';
import { STANDARD_TUNING } from '../../../shared-theory/neck.ts';
import { STEEL, VOICES } from '../../../shared-theory/sound/instrument.ts';
import { integratedLoudness } from '../../../shared-theory/sound/loudness.ts';
import { TARGET_LUFS } from '../../../shared-theory/sound/mix.ts';
import { bassCheck, openStringTone, referenceTone } from '../../../shared-theory/sound/tones.ts';
import { decibels, level, partial, peak } from './estimate.ts';

const RATES = [44100, 48000];

/** Cents off by the phase of the fundamental over three seconds. */
function centsOff(samples: Float32Array, sampleRate: number, hertz: number): number {
  const early = partial(samples, sampleRate, hertz, 0.2, 0.3).phase;
  const hop = Math.round(0.5 * sampleRate) / sampleRate;
  const late = partial(samples, sampleRate, hertz, 0.2 + 5 * hop, 0.3).phase;
  const turned = late - early - 2 * Math.PI * Math.round((late - early) / (2 * Math.PI));
  return 1200 * Math.log2(1 + turned / (2 * Math.PI * 5 * hop * hertz));
}

describe.each(RATES)('tones to tune by at %i Hz', (rate) => {
  test.each([415, 440, 442, 466])(
    'the A at %i Hz: in tune within a tenth of a cent, steady for four seconds',
    (pitch) => {
      const tone = referenceTone({ ...STEEL, pitch }, rate);
      expect(tone).toHaveLength(4 * rate);
      expect(Math.abs(centsOff(tone, rate, pitch))).toBeLessThan(0.1);
      expect(Math.abs(integratedLoudness(tone, rate) - TARGET_LUFS)).toBeLessThan(0.1);
      const levels = [0.1, 1, 2, 3.4].map((from) => decibels(level(tone, rate, from, from + 0.2)));
      expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(0.1);
      expect(peak(tone)).toBeLessThan(0.5);
      expect([tone[0], tone.at(-1)].map((sample) => Math.abs(sample ?? 1))).toEqual([0, 0]);
    },
  );
});

test.each([1, 2, 3, 4, 5, 6])('open string %i under the class’s pitch', (string) => {
  const hertz = 432 * 2 ** (((STANDARD_TUNING[6 - string] ?? 0) - 69) / 12);
  const tone = openStringTone(string, { ...STEEL, pitch: 432 }, 44100);
  expect(Math.abs(centsOff(tone, 44100, hertz))).toBeLessThan(0.1);
  const at = (times: number) => partial(tone, 44100, times * hertz, 1, 0.5).amplitude;
  expect(at(1)).toBeGreaterThan(at(2));
});

test('the open strings are those of the guitar (common practice): 82.41, 110, 146.83, 196, 246.94 and 329.63 Hz', () => {
  const usual = [329.63, 246.94, 196, 146.83, 110, 82.41];
  for (const [index, hertz] of usual.entries()) {
    expect(Math.abs(centsOff(openStringTone(index + 1, STEEL, 44100), 44100, hertz))).toBeLessThan(0.15);
  }
});

test.each([0, 7, 1.5, Number.NaN])('a guitar has no string %d', (string) => {
  expect(() => openStringTone(string, STEEL, 44100)).toThrow(RangeError);
});

describe('the bass check', () => {
  const cases = [...VOICES.map((voice) => [voice, 44100] as const), ['steel', 48000] as const];

  test.each(cases)(
    'on the %s guitar at %i Hz: the second E has no fundamental, all else, and is as loud',
    (voice, rate) => {
      const instrument = { ...STEEL, voice, pitch: 442 };
      const check = bassCheck(instrument, rate);
      const fundamental = 442 * 2 ** ((40 - 69) / 12);
      const second = 2.5;
      expect(check).toHaveLength(4.5 * rate);
      const at = (from: number, times: number) => partial(check, rate, times * fundamental, from + 0.1, 0.5).amplitude;
      expect(decibels(at(0, 1) / at(second, 1))).toBeGreaterThan(40);
      for (const times of [2, 3, 4, 5]) expect(Math.abs(decibels(at(0, times) / at(second, times)))).toBeLessThan(6);
      const loudness = (from: number) =>
        integratedLoudness(check.subarray(Math.round(from * rate), Math.round((from + 2) * rate)), rate);
      expect(Math.abs(loudness(0) - loudness(second))).toBeLessThan(1);
      expect(level(check, rate, 2.1, 2.4)).toBe(0);
      expect(peak(check)).toBeLessThan(10 ** (-1 / 20));
    },
  );
});

test('the bass check is the same with the switch for small speakers on', () => {
  const small = bassCheck({ ...STEEL, smallSpeaker: true }, 22050);
  const plain = bassCheck(STEEL, 22050);
  expect(small.every((sample, n) => sample === plain[n])).toBe(true);
});

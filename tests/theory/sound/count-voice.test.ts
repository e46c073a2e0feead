import { describe, expect, test } from 'vitest';
import { countInTick, countInVoice } from '../../../shared-theory/sound/clicks.ts';
import { integratedLoudness, kWeighted, meanSquare } from '../../../shared-theory/sound/loudness.ts';
import { TARGET_LUFS } from '../../../shared-theory/sound/mix.ts';
import { SPOKEN_NUMBERS } from '../../../shared-theory/sound/spoken-numbers.ts';
import { band, decibels, level, peak } from './estimate.ts';

const RATE = 44100;
const NUMBERS = SPOKEN_NUMBERS.map((_, index) => index + 1);

/** Highest K-weighted level of 30 ms, in decibels. */
function loudest(samples: Float32Array): number {
  const weighted = kWeighted(samples, RATE);
  const length = Math.round(0.03 * RATE);
  let most = 0;
  for (let from = 0; from + length <= weighted.length; from += 100)
    most = Math.max(most, meanSquare(weighted, from, from + length));
  return 10 * Math.log10(most);
}

test('a count is nearly as loud as the loop that it leads into, one more than the others', () => {
  const counted = (number: number, accented: boolean) => {
    // A gating block of BS.1770 with one beat in it.
    const block = new Float64Array(Math.round(0.4 * RATE));
    for (const part of [countInTick(accented, RATE), countInVoice(number, accented, RATE)]) {
      for (const [n, sample] of part.entries()) block[n] = (block[n] ?? 0) + sample;
    }
    expect(decibels(Math.max(...block.map(Math.abs)))).toBeLessThan(-3);
    return integratedLoudness(block, RATE);
  };
  const one = counted(1, true);
  expect(Math.abs(one - TARGET_LUFS)).toBeLessThan(2);
  for (const number of [2, 3, 4]) {
    expect(TARGET_LUFS - counted(number, false)).toBeLessThan(6);
    expect(one - counted(number, false)).toBeGreaterThan(2);
  }
});

describe.each(NUMBERS)('%i spoken', (number) => {
  test.each([true, false])('accented %s: begins at once, as loud as the tick, and ends in silence', (accented) => {
    const spoken = countInVoice(number, accented, RATE);
    const heard = spoken.findIndex((sample) => Math.abs(sample) > 0.1 * peak(spoken));
    expect(heard / RATE).toBeLessThan(0.001);
    expect(spoken[0]).not.toBe(0);
    expect(Math.abs(loudest(spoken) - loudest(countInTick(accented, RATE)))).toBeLessThan(0.5);
    expect(Math.abs(spoken.at(-1) ?? 1)).toBeLessThan(1e-6);
    expect(spoken.length / RATE).toBeLessThanOrEqual(0.3);
    expect(peak(spoken)).toBeLessThan(0.9);
    const mean = spoken.reduce((sum, sample) => sum + sample, 0) / spoken.length;
    expect(decibels(Math.abs(mean))).toBeLessThan(-60);
  });

  test('is a voice: its vowel repeats at a pitch of a singer’s', () => {
    for (const [accented, low, high] of [
      [true, 165, 196],
      [false, 139, 165],
    ] as const) {
      const spoken = countInVoice(number, accented, RATE);
      const from = Math.round(0.12 * RATE);
      const likeness = (lag: number) => {
        let [product, one, other] = [0, 0, 0];
        for (let n = from; n < from + 2200; n++) {
          product += (spoken[n] ?? 0) * (spoken[n + lag] ?? 0);
          one += (spoken[n] ?? 0) ** 2;
          other += (spoken[n + lag] ?? 0) ** 2;
        }
        return product / Math.sqrt(one * other);
      };
      const lags = Array.from({ length: 220 }, (_, index) => 180 + index);
      const best = lags.reduce((found, lag) => (likeness(lag) > likeness(found) ? lag : found));
      expect(likeness(best)).toBeGreaterThan(0.8);
      expect(RATE / best).toBeGreaterThan(low - 4);
      expect(RATE / best).toBeLessThan(high + 4);
    }
  });

  test('the same at every rate, and the same every time', () => {
    const one = countInVoice(number, false, RATE);
    expect(countInVoice(number, false, RATE)).toBe(one);
    expect(Math.abs(peak(countInVoice(number, false, 48000)) / peak(one) - 1)).toBeLessThan(0.3);
  });
});

describe('what the mouth does', () => {
  test('the lips and the tongue shape each vowel as its table says', () => {
    type Vowel = readonly [number: number, from: number, to: number];
    const [hud, whod, heed, hawed]: readonly Vowel[] = [
      [1, 0.1, 0.16],
      [2, 0.12, 0.2],
      [3, 0.14, 0.21],
      [4, 0.09, 0.15],
    ];
    if (!hud || !whod || !heed || !hawed) throw new Error('four vowels');
    /** Decibels of one band beside another: wide enough for two harmonics of the voice. */
    const beside = ([number, from, to]: Vowel, one: readonly [number, number], other: readonly [number, number]) => {
      const spoken = countInVoice(number, true, RATE);
      const [upper, lower] = [one, other].map(([low, high]) => level(band(spoken, RATE, low, high), RATE, from, to));
      return decibels((upper ?? 0) / (lower ?? 1));
    };
    // Open vowels have their first formant high, close ones low.
    const openness = (vowel: Vowel) => beside(vowel, [500, 850], [150, 420]);
    for (const open of [hud, hawed])
      for (const close of [whod, heed]) expect(openness(open)).toBeGreaterThan(openness(close) + 6);
    // Front vowels have their second formant high, and little between it and the first.
    const front = (vowel: Vowel) => beside(vowel, [1900, 2700], [700, 1250]);
    for (const back of [hud, whod, hawed]) expect(front(heed)).toBeGreaterThan(front(back) + 10);
  });

  test('two, three and four begin with breath, one with the voice', () => {
    const hiss = (number: number) => {
      const spoken = countInVoice(number, false, RATE);
      return decibels(level(band(spoken, RATE, 2500, 12000), RATE, 0, 0.03) / level(spoken, RATE, 0, 0.03));
    };
    for (const number of [2, 3, 4]) expect(hiss(number), `${number}`).toBeGreaterThan(-4);
    expect(hiss(1)).toBeLessThan(-12);
  });

  test('refuses what nobody counts', () => {
    for (const number of [0, 5, -1, 1.5, Number.NaN])
      expect(() => countInVoice(number, true, RATE)).toThrow(RangeError);
  });
});

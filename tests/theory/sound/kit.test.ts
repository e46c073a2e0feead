import { describe, expect, test } from 'vitest';
import type { KitPiece } from '../../../shared-theory/perform.ts';
import { renderKit } from '../../../shared-theory/sound/kit.ts';
import { kWeighted, meanSquare } from '../../../shared-theory/sound/loudness.ts';
import { band, decibels, level, partial, peak } from './estimate.ts';

const PIECES: readonly KitPiece[] = ['kick', 'snare', 'closed-hat', 'open-hat'];
const RATES = [44100, 48000];

function render(piece: KitPiece, accent: 1 | 2 | 3 = 3, sampleRate = 44100, seed = 1): Float32Array {
  return renderKit({ piece, accent }, { sampleRate, seed });
}

/** Decibels of the K-weighted root mean square over the first 80 ms. */
function loudness(samples: Float32Array, sampleRate = 44100): number {
  const first = Math.round(0.08 * sampleRate);
  return 10 * Math.log10(meanSquare(kWeighted(samples.subarray(0, first), sampleRate), 0, first));
}

describe.each(RATES.flatMap((rate) => PIECES.map((piece) => [piece, rate] as const)))('%s at %i Hz', (piece, rate) => {
  const samples = render(piece, 3, rate);

  test('begins with its first sample and ends in silence, without direct current', () => {
    expect(samples[0]).not.toBe(0);
    const heard = samples.findIndex((sample) => Math.abs(sample) > 0.1 * peak(samples));
    expect(heard / rate).toBeLessThan(0.001);
    expect(Math.abs(samples.at(-1) ?? 1)).toBeLessThan(1e-6);
    expect(samples.length / rate).toBeLessThanOrEqual(1);
    const mean = samples.reduce((sum, sample) => sum + sample, 0) / samples.length;
    expect(decibels(Math.abs(mean) / peak(samples))).toBeLessThan(-80);
    expect(samples.every(Number.isFinite)).toBe(true);
  });

  test('accents lie 4 dB apart and more', () => {
    const [light, medium, heavy] = ([1, 2, 3] as const).map((accent) => loudness(render(piece, accent, rate), rate));
    expect((heavy ?? 0) - (medium ?? 0)).toBeGreaterThanOrEqual(3.99);
    expect((medium ?? 0) - (light ?? 0)).toBeGreaterThanOrEqual(3.99);
  });

  test('sounds the same at every rate', () => {
    expect(Math.abs(loudness(samples, rate) - loudness(render(piece, 3, 96000), 96000))).toBeLessThan(0.1);
  });

  test('another seed changes the noise and nothing that is heard as another stroke', () => {
    const other = render(piece, 3, rate, 2);
    expect(other.every((sample, n) => sample === samples[n])).toBe(false);
    expect(render(piece, 3, rate).every((sample, n) => sample === samples[n])).toBe(true);
    expect(Math.abs(loudness(other, rate) - loudness(samples, rate))).toBeLessThan(0.01);
  });
});

describe('what each piece is', () => {
  test('a kick is low and falls in pitch', () => {
    const kick = render('kick');
    const low = level(band(kick, 44100, 30, 200), 44100, 0, 0.2);
    expect(decibels(low / level(band(kick, 44100, 400, 15000), 44100, 0, 0.2))).toBeGreaterThan(8);
    const crossings = (from: number, to: number) => {
      let count = 0;
      for (let n = Math.round(from * 44100); n < to * 44100; n++)
        if ((kick[n] ?? 0) <= 0 && (kick[n + 1] ?? 0) > 0) count += 1;
      return count / (to - from);
    };
    expect(crossings(0.1, 0.3)).toBeLessThan(70);
    const early = partial(kick, 44100, 110, 0, 0.03).amplitude / partial(kick, 44100, 54, 0, 0.03).amplitude;
    const late = partial(kick, 44100, 110, 0.12, 0.1).amplitude / partial(kick, 44100, 54, 0.12, 0.1).amplitude;
    expect(early).toBeGreaterThan(late * 5);
  });

  test('a snare has a skin and a rattle; hats are high', () => {
    const share = (piece: KitPiece, low: number, high: number) => {
      const samples = render(piece);
      return decibels(level(band(samples, 44100, low, high), 44100, 0, 0.1) / level(samples, 44100, 0, 0.1));
    };
    expect(share('snare', 150, 450)).toBeGreaterThan(-9);
    expect(share('snare', 1000, 9000)).toBeGreaterThan(-9);
    for (const hat of ['closed-hat', 'open-hat'] as const) {
      expect(share(hat, 4000, 20000)).toBeGreaterThan(-1.5);
      expect(share(hat, 30, 800)).toBeLessThan(-24);
    }
  });

  test('a closed hat is over where an open one rings', () => {
    const after = (piece: KitPiece) => {
      const samples = render(piece);
      return decibels(level(samples, 44100, 0.1, 0.13) / level(samples, 44100, 0, 0.03));
    };
    expect(after('closed-hat')).toBeLessThan(-35);
    expect(after('open-hat')).toBeGreaterThan(-15);
  });
});

import { describe, expect, test } from 'vitest';
import { renderBass } from '../../../shared-theory/sound/bass-guitar.ts';
import { STEEL } from '../../../shared-theory/sound/instrument.ts';
import { kWeighted, meanSquare } from '../../../shared-theory/sound/loudness.ts';
import { band, centsByPhase, decibels, level, peak } from './estimate.ts';

const SMALL = { ...STEEL, smallSpeaker: true };
const NOTES = Array.from({ length: 33 }, (_, index) => 28 + index);

function render(midi: number, options: { rate?: number; instrument?: typeof STEEL; accent?: 1 | 2 | 3 } = {}) {
  const { rate = 44100, instrument = STEEL, accent = 3 } = options;
  return renderBass({ midi, accent }, { seconds: 1.2, sampleRate: rate, instrument });
}

function loudness(samples: Float32Array): number {
  const first = Math.round(0.15 * 44100);
  return 10 * Math.log10(meanSquare(kWeighted(samples.subarray(0, first), 44100), 0, first));
}

describe('the bass guitar', () => {
  test.each([44100, 48000])('is in tune within a cent on every note at %i Hz, with and without harmonics', (rate) => {
    for (const midi of NOTES.filter((note) => rate === 44100 || note % 4 === 0)) {
      for (const instrument of midi % 4 === 0 ? [STEEL, SMALL] : [STEEL]) {
        expect(Math.abs(centsByPhase(render(midi, { rate, instrument }), rate, midi)), `${midi}`).toBeLessThan(1);
      }
    }
  });

  test('is tuned with the class', () => {
    const flat = render(33, { instrument: { ...STEEL, pitch: 432 } });
    expect(centsByPhase(flat, 44100, 33)).toBeCloseTo(1200 * Math.log2(432 / 440), 0);
  });

  test('begins at once, ends in silence, without direct current', () => {
    for (const midi of [28, 33, 45, 60]) {
      for (const instrument of [STEEL, SMALL]) {
        const samples = render(midi, { instrument });
        expect(samples[0]).not.toBe(0);
        // Under the period of its own fundamental no low note is louder.
        const heard = samples.findIndex((sample) => Math.abs(sample) > 0.1 * peak(samples));
        expect(heard / 44100, `${midi}`).toBeLessThan(0.001);
        expect(Math.abs(samples.at(-1) ?? 1)).toBeLessThan(1e-6);
        const mean = samples.reduce((sum, sample) => sum + sample, 0) / samples.length;
        expect(decibels(Math.abs(mean))).toBeLessThan(-70);
      }
    }
  });

  test('is round: little above 2 kHz; light notes are rounder', () => {
    const edge = (accent: 1 | 3) => {
      const samples = render(40, { accent });
      return decibels(level(band(samples, 44100, 2000, 15000), 44100, 0, 0.3) / level(samples, 44100, 0, 0.3));
    };
    expect(edge(3)).toBeLessThan(-20);
    expect(edge(1)).toBeLessThan(edge(3) - 2);
  });

  test('accents lie 4 dB apart; all notes are about as loud as each other', () => {
    const [light = 0, medium = 0, heavy = 0] = ([1, 2, 3] as const).map((accent) => loudness(render(40, { accent })));
    expect(heavy - medium).toBeGreaterThanOrEqual(3.99);
    expect(medium - light).toBeGreaterThanOrEqual(3.99);
    const all = NOTES.map((midi) => loudness(render(midi)));
    expect(Math.max(...all) - Math.min(...all)).toBeLessThan(0.5);
  });

  test('a small speaker gets more of what it plays, harmonics between 150 and 500 Hz, and a clearer attack', () => {
    for (const midi of [28, 33, 38, 43]) {
      const [plain, small] = [render(midi), render(midi, { instrument: SMALL })];
      const beside = (samples: Float32Array, seconds: number, low: number, high: number) =>
        decibels(
          level(band(samples, 44100, low, high), 44100, 0, seconds) /
            level(band(samples, 44100, 20, 150), 44100, 0, 0.3),
        );
      expect(beside(small, 0.3, 150, 500), `${midi}`).toBeGreaterThan(beside(plain, 0.3, 150, 500) + 4);
      expect(beside(small, 0.03, 600, 6000), `${midi}`).toBeGreaterThan(beside(plain, 0.03, 600, 6000) + 2);
    }
  });

  test('refuses what a bass guitar has not', () => {
    for (const midi of [28, 60]) expect(render(midi).length).toBeGreaterThan(0);
    for (const midi of [27, 61, Number.NaN]) expect(() => render(midi)).toThrow(RangeError);
  });
});

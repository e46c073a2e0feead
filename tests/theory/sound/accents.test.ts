import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { VOICES } from '../../../shared-theory/sound/instrument.ts';
import { kWeighted, meanSquare } from '../../../shared-theory/sound/loudness.ts';
import type { StruckString } from '../../../shared-theory/sound/plucked-string.ts';
import { HANDS, render, struck, STRINGS } from './strings.ts';

const RATE = 44100;

function loudness(note: StruckString, seconds: number, instrument: Parameters<typeof render>[2]): number {
  const weighted = kWeighted(render(note, 0.35, instrument), RATE);
  return 10 * Math.log10(meanSquare(weighted, 0, Math.round(seconds * RATE)));
}

describe('accents', () => {
  test('are at least 4 dB apart for every voice, hand, touch and string, as the ear weighs them', () => {
    const place = fc.record({
      voice: fc.constantFrom(...VOICES),
      smallSpeaker: fc.boolean(),
      bass: fc.boolean(),
      hand: fc.constantFrom(...HANDS),
      touch: fc.constantFrom(
        'open' as const,
        'ring' as const,
        'half' as const,
        'palm' as const,
        'dead' as const,
        'choke' as const,
      ),
      string: fc.constantFrom(...STRINGS),
      fret: fc.integer({ min: 0, max: 15 }),
      seconds: fc.constantFrom(0.1, 0.125, 0.3),
      seed: fc.integer({ min: 0, max: 1000 }),
    });
    fc.assert(
      fc.property(place, ({ voice, smallSpeaker, bass, hand, touch, string, fret, seconds, seed }) => {
        const instrument = { voice, pitch: 440, smallSpeaker };
        const [light = 0, medium = 0, heavy = 0] = ([1, 2, 3] as const).map((accent) =>
          loudness(struck(string, fret, { ...hand, touch, accent, ...(bass ? { bass } : {}) }), seconds, {
            instrument,
            seed,
          }),
        );
        expect(heavy - medium).toBeGreaterThan(4);
        expect(medium - light).toBeGreaterThan(4);
      }),
      { numRuns: 120 },
    );
  });

  test('equal strokes of a string are equally loud in every voice', () => {
    for (const string of STRINGS) {
      const levels = VOICES.map((voice) =>
        loudness(struck(string, 0), 0.125, { instrument: { voice, pitch: 440, smallSpeaker: false } }),
      );
      expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(1);
    }
  });
});

import { describe, expect, test } from 'vitest';
import { midiFrequency } from '../../../shared-theory/pitch.ts';
import { VOICES, type Voice } from '../../../shared-theory/sound/instrument.ts';
import { decibels, faintAmplitude, level } from './estimate.ts';
import { instrumentOf, render, struck } from './strings.ts';

const RATE = 44100;

/** A string, a fret and the open strings left free: a fifth, an octave, a fourth and a twelfth apart, and a whole chord. */
const SHARED = [
  ['the root of C and its G', 5, 3, [55]],
  ['low E and the B', 6, 0, [59]],
  ['A and the high E', 5, 0, [64]],
  ['E on the D string and the low E', 4, 2, [40]],
  ['open D and the A', 4, 0, [45]],
  ['the root of G and D, G and B', 6, 3, [50, 55, 59]],
] as const;

/** The note by itself, and what free strings add to it. */
function apart(voice: Voice, string: number, fret: number, free: readonly number[]) {
  const setting = { instrument: instrumentOf(voice) };
  const alone = render(struck(string, fret), 2.2, setting);
  const along = render(struck(string, fret, { free }), 2.2, setting).map((sample, n) => sample - (alone[n] ?? 0));
  const beside = (from: number, to: number) => decibels(level(along, RATE, from, to) / level(alone, RATE, from, to));
  return { alone, along, beside };
}

describe.each(VOICES)('free strings of %s', (voice) => {
  test.each(SHARED)('%s: 28 to 50 dB under the note, and slow to come', (_name, string, fret, free) => {
    const { beside } = apart(voice, string, fret, free);
    expect(beside(0, 2)).toBeLessThan(-28);
    expect(beside(0, 2)).toBeGreaterThan(-50);
    expect(beside(0, 0.05)).toBeLessThan(-65);
    expect(beside(0.05, 0.1)).toBeLessThan(beside(0.3, 0.5) - 6);
  });

  test('only partials that both strings have: nothing of the free string’s own at a foreign pitch', () => {
    // Low E with the A free: the A's third partial is the E's fourth; its own first and second are foreign.
    const { alone, along } = apart(voice, 6, 0, [45]);
    const at = (samples: Float32Array, hertz: number) => faintAmplitude(samples, RATE, hertz, 0.2, 1.5);
    const note = level(alone, RATE, 0, 0.3);
    for (const harmonic of [1, 2, 4, 5])
      expect(decibels(at(along, midiFrequency(45) * harmonic) / note), `${harmonic}`).toBeLessThan(-80);
    expect(at(along, midiFrequency(45) * 3)).toBeGreaterThan(10 * at(along, midiFrequency(45)));
  });

  test('strings without a common partial stay still: G and the B above', () => {
    expect(apart(voice, 6, 3, [59]).beside(0, 2)).toBeLessThan(-55);
  });
});

test('no free string, no change', () => {
  expect(render(struck(5, 3, { free: [] }), 0.4)).toEqual(render(struck(5, 3), 0.4));
});

test('a free string follows the class’s pitch', () => {
  const instrument = { voice: 'steel', pitch: 428, smallSpeaker: false } as const;
  const with_ = render(struck(4, 2, { free: [40] }), 2.2, { instrument });
  const without = render(struck(4, 2), 2.2, { instrument });
  const along = with_.map((sample, n) => sample - (without[n] ?? 0));
  const beside = decibels(level(along, RATE, 0, 2) / level(without, RATE, 0, 2));
  // An octave off by half a semitone would hardly sound.
  expect(beside).toBeGreaterThan(-36);
});

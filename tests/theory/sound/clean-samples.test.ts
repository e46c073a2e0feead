import { describe, expect, test } from 'vitest';
import { midiFrequency } from '../../../shared-theory/pitch.ts';
import { STEEL, VOICES, type Voice } from '../../../shared-theory/sound/instrument.ts';
import type { StruckString } from '../../../shared-theory/sound/plucked-string.ts';
import { decibels, faintAmplitude, level, peak } from './estimate.ts';
import { HANDS, instrumentOf, render, struck, VOICES_AND_HANDS } from './strings.ts';

const RATES = [44100, 48000] as const;
const TOUCHES = ['open', 'half', 'palm', 'dead', 'choke'] as const;

function everything(hand: Partial<StruckString>): readonly StruckString[] {
  return [1, 3, 6].flatMap((string) => TOUCHES.map((touch) => struck(string, 3, { ...hand, touch })));
}

describe('clean samples', () => {
  test.each(VOICES_AND_HANDS)('%s, %s: no jump at either end, no sample over full scale', (voice, _name, hand) => {
    for (const note of everything(hand)) {
      const samples = render(note, 0.6, { instrument: instrumentOf(voice) });
      expect(samples.every((sample) => Number.isFinite(sample))).toBe(true);
      expect(peak(samples)).toBeLessThan(0.98);
      expect(Math.abs(samples[0] ?? 1)).toBeLessThan(peak(samples) / 10);
      expect(Math.abs(samples.at(-1) ?? 1)).toBeLessThan(1e-6);
    }
  });

  test.each(VOICES)('%s: direct current lies under −60 dB of full scale, short or long', (voice) => {
    for (const hand of HANDS) {
      for (const note of everything(hand)) {
        for (const [index, sampleRate] of RATES.entries()) {
          const instrument = { ...STEEL, voice, smallSpeaker: note.string === 3 };
          const samples = render(note, [0.15, 0.6][index] ?? 1, { sampleRate, instrument });
          const mean = samples.reduce((sum, sample) => sum + sample, 0) / samples.length;
          expect(decibels(Math.abs(mean)), `${note.string}, ${note.touch}`).toBeLessThan(-60);
        }
      }
    }
  });

  test.each(VOICES_AND_HANDS)('%s, %s: the sound starts within a millisecond', (voice, _name, hand) => {
    for (const note of everything(hand)) {
      const samples = render(note, 0.2, { instrument: instrumentOf(voice) });
      expect(samples[0]).not.toBe(0);
      const first = samples.findIndex((sample) => Math.abs(sample) > peak(samples) / 10);
      expect(first / 44100).toBeLessThan(0.001);
    }
  });

  test.each(VOICES)('%s: equal seeds give equal samples, another seed another noise', (voice) => {
    const instrument = instrumentOf(voice);
    const note = struck(5, 3, { free: [55] });
    expect(render(note, 0.3, { instrument })).toEqual(render(note, 0.3, { instrument }));
    expect(render(note, 0.3, { instrument, seed: 2 })).not.toEqual(render(note, 0.3, { instrument }));
  });

  test('a longer sound begins with the shorter one, whatever its touch', () => {
    for (const touch of TOUCHES) {
      const note = struck(5, 3, { touch, free: [55, 64] });
      const short = render(note, 0.3);
      const long = render(note, 0.6);
      const same = short.length - Math.ceil(0.03 * 44100) - 1;
      expect(long.slice(0, same)).toEqual(short.slice(0, same));
    }
  });

  test('44.1 and 48 kHz sound alike', () => {
    for (const voice of VOICES) {
      for (const string of [1, 6]) {
        const [one, other] = RATES.map((sampleRate) =>
          level(render(struck(string, 0), 1, { sampleRate, instrument: instrumentOf(voice) }), sampleRate, 0.1, 0.9),
        );
        expect(Math.abs(decibels((one ?? 1) / (other ?? 1)))).toBeLessThan(0.5);
      }
    }
  });

  test('a string that has died is silent to the end: half a minute of a dead stroke, without a sample so small that it costs time', () => {
    const samples = render(struck(6, 0, { touch: 'dead' }), 30);
    expect(samples.subarray(44100).every((sample) => sample === 0)).toBe(true);
    const tiny = samples.filter((sample) => sample !== 0 && Math.abs(sample) < 2 ** -126);
    expect(tiny).toHaveLength(0);
  });
});

/** The strongest amplitude where partials above half the rate would come back, beside the note's fundamental. */
function folded(voice: Voice, fret: number, sampleRate: number): number {
  const note = struck(1, fret, { stroke: 'up' });
  const frequency = midiFrequency(note.midi);
  const samples = render(note, 0.5, { sampleRate, instrument: instrumentOf(voice) });
  const at = (hertz: number) => faintAmplitude(samples, sampleRate, hertz, 0.04, 0.4);
  const places: number[] = [];
  for (let k = Math.ceil(sampleRate / 2 / frequency); k * frequency < sampleRate; k++) {
    const place = sampleRate - k * frequency;
    // Beside a true partial nothing could be told from it.
    if (place > 60 && Math.abs(place / frequency - Math.round(place / frequency)) * frequency > 40) places.push(place);
  }
  expect(places.length).toBeGreaterThan(10);
  return Math.max(...places.map(at)) / at(frequency);
}

describe('no energy above half the sampling rate folded back', () => {
  test.each(VOICES.flatMap((voice) => RATES.map((rate) => [voice, rate] as const)))(
    '%s at %i Hz: under −100 dB of the fundamental at every folded partial of E5 and E6',
    (voice, sampleRate) => {
      for (const fret of [12, 24]) expect(decibels(folded(voice, fret, sampleRate))).toBeLessThan(-100);
    },
  );

  test('the measure sees what is folded: a naive sawtooth', () => {
    const frequency = midiFrequency(88);
    const saw = Float32Array.from({ length: 22050 }, (_, n) => 2 * (((n * frequency) / 44100) % 1) - 1);
    const place = 44100 - 20 * frequency;
    const ratio = faintAmplitude(saw, 44100, place, 0.04, 0.4) / faintAmplitude(saw, 44100, frequency, 0.04, 0.4);
    // Partial k of a sawtooth is 1/k of the first.
    expect(decibels(ratio)).toBeCloseTo(decibels(1 / 20), 0);
  });
});

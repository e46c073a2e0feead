import { describe, expect, test } from 'vitest';
import { midiFrequency } from '../../../shared-theory/pitch.ts';
import { decibels, level, partial } from './estimate.ts';
import { render, secondsToFall, struck } from './strings.ts';

describe('ringing', () => {
  test.each([
    ['E2', 6, 0],
    ['E4', 1, 0],
    ['E5', 1, 12],
  ])('%s still has more than a twentieth of its level after 0.8 s', (_name, string, fret) => {
    const samples = render(struck(string, fret), 1);
    expect(level(samples, 44100, 0.8, 0.85) / level(samples, 44100, 0.05, 0.1)).toBeGreaterThan(0.05);
  });

  test('bass strings ring longer than treble strings', () => {
    const seconds = [1, 2, 3, 4, 5, 6].map((string) => secondsToFall(render(struck(string, 0), 4), 44100, 30));
    for (const [index, value] of seconds.entries())
      if (index > 0) expect(value).toBeGreaterThan(seconds[index - 1] ?? 0);
    expect(seconds[5]).toBeGreaterThan(1.5);
  });

  test('high partials die first', () => {
    const samples = render(struck(6, 0), 2);
    // A few neighbours together: single partials beat a little.
    const fallen = (...harmonics: readonly number[]) => {
      const at = (from: number) =>
        Math.hypot(...harmonics.map((k) => partial(samples, 44100, midiFrequency(40) * k, from, 0.2).amplitude));
      return decibels(at(0.03) / at(1.03));
    };
    expect(fallen(19, 20, 21, 22)).toBeGreaterThan(fallen(7, 8, 9, 10) + 3);
    expect(fallen(7, 8, 9, 10)).toBeGreaterThan(fallen(1) + 0.5);
  });

  test('the fundamental of the bass strings is strong: within 3 dB of the strongest partial', () => {
    for (const string of [6, 5]) {
      const note = struck(string, 0);
      const samples = render(note, 1);
      const partials = [1, 2, 3, 4, 5, 6].map(
        (harmonic) => partial(samples, 44100, midiFrequency(note.midi) * harmonic, 0.03, 0.3).amplitude,
      );
      expect(decibels((partials[0] ?? 0) / Math.max(...partials))).toBeGreaterThan(-3);
    }
  });
});

describe('touches', () => {
  test('a dead stroke has no pitch to speak of: its samples hardly repeat at the period of the note', () => {
    const repeats = (touch: 'open' | 'dead') => {
      const samples = render(struck(4, 0, { touch }), 0.1);
      const lag = Math.round(44100 / midiFrequency(50));
      let product = 0;
      let energy = 0;
      for (let n = 0; n < lag * 3; n++) {
        product += (samples[n] ?? 0) * (samples[n + lag] ?? 0);
        energy += (samples[n] ?? 0) ** 2;
      }
      return product / energy;
    };
    expect(repeats('open')).toBeGreaterThan(0.8);
    expect(repeats('dead')).toBeLessThan(0.4);
  });
});

describe('strokes and accents', () => {
  test.each([1, 2, 3, 4, 5, 6])(
    'string %i: accents lie more than 4 dB apart, and a heavy stroke is brighter',
    (string) => {
      const [heavy, medium, light] = ([3, 2, 1] as const).map((accent) => render(struck(string, 2, { accent }), 0.5));
      if (!heavy || !medium || !light) throw new Error('three accents');
      const first = (samples: Float32Array) => level(samples, 44100, 0, 0.05);
      expect(decibels(first(heavy) / first(medium))).toBeGreaterThan(4);
      expect(decibels(first(medium) / first(light))).toBeGreaterThan(4);
      const frequency = midiFrequency(struck(string, 2).midi);
      const harmonic = Math.round(3500 / frequency);
      const bright = (samples: Float32Array) =>
        partial(samples, 44100, frequency * harmonic, 0, 0.2).amplitude /
        partial(samples, 44100, frequency, 0, 0.2).amplitude;
      expect(bright(heavy)).toBeGreaterThan(bright(light) * 1.3);
    },
  );

  test('an upstroke is thinner: less fundamental beside its upper partials', () => {
    const body = (stroke: 'down' | 'up') => {
      const samples = render(struck(3, 0, { stroke }), 0.5);
      const at = (harmonic: number) => partial(samples, 44100, midiFrequency(55) * harmonic, 0, 0.2).amplitude;
      return at(1) / Math.hypot(...Array.from({ length: 17 }, (_, index) => at(index + 4)));
    };
    expect(body('up')).toBeLessThan(body('down') * 0.8);
  });
});

describe('bad input', () => {
  test.each([
    [{ string: 7 }, 'strings 1 to 6, not 7'],
    [{ string: 0 }, 'strings 1 to 6, not 0'],
    [{ midi: 12 }, 'notes 28 to 100, not 12'],
    [{ midi: Number.NaN }, 'notes 28 to 100, not NaN'],
  ])('%j is refused', (change, sentence) => {
    expect(() => render({ ...struck(6, 0), ...change }, 0.1)).toThrow(sentence);
  });

  test.each([0, 414, 467, Number.NaN])('a pitch of %d is refused', (pitch) => {
    const instrument = { voice: 'nylon', pitch, smallSpeaker: false } as const;
    expect(() => render(struck(6, 0), 0.1, { instrument })).toThrow(`from 415 to 466 Hz, not to ${pitch}`);
  });

  test('a rate too low for the note is refused', () => {
    expect(() => render(struck(1, 24), 0.1, { sampleRate: 8000 })).toThrow(/too high for a string at 8000 Hz/);
  });
});

import { describe, expect, test } from 'vitest';
import { STANDARD_TUNING } from '../../../shared-theory/neck.ts';
import { midiFrequency } from '../../../shared-theory/pitch.ts';
import { renderString, type StruckString } from '../../../shared-theory/sound/plucked-string.ts';
import { centsByAutocorrelation, centsByPhase, decibels, level, partial, peak } from './estimate.ts';

const RATES = [44100, 48000] as const;

function struck(string: number, fret: number, rest: Partial<StruckString> = {}): StruckString {
  const midi = (STANDARD_TUNING[6 - string] ?? 0) + fret;
  return { midi, string, fret, touch: 'open', accent: 3, stroke: 'down', ...rest };
}

function render(note: StruckString, seconds: number, sampleRate = 44100, seed = 1): Float32Array {
  return renderString(note, { seconds, sampleRate, seed });
}

/** Seconds until the level stays more than `fall` decibels under its loudest ten milliseconds. */
function secondsToFall(samples: Float32Array, sampleRate: number, fall: number): number {
  const windows = Array.from({ length: Math.floor(samples.length / sampleRate / 0.01) - 4 }, (_, index) =>
    level(samples, sampleRate, index * 0.01, (index + 1) * 0.01),
  );
  const floor = Math.max(...windows) * 10 ** (-fall / 20);
  return (windows.findLastIndex((value) => value > floor) + 1) * 0.01;
}

describe('tuning: A4 = 440 Hz (ISO 16), f = 440 · 2^((m − 69)/12)', () => {
  for (const sampleRate of RATES) {
    test(`every fret of every string from E2 to E6 is within a cent at ${sampleRate} Hz`, () => {
      const places = [1, 2, 3, 4, 5, 6].flatMap((string) =>
        Array.from({ length: 25 }, (_, fret) => struck(string, fret)).filter((note) => note.midi <= 88),
      );
      expect(new Set(places.map((note) => note.midi)).size).toBe(49);
      for (const note of places) {
        const samples = render({ ...note, stroke: note.fret % 2 === 0 ? 'down' : 'up' }, 0.9, sampleRate);
        expect(Math.abs(centsByPhase(samples, sampleRate, note.midi)), `phase, ${note.midi}`).toBeLessThan(1);
      }
      // All partials together, where a loop filter that bends high partials would show.
      for (const note of places.filter((place) => place.fret % 6 === 0)) {
        const samples = render(note, 0.9, sampleRate);
        expect(Math.abs(centsByAutocorrelation(samples, sampleRate, note.midi)), `${note.midi}`).toBeLessThan(1);
      }
    });
  }

  test('the estimators see three cents', () => {
    const sampleRate = 44100;
    const sharp = Float32Array.from({ length: sampleRate }, (_, n) =>
      Math.sin((2 * Math.PI * midiFrequency(52) * 2 ** (3 / 1200) * n) / sampleRate),
    );
    expect(centsByPhase(sharp, sampleRate, 52)).toBeCloseTo(3, 1);
    expect(centsByAutocorrelation(sharp, sampleRate, 52)).toBeCloseTo(3, 1);
  });

  test('accents and touches do not move the pitch', () => {
    for (const accent of [1, 2, 3] as const) {
      const samples = render(struck(5, 2, { accent, touch: 'choke' }), 0.9);
      expect(Math.abs(centsByPhase(samples, 44100, 47))).toBeLessThan(1);
    }
  });
});

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
    const fallen = (harmonic: number) => {
      const frequency = midiFrequency(40) * harmonic;
      const early = partial(samples, 44100, frequency, 0.03, 0.2).amplitude;
      return decibels(early / partial(samples, 44100, frequency, 1.03, 0.2).amplitude);
    };
    expect(fallen(20)).toBeGreaterThan(fallen(8) + 3);
    expect(fallen(8)).toBeGreaterThan(fallen(1) + 0.5);
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
  test.each([1, 2, 3, 4, 5, 6])(
    'string %i: a palm mute is gone after 80 to 180 ms, a dead stroke after 30 to 60',
    (string) => {
      const palm = secondsToFall(render(struck(string, 0, { touch: 'palm' }), 0.5), 44100, 50);
      expect(palm).toBeGreaterThanOrEqual(0.08);
      expect(palm).toBeLessThanOrEqual(0.18);
      const dead = secondsToFall(render(struck(string, 0, { touch: 'dead' }), 0.5), 44100, 50);
      expect(dead).toBeGreaterThanOrEqual(0.03);
      expect(dead).toBeLessThanOrEqual(0.06);
    },
  );

  test('a palm mute is darker than an open string', () => {
    const bright = (touch: 'open' | 'palm') => {
      const samples = render(struck(6, 0, { touch }), 0.5);
      const at = (harmonic: number) => partial(samples, 44100, midiFrequency(40) * harmonic, 0, 0.08).amplitude;
      return at(20) / at(1);
    };
    expect(decibels(bright('open') / bright('palm'))).toBeGreaterThan(6);
  });

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
  test.each([1, 2, 3, 4, 5, 6])('string %i: accents lie 4 and 9 dB apart, and a heavy stroke is brighter', (string) => {
    const [heavy, medium, light] = ([3, 2, 1] as const).map((accent) => render(struck(string, 2, { accent }), 0.5));
    if (!heavy || !medium || !light) throw new Error('three accents');
    const first = (samples: Float32Array) => level(samples, 44100, 0, 0.05);
    expect(decibels(first(heavy) / first(medium))).toBeGreaterThan(3.5);
    expect(decibels(first(medium) / first(light))).toBeGreaterThan(4.5);
    const frequency = midiFrequency(struck(string, 2).midi);
    const harmonic = Math.round(3500 / frequency);
    const bright = (samples: Float32Array) =>
      partial(samples, 44100, frequency * harmonic, 0, 0.2).amplitude /
      partial(samples, 44100, frequency, 0, 0.2).amplitude;
    expect(bright(heavy)).toBeGreaterThan(bright(light) * 1.3);
  });

  test('an upstroke is thinner: less fundamental beside its upper partials', () => {
    const body = (stroke: 'down' | 'up') => {
      const samples = render(struck(3, 0, { stroke }), 0.5);
      const at = (harmonic: number) => partial(samples, 44100, midiFrequency(55) * harmonic, 0, 0.2).amplitude;
      return at(1) / Math.hypot(...Array.from({ length: 17 }, (_, index) => at(index + 4)));
    };
    expect(body('up')).toBeLessThan(body('down') * 0.8);
  });
});

describe('clean samples', () => {
  const everything = [1, 3, 6].flatMap((string) =>
    (['open', 'palm', 'dead', 'choke'] as const).flatMap((touch) =>
      (['down', 'up'] as const).map((stroke) => struck(string, 3, { touch, stroke })),
    ),
  );

  test('no direct current, no jump at either end, no sample over full scale', () => {
    for (const note of everything) {
      const samples = render(note, 0.6);
      const mean = samples.reduce((sum, sample) => sum + sample, 0) / samples.length;
      expect(Math.abs(mean)).toBeLessThan(0.001);
      expect(peak(samples)).toBeLessThan(0.98);
      expect(Math.abs(samples[0] ?? 1)).toBeLessThan(peak(samples) / 10);
      expect(Math.abs(samples.at(-1) ?? 1)).toBeLessThan(1e-6);
    }
  });

  test('the sound starts within half a millisecond', () => {
    for (const note of everything) {
      const samples = render(note, 0.6);
      const first = samples.findIndex((sample) => Math.abs(sample) > peak(samples) / 10);
      expect(first / 44100).toBeLessThan(0.0005);
    }
  });

  test('equal seeds give equal samples, another seed another pick noise', () => {
    const note = struck(5, 3);
    expect(render(note, 0.3)).toEqual(render(note, 0.3));
    expect(render(note, 0.3, 44100, 2)).not.toEqual(render(note, 0.3));
  });

  test('a longer sound begins with the shorter one', () => {
    const short = render(struck(5, 3), 0.3);
    const long = render(struck(5, 3), 0.6);
    const same = short.length - Math.ceil(0.03 * 44100) - 1;
    expect(long.slice(0, same)).toEqual(short.slice(0, same));
  });

  test('44.1 and 48 kHz sound alike', () => {
    for (const string of [1, 6]) {
      const [one, other] = RATES.map((rate) => level(render(struck(string, 0), 1, rate), rate, 0.1, 0.9));
      expect(Math.abs(decibels((one ?? 1) / (other ?? 1)))).toBeLessThan(0.5);
    }
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

  test('a rate too low for the note is refused', () => {
    expect(() => render(struck(1, 24), 0.1, 8000)).toThrow(/too high for a string at 8000 Hz/);
  });
});

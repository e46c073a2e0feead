import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { midiFrequency } from '../../../shared-theory/pitch.ts';
import { VOICES } from '../../../shared-theory/sound/instrument.ts';
import { stopSeconds } from '../../../shared-theory/sound/note-shelf.ts';
import { band, decibels, level, partial } from './estimate.ts';
import { HANDS, instrumentOf, render, secondsToFall, struck, STRINGS, VOICES_AND_HANDS } from './strings.ts';

const RATE = 44100;

/** Seconds to −60 dB of one partial, by its fall over the second after the first tenth. */
function seconds60(samples: Float32Array, frequency: number): number {
  const fallen =
    partial(samples, RATE, frequency, 0.1, 0.2).amplitude / partial(samples, RATE, frequency, 1.1, 0.2).amplitude;
  return 60 / decibels(fallen);
}

/**
 * Damping of nylon strings by themselves (J. Woodhouse, "Plucked guitar transients: comparison of measurements and synthesis",
 * Acta Acustica 90, 2004, table of a set of strings; from memory), strings 1 to 6: friction and air. The loss of the
 * fundamental is friction + air / ω, and T60 = 13.8 / (ω · loss).
 */
const MEASURED_NYLON = [
  [40e-5, 1.5],
  [40e-5, 1.2],
  [14e-5, 1.7],
  [5e-5, 1.2],
  [7e-5, 0.9],
  [2e-5, 1.2],
] as const;

describe('ringing', () => {
  test.each(STRINGS)(
    'nylon string %i rings shorter than the bare string measured, and not by a factor of six',
    (string) => {
      const note = struck(string, 0, { by: 'finger', stroke: 'up' });
      const frequency = midiFrequency(note.midi);
      const [friction, air] = MEASURED_NYLON[string - 1] ?? [0, 0];
      const bare = 13.8 / (2 * Math.PI * frequency * friction + air);
      const seconds = seconds60(render(note, 1.5, { instrument: instrumentOf('nylon') }), frequency);
      expect(seconds).toBeLessThan(bare);
      expect(seconds).toBeGreaterThan(bare / 6);
    },
  );

  test('the open B of the solid body falls steadily and is silent after about twelve seconds', () => {
    // A published informal measurement of one such guitar without its amplifier: steadily to silence at around 12 s.
    const samples = render(struck(2, 0), 12.5, { instrument: instrumentOf('clean') });
    const levels = Array.from({ length: 12 }, (_, second) => decibels(level(samples, RATE, second, second + 1)));
    for (const [index, now] of levels.entries()) if (index > 0) expect(now).toBeLessThan(levels[index - 1] ?? 0);
    const fallen = (levels[0] ?? 0) - (levels[11] ?? 0);
    expect(fallen).toBeGreaterThan(50);
    expect(fallen).toBeLessThan(90);
  });

  test.each(VOICES)('%s: bass strings ring longer than treble strings, and frets cost time', (voice) => {
    const instrument = instrumentOf(voice);
    const time = (string: number, fret: number) =>
      seconds60(render(struck(string, fret), 1.5, { instrument }), midiFrequency(struck(string, fret).midi));
    expect(time(6, 0)).toBeGreaterThan(time(4, 0));
    expect(time(4, 0)).toBeGreaterThan(time(1, 0));
    for (const string of [1, 4, 6]) expect(time(string, 12)).toBeLessThan(time(string, 0));
    for (const string of STRINGS) expect(time(string, 0)).toBeGreaterThan(1.6);
  });

  test('the solid body rings longest, nylon shortest', () => {
    for (const string of STRINGS) {
      const frequency = midiFrequency(struck(string, 0).midi);
      const [steel = 0, nylon = 0, clean = 0] = VOICES.map((voice) =>
        seconds60(render(struck(string, 0), 1.5, { instrument: instrumentOf(voice) }), frequency),
      );
      expect(clean).toBeGreaterThan(steel * 1.4);
      expect(steel).toBeGreaterThan(nylon * 1.15);
    }
  });

  test.each(['steel', 'nylon'] as const)('%s: above 5 kHz there is only the attack', (voice) => {
    // "Fundamentals of guitar tone", J. Acoust. Soc. Am. 71, S8 (1982): perceptible only at the attack of tones.
    for (const string of STRINGS) {
      const samples = render(struck(string, 0), 1, { instrument: instrumentOf(voice) });
      const above = level(band(samples, RATE, 5000, 20_000), RATE, 0.3, 0.6);
      expect(decibels(above / level(samples, RATE, 0.3, 0.6))).toBeLessThan(-30);
    }
  });

  test.each(VOICES)('%s: the tail lives: upper partials do not all fall in straight lines', (voice) => {
    const samples = render(struck(5, 0), 3, { instrument: instrumentOf(voice) });
    const bends = [3, 4, 7, 8, 9].map((harmonic) => {
      const at = (from: number) => decibels(partial(samples, RATE, 110 * harmonic, from, 0.25).amplitude);
      return Math.abs(at(0.2) - 2 * at(1.1) + at(2));
    });
    expect(Math.max(...bends)).toBeGreaterThan(2);
  });
});

describe('touches', () => {
  test.each(VOICES_AND_HANDS)('%s, %s: each touch has its time on every string', (voice, _name, hand) => {
    const instrument = instrumentOf(voice);
    for (const string of STRINGS) {
      const time = (touch: 'dead' | 'palm' | 'half', fall: number) =>
        secondsToFall(render(struck(string, 0, { ...hand, touch }), 1, { instrument }), RATE, fall);
      const [dead, palm, half] = [time('dead', 50), time('palm', 50), time('half', 60)];
      expect(dead).toBeGreaterThanOrEqual(0.03);
      expect(dead).toBeLessThanOrEqual(0.06);
      expect(palm).toBeGreaterThanOrEqual(0.08);
      expect(palm).toBeLessThanOrEqual(0.18);
      expect(half).toBeGreaterThanOrEqual(0.35);
      expect(half).toBeLessThanOrEqual(0.7);
    }
  });

  test('dead, palm, choke, half and open come in this order, whatever is plucked and how', () => {
    /** A choke lets go after this at most; a shorter slot, half of it. */
    const CHOKE_SECONDS = 0.12;
    const rings = (touch: 'dead' | 'palm' | 'choke' | 'half' | 'open', samples: Float32Array) => {
      const cut = samples.slice();
      if (touch === 'choke') {
        const stop = Math.round(CHOKE_SECONDS * RATE);
        const ramp = stopSeconds({ touch }) * RATE;
        for (let n = stop; n < cut.length; n++) cut[n] = (cut[n] ?? 0) * Math.max(0, 1 - (n - stop) / ramp);
      }
      return secondsToFall(cut, RATE, 30);
    };
    const place = fc.record({
      voice: fc.constantFrom(...VOICES),
      hand: fc.constantFrom(...HANDS),
      string: fc.constantFrom(...STRINGS),
      fret: fc.integer({ min: 0, max: 12 }),
      accent: fc.constantFrom(1 as const, 2 as const, 3 as const),
    });
    fc.assert(
      fc.property(place, ({ voice, hand, string, fret, accent }) => {
        const instrument = instrumentOf(voice);
        const times = (['dead', 'palm', 'choke', 'half', 'open'] as const).map((touch) =>
          rings(touch, render(struck(string, fret, { ...hand, accent, touch }), 0.8, { instrument })),
        );
        for (const [index, time] of times.entries()) if (index > 0) expect(time).toBeGreaterThan(times[index - 1] ?? 0);
      }),
      { numRuns: 40 },
    );
  });

  test.each(VOICES)('%s: the more the palm mutes, the darker', (voice) => {
    const bright = (touch: 'open' | 'half' | 'palm') => {
      const samples = render(struck(6, 0, { touch }), 0.5, { instrument: instrumentOf(voice) });
      const at = (harmonic: number) => partial(samples, RATE, midiFrequency(40) * harmonic, 0, 0.08).amplitude;
      return decibels(Math.hypot(at(19), at(20), at(21)) / at(1));
    };
    expect(bright('open') - bright('half')).toBeGreaterThan(3);
    expect(bright('half') - bright('palm')).toBeGreaterThan(3);
  });

  test('ring and open sound alike: they differ in when the hand stops them', () => {
    expect(render(struck(3, 2, { touch: 'ring' }), 0.5)).toEqual(render(struck(3, 2), 0.5));
  });
});

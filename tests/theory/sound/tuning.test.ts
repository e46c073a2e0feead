import { describe, expect, test } from 'vitest';
import { midiFrequency } from '../../../shared-theory/pitch.ts';
import { PITCH_RANGE, VOICES } from '../../../shared-theory/sound/instrument.ts';
import { centsByAutocorrelation, centsByPhase } from './estimate.ts';
import { HANDS, instrumentOf, render, struck, STRINGS, VOICES_AND_HANDS } from './strings.ts';

const RATES = [44100, 48000] as const;
const FRETS = Array.from({ length: 25 }, (_, fret) => fret);

describe('tuning: A4 = 440 Hz (ISO 16), f = 440 · 2^((m − 69)/12)', () => {
  const places = STRINGS.flatMap((string) => FRETS.map((fret) => struck(string, fret))).filter(
    (note) => note.midi <= 88,
  );

  test.each(VOICES.flatMap((voice) => RATES.map((sampleRate) => [voice, sampleRate] as const)))(
    'every fret of every string of %s from E2 to E6 is within a cent at %i Hz',
    (voice, sampleRate) => {
      expect(new Set(places.map((note) => note.midi)).size).toBe(49);
      const instrument = instrumentOf(voice);
      for (const note of places) {
        const hand = HANDS[note.fret % HANDS.length];
        const accent = ([1, 2, 3] as const)[(note.fret + note.string) % 3] ?? 3;
        const samples = render({ ...note, ...hand, accent }, 0.81, { sampleRate, instrument });
        expect(Math.abs(centsByPhase(samples, sampleRate, note.midi)), `phase, ${note.midi}`).toBeLessThan(1);
        // All partials together, where a loop filter that bends high partials would show.
        if (note.fret % 6 === 0)
          expect(Math.abs(centsByAutocorrelation(samples, sampleRate, note.midi)), `${note.midi}`).toBeLessThan(1);
      }
    },
  );

  test('the estimators see three cents', () => {
    const sampleRate = 44100;
    const sharp = Float32Array.from({ length: sampleRate }, (_, n) =>
      Math.sin((2 * Math.PI * midiFrequency(52) * 2 ** (3 / 1200) * n) / sampleRate),
    );
    expect(centsByPhase(sharp, sampleRate, 52)).toBeCloseTo(3, 1);
    expect(centsByAutocorrelation(sharp, sampleRate, 52)).toBeCloseTo(3, 1);
  });

  test.each(VOICES_AND_HANDS)('%s, %s: accents and touches do not move the pitch', (voice, _name, hand) => {
    for (const accent of [1, 2, 3] as const) {
      for (const touch of ['open', 'ring', 'choke'] as const) {
        const samples = render(struck(5, 2, { ...hand, accent, touch }), 0.81, { instrument: instrumentOf(voice) });
        expect(Math.abs(centsByPhase(samples, 44100, 47))).toBeLessThan(1);
      }
    }
  });

  test('it stays in tune while it dies: three seconds on, where the slower of the two motions is left', () => {
    for (const string of STRINGS) {
      const note = struck(string, 0);
      const late = render(note, 4, { instrument: instrumentOf('steel') }).subarray(3 * 44100);
      expect(Math.abs(centsByPhase(late, 44100, note.midi))).toBeLessThan(1);
    }
  });

  test('the class’s pitch tunes every string, at both ends of its range', () => {
    for (const pitch of PITCH_RANGE) {
      for (const string of STRINGS) {
        const note = struck(string, string % 2 === 0 ? 0 : 3);
        const samples = render(note, 0.81, { instrument: { voice: 'steel', pitch, smallSpeaker: false } });
        // The estimator counts in equal steps from A = 440: the class's A lies this far off.
        const off = 12 * Math.log2(pitch / 440);
        const cents = centsByPhase(samples, 44100, note.midi + off);
        expect(Math.abs(cents), `${pitch} Hz, string ${string}`).toBeLessThan(1);
      }
    }
  });
});

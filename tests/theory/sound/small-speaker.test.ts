import { describe, expect, test } from 'vitest';
import { midiFrequency } from '../../../shared-theory/pitch.ts';
import { STEEL, VOICES, type Voice } from '../../../shared-theory/sound/instrument.ts';
import { filtered, highPass } from '../../../shared-theory/sound/second-order.ts';
import { band, centsByAutocorrelation, decibels, level, partial } from './estimate.ts';
import { render, struck } from './strings.ts';

const RATE = 44100;

/** Frets of usual shapes, strings 6 to 1; the first that sounds is the bass. */
const SHAPES = [
  ['E', [0, 2, 2, 1, 0, 0]],
  ['G', [3, 2, 0, 0, 0, 3]],
  ['F', [1, 3, 3, 2, 1, 1]],
  ['C', [null, 3, 2, 0, 1, 0]],
  ['A', [null, 0, 2, 2, 2, 0]],
] as const;

/** What a small speaker plays: nothing much under 150 Hz, 12 dB an octave (trade figure, common practice). */
function throughSmallSpeaker(samples: Float32Array): Float32Array {
  return Float32Array.from(filtered(new Float64Array(samples), highPass(150, Math.SQRT1_2, RATE)));
}

/** The chord's bass, and all its other strings together. */
function strum(voice: Voice, frets: readonly (number | null)[], smallSpeaker: boolean) {
  const instrument = { ...STEEL, voice, smallSpeaker };
  const [bass, ...others] = frets.flatMap((fret, index) => {
    if (fret === null) return [];
    const lowest = frets.slice(0, index).every((below) => below === null);
    const note = struck(6 - index, fret, lowest ? { bass: true } : {});
    return [{ midi: note.midi, samples: render(note, 0.9, { instrument, seed: index }) }];
  });
  if (!bass) throw new Error('a shape has a bass');
  const chord = bass.samples.map((_, n) => others.reduce((sum, { samples }) => sum + (samples[n] ?? 0), 0));
  return { midi: bass.midi, bass: bass.samples, chord };
}

describe.each(VOICES)('small-speaker bass of %s', (voice) => {
  test.each(SHAPES)(
    '%s: heard through the speaker, the bass stands 4 dB nearer to the chord than without it',
    (_name, frets) => {
      const nearness = (smallSpeaker: boolean) => {
        const { bass, chord } = strum(voice, frets, smallSpeaker);
        return decibels(
          level(throughSmallSpeaker(bass), RATE, 0, 0.5) / level(throughSmallSpeaker(chord), RATE, 0, 0.5),
        );
      };
      expect(nearness(true) - nearness(false)).toBeGreaterThan(4);
      // Nearer, not in front of everything.
      expect(nearness(true)).toBeLessThan(3);
    },
  );

  test.each(SHAPES)('%s: the bass keeps its pitch, with and without its fundamental', (_name, frets) => {
    const { bass, midi } = strum(voice, frets, true);
    expect(Math.abs(centsByAutocorrelation(bass, RATE, midi))).toBeLessThan(1);
    expect(Math.abs(centsByAutocorrelation(throughSmallSpeaker(bass), RATE, midi))).toBeLessThan(1);
  });

  test.each(SHAPES)(
    '%s: second to fourth harmonics grow beside the fundamental, none of them foreign',
    (_name, frets) => {
      const carried = (smallSpeaker: boolean) => {
        const { bass, midi } = strum(voice, frets, smallSpeaker);
        const at = (harmonic: number) => partial(bass, RATE, midiFrequency(midi) * harmonic, 0.02, 0.4).amplitude;
        return decibels(Math.hypot(at(2), at(3), at(4)) / at(1));
      };
      expect(carried(true) - carried(false)).toBeGreaterThan(2.5);
    },
  );

  test('its attack is clearer, and a chord’s other strings have less under 250 Hz', () => {
    const frets = [3, 2, 0, 0, 0, 3];
    const [usual, small] = [strum(voice, frets, false), strum(voice, frets, true)];
    const attack = (samples: Float32Array) => level(band(samples, RATE, 1000, 6000), RATE, 0, 0.02);
    expect(decibels(attack(small.bass) / attack(usual.bass))).toBeGreaterThan(4);
    const low = (samples: Float32Array) =>
      decibels(level(band(samples, RATE, 40, 250), RATE, 0, 0.5) / level(band(samples, RATE, 250, 8000), RATE, 0, 0.5));
    expect(low(usual.chord) - low(small.chord)).toBeGreaterThan(4);
  });
});

import { describe, expect, test } from 'vitest';
import { grooveById } from '../../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { perform, type SoundedNote } from '../../../shared-theory/perform.ts';
import { STEEL, VOICES } from '../../../shared-theory/sound/instrument.ts';
import { kWeighted } from '../../../shared-theory/sound/loudness.ts';
import { mixPerformance } from '../../../shared-theory/sound/mix.ts';
import { noteShelf } from '../../../shared-theory/sound/note-shelf.ts';
import { renderString } from '../../../shared-theory/sound/plucked-string.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';
import { band, decibels, level, partial, peak } from './estimate.ts';

const RATE = 44100;
const shelf = noteShelf(RATE);

/** The samples of a vamp, and the first note of each of its strokes. */
function heard(chords: string, id: string, tempo: number) {
  const { meter } = grooveById(id);
  const slots = parseVamp(chords, BEATS_PER_BAR[meter]);
  const performance = perform(voice({ slots, groove: id, tempo, seed: 3 }));
  const strokes = performance.notes.filter(
    (note, index) => note.time - (performance.notes[index - 1]?.time ?? -1) > 0.05,
  );
  return { samples: mixPerformance(performance, { sampleRate: RATE, shelf }), strokes };
}

function tempi(id: string): readonly number[] {
  const [low, high] = grooveById(id).tempo;
  return [low, Math.round((low + high) / 2), high];
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Mean level in decibels of the first `seconds` of the strokes that fit. */
function meanLevel(
  { samples, strokes }: ReturnType<typeof heard>,
  seconds: number,
  fits: (note: SoundedNote) => boolean,
): number {
  const levels = strokes.filter(fits).map(({ time }) => decibels(level(samples, RATE, time, time + seconds)));
  expect(levels.length).toBeGreaterThan(0);
  return mean(levels);
}

const VAMPS = ['Em D', 'F Bm', 'C Am', 'G Dsus2', 'C5 Bb', 'E5 A5'] as const;

describe('upstrokes among downstrokes', () => {
  const alternating = ['relaxed-alternate', 'campfire-strum'].flatMap((id) =>
    tempi(id).map((tempo) => [id, tempo] as const),
  );

  test.each(alternating)(
    '%s at %i: every up has an attack in the band of the pick: 5 dB for nineteen of twenty, 4.5 for each',
    (id, tempo) => {
      const rises: number[] = [];
      for (const chords of VAMPS) {
        const { samples, strokes } = heard(chords, id, tempo);
        const bright = band(samples, RATE, 1000, 8000);
        const rise = ({ time }: SoundedNote) =>
          decibels(level(bright, RATE, time, time + 0.02) / level(bright, RATE, time - 0.02, time));
        const ups = strokes.filter((note) => note.stroke === 'up');
        expect(ups.length).toBe(id === 'relaxed-alternate' ? 8 : 6);
        for (const up of ups) {
          expect(rise(up), `${chords}, ${up.time} s`).toBeGreaterThanOrEqual(4.5);
          rises.push(rise(up));
        }
      }
      expect(rises.filter((decibelsUp) => decibelsUp >= 5).length).toBeGreaterThanOrEqual(0.95 * rises.length);
    },
  );

  test.each(alternating)('%s at %i: ups are lighter than the numbers, chord by chord', (id, tempo) => {
    for (const chords of VAMPS) {
      const sound = heard(chords, id, tempo);
      for (const chord of [0, 1]) {
        const numbers = meanLevel(sound, 0.1, (note) => note.chord === chord && note.stroke === 'down');
        const ups = meanLevel(sound, 0.1, (note) => note.chord === chord && note.stroke === 'up' && note.accent === 1);
        expect(numbers - ups, `${chords}, chord ${chord + 1}`).toBeGreaterThan(2);
        // A small speaker plays little but the band of the pick: there, too, an up never takes a number's place.
        const bright = { ...sound, samples: band(sound.samples, RATE, 1000, 8000) };
        const edge = (stroke: 'down' | 'up', accent: number) =>
          meanLevel(bright, 0.05, (note) => note.chord === chord && note.stroke === stroke && note.accent === accent);
        expect(edge('down', 3) - edge('up', 1), `${chords}, chord ${chord + 1}`).toBeGreaterThan(1);
        expect(edge('down', 2) - edge('up', 1), `${chords}, chord ${chord + 1}`).toBeGreaterThan(-2.5);
      }
    }
  });

  test('an up is thin: its first moment has less below 300 Hz beside the pick’s band than a down’s', () => {
    const { samples, strokes } = heard('Em D', 'relaxed-alternate', 93);
    const [deep, bright] = [band(samples, RATE, 60, 300), band(samples, RATE, 1000, 8000)];
    const thinness = (stroke: 'down' | 'up') =>
      mean(
        strokes
          .filter((note) => note.stroke === stroke)
          .map(({ time }) => decibels(level(bright, RATE, time, time + 0.02) / level(deep, RATE, time, time + 0.02))),
      );
    expect(thinness('up') - thinness('down')).toBeGreaterThan(1);
  });

  test('the pick of an up follows the accent less than the string does, and its noise is over before 20 ms are', () => {
    const pick = (accent: 1 | 3) => {
      const render = (stroke: 'up' | 'down') =>
        renderString(
          { midi: 64, string: 1, fret: 0, touch: 'open', stroke, accent },
          { seconds: 0.3, sampleRate: RATE, seed: 1 },
        );
      return band(render('up'), RATE, 3000, 8000);
    };
    const [light, heavy] = [pick(1), pick(3)];
    const first = (samples: Float32Array) => level(samples, RATE, 0, 0.01);
    expect(decibels(first(heavy) / first(light))).toBeLessThan(7);
    expect(decibels(first(light) / level(light, RATE, 0.025, 0.05))).toBeGreaterThan(10);
  });

  // Common practice: an up is two or three decibels weaker; more, and a light one is a scratch of the pick without a note.
  test.each(VOICES)('%s: the note behind the pick of a light up stays within 4 dB of a light down’s', (guitar) => {
    for (const [string, midi] of [64, 59, 55].entries()) {
      const behind = (stroke: 'up' | 'down') => {
        const samples = renderString(
          { midi, string: string + 1, fret: 0, touch: 'open', stroke, accent: 1 },
          { seconds: 0.3, sampleRate: RATE, seed: 1, instrument: { ...STEEL, voice: guitar } },
        );
        return level(Float32Array.from(kWeighted(samples, RATE)), RATE, 0.025, 0.2);
      };
      const under = decibels(behind('down') / behind('up'));
      expect(under, `string ${string + 1}`).toBeLessThan(4);
      expect(under, `string ${string + 1}`).toBeGreaterThan(0);
    }
  });

  test('Em and D keep their roots: the lowest strong note of each bar', () => {
    const { samples } = heard('Em D', 'relaxed-alternate', 100);
    const bars = [
      [0.1, 40],
      [2.5, 50],
    ] as const;
    for (const [from, root] of bars) {
      const at = (midi: number) => partial(samples, RATE, 440 * 2 ** ((midi - 69) / 12), from, 0.45).amplitude;
      for (let midi = root - 8; midi < root - 1; midi++) expect(decibels(at(root) / at(midi))).toBeGreaterThan(20);
    }
  });
});

describe('a groove beside the full stroke that opens its chord', () => {
  const feet = ['foot-and-closed-hat', 'foot-and-open-hat'].flatMap((id) =>
    tempi(id).map((tempo) => [id, tempo] as const),
  );

  test.each(feet)('%s at %i: the foot within 6 dB, the hat within 10', (id, tempo) => {
    for (const chords of VAMPS) {
      const sound = heard(chords, id, tempo);
      const opening = (note: SoundedNote) => note.stroke === 'down' && note.touch === 'open';
      // A palm mute is half gone after 50 ms; 200 ms hold the whole of it as the ear sums it up.
      const foot = (seconds: number) =>
        meanLevel(sound, seconds, opening) - meanLevel(sound, seconds, (note) => note.touch === 'palm');
      expect(foot(0.2), chords).toBeLessThan(6);
      expect(foot(0.05), chords).toBeGreaterThan(-3.5);
      const hat = (note: SoundedNote) => note.touch === 'choke' || note.stroke === 'up';
      expect(meanLevel(sound, 0.05, opening) - meanLevel(sound, 0.05, hat), chords).toBeLessThan(10);
      expect(peak(sound.samples)).toBeLessThanOrEqual(0.98);
    }
  });

  test.each(tempi('driving-eighths'))('driving-eighths at %i: muted low strings stand up to the opening', (tempo) => {
    for (const chords of VAMPS) {
      const sound = heard(chords, 'driving-eighths', tempo);
      const opening = (note: SoundedNote) => note.touch === 'open';
      const muted = (accent: number) => (note: SoundedNote) => note.touch === 'palm' && note.accent === accent;
      const behind = (accent: number) => meanLevel(sound, 0.05, opening) - meanLevel(sound, 0.05, muted(accent));
      expect(behind(3), chords).toBeLessThan(3);
      expect(behind(3), chords).toBeGreaterThan(-3);
      expect(behind(1), chords).toBeLessThan(11);
      expect(behind(1) - behind(2), chords).toBeGreaterThan(3.5);
      expect(behind(2) - behind(3), chords).toBeGreaterThan(2);
    }
  });
});

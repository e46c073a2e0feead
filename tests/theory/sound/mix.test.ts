import { describe, expect, test } from 'vitest';
import { withBand } from '../../../shared-theory/band.ts';
import { grooveById, GROOVES } from '../../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { perform, type KitStrike, type Performance } from '../../../shared-theory/perform.ts';
import { countInTick, testNote } from '../../../shared-theory/sound/clicks.ts';
import { integratedLoudness } from '../../../shared-theory/sound/loudness.ts';
import { mixPerformance, performanceGain, TARGET_LUFS } from '../../../shared-theory/sound/mix.ts';
import { noteShelf } from '../../../shared-theory/sound/note-shelf.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';
import { decibels, level, partial, peak } from './estimate.ts';
import { midiFrequency } from '../../../shared-theory/pitch.ts';

const RATE = 44100;

function played(chords: string, id: string, tempo?: number): Performance {
  const groove = GROOVES.find((known) => known.id === id);
  if (!groove) throw new Error(id);
  const slots = parseVamp(chords, BEATS_PER_BAR[groove.meter]);
  return perform(voice({ slots, groove: id, tempo: tempo ?? groove.tempo[0], seed: 3 }));
}

/** One shelf for all: what one groove needs another has rendered. */
const shelf = noteShelf(RATE);

describe('loudness: every round alike', () => {
  test.each(GROOVES.map(({ id }, index) => [id, ['Em D', 'C Am', 'F Bm'][index % 3] ?? 'Em D'] as const))(
    '%s, %s: −23 LUFS, no sample over −1 dBFS',
    (id, chords) => {
      const mixed = mixPerformance(played(chords, id), { sampleRate: RATE, shelf });
      expect(Math.abs(integratedLoudness(mixed, RATE) - TARGET_LUFS)).toBeLessThan(0.5);
      expect(peak(mixed)).toBeLessThan(10 ** (-1 / 20));
      expect(mixed.some(Number.isNaN)).toBe(false);
    },
  );

  test('shapes of three to six strings: the level of their strums differs by 3 dB at most', () => {
    const chords = 'C Cm D Dm E Em F G Gm A Am Bb Bm C5 E5 Asus4 Dsus2 Bdim Caug F#m'.split(' ');
    const levels = chords.map((chord) => {
      const mixed = mixPerformance(played(chord, 'quarter-downs', 80), { sampleRate: RATE, shelf });
      return decibels(level(mixed, RATE, 0, 3));
    });
    expect(Math.max(...levels) - Math.min(...levels)).toBeLessThanOrEqual(3);
  });
});

describe('the mix is the performance', () => {
  test.each(GROOVES.map(({ id }) => id))('%s: every stroke begins within 1 ms of its time, and not before', (id) => {
    const performance = played('Em D', id);
    const strokes = performance.notes.filter(
      (note, index) => note.time - (performance.notes[index - 1]?.time ?? -1) > 0.05,
    );
    expect(strokes.length).toBeGreaterThan(3);
    for (const note of strokes) {
      // What comes after the stroke's first moment tells nothing of its beginning.
      const alone = mixPerformance(
        { ...performance, seconds: note.time + 0.04, notes: [note] },
        { sampleRate: RATE, shelf },
      );
      const loudest = peak(alone);
      const begins = alone.findIndex((sample) => sample !== 0) / RATE;
      const heard = alone.findIndex((sample) => Math.abs(sample) > loudest * 0.1) / RATE;
      expect(begins - note.time).toBeGreaterThan(-0.0001);
      expect(heard - note.time).toBeLessThan(0.001);
    }
  });

  test('kit and bass begin where they are performed: with and without each of them', () => {
    const vamp = voice({ slots: parseVamp('Em D', 4), groove: 'foot-slap-hat', tempo: 120, seed: 3 });
    const performance = withBand(vamp, perform(vamp), { kit: true, bass: true });
    const { kit = [], bass = [] } = performance;
    const quiet = { ...performance, notes: [], kit: [], bass: [] };
    const alone = [
      ...kit.map((strike) => ({ time: strike.time, part: { kit: [strike] } })),
      ...bass.map((note) => ({ time: note.time, part: { bass: [note] } })),
    ];
    expect(alone.length).toBeGreaterThan(10);
    for (const { time, part } of alone) {
      const mixed = mixPerformance({ ...quiet, ...part, seconds: time + 0.04 }, { sampleRate: RATE, shelf });
      const begins = mixed.findIndex((sample) => sample !== 0) / RATE;
      expect(Math.abs(begins - time)).toBeLessThan(0.001);
    }
  });

  test('an open hat is closed: little is left of it after the next foot', () => {
    const hat = { time: 0, piece: 'open-hat', accent: 3, trim: 0, chord: 0 } as const;
    const bars = { seconds: 1, loops: 1, bars: [], notes: [] };
    const mixed = (kit: readonly KitStrike[]) => mixPerformance({ ...bars, kit }, { sampleRate: RATE, shelf });
    const late = (samples: Float32Array) => decibels(level(samples, RATE, 0.3, 0.5) / level(samples, RATE, 0, 0.1));
    expect(late(mixed([hat]))).toBeGreaterThan(-40);
    expect(late(mixed([{ ...hat, duration: 0.25 }]))).toBeLessThan(-80);
  });

  test('a band leaves a round as loud as it is, and the guitar before kit and bass', () => {
    for (const id of ['relaxed-alternate', 'boom-chick', 'waltz'] as const) {
      const groove = grooveById(id);
      const slots = parseVamp('Em D', 4).map(({ chord }) => ({ chord, beats: BEATS_PER_BAR[groove.meter] }));
      const vamp = voice({ slots, groove: id, tempo: groove.tempo[0], seed: 3 });
      const alone = perform(vamp);
      const together = withBand(vamp, alone, { kit: true, bass: true });
      const lufs = (performance: Performance) =>
        integratedLoudness(mixPerformance(performance, { sampleRate: RATE, shelf }), RATE);
      expect(Math.abs(lufs(together) - lufs(alone))).toBeLessThan(1);
      // The gain says how loud each part was before it was matched.
      const before = (performance: Performance) => -decibels(performanceGain(performance, shelf));
      const guitar = before(alone);
      for (const part of [
        { ...together, notes: [], bass: [] },
        { ...together, notes: [], kit: [] },
      ]) {
        expect(guitar - before(part), id).toBeGreaterThan(3);
        expect(guitar - before(part), id).toBeLessThan(13);
      }
    }
  });

  test('a lead moves everything by its length; a tail lets the last chord ring and ends in silence', () => {
    const performance = played('Em D', 'quarter-downs', 100);
    const plain = mixPerformance(performance, { sampleRate: RATE, shelf });
    const moved = mixPerformance(performance, { sampleRate: RATE, lead: 0.1, tail: 1 });
    expect(moved.length).toBe(plain.length + Math.round(1.1 * RATE));
    expect(peak(moved.slice(0, Math.round(0.1 * RATE)))).toBe(0);
    const end = performance.seconds + 0.1;
    expect(level(moved, RATE, end + 0.2, end + 0.4)).toBeGreaterThan(0.005);
    expect(Math.abs(moved.at(-1) ?? 1)).toBeLessThan(1e-6);
  });

  test('accents read at least 4 dB apart in the first 50 ms of full strokes', () => {
    const performance = played('Em D', 'quarter-downs', 80);
    const mixed = mixPerformance(performance, { sampleRate: RATE, shelf });
    const strokeLevel = (accent: number) => {
      const times = performance.notes
        .filter((note) => note.accent === accent && note.string === 1)
        .map(({ time }) => time);
      const levels = times.map((time) => level(mixed, RATE, time, time + 0.05));
      return levels.reduce((sum, value) => sum + value, 0) / levels.length;
    };
    expect(decibels(strokeLevel(3) / strokeLevel(2))).toBeGreaterThan(3.5);
  });

  test('the roots are the strongest low notes of their bars', () => {
    const mixed = mixPerformance(played('C Am', 'quarter-downs', 100), { sampleRate: RATE, shelf });
    const bars = [
      [0.1, 48],
      [2.5, 45],
    ] as const;
    for (const [from, root] of bars) {
      const at = (midi: number) => partial(mixed, RATE, midiFrequency(midi), from, 0.45).amplitude;
      for (let midi = root - 8; midi < root - 1; midi++) expect(decibels(at(root) / at(midi))).toBeGreaterThan(20);
    }
  });

  test('a choke is short: the strings are silent well before the next stroke', () => {
    const performance = played('Em D', 'foot-and-closed-hat', 100);
    const choke = performance.notes.find((note) => note.touch === 'choke' && note.time > 0.7);
    if (!choke) throw new Error('a choke');
    const mixed = mixPerformance(performance, { sampleRate: RATE, shelf });
    const early = level(mixed, RATE, choke.time, choke.time + 0.05);
    const late = level(mixed, RATE, choke.time + choke.duration + 0.06, choke.time + choke.duration + 0.1);
    expect(decibels(early / late)).toBeGreaterThan(20);
  });

  test('the same performance gives the same samples, whatever the shelf held before', () => {
    const performance = played('G C', 'campfire-strum');
    const one = mixPerformance(performance, { sampleRate: RATE });
    const other = mixPerformance(performance, { sampleRate: RATE, shelf });
    expect(one.every((sample, n) => sample === other[n])).toBe(true);
  });

  test('a shelf of another rate is refused', () => {
    const performance = played('G C', 'campfire-strum');
    expect(() => mixPerformance(performance, { sampleRate: 48000, shelf })).toThrow(RangeError);
  });

  test('a performance of nothing is silence', () => {
    const silent = mixPerformance({ seconds: 1, loops: 1, bars: [], notes: [] }, { sampleRate: RATE, shelf });
    expect(silent).toHaveLength(RATE);
    expect(peak(silent)).toBe(0);
  });
});

describe('clicks', () => {
  test('the tick on one is higher and louder, both start at once and die within 80 ms', () => {
    const [one, other] = [countInTick(true, RATE), countInTick(false, RATE)];
    expect(peak(one)).toBeGreaterThan(peak(other) * 1.3);
    const at = (samples: Float32Array, hertz: number) => partial(samples, RATE, hertz, 0, 0.06).amplitude;
    expect(at(one, 1480)).toBeGreaterThan(at(one, 1110) * 2);
    expect(at(other, 1110)).toBeGreaterThan(at(other, 1480) * 2);
    for (const tick of [one, other]) {
      expect(Math.abs(tick[0] ?? 1)).toBeLessThan(0.001);
      expect(Math.abs(tick.at(-1) ?? 1)).toBeLessThan(0.001);
    }
  });

  test('the test note is A, 220 Hz, as loud as a vamp', () => {
    const note = testNote(48000);
    expect(Math.abs(integratedLoudness(note, 48000) - TARGET_LUFS)).toBeLessThan(0.1);
    const octaves = [110, 220, 440].map((hertz) => partial(note, 48000, hertz, 0.1, 0.5).amplitude);
    expect(octaves[1]).toBeGreaterThan((octaves[0] ?? 0) * 50);
  });
});

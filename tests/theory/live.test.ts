import { describe, expect, test } from 'vitest';
import { GROOVES } from '../../shared-theory/grooves.ts';
import { barsOf, bassAlone, countIn, holdSlot, withTempo } from '../../shared-theory/live.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { perform } from '../../shared-theory/perform.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';

const vamps = GROOVES.map((groove) => {
  const beats = BEATS_PER_BAR[groove.meter];
  const slots = parseVamp('| G | . | D | . |', beats);
  return voice({ slots, groove: groove.id, tempo: groove.tempo[1], seed: 3 });
});
function vampOf(groove: string, tempo: number) {
  return voice({ slots: parseVamp('| G | . | D | . |', groove === 'waltz' ? 3 : 4), groove, tempo, seed: 3 });
}
const first = vamps[0] ?? voice({ slots: parseVamp('G D', 4), groove: null, tempo: 90, seed: 3 });

describe('live controls', () => {
  test('holding a slot loops two bars of its chord: the one that opens it and one that goes on', () => {
    for (const vamp of vamps) {
      const held = holdSlot(vamp, 1);
      const { seconds, notes, bars } = perform(held);
      expect(bars).toHaveLength(2);
      expect(seconds).toBeCloseTo((2 * BEATS_PER_BAR[vamp.meter] * 60) / vamp.tempo, 9);
      expect(Math.min(...notes.map((note) => note.midi))).toBe(50);
    }
    const driving = perform(holdSlot(vampOf('driving-eighths', 120), 0));
    const muted = barsOf(driving).map(({ notes }) => notes.every((note) => note.touch === 'palm'));
    expect(muted).toEqual([false, true]);
    expect(() => holdSlot(first, 2)).toThrow(/0 to 1, not 2/);
  });

  test('the bass alone: one open root at a time, at least 0.4 s long, first at each chord, on every one', () => {
    for (const vamp of vamps) {
      for (const human of [false, true]) {
        const performance = perform(vamp, { loops: 2, human });
        const { notes, seconds, bars } = bassAlone(vamp, performance);
        expect(new Set(notes.map((note) => `${note.chord} ${note.midi}`))).toEqual(new Set(['0 43', '1 50']));
        for (const [index, note] of notes.entries()) {
          expect(note.touch).toBe('open');
          expect(note.duration).toBeGreaterThanOrEqual(0.4 - 0.02);
          expect(note.time + note.duration).toBeCloseTo(notes[index + 1]?.time ?? seconds, 9);
        }
        expect(bars).toHaveLength(8);
        for (const bar of bars) {
          const one = notes.filter((note) => Math.abs(note.time - bar.time) < 0.01);
          expect(one.map((note) => note.chord)).toEqual([bar.chord]);
        }
      }
    }
  });

  // Beats of the bar, from 1, that the bass alone falls on: an opening bar, then one that goes on.
  test.each([
    ['driving-eighths', 120, [1, 2, 3, 4], [1, 2, 3, 4]],
    ['driving-eighths', 150, [1, 2, 3, 4], [1, 2, 3, 4]],
    ['driving-eighths', 152, [1, 3], [1, 3]],
    ['driving-eighths', 184, [1, 3], [1, 3]],
    ['quarter-downs', 116, [1, 2, 3, 4], [1, 2, 3, 4]],
    ['foot-and-open-hat', 132, [1, 2, 3, 4], [1, 2, 3, 4]],
    ['campfire-strum', 132, [1, 2, 4], [1, 2, 4]],
    ['waltz', 84, [1], [1]],
    ['waltz', 180, [1], [1]],
  ] as const)('the bass alone of %s at %d falls on numbers', (groove, tempo, opening, plain) => {
    const vamp = vampOf(groove, tempo);
    for (const human of [false, true]) {
      const bars = barsOf(bassAlone(vamp, perform(vamp, { human })));
      const numbers = bars.map(({ notes }) =>
        notes.map((note) => Math.round(((note.time * tempo) / 60) * 10) / 10 + 1),
      );
      const near = numbers.map((row) =>
        row.map((number) => (Math.abs(number - Math.round(number)) < 0.15 ? Math.round(number) : number)),
      );
      expect(near).toEqual([opening, plain, opening, plain]);
    }
  });

  test('the bass alone of a chord that begins late in a bar: its first bass, and the next one all the same', () => {
    const vamp = voice({
      slots: parseVamp('| G . . D | . . . . |', 4),
      groove: 'driving-eighths',
      tempo: 184,
      seed: 3,
    });
    const { notes } = bassAlone(vamp, perform(vamp));
    const places = notes.map((note) => [note.midi, Math.round(((note.time * 184) / 60) * 100) / 100]);
    expect(places).toEqual([
      [43, 0],
      [50, 3],
      [50, 4],
      [50, 6],
    ]);
  });

  test('tempo stays where every quality can be heard', () => {
    expect(withTempo(first, 90).tempo).toBe(90);
    expect(withTempo(first, 400).tempo).toBe(116);
    expect(withTempo(first, 5).tempo).toBe(30);
    expect(withTempo({ ...first, grooveText: '' }, 250).tempo).toBe(250);
    expect(() => withTempo(first, Number.NaN)).toThrow(RangeError);
  });

  test('bars hold every note once, timed from their own start', () => {
    for (const vamp of vamps) {
      for (const human of [false, true]) {
        const performance = perform(vamp, { loops: 2, human });
        const bars = barsOf(performance);
        expect(bars).toHaveLength(8);
        expect(bars.map((bar) => bar.chord)).toEqual([0, 0, 1, 1, 0, 0, 1, 1]);
        const again = bars.flatMap((bar) => bar.notes.map((note) => ({ ...note, time: note.time + bar.time })));
        expect(again).toHaveLength(performance.notes.length);
        for (const [index, note] of again.entries())
          expect(note.time).toBeCloseTo(performance.notes[index]?.time ?? -1, 9);
        for (const bar of bars) {
          expect(bar.notes.every((note) => note.time >= 0 && note.time < bar.seconds)).toBe(true);
          expect(bar.notes[0]?.time ?? 1).toBeLessThan(0.01);
        }
      }
    }
  });

  test.each([
    ['4/4', 120, 2, [1, 2, 3, 4]],
    ['3/4', 120, 1.5, [1, 2, 3]],
    ['12/8', 60, 4, [1, 2, 3, 4]],
    ['6/8', 60, 4, [1, 2, 1, 2]],
    ['7/8', 120, 1.75, [1, 2, 3]],
  ] as const)('count-in of %s at %d', (meter, tempo, seconds, numbers) => {
    const counted = countIn(meter, tempo);
    expect(counted.seconds).toBeCloseTo(seconds, 9);
    expect(counted.beats.map((beat) => beat.number)).toEqual(numbers);
    expect(counted.beats.map((beat) => beat.accented)).toEqual(numbers.map((number) => number === 1));
    for (const [index, beat] of counted.beats.entries()) expect(beat.time).toBeCloseTo((index * 60) / tempo, 9);
  });
});

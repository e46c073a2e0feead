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
const first = vamps[0] ?? voice({ slots: parseVamp('G D', 4), groove: null, tempo: 90, seed: 3 });

describe('live controls', () => {
  test('holding a slot loops one bar of its chord', () => {
    for (const vamp of vamps) {
      const held = holdSlot(vamp, 1);
      const { seconds, notes, bars } = perform(held);
      expect(bars).toHaveLength(1);
      expect(seconds).toBeCloseTo((BEATS_PER_BAR[vamp.meter] * 60) / vamp.tempo, 9);
      expect(Math.min(...notes.map((note) => note.midi))).toBe(50);
    }
    expect(() => holdSlot(first, 2)).toThrow(/0 to 1, not 2/);
  });

  test('the bass alone: one open root at a time, at least 0.4 s long, first at each chord', () => {
    for (const vamp of vamps) {
      const { notes, seconds } = bassAlone(perform(vamp, { loops: 2 }));
      expect(new Set(notes.map((note) => `${note.chord} ${note.midi}`))).toEqual(new Set(['0 43', '1 50']));
      for (const [index, note] of notes.entries()) {
        expect(note.touch).toBe('open');
        expect(note.duration).toBeGreaterThanOrEqual(0.4 - 1e-9);
        expect(note.time + note.duration).toBeCloseTo(notes[index + 1]?.time ?? seconds, 9);
      }
      const starts = notes.filter((note, index) => note.chord !== notes[index - 1]?.chord).map((note) => note.time);
      expect(starts).toHaveLength(4);
      for (const [index, start] of starts.entries()) expect(start).toBeCloseTo((index * seconds) / 4, 9);
    }
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

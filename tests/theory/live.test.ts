import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chordPitchClasses } from '../../shared-theory/chords.ts';
import { beatsPerSlot, GROOVES } from '../../shared-theory/grooves.ts';
import {
  barsOf,
  bassAlone,
  countIn,
  holdSlot,
  inTurn,
  mutedStrings,
  pairSlots,
  rootAlone,
  softly,
  unheard,
  wholeBars,
  withTempo,
} from '../../shared-theory/live.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { bassOf } from '../../shared-theory/neck.ts';
import { grooveOf, perform } from '../../shared-theory/perform.ts';
import { midiPitchClass, pitchClass } from '../../shared-theory/pitch.ts';
import { parseVamp, type VoicedVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';

const vamps = GROOVES.map((groove) => {
  const beats = BEATS_PER_BAR[groove.meter];
  const slots = parseVamp('| G | . | D | . |', beats);
  return voice({ slots, groove: groove.id, tempo: groove.tempo[1], seed: 3 });
});
/** Whether the groove sounds the next bar's beginning before its line, and whether every bar begins with a stroke. */
const pushes = (vamp: VoicedVamp) => grooveOf(vamp)?.slots.some((slot) => slot.pushes) ?? false;
const onTheOne = (vamp: VoicedVamp) => !pushes(vamp) && (grooveOf(vamp)?.slots[0]?.accent ?? 0) > 0;
function vampOf(groove: string, tempo: number) {
  return voice({ slots: parseVamp('| G | . | D | . |', groove === 'waltz' ? 3 : 4), groove, tempo, seed: 3 });
}
function vampSlots(text: string) {
  return voice({ slots: parseVamp(text, 4), groove: null, tempo: 90, seed: 3 }).slots;
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

  test('a bass that takes turns with the fifth: alone it keeps to the root, on the numbers where it falls', () => {
    const vamp = vampOf('boom-chick', 100);
    const { notes } = bassAlone(vamp, perform(vamp));
    expect(new Set(notes.map(({ midi }) => midi))).toEqual(new Set([43, 50]));
  });

  test('the first chord and another by turns: their own lengths in whole bars, two at most; two chords are the loop', () => {
    const pair = (text: string, slot: number) => {
      const slots = parseVamp(text, 4);
      return pairSlots(voice({ slots, groove: 'quarter-downs', tempo: 90, seed: 3 }), slot).map((each) => [
        each.slot,
        each.beats,
      ]);
    };
    expect(pair('C | F | G', 2)).toEqual([
      [0, 4],
      [2, 4],
    ]);
    expect(pair('| C | . | F | . | G |', 1)).toEqual([
      [0, 8],
      [1, 8],
    ]);
    expect(pair('| C . F . | G |', 1)).toEqual([
      [0, 4],
      [1, 4],
    ]);
    expect(pair('| C | . | . | . | F | G |', 2)).toEqual([
      [0, 8],
      [2, 4],
    ]);
    expect(pair('| G . D . |', 1)).toEqual([
      [0, 2],
      [1, 2],
    ]);
    expect(pair('C F G', 0)).toEqual([[0, 4]]);
    expect(() => pair('C F', 2)).toThrow(/0 to 1, not 2/);
  });

  test('the root alone: struck on each bar, open, ringing to the next', () => {
    for (const vamp of vamps) {
      const { notes, bars, seconds } = rootAlone(vamp, 1);
      expect(notes.map(({ midi }) => midi)).toEqual([50, 50]);
      expect(notes.map(({ time }) => time)).toEqual(bars.map(({ time }) => time));
      for (const note of notes) {
        expect(note.touch).toBe('open');
        expect(note.duration).toBeCloseTo(seconds / 2, 9);
      }
    }
    expect(() => rootAlone(first, 2)).toThrow(/0 to 1, not 2/);
  });

  test('the root of a slash chord is the lowest string that sounds it, and not the bass', () => {
    for (const [text, root, bass] of [
      ['C/E', 48, 40],
      ['G/B', 55, 47],
      ['D/F#', 50, 42],
    ] as const) {
      const vamp = voice({ slots: parseVamp(text, 4), groove: 'quarter-downs', tempo: 90, seed: 3 });
      expect(rootAlone(vamp, 0).notes.map(({ midi }) => midi)).toEqual([root, root]);
      expect(new Set(bassAlone(vamp, perform(vamp)).notes.map(({ midi }) => midi))).toEqual(new Set([bass]));
    }
    const slots = first.slots.map((slot) => ({ ...slot, frets: [null, null, 0, 2, null, null] as const }));
    expect(() => rootAlone({ ...first, slots }, 0)).toThrow(/must play its root, G/);
  });

  test('muted strings: every stroke of the groove at its time and weight, and nothing that tells of a chord', () => {
    for (const vamp of vamps) {
      const full = perform(vamp, { loops: 2 });
      const muted = mutedStrings(vamp, { loops: 2 });
      const groove = grooveOf(vamp);
      const slot = ((groove ? beatsPerSlot(groove) : 1) * 60) / vamp.tempo;
      // A stroke's strings, and its swing, stay within its own slot of the grid.
      const strokes = ({ notes }: typeof full) => [
        ...new Set(notes.map(({ stroke, accent, time }) => `${stroke} ${accent} ${Math.floor(time / slot + 1e-6)}`)),
      ];
      expect(strokes(muted).length).toBeGreaterThan(0);
      expect(new Set(strokes(muted))).toEqual(new Set(strokes(full)));
      expect(muted.notes.every(({ touch, duration }) => touch === 'dead' && duration <= 0.06)).toBe(true);
      expect(new Set(muted.notes.map(({ string, midi }) => `${string} ${midi}`)).size).toBeLessThanOrEqual(6);
      // A push sounds in the bar before: only the second time round can be compared.
      if (pushes(vamp)) continue;
      // Each chord's bar is struck on the same strings, and each string sounds one pitch throughout.
      const half = muted.seconds / 4;
      const strings = (chord: number) =>
        muted.notes
          .filter((note) => note.chord === chord && note.time < 2 * half)
          .map(({ string, midi, stroke, accent }) => `${string} ${midi} ${stroke} ${accent}`);
      expect(strings(1)).toEqual(strings(0));
    }
  });

  test('soft is the same, ten decibels lower; unheard the same bars with nothing in them', () => {
    const full = perform(first, { loops: 2, human: true });
    const soft = softly(full);
    expect(soft.notes.map(({ trim }) => trim)).toEqual(full.notes.map(({ trim }) => trim - 10));
    expect(soft.notes.map(({ time, midi, accent }) => [time, midi, accent])).toEqual(
      full.notes.map(({ time, midi, accent }) => [time, midi, accent]),
    );
    expect(unheard(full)).toEqual({ ...full, notes: [] });
  });

  test('whole bars: the last chord lasts to the end of its bar', () => {
    const beats = (text: string) => wholeBars(vampSlots(text), '4/4').map((slot) => slot.beats);
    expect(beats('| C . D . |')).toEqual([2, 2]);
    expect(wholeBars(vampSlots('| C . D . |').slice(0, 1), '4/4').map((slot) => slot.beats)).toEqual([4]);
    expect(
      wholeBars(vampSlots('C D').toSpliced(1, 1, ...vampSlots('| E . . F |')), '4/4').map((slot) => slot.beats),
    ).toEqual([4, 3, 1]);
  });

  test('performances in turn: one loop, times and chords counted on', () => {
    const one = perform(holdSlot(first, 0));
    const other = perform(first);
    const both = inTurn([one, other]);
    expect(both.seconds).toBeCloseTo(one.seconds + other.seconds, 9);
    expect(both.bars.map(({ chord }) => chord)).toEqual([0, 0, 1, 1, 2, 2]);
    expect(both.notes).toHaveLength(one.notes.length + other.notes.length);
    const moved = both.notes
      .slice(one.notes.length)
      .map(({ time, chord, midi }) => [time - one.seconds, chord - 1, midi]);
    for (const [index, [time, chord, midi]] of moved.entries()) {
      expect(time).toBeCloseTo(other.notes[index]?.time ?? -1, 9);
      expect([chord, midi]).toEqual([other.notes[index]?.chord, other.notes[index]?.midi]);
    }
  });

  const CHORDS = 'C Dm Em F G Am Bm D E A Bb Gm F#m Bdim Caug Dsus4 Asus2 G5'.split(' ');
  test('in every groove and loop: the bass alone and the root alone sound roots, muted strings only dead touches, and no bar is empty', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...CHORDS), { minLength: 1, maxLength: 6 }),
        fc.constantFrom(...GROOVES),
        fc.boolean(),
        (chords, groove, human) => {
          const slots = parseVamp(chords.join(' '), BEATS_PER_BAR[groove.meter]);
          const vamp = voice({ slots, groove: groove.id, tempo: groove.tempo[1], seed: 5 });
          const full = perform(vamp, { loops: 2, human });
          const bass = bassAlone(vamp, full);
          for (const { midi, chord } of bass.notes) {
            expect(midi).toBe(bassOf(vamp.slots[chord]?.frets ?? []));
            expect(midiPitchClass(midi)).toBe(pitchClass(vamp.slots[chord]?.chord.root ?? ''));
          }
          const muted = mutedStrings(vamp, { loops: 2, human });
          expect(muted.notes.every(({ touch }) => touch === 'dead')).toBe(true);
          const last = vamp.slots.length - 1;
          const root = rootAlone(vamp, last);
          expect(new Set(root.notes.map(({ midi }) => midi))).toEqual(new Set([bassOf(vamp.slots[last]?.frets ?? [])]));
          for (const { midi, chord } of full.notes)
            expect(chordPitchClasses(vamp.slots[chord]?.chord ?? { root: 'C', quality: 'major' })).toContain(
              midiPitchClass(midi),
            );
          for (const performance of [full, bass, muted, root, softly(full)]) {
            expect(barsOf(performance).every(({ notes }) => notes.length > 0)).toBe(true);
            for (const note of performance.notes)
              expect(note.time + note.duration).toBeLessThanOrEqual(performance.seconds + 1e-9);
          }
        },
      ),
      { numRuns: 30 },
    );
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
          if (onTheOne(vamp)) expect(bar.notes[0]?.time ?? 1).toBeLessThan(0.01);
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

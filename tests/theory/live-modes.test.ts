import { describe, expect, test } from 'vitest';
import { chordPitchClasses } from '../../shared-theory/chords.ts';
import { GROOVES } from '../../shared-theory/grooves.ts';
import {
  barsOf,
  bassForward,
  chordAlone,
  climbed,
  inTurn,
  kitOnly,
  rootThenChord,
  softly,
  unheard,
} from '../../shared-theory/live.ts';
import { withBand } from '../../shared-theory/band.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { bassOf } from '../../shared-theory/neck.ts';
import { perform, type Performance } from '../../shared-theory/perform.ts';
import { midiPitchClass, pitchClass } from '../../shared-theory/pitch.ts';
import { performanceGain } from '../../shared-theory/sound/mix.ts';
import { noteShelf } from '../../shared-theory/sound/note-shelf.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';

const vamps = GROOVES.map((groove) => {
  const beats = BEATS_PER_BAR[groove.meter];
  const slots = parseVamp('G | D', beats === 3.5 ? 4 : beats).map((slot) => ({ ...slot, beats }));
  return voice({ slots, groove: groove.id, tempo: groove.tempo[0], seed: 3 });
});
const [first] = vamps;
if (!first) throw new Error('there are grooves');
const BOTH = { kit: true, bass: true };

/** Loudness of one performance over another, in decibels. */
function over(one: Performance, other: Performance): number {
  const shelf = noteShelf(16_000);
  return 20 * Math.log10(performanceGain(other, shelf) / performanceGain(one, shelf));
}

describe('bass forward', () => {
  test('each chord’s bass comes twelve decibels before the strings beside it, and nothing else changes', () => {
    for (const vamp of vamps) {
      const full = perform(vamp, { human: true });
      const forward = bassForward(vamp, full);
      expect(forward.notes.map(({ time, midi, touch }) => [time, midi, touch])).toEqual(
        full.notes.map(({ time, midi, touch }) => [time, midi, touch]),
      );
      const lowest = vamp.slots.map(({ frets }) => bassOf(frets));
      const moved = { bass: new Set<number>(), rest: new Set<number>() };
      forward.notes.forEach((note, index) => {
        const by = note.trim - (full.notes[index]?.trim ?? 0);
        moved[note.midi === lowest[note.chord] ? 'bass' : 'rest'].add(Math.round(by * 1000) / 1000);
      });
      for (const rest of moved.rest) for (const bass of moved.bass) expect(bass - rest).toBeCloseTo(12, 6);
    }
  });

  test('of a slash chord it is the bass, not the root', () => {
    const vamp = voice({ slots: parseVamp('C/E', 4), groove: 'quarter-downs', tempo: 90, seed: 3 });
    const up = bassForward(vamp, perform(vamp)).notes.filter(({ trim }) => trim > 3);
    expect(new Set(up.map(({ midi }) => midi))).toEqual(new Set([40]));
  });

  test('the loudness of the whole stays near what it was', () => {
    expect(Math.abs(over(bassForward(first, perform(first)), perform(first)))).toBeLessThan(6);
  });
});

describe('one chord alone', () => {
  test('struck once on each of two bars, all its strings open, ringing until the next', () => {
    for (const vamp of vamps) {
      const { notes, bars, seconds } = chordAlone(vamp, 1);
      expect(bars.map(({ chord }) => chord)).toEqual([0, 0]);
      expect(seconds).toBeCloseTo((2 * BEATS_PER_BAR[vamp.meter] * 60) / vamp.tempo, 9);
      expect(notes).toHaveLength(8);
      for (const bar of barsOf({ notes, bars, seconds, loops: 1 })) {
        expect(new Set(bar.notes.map(({ midi }) => midiPitchClass(midi)))).toEqual(
          new Set(chordPitchClasses({ root: 'D', quality: 'major' })),
        );
        for (const { time, touch, duration } of bar.notes) {
          expect(time).toBeLessThan(0.05);
          expect(touch).toBe('open');
          expect(time + duration).toBeGreaterThan(bar.seconds - 0.06);
        }
      }
    }
    expect(() => chordAlone(first, 2)).toThrow(/0 to 1, not 2/);
  });

  test('the root for one bar, then the chord for one; nothing of the root rings into the chord', () => {
    for (const vamp of vamps) {
      const performance = rootThenChord(vamp, 1);
      const [root, chord] = barsOf(performance);
      expect(performance.bars.map((bar) => bar.chord)).toEqual([0, 0]);
      expect(root?.notes.map(({ midi }) => midiPitchClass(midi))).toEqual([pitchClass('D')]);
      expect(chord?.notes).toHaveLength(4);
      for (const { time, duration } of root?.notes ?? [])
        expect(time + duration).toBeLessThanOrEqual(root?.seconds ?? 0);
    }
    expect(() => rootThenChord(first, 2)).toThrow(/0 to 1, not 2/);
  });
});

describe('the band in what is played', () => {
  test('the kit alone plays in every bar of every groove, and no string does', () => {
    for (const vamp of vamps) {
      const performance = kitOnly(vamp, perform(vamp, { loops: 2, human: true }));
      expect(performance.notes).toEqual([]);
      expect(performance.bass).toBeUndefined();
      for (const bar of barsOf(performance)) expect(bar.kit.length).toBeGreaterThan(0);
    }
  });

  test('bars carry kit and bass, each sound once, timed from their own start', () => {
    for (const vamp of vamps) {
      const performance = withBand(vamp, perform(vamp, { loops: 2, human: true }), BOTH);
      const bars = barsOf(performance);
      for (const part of ['kit', 'bass'] as const) {
        const times = bars.flatMap((bar) => bar[part].map(({ time }) => time + bar.time));
        const played = performance[part] ?? [];
        expect(times).toHaveLength(played.length);
        times.forEach((time, index) => expect(time).toBeCloseTo(played[index]?.time ?? -1, 9));
        for (const bar of bars) for (const { time } of bar[part]) expect(time).toBeLessThan(bar.seconds);
      }
    }
  });

  test('one after the other, kit and bass are moved with the strings', () => {
    const one = withBand(first, perform(first), BOTH);
    const both = inTurn([one, one]);
    for (const part of ['kit', 'bass', 'notes'] as const) {
      const alone = one[part] ?? [];
      const moved = (both[part] ?? []).slice(alone.length);
      moved.forEach(({ time, chord }, index) => {
        expect(time - one.seconds).toBeCloseTo(alone[index]?.time ?? -1, 9);
        expect(chord).toBe((alone[index]?.chord ?? 0) + 2);
      });
      expect(moved).toHaveLength(alone.length);
    }
    expect(inTurn([perform(first)])).not.toHaveProperty('kit');
  });

  test('soft is soft for all, and unheard is nothing of anyone', () => {
    const band = withBand(first, perform(first), BOTH);
    const soft = softly(band);
    for (const part of ['kit', 'bass', 'notes'] as const)
      expect(soft[part]?.map(({ trim }) => trim)).toEqual(band[part]?.map(({ trim }) => trim - 10));
    expect(unheard(band)).toEqual({ seconds: band.seconds, loops: 1, bars: band.bars, notes: [] });
  });
});

describe('a climb', () => {
  test.each([
    [100, 130, 104],
    [40, 100, 42],
    [20, 30, 21],
    [125, 128, 128],
    [128, 128, 128],
  ])('from %d on the way to %d the next time round goes at %d', (tempo, to, next) => {
    expect(climbed(tempo, to)).toBe(next);
  });

  test('comes to its mark from anywhere', () => {
    for (let tempo = 30; tempo < 200; tempo += 7) {
      let now = tempo;
      for (let round = 0; round < 80; round += 1) now = climbed(now, 200);
      expect(now).toBe(200);
    }
  });
});

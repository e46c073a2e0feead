import { describe, expect, test } from 'vitest';
import { chordPitchClasses } from '../../shared-theory/chords.ts';
import { withFeel } from '../../shared-theory/feels.ts';
import { GROOVES } from '../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { grooveOf, perform } from '../../shared-theory/perform.ts';
import { midiPitchClass } from '../../shared-theory/pitch.ts';
import { parseVamp, type Meter, type VoicedVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';

const METERS = Object.keys(BEATS_PER_BAR) as readonly Meter[];

function vampIn(meter: Meter, chords = 'C Am G F'): VoicedVamp {
  const groove = GROOVES.find((each) => each.meter === meter);
  if (!groove) throw new Error(`some groove is in ${meter}`);
  const beats = BEATS_PER_BAR[meter];
  const slots = parseVamp(chords, 4).map((slot) => ({ ...slot, beats: 2 * beats }));
  return voice({ slots, groove: groove.id, tempo: groove.tempo[0], seed: 3 });
}

describe.each(METERS)('feels in %s', (meter) => {
  test('written is the vamp itself', () => {
    const vamp = vampIn(meter);
    expect(withFeel(vamp, 'written')).toBe(vamp);
  });

  test.each(['driving', 'relaxed'] as const)(
    '%s: another groove of the meter, at the same tempo up to its fastest',
    (feel) => {
      const vamp = vampIn(meter);
      for (const tempo of [30, 70, 110, 300]) {
        const swapped = withFeel({ ...vamp, tempo }, feel);
        const groove = grooveOf(swapped);
        expect(groove?.meter).toBe(meter);
        const [, fastest = 0] = groove?.tempo ?? [];
        expect(swapped.tempo).toBe(Math.min(fastest, tempo));
        expect({ ...swapped, grooveText: '', tempo: 0 }).toEqual({ ...vamp, grooveText: '', tempo: 0 });
      }
    },
  );

  test('driving is all downs on muted strings; relaxed rings, with a down on every beat and an up between', () => {
    const driving = grooveOf(withFeel(vampIn(meter), 'driving'));
    expect(new Set(driving?.slots.map(({ stroke, touch }) => `${stroke} ${touch}`))).toEqual(new Set(['down palm']));
    const relaxed = grooveOf(withFeel(vampIn(meter), 'relaxed'));
    expect(new Set(relaxed?.slots.map(({ touch }) => touch))).toEqual(new Set(['open']));
    expect(relaxed?.slots.some(({ stroke }) => stroke === 'up')).toBe(true);
    const perBeat = { '4/4': 2, '3/4': 2, '6/8': 3, '12/8': 3, '7/8': 2 }[meter];
    relaxed?.slots.forEach(({ stroke }, index) => {
      if (index % perBeat === 0) expect(stroke).toBe('down');
    });
  });

  test.each(['driving', 'relaxed'] as const)(
    '%s: every chord opens with all its notes, ringing for 0.3 s at least',
    (feel) => {
      for (const chords of ['C Am G F', 'D Dm Em A', 'Bb Gm E7 Bm']) {
        const vamp = withFeel({ ...vampIn(meter, chords), tempo: 300 }, feel);
        const { notes, bars } = perform(vamp);
        for (const [slot, { chord }] of vamp.slots.entries()) {
          const opens = bars.find((bar) => bar.chord === slot)?.time ?? -1;
          const ringing = notes.filter(
            ({ time, duration, touch }) =>
              touch === 'open' && time >= opens - 1e-9 && time < opens + 1 && duration >= 0.3,
          );
          const rung = new Set(ringing.filter((note) => note.chord === slot).map(({ midi }) => midiPitchClass(midi)));
          const open =
            feel === 'relaxed'
              ? new Set(
                  notes
                    .filter((note) => note.chord === slot && note.touch === 'open')
                    .map(({ midi }) => midiPitchClass(midi)),
                )
              : rung;
          for (const sound of chordPitchClasses(chord)) expect([...open], `${meter} ${chords}`).toContain(sound);
        }
      }
    },
  );
});

test('driving and relaxed of one meter share a stretch of tempo, so that they can be heard at the same one', () => {
  for (const meter of METERS) {
    const [low = 0] = grooveOf(withFeel(vampIn(meter), 'driving'))?.tempo ?? [];
    const [, high = 0] = grooveOf(withFeel(vampIn(meter), 'relaxed'))?.tempo ?? [];
    expect(high).toBeGreaterThanOrEqual(low);
  }
});

test('chords between the slots of the other groove cannot be swapped', () => {
  const vamp = vampIn('4/4');
  const slots = vamp.slots.map((slot, index) => ({ ...slot, beats: index === 0 ? 1.25 : 2.75 }));
  expect(() => perform(withFeel({ ...vamp, slots }, 'driving'))).toThrow(/between the slots of driving-eighths/);
});

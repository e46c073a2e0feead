import { expect, test } from 'vitest';
import { GROOVES, slotSounds, type Groove } from '../../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { contactsOf, perform, type SoundedNote } from '../../../shared-theory/perform.ts';
import { mixNotes } from '../../../shared-theory/sound/mix.ts';
import { noteShelf } from '../../../shared-theory/sound/note-shelf.ts';

const SAMPLE_RATE = 44_100;
const WITHIN_SECONDS = 0.001;
/** A stroke is there to the ear where it reaches a hundredth of its peak. */
const HEARD_SHARE = 0.01;
const HEARD_SECONDS = 0.0025;

const shelf = noteShelf(SAMPLE_RATE);

/** The whole pattern of a groove on an open chord, as fast as it goes. */
const vampOf = (groove: Groove) => ({
  slots: [
    {
      chord: { root: 'E', quality: 'minor' } as const,
      frets: [0, 2, 2, 0, 0, 0],
      beats: (groove.grid === 'E16' ? 2 : 1) * BEATS_PER_BAR[groove.meter],
    },
  ],
  meter: groove.meter,
  grooveText: groove.text,
  tempo: groove.tempo[1],
  seed: 7,
});

/** Notes by the slot that sounded them: strings of a stroke follow each other faster than slots do. */
function strokesOf(notes: readonly SoundedNote[]): readonly (readonly SoundedNote[])[] {
  const strokes: SoundedNote[][] = [];
  for (const note of notes) {
    const last = strokes.at(-1);
    if (last?.[0] && note.time - last[0].time < 0.05) last.push(note);
    else strokes.push([note]);
  }
  return strokes;
}

/** Index of the first sample that differs, and of the first that a listener would notice. */
function differences(one: Float32Array, other: Float32Array): { readonly first: number; readonly heard: number } {
  const between = one.map((sample, n) => Math.abs(sample - (other[n] ?? 0)));
  const peak = between.reduce((most, size) => Math.max(most, size), 0);
  return {
    first: between.findIndex((size) => size > 0),
    heard: between.findIndex((size) => size >= peak * HEARD_SHARE),
  };
}

test.each(GROOVES.map((groove) => [groove.id, groove] as const))(
  '%s: each slot is heard within 1 ms of its time, exact and with a player’s differences',
  (_, groove) => {
    const vamp = vampOf(groove);
    const places = contactsOf(vamp).filter(({ cell }) => slotSounds(cell));
    for (const human of [false, true]) {
      const performance = perform(vamp, { human });
      const whole = mixNotes(performance, { sampleRate: SAMPLE_RATE, shelf });
      const strokes = strokesOf(performance.notes);
      expect(strokes).toHaveLength(places.length);
      for (const [index, stroke] of strokes.entries()) {
        const time = stroke[0]?.time ?? 0;
        const onGrid = ((places[index]?.beats ?? 0) * 60) / vamp.tempo;
        expect(Math.abs(time - onGrid)).toBeLessThanOrEqual(human ? 0.008 : 1e-9);
        const without = { ...performance, notes: performance.notes.filter((note) => !stroke.includes(note)) };
        const rest = mixNotes(without, { sampleRate: SAMPLE_RATE, shelf });
        const { first, heard } = differences(whole, rest);
        expect(Math.abs(first / SAMPLE_RATE - time)).toBeLessThanOrEqual(WITHIN_SECONDS);
        expect(heard / SAMPLE_RATE - time).toBeLessThanOrEqual(HEARD_SECONDS);
      }
    }
  },
);

import { STANDARD_TUNING } from '../neck.ts';
import { perform } from '../perform.ts';
import type { Performance, PerformOptions, SoundedNote } from '../perform.ts';
import { DEAD_SECONDS } from '../strum.ts';
import type { Frets, VoicedVamp } from '../vamps.ts';

/** The hand on muted strings plays one shape throughout: which strings it finds must not tell of a chord. */
const MUTED_SHAPE: Frets = [0, 2, 2, 1, 0, 0];

/** The strokes of a vamp on muted strings, accents and all: no string rings, and no stroke tells of a chord. */
export function mutedStrings(vamp: VoicedVamp, options: PerformOptions = {}): Performance {
  const slots = vamp.slots.map((slot) => ({ ...slot, frets: MUTED_SHAPE }));
  const performance = perform({ ...vamp, slots }, options);
  const notes = performance.notes.map((note): SoundedNote => {
    const midi = STANDARD_TUNING[6 - note.string] ?? note.midi;
    return { ...note, touch: 'dead', fret: 0, midi, duration: Math.min(note.duration, DEAD_SECONDS) };
  });
  return { ...performance, notes };
}

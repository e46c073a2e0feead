import { grooveLine, parseGroove } from '../groove-text.ts';
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

/**
 * A grid that was drawn, struck on muted strings for as long as a loop lasts, at the vamp's tempo: every stroke as it was drawn, whatever
 * the loop's own groove does and wherever its chords begin. `groove` is a text of the grid language in the vamp's meter. Throws
 * `GrooveError` for a text that is none, `RangeError` for one of another meter.
 */
export function echoed(vamp: VoicedVamp, groove: string, options: PerformOptions = {}): Performance {
  const { opening: _, slots, ...drawn } = parseGroove(groove);
  const [first] = vamp.slots;
  if (!first) throw new RangeError('A vamp has at least one chord.');
  // Dead throughout, and one chord: nothing asks for a fuller stroke than the one that was drawn.
  const dead = slots.map((slot) => (slot.touch === 'none' ? slot : { ...slot, touch: 'dead' as const }));
  const beats = vamp.slots.reduce((sum, slot) => sum + slot.beats, 0);
  const grooveText = grooveLine({ ...drawn, slots: dead });
  return mutedStrings({ ...vamp, grooveText, slots: [{ ...first, beats }] }, options);
}

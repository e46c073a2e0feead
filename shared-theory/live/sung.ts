import { STANDARD_TUNING } from '../neck.ts';
import type { Performance, SoundedNote } from '../perform.ts';
import type { VoicedVamp } from '../vamps.ts';
import { LONE_DECIBELS } from './alone.ts';

/** A sung note lasts so many beats from the first of the loop. */
const SUNG_BEATS = 2;

/**
 * A performance with a note sung over the beginning of each time round, as settlers are: two beats from the first, above the
 * chord, which goes on beneath it. Throws `RangeError` for a MIDI note below the highest open string.
 */
export function sungOver(vamp: VoicedVamp, performance: Performance, midi: number): Performance {
  const highest = STANDARD_TUNING[5];
  if (!Number.isInteger(midi) || midi < highest)
    throw new RangeError(`A note is sung from ${highest} up, not ${midi}.`);
  const round = performance.seconds / performance.loops;
  const sung = { string: 1, fret: midi - highest, midi, stroke: 'down', touch: 'open', accent: 3, chord: 0 } as const;
  const duration = Math.min(round, (SUNG_BEATS * 60) / vamp.tempo);
  const notes = Array.from({ length: performance.loops }, (_, loop): SoundedNote => {
    return { ...sung, time: loop * round, duration, trim: LONE_DECIBELS };
  });
  return { ...performance, notes: [...performance.notes, ...notes].toSorted((one, other) => one.time - other.time) };
}

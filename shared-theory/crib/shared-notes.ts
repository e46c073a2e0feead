import type { Chord } from '../chords.ts';
import { chordPitchClasses } from '../chords.ts';
import { spelledScale } from '../degrees.ts';
import { itemAt } from '../items.ts';
import type { Key } from '../keys.ts';
import { modulo, pitchClass } from '../pitch.ts';
import type { NoteName, PitchClass } from '../pitch.ts';

const LEADING_DEGREE = 6;

/**
 * The notes that every one of the keys has: over the vamp none of them settles anything, so a solo on them leaves it open. Spelled as
 * the first key spells them, from the first chord's root up. Empty without keys.
 */
export function sharedNotes(chords: readonly Chord[], keys: readonly Key[]): readonly NoteName[] {
  const sounds = new Set(chords.flatMap(chordPitchClasses));
  const [first, ...others] = keys.map((key) => scaleUnder(key, sounds));
  if (first === undefined) return [];
  const shared = first.filter((note) => others.every((scale) => soundsIn(scale, pitchClass(note))));
  return upFrom(chords, shared);
}

/** Notes in the order of a scale from the first chord's root up. RangeError without chords. */
export function upFrom(chords: readonly Chord[], notes: readonly NoteName[]): readonly NoteName[] {
  const home = pitchClass(itemAt(chords, 0).root);
  return notes.toSorted((one, other) => modulo(pitchClass(one) - home, 12) - modulo(pitchClass(other) - home, 12));
}

function soundsIn(scale: readonly NoteName[], sound: PitchClass): boolean {
  return scale.some((note) => pitchClass(note) === sound);
}

/**
 * A key's notes as they go with what sounds: a minor key whose chords have the raised seventh alone takes that one, and where both
 * sevenths sound neither is safe.
 */
function scaleUnder(key: Key, sounds: ReadonlySet<PitchClass>): readonly NoteName[] {
  const natural = spelledScale(key, false);
  if (key.mode !== 'minor') return natural;
  const raised = spelledScale(key, true);
  const has = (scale: readonly NoteName[]) => sounds.has(pitchClass(itemAt(scale, LEADING_DEGREE)));
  if (!has(raised)) return natural;
  return has(natural) ? natural.filter((_, degree) => degree !== LEADING_DEGREE) : raised;
}

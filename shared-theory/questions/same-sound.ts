import { bassPitchClass, chordPitchClasses, overRoot, qualityAdditions, QUALITIES } from '../chords.ts';
import type { Addition, Chord, Quality } from '../chords.ts';
import { usualKey } from '../keys.ts';
import { pitchClass } from '../pitch.ts';
import type { PitchClass } from '../pitch.ts';

/** Every quality, bare and with each addition that it can have. */
const KINDS_OF_CHORD: readonly { readonly quality: Quality; readonly addition?: Addition }[] = QUALITIES.flatMap(
  (quality) => [{ quality }, ...qualityAdditions(quality).map((addition) => ({ quality, addition }))],
);

/**
 * Every chord that sounds the same notes over the same bass and may be named as well, the written one first: with its root in the
 * bass (C6/A is Am7), on the written root (Am/G is Am7/G), or on any note of a chord that divides the octave evenly (augmented,
 * diminished seventh). Slash basses are left out: `bassPitchClass` of the written chord is that of all.
 */
export function readingsOfSound(written: Chord): readonly Chord[] {
  const found = known.get(written) ?? soughtReadings(written);
  known.set(written, found);
  return found;
}

/** By chord as it was read: a lesson's answers are held against few of them. */
const known = new WeakMap<Chord, readonly Chord[]>();

function soughtReadings(written: Chord): readonly Chord[] {
  const sounds = chordPitchClasses(written);
  const roots = new Set([pitchClass(written.root), bassPitchClass(written)]);
  const others = sounds.flatMap((sound) =>
    KINDS_OF_CHORD.flatMap((kind): readonly Chord[] => {
      const same = kind.quality === written.quality && kind.addition === written.addition;
      if (same ? sound === pitchClass(written.root) : !roots.has(sound)) return [];
      const chord = { root: nameOf(sound, kind.quality), ...kind };
      return sameNotes(chordPitchClasses(chord), sounds) ? [chord] : [];
    }),
  );
  return [overRoot(written), ...others];
}

function sameNotes(one: readonly PitchClass[], other: readonly PitchClass[]): boolean {
  return one.length === other.length && one.every((sound) => other.includes(sound));
}

function nameOf(sound: PitchClass, quality: Quality): string {
  return usualKey(`${sound}${quality === 'minor' || quality === 'diminished' ? 'm' : 'M'}`).tonic;
}

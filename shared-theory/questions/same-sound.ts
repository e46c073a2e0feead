import { bassPitchClass, chordPitchClasses, overRoot, qualityAdditions, QUALITIES, soundsAs } from '../chords.ts';
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
  const found = known.get(written) ?? [overRoot(written), ...soughtReadings(written, [])];
  known.set(written, found);
  return found;
}

/** Semitones from the root of a sixth chord to that of the seventh chord that it inverts: C6 is Am7/C. */
const ROOT_OF_SIXTH = 9;
/** The same to the other suspended chord of the same notes: Csus2 is Gsus4/C, Csus4 is Fsus2/C. */
const ROOT_OF_SUSPENDED: Partial<Record<Quality, number>> = { 'suspended-second': 7, 'suspended-fourth': 5 };

/**
 * The names that a chord has as an inversion, beside those above; of most none: a sixth chord from its sixth, a suspended one from
 * its other root. They say what its root may be. What its quality is, and whether it has a seventh, is asked of the chord as it
 * stands, and a seventh chord on its root is no inverted sixth chord: Am7 heard as C is the major on top.
 */
export function inversionsOfSound(written: Chord): readonly Chord[] {
  const { root, quality, addition } = written;
  const above = addition === 'sixth' ? ROOT_OF_SIXTH : ROOT_OF_SUSPENDED[quality];
  if (above === undefined) return [];
  const found = inversions.get(written) ?? soughtReadings(written, [(pitchClass(root) + above) % 12]);
  inversions.set(written, found);
  const others = readingsOfSound(written);
  return found.filter((reading) => !others.some((other) => soundsAs(reading, other)));
}

/** Every name of what sounds: as it stands, and as an inversion. */
export function namesOfSound(written: Chord): readonly Chord[] {
  return [...readingsOfSound(written), ...inversionsOfSound(written)];
}

/** By chord as it was read: a lesson's answers are held against few of them. */
const known = new WeakMap<Chord, readonly Chord[]>();
const inversions = new WeakMap<Chord, readonly Chord[]>();

function soughtReadings(written: Chord, more: readonly PitchClass[]): readonly Chord[] {
  const sounds = chordPitchClasses(written);
  const roots = new Set([pitchClass(written.root), bassPitchClass(written), ...more]);
  return sounds.flatMap((sound) =>
    KINDS_OF_CHORD.flatMap((kind): readonly Chord[] => {
      const same = kind.quality === written.quality && kind.addition === written.addition;
      if (same ? sound === pitchClass(written.root) : !roots.has(sound)) return [];
      const chord = { root: nameOf(sound, kind.quality), ...kind };
      return sameNotes(chordPitchClasses(chord), sounds) ? [chord] : [];
    }),
  );
}

function sameNotes(one: readonly PitchClass[], other: readonly PitchClass[]): boolean {
  return one.length === other.length && one.every((sound) => other.includes(sound));
}

function nameOf(sound: PitchClass, quality: Quality): string {
  return usualKey(`${sound}${quality === 'minor' || quality === 'diminished' ? 'm' : 'M'}`).tonic;
}

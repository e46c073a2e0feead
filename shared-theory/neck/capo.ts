import { chordSymbol, type Chord } from '../chords.ts';
import { intervalUp, modulo, pitchClass, transpose, type NoteName } from '../pitch.ts';

/** Highest fret a capo sits on. */
export const HIGHEST_CAPO = 9;

/** The fret of a capo, 0 for none. RangeError unless a whole number 0 to 9. */
export function readCapo(capo: number): number {
  if (!Number.isInteger(capo) || capo < 0 || capo > HIGHEST_CAPO)
    throw new RangeError(`A capo sits on fret 1 to ${HIGHEST_CAPO}, or is 0 for none; not ${capo}.`);
  return capo;
}

/** A chord with a capo, under both its names (ASCII symbols); neither is ever shown without saying which it is. */
export type CapoView = {
  /** What is heard. */
  readonly sounding: string;
  /** What the hand plays, named as it would be without the capo. */
  readonly shape: string;
  /** Fret of the capo, 0 for none. */
  readonly capo: number;
};

/** Names of shapes as guitarists say them: those of the chords near the nut, then the usual ones of the others. */
const MAJOR_NAMES: readonly NoteName[] = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
const MINOR_NAMES: readonly NoteName[] = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'G#', 'A', 'Bb', 'B'];

function nameOf(sound: number, names: readonly NoteName[]): NoteName {
  return names[modulo(sound, 12)] ?? 'C';
}

/** The bass of a slash chord as its chord spells it, from the name of the root. */
function bassUnder(chord: Chord, root: NoteName, capo: number): NoteName | null {
  const { bass } = chord;
  if (bass === undefined) return null;
  const up = intervalUp(chord.root, bass);
  const spelled = transpose(root, up);
  return /##|bb/.test(spelled) ? nameOf(pitchClass(bass) - capo, MAJOR_NAMES) : spelled;
}

/** The chord that the hand plays as if there were no capo: capo 3, sounding F is the shape D. RangeError for a capo off 0 to 9. */
export function chordUnderCapo(chord: Chord, capo: number): Chord {
  if (readCapo(capo) === 0) return chord;
  const minor = chord.quality === 'minor' || chord.quality === 'diminished';
  const root = nameOf(pitchClass(chord.root) - capo, minor ? MINOR_NAMES : MAJOR_NAMES);
  const bass = bassUnder(chord, root, capo);
  return { ...chord, root, ...(bass === null ? {} : { bass }) };
}

/** Both names of a sounding chord under a capo. RangeError for a capo off 0 to 9. */
export function shapeUnderCapo(chord: Chord, capo: number): CapoView {
  return { sounding: chordSymbol(chord), shape: chordSymbol(chordUnderCapo(chord, capo)), capo };
}

import { bassNote, chordSymbol } from '../chords.ts';
import type { Chord } from '../chords.ts';
import { usualKey } from '../keys.ts';
import { soundOf, solveShapes } from '../neck/solve.ts';
import type { ShapeRefusal } from '../neck/solve.ts';
import { STANDARD_TUNING, TUNINGS } from '../neck/tunings.ts';
import type { TuningId } from '../neck/tunings.ts';
import { intervalUp, modulo, pitchClass, transpose } from '../pitch.ts';
import type { NoteName } from '../pitch.ts';
import type { Direction } from '../truth.ts';
import { directionOf } from '../truth.ts';
import type { Frets } from '../vamps.ts';

/** A guitar as it is strung, with its capo: fret 0 for none, to 9. */
export type Guitar = { readonly tuning: TuningId; readonly capo: number };

/** How one chord is held. Names in ASCII. */
export type CribShape = {
  /** As it sounds. */
  readonly chord: string;
  /** As a player calls what the hand holds: under a capo, or on strings that are all tuned alike lower, another name. */
  readonly shape: string;
  /** Frets from the lowest string, counted from the capo; null where no hand holds it. */
  readonly frets: Frets | null;
  readonly refusal: ShapeRefusal | null;
};

/**
 * Shapes of chords one after the other on a guitar, each near the one before. `held` gives shapes that are held already, by chord; null
 * where one is to be found.
 */
export function cribShapes(
  chords: readonly Chord[],
  guitar: Guitar,
  held: readonly (Frets | null)[] = [],
): readonly CribShape[] {
  const shapes: CribShape[] = [];
  for (const [index, chord] of chords.entries()) {
    const names = { chord: chordSymbol(chord), shape: chordSymbol(lowered(chord, shapeShift(guitar))) };
    const known = held[index] ?? null;
    const from = shapes.at(-1)?.frets ?? null;
    const { shapes: found, refusal } = solveShapes(chord, { ...guitar, ...(from && !known ? { from } : {}) });
    const frets = known ?? found[0]?.frets ?? null;
    shapes.push({ ...names, frets, refusal: frets === null ? refusal : null });
  }
  return shapes;
}

/** How many semitones above its shape's name a chord sounds. */
function shapeShift({ tuning, capo }: Guitar): number {
  const { strings } = TUNINGS[tuning];
  const offsets = strings.map((string, index) => string - (STANDARD_TUNING[index] ?? Number.NaN));
  const [first = 0] = offsets;
  return capo + (offsets.length === STANDARD_TUNING.length && offsets.every((each) => each === first) ? first : 0);
}

/** A chord so many semitones lower, its root named as the usual key on it is. */
function lowered(chord: Chord, semitones: number): Chord {
  if (semitones === 0) return chord;
  const small = chord.quality === 'minor' || chord.quality === 'diminished';
  const root = usualKey(`${modulo(pitchClass(chord.root) - semitones, 12)}${small ? 'm' : 'M'}`).tonic;
  const bass: NoteName = transpose(root, intervalUp(chord.root, bassNote(chord)));
  return { ...chord, root, ...(chord.bass === undefined ? {} : { bass }) };
}

/**
 * Where the bass goes from the first of the slots in these shapes, one for each later slot; null where a shape is missing, or where it
 * stays although the chords' basses differ.
 */
export function directionsOf(shapes: readonly CribShape[], guitar: Guitar): readonly Direction[] | null {
  const basses = shapes.map(({ frets }) => (frets === null ? null : Math.min(...soundOf(frets, guitar))));
  const [home = null] = basses;
  const directions = basses.slice(1).map((bass) => (home === null || bass === null ? null : directionOf(home, bass)));
  const known = directions.filter((direction) => direction !== null);
  return known.length === directions.length && home !== null ? known : null;
}

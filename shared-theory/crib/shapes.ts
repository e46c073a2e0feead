import { chordSymbol } from '../chords.ts';
import type { Chord } from '../chords.ts';
import { itemAt } from '../items.ts';
import { chordUnderCapo } from '../neck/capo.ts';
import { solveShapes } from '../neck/solve.ts';
import type { ShapeRefusal } from '../neck/solve.ts';
import { STANDARD_TUNING, TUNINGS } from '../neck/tunings.ts';
import type { TuningId } from '../neck/tunings.ts';
import { modulo } from '../pitch.ts';
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
    const names = { chord: chordSymbol(chord), shape: chordSymbol(shapeOf(chord, guitar)) };
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

function shapeOf(chord: Chord, guitar: Guitar): Chord {
  return lowered(chord, modulo(shapeShift(guitar), 12));
}

/** A chord by the name of its shape, so many semitones (0 to 11) under what sounds: a capo stands for as many as it can. */
function lowered(chord: Chord, semitones: number): Chord {
  const half = Math.floor(semitones / 2);
  return chordUnderCapo(chordUnderCapo(chord, half), semitones - half);
}

/**
 * Where the bass goes from the first of the slots in these shapes, one for each later slot; null where a shape is missing, or where it
 * stays although the chords' basses differ.
 */
export function directionsOf(shapes: readonly CribShape[], guitar: Guitar): readonly Direction[] | null {
  const basses = shapes.map(({ frets }) => (frets === null ? null : bassOf(frets, guitar)));
  const [home = null] = basses;
  const directions = basses.slice(1).map((bass) => (home === null || bass === null ? null : directionOf(home, bass)));
  const known = directions.filter((direction) => direction !== null);
  return known.length === directions.length && home !== null ? known : null;
}

/** MIDI note of the lowest string that a shape plays. */
function bassOf(frets: Frets, { tuning, capo }: Guitar): number {
  const open = TUNINGS[tuning].strings;
  const sounds = frets.flatMap((fret, string) => (fret === null ? [] : [itemAt(open, string) + capo + fret]));
  return Math.min(...sounds);
}

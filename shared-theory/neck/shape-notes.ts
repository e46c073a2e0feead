import type { Frets } from '../vamps.ts';
import { STANDARD_TUNING } from './tunings.ts';

/** A note of a shape: `string` 6 (low E) to 1, `fret` from 0. */
export type ShapeNote = { readonly string: number; readonly fret: number; readonly midi: number };

function readShape(frets: Frets): readonly ShapeNote[] {
  if (frets.length !== 6) throw new RangeError(`A shape has six strings, not ${frets.length}.`);
  const notes = STANDARD_TUNING.flatMap((open, index) => {
    const fret = frets[index] ?? null;
    if (fret === null) return [];
    if (!Number.isInteger(fret) || fret < 0 || fret > 24) throw new RangeError(`A fret is 0 to 24, not ${fret}.`);
    return [{ string: 6 - index, fret, midi: open + fret }];
  });
  if (notes.length === 0) throw new RangeError('A shape plays at least one string.');
  return notes;
}

/** Shapes are read many times in one vamp. */
const read = new WeakMap<Frets, readonly ShapeNote[]>();

/** The shape's notes from the lowest string up. Throws `RangeError` unless six entries, whole frets 0 to 24, one played. */
export function shapeNotes(frets: Frets): readonly ShapeNote[] {
  const known = read.get(frets) ?? readShape(frets);
  read.set(frets, known);
  return known;
}

/** MIDI note of the shape's lowest played string. */
export function bassOf(frets: Frets): number {
  return Math.min(...shapeNotes(frets).map((note) => note.midi));
}

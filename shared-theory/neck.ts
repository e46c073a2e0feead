import type { Chord, Quality } from './chords.ts';
import type { GrooveSlot } from './grooves.ts';
import { modulo, pitchClass, type PitchClass } from './pitch.ts';
import { FORMS, OPEN_SHAPES } from './shapes.ts';
import type { Frets } from './vamps.ts';

/** MIDI notes of the open strings 6 to 1 in standard tuning: E A D G B E. */
export const STANDARD_TUNING = [40, 45, 50, 55, 59, 64] as const;

/** Shapes stay on the part of the neck that every guitar has: no fret above this. */
const HIGHEST_FRET = 12;

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

/**
 * The three highest strings, and those below them down to where every note of the chord but its bass sounds: in open G a
 * hand takes four. Never the bass string.
 */
function readHigh(frets: Frets): readonly ShapeNote[] {
  const notes = shapeNotes(frets);
  const [bass, ...others] = notes;
  if (bass === undefined || others.length === 0) return notes;
  const sounds = (some: readonly ShapeNote[]) => new Set([...some, bass].map((note) => note.midi % 12)).size;
  const wanted = sounds(notes);
  let count = Math.min(3, others.length);
  while (sounds(others.slice(-count)) < wanted) count += 1;
  return others.slice(-count);
}

const high = new WeakMap<Frets, readonly ShapeNote[]>();

function highNotes(frets: Frets): readonly ShapeNote[] {
  const known = high.get(frets) ?? readHigh(frets);
  high.set(frets, known);
  return known;
}

/** Frets between the lowest and the highest fretted string of a shape that a hand reaches. */
const REACH = 3;

/** Fifths of a chord in semitones from its root: perfect, diminished, augmented. */
const FIFTHS = [7, 6, 8] as const;

/** Whether the hand that holds the shape reaches a note beside it. */
function reaches(frets: Frets, { string, fret }: ShapeNote): boolean {
  if (string > 6 || fret < 0) return false;
  const fretted = [...frets, fret].filter((each) => each !== null && each > 0) as number[];
  return fretted.length === 0 || Math.max(...fretted) - Math.min(...fretted) <= REACH;
}

/** The note of a string that sounds a MIDI note. */
function noteOn(string: number, midi: number): ShapeNote {
  return { string, fret: midi - (STANDARD_TUNING[6 - string] ?? Infinity), midi };
}

/**
 * The bass that takes turns with the root, as a player finds it: the fifth on the next lower string where the hand reaches
 * it, else the shape's own fifth on one of the two next strings, else the fifth beside it, else the next string.
 */
function readOtherBass(frets: Frets): readonly ShapeNote[] {
  const [root, ...others] = shapeNotes(frets);
  if (root === undefined) return [];
  const fifth = FIFTHS.find((size) => others.some(({ midi }) => (midi - root.midi) % 12 === size));
  if (fifth !== undefined) {
    const below = noteOn(root.string + 1, root.midi + fifth - 12);
    if (reaches(frets, below)) return [below];
    const own = others.find(({ string, midi }) => string >= root.string - 2 && midi === root.midi + fifth);
    if (own !== undefined) return [own];
    const beside = noteOn(root.string - 1, root.midi + fifth);
    if (reaches(frets, beside)) return [beside];
  }
  return [others[0] ?? root];
}

const otherBasses = new WeakMap<Frets, readonly ShapeNote[]>();

function otherBass(frets: Frets): readonly ShapeNote[] {
  const known = otherBasses.get(frets) ?? readOtherBass(frets);
  otherBasses.set(frets, known);
  return known;
}

/**
 * The notes that a zone of the grid takes of a shape, from the lowest string up. The other bass may lie on a string that the
 * shape leaves out; the high strings never include the bass string.
 */
export function zoneNotes(frets: Frets, zone: GrooveSlot['zone']): readonly ShapeNote[] {
  const notes = shapeNotes(frets);
  switch (zone) {
    case 'root':
      return notes.slice(0, 1);
    case 'other-bass':
      return otherBass(frets);
    case 'low':
      return notes.slice(0, 3);
    case 'middle': {
      const middle = notes.filter((note) => note.string <= 5 && note.string >= 2);
      return middle.length > 0 ? middle : notes;
    }
    case 'high':
      return highNotes(frets);
    case 'all':
      return notes;
    case 'none':
      return [];
  }
}

function fretsOf(text: string): Frets {
  return Array.from(text, (sign) => (sign === 'x' ? null : Number(sign)));
}

function rank(root: PitchClass, quality: Quality): readonly Frets[] {
  const open = (OPEN_SHAPES[quality][root] ?? []).map(fretsOf);
  const movable = FORMS[quality].flatMap((form) => {
    const openString = STANDARD_TUNING[6 - form.root] ?? 0;
    const fret = modulo(root - openString, 12);
    const frets = form.offsets.map((offset) => (offset === null ? null : fret + offset));
    const played = frets.filter((placed) => placed !== null);
    if (Math.min(...played) < 0 || Math.max(...played) > HIGHEST_FRET) return [];
    // A root on the fourth string is less usual than the same chord with a deeper root.
    return [{ frets, order: fret + (form.root === 4 ? HIGHEST_FRET : 0) }];
  });
  movable.sort((one, other) => one.order - other.order);
  const seen = new Set<string>();
  return [...open, ...movable.map(({ frets }) => frets)].filter((frets) => {
    const name = frets.join();
    return !seen.has(name) && seen.add(name);
  });
}

const ranked = new Map<string, readonly Frets[]>();

/**
 * Playable shapes of a chord, the usual one first: shapes near the nut, then E- and A-forms from the nut up, then D-forms.
 * The root is always the lowest note and every note of the chord sounds.
 */
export function shapesFor(chord: Chord): readonly Frets[] {
  const root = pitchClass(chord.root);
  const key = `${root} ${chord.quality}`;
  const known = ranked.get(key) ?? rank(root, chord.quality);
  ranked.set(key, known);
  return known;
}

/**
 * The shapes that a class plays, the usual one first: root on string 6 or 5 and no higher than `highestFret`, and open D and
 * Dm. Empty where the chord has none there.
 */
export function shapesInPosition(chord: Chord, highestFret: number): readonly Frets[] {
  const triad = chord.quality === 'major' || chord.quality === 'minor';
  return shapesFor(chord).filter((frets) => {
    const [root] = shapeNotes(frets);
    if (root === undefined) return false;
    return root.string >= 5 ? root.fret <= highestFret : triad && root.fret === 0;
  });
}

/** The shape most players take first. */
export function usualShape(chord: Chord): Frets {
  const [usual] = shapesFor(chord);
  if (!usual) throw new RangeError(`No shape plays ${chord.root} ${chord.quality}.`);
  return usual;
}

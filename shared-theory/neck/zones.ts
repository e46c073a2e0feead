import type { GrooveSlot } from '../grooves.ts';
import { midiPitchClass, modulo, type PitchClass } from '../pitch.ts';
import type { Frets } from '../vamps.ts';
import { frettedRange, REACH } from './hand.ts';
import { shapeNotes, type ShapeNote } from './shape-notes.ts';
import { STANDARD_TUNING } from './tunings.ts';

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

/** Fifths of a chord in semitones from its root, the usual one first: perfect, diminished, augmented. */
const FIFTHS = [7, 6, 8] as const;

/** Whether the hand that holds the shape reaches a note beside it. */
function reaches(frets: Frets, { string, fret }: ShapeNote): boolean {
  if (string > 6 || fret < 0) return false;
  const [lowest, highest] = frettedRange([...frets, fret]) ?? [0, 0];
  return highest - lowest <= REACH;
}

/** The note of a string that sounds a MIDI note. */
function noteOn(string: number, midi: number): ShapeNote {
  return { string, fret: midi - (STANDARD_TUNING[6 - string] ?? Infinity), midi };
}

/** What may take turns with the bass, as pitch classes: the fifth; in a chord over another bass the root, then the fifth. */
function turnsWith(notes: readonly ShapeNote[], bass: ShapeNote, root: PitchClass): readonly PitchClass[] {
  const sounds = notes.map(({ midi }) => modulo(midi - root, 12));
  // A fifth that the shape leaves out is a perfect one.
  const fifth = modulo(root + (FIFTHS.find((size) => sounds.includes(size)) ?? 7), 12);
  return [root, fifth].filter((sound) => sound !== midiPitchClass(bass.midi));
}

/** Where a hand that holds the shape finds a note so many semitones above the bass; null where it does not. */
function findBass(frets: Frets, bass: ShapeNote, up: number): ShapeNote | null {
  const below = noteOn(bass.string + 1, bass.midi + up - 12);
  if (reaches(frets, below)) return below;
  const own = shapeNotes(frets).find(({ string, midi }) => string >= bass.string - 2 && midi === bass.midi + up);
  if (own !== undefined) return own;
  const beside = noteOn(bass.string - 1, bass.midi + up);
  return reaches(frets, beside) ? beside : null;
}

/**
 * The bass that takes turns with the shape's, as a player finds it: on the next lower string where the hand reaches it, else
 * the shape's own on one of the two next strings, else beside it, else the next string.
 */
function readOtherBass(frets: Frets, root: PitchClass): readonly ShapeNote[] {
  const notes = shapeNotes(frets);
  const [bass, next] = notes;
  if (bass === undefined) return [];
  for (const sound of turnsWith(notes, bass, root)) {
    const found = findBass(frets, bass, modulo(sound - bass.midi, 12));
    if (found) return [found];
  }
  return [next ?? bass];
}

const otherBasses = new WeakMap<Frets, Map<PitchClass, readonly ShapeNote[]>>();

function otherBass(frets: Frets, root: PitchClass): readonly ShapeNote[] {
  const known = otherBasses.get(frets) ?? new Map<PitchClass, readonly ShapeNote[]>();
  otherBasses.set(frets, known);
  const notes = known.get(root) ?? readOtherBass(frets, root);
  known.set(root, notes);
  return notes;
}

/**
 * The notes that a zone of the grid takes of a shape, from the lowest string up. The other bass may lie on a string that the
 * shape leaves out; it is the fifth, and in a slash chord the root, so that `root`, a pitch class, is asked for where the bass is
 * another note. The high strings never include the bass string.
 */
export function zoneNotes(frets: Frets, zone: GrooveSlot['zone'], root?: PitchClass): readonly ShapeNote[] {
  const notes = shapeNotes(frets);
  switch (zone) {
    case 'root':
      return notes.slice(0, 1);
    case 'other-bass':
      return otherBass(frets, root ?? midiPitchClass(notes[0]?.midi ?? 0));
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

import { chordNotes, type Chord } from '../chords.ts';
import { majorOf, scaleNotes } from '../keys.ts';
import { modulo, pitchClass, readNote, type NoteName } from '../pitch.ts';

const SHARPS: readonly NoteName[] = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B'];
const FLATS: readonly NoteName[] = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B'];

/** A pitch on a staff: letter, alteration in semitones, octave of the letter (C4 is middle C). */
export type StaffPitch = { readonly step: string; readonly alter: number; readonly octave: number };

/**
 * The name of a MIDI note over a chord: as the chord spells it, else as the key of that signature does, else with the signs
 * that the chord has.
 */
export function spelledOver(midi: number, chord: Chord, signature: number): StaffPitch {
  const sound = modulo(midi, 12);
  const is = (name: NoteName) => pitchClass(name) === sound;
  const names = chordNotes(chord);
  const flat = names.some((name) => readNote(name).alteration < 0) || chord.root === 'F';
  const name = names.find(is) ?? scaleNotes(majorOf(signature)).find(is) ?? (flat ? FLATS : SHARPS)[sound] ?? 'C';
  const { letter, alteration } = readNote(name);
  return { step: letter, alter: alteration, octave: Math.floor((midi - alteration) / 12) - 1 };
}

/** What the staff's signature does to a letter, -1 to 1. */
export function signedBy(signature: number, step: string): number {
  const place = 'FCGDAEB'.indexOf(step);
  return signature > place ? 1 : -signature > 6 - place ? -1 : 0;
}

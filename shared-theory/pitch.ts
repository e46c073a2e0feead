/** A pitch class: an integer 0 (C) to 11 (B). */
export type PitchClass = number;

/** A spelled note without octave, accidentals in ASCII: `C`, `F#`, `Bb`, `F##`. */
export type NoteName = string;

/** Letters of the musical alphabet from C on; a letter's index is its step. */
const LETTERS = ['C', 'D', 'E', 'F', 'G', 'A', 'B'] as const;
export type Letter = (typeof LETTERS)[number];

/** Pitch class of each letter without accidentals. */
const NATURALS: Readonly<Record<Letter, PitchClass>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

// Three accidentals are the most that a triad on a root with one accidental can need (B# augmented holds F###).
const NOTE = /^([A-G])(#{0,3}|b{0,3})$/;

/** A note taken apart: its letter and how many semitones its accidentals raise it (negative: lower it). */
export type SpelledNote = { readonly letter: Letter; readonly alteration: number };

/** How far apart two notes are: letters up and semitones up; both negative for downward. */
export type Interval = { readonly steps: number; readonly semitones: number };

/** Remainder that is never negative. */
export function modulo(value: number, size: number): number {
  return ((value % size) + size) % size;
}

/** There are few names of notes, and each is read thousands of times. */
const known = new Map<NoteName, SpelledNote>();

/** Takes a spelled note apart. RangeError where it is none. */
export function readNote(name: NoteName): SpelledNote {
  const note = known.get(name) ?? parseNote(name);
  known.set(name, note);
  return note;
}

function parseNote(name: NoteName): SpelledNote {
  const found = NOTE.exec(name);
  if (!found) {
    throw new RangeError(`Not a note: ${JSON.stringify(name)}. A note is a capital A to G with #, b or neither.`);
  }
  const [, letter = '', signs = ''] = found;
  return { letter: letter as Letter, alteration: signs.startsWith('b') ? -signs.length : signs.length };
}

/** Writes a note from its letter and alteration. RangeError beyond three accidentals. */
export function writeNote({ letter, alteration }: SpelledNote): NoteName {
  if (!Number.isInteger(alteration) || Math.abs(alteration) > 3) {
    throw new RangeError(`No note ${letter} with ${alteration} semitones of accidentals: three is the most.`);
  }
  return letter + (alteration < 0 ? 'b' : '#').repeat(Math.abs(alteration));
}

/** Pitch class 0 to 11 of a spelled note. RangeError where it is none. */
export function pitchClass(name: NoteName): PitchClass {
  const { letter, alteration } = readNote(name);
  return modulo(NATURALS[letter] + alteration, 12);
}

/** The note an interval away, with the letter that the interval's steps ask for. RangeError where nobody could write it. */
export function transpose(name: NoteName, { steps, semitones }: Interval): NoteName {
  const start = readNote(name);
  const position = LETTERS.indexOf(start.letter) + steps;
  const letter = LETTERS[modulo(position, 7)];
  if (letter === undefined) throw new RangeError(`An interval counts whole letters, not ${steps}.`);
  const octaves = Math.floor(position / 7);
  const wanted = NATURALS[start.letter] + start.alteration + semitones;
  return writeNote({ letter, alteration: wanted - (NATURALS[letter] + 12 * octaves) });
}

/** The interval from one note up to the next note of that name: less than an octave of letters. */
export function intervalUp(from: NoteName, to: NoteName): Interval {
  const low = readNote(from);
  const high = readNote(to);
  const rise = LETTERS.indexOf(high.letter) - LETTERS.indexOf(low.letter);
  const octave = rise < 0 ? 12 : 0;
  const semitones = NATURALS[high.letter] + high.alteration - NATURALS[low.letter] - low.alteration + octave;
  return { steps: modulo(rise, 7), semitones };
}

/** Semitones of the perfect or major interval of 1 to 7 letters; the others are measured from it. */
const PLAIN = [0, 2, 4, 5, 7, 9, 11] as const;
const PERFECT: ReadonlySet<number> = new Set([0, 3, 4]);

/** Short name of an interval within an octave: `P5`, `m3`, `A4`, `d5`, `P8`. RangeError where it has none. */
export function intervalName({ steps, semitones }: Interval): string {
  const simple = modulo(steps, 7);
  const plain = PLAIN[simple];
  if (plain === undefined || steps < 0 || steps > 7)
    throw new RangeError(`No interval of ${steps} letters here: 0 to 7.`);
  const excess = semitones - plain - (steps === 7 ? 12 : 0);
  const perfect = PERFECT.has(simple);
  const qualities = perfect ? { 0: 'P', [-1]: 'd', 1: 'A' } : { 0: 'M', [-1]: 'm', [-2]: 'd', 1: 'A' };
  const quality = (qualities as Readonly<Record<number, string>>)[excess];
  if (quality === undefined) throw new RangeError(`No interval of ${steps} letters has ${semitones} semitones.`);
  return `${quality}${steps + 1}`;
}

/** What an interval within an octave becomes when its lower note moves above: letters add to 7, semitones to 12. */
export function invertInterval({ steps, semitones }: Interval): Interval {
  if (steps < 0 || steps > 7)
    throw new RangeError(`Only intervals within an octave are inverted, not ${steps} letters.`);
  return { steps: 7 - steps, semitones: 12 - semitones };
}

/** Pitch class of a MIDI note number. RangeError unless a whole number 0 to 127. */
export function midiPitchClass(midi: number): PitchClass {
  if (!Number.isInteger(midi) || midi < 0 || midi > 127)
    throw new RangeError(`Not a MIDI note: ${midi}. Whole numbers 0 to 127.`);
  return midi % 12;
}

/** Frequency in hertz of a MIDI note number, A4 = 69 = 440 Hz (ISO 16); fractions are cents. RangeError outside 0 to 127. */
export function midiFrequency(midi: number): number {
  if (!(midi >= 0 && midi <= 127)) throw new RangeError(`Not a MIDI note: ${midi}. Numbers 0 to 127.`);
  return 440 * 2 ** ((midi - 69) / 12);
}

/** Place of a note on the line of fifths: C 0, G 1, D 2 …, F -1, Bb -2. */
export function fifthsFromC(name: NoteName): number {
  const { letter, alteration } = readNote(name);
  return 'FCGDAEB'.indexOf(letter) - 1 + 7 * alteration;
}

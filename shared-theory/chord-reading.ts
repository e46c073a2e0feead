import { chordFault } from './chord-faults.ts';
import { notesAt, plainSigns } from './chord-reading/roots.ts';
import type { TypedNote } from './chord-reading/roots.ts';
import { canBeWritten, isModeWord, readableLength, readSuffix } from './chord-reading/suffixes.ts';
import type { TypedSuffix } from './chord-reading/suffixes.ts';
import type { Chord } from './chords.ts';
import { pitchClass, readNote } from './pitch.ts';
import type { NoteName } from './pitch.ts';
import type { Naming } from './printer.ts';

/** Between a chord and its bass: `C/E`, `C / E`, `C over E`. */
const SLASH = /\s*\/\s*|\s+over(?:\s+|$)/gi;
const MOST_SIGNS = 2;

/** What was read of a chord, or how many characters of it could be. */
type Reading = { readonly chord: Chord } | { readonly place: number };

/**
 * Reads a typed chord under a naming: `C`, `F♯m`, `Bø`, `CΔ7`, `C/E`, `C over E`, german `Cis`, `a-Moll` and `H7`, fixed do `Lam`. Spaces
 * around it are ignored. ReadingError for anything else, with the first character that cannot be read and what to write
 * instead.
 */
export function parseChord(text: string, naming: Naming = 'english'): Chord {
  const lead = text.length - text.trimStart().length;
  const typed = text.trim();
  const plain = plainSigns(typed);
  const reading = isSyllableDo(plain, naming) ? { place: 0 } : readTyped(plain, naming);
  if ('chord' in reading) return reading.chord;
  throw chordFault(typed, reading.place, naming).movedBy(lead);
}

/** `Do` under a letter naming: it would be D diminished, and who writes it means C. */
function isSyllableDo(plain: string, naming: Naming): boolean {
  return naming !== 'fixed-do' && /^d[oó]/i.test(plain.normalize('NFC'));
}

function readTyped(plain: string, naming: Naming): Reading {
  let place = 0;
  for (const root of notesAt(plain, naming)) {
    const reading = readAfter(root, plain.slice(root.length), naming);
    if ('chord' in reading) return reading;
    place = Math.max(place, root.length + reading.place);
  }
  return { place };
}

/** Reads what follows a root; places count from its end. */
function readAfter(root: TypedNote, rest: string, naming: Naming): Reading {
  const signs = Math.abs(readNote(root.note).alteration);
  // Of too many signs the first that is too many cannot be read.
  if (signs > MOST_SIGNS) return { place: MOST_SIGNS - signs };
  const whole = chordOn(root, rest);
  if (whole) return whole;
  const suffix = readSuffix(rest);
  if (suffix && !canBeWritten(root.note, suffix)) return { place: 0 };
  const overs = [...rest.matchAll(SLASH)].map((slash) => readOver(root, rest, slash, naming));
  const read = overs.find((reading) => 'chord' in reading);
  return read ?? overs.at(0) ?? { place: readableLength(rest) };
}

/** Reads a chord and its bass on both sides of a slash. */
function readOver(root: TypedNote, rest: string, slash: RegExpExecArray, naming: Naming): Reading {
  const head = rest.slice(0, slash.index);
  const over = chordOn(root, head);
  if (!over) return { place: readableLength(head) };
  const bassAt = slash.index + slash[0].length;
  const bass = rest.slice(bassAt);
  const [found] = notesAt(bass, naming, true);
  if (!found || found.length < bass.length) return { place: bassAt + (found?.length ?? 0) };
  return { chord: withBass(over.chord, found.note) };
}

/** A chord over a bass; over its own root it is the chord itself. */
function withBass(chord: Chord, bass: NoteName): Chord {
  return pitchClass(bass) === pitchClass(chord.root) ? chord : { ...chord, bass };
}

function chordOn({ note, small }: TypedNote, typed: string): { readonly chord: Chord } | null {
  const suffix = readSuffix(typed);
  const said = suffix && small ? onSmallRoot(suffix, typed) : suffix;
  if (!said || !canBeWritten(note, said)) return null;
  const { quality, addition } = said;
  const chord: Chord = { root: note, quality, ...(addition === undefined ? {} : { addition }) };
  return { chord };
}

/** A small root is a minor chord's; nothing that says major stands behind it, save the word. */
function onSmallRoot(suffix: TypedSuffix, typed: string): TypedSuffix | undefined {
  if (suffix.quality !== 'major' || isModeWord(typed)) return suffix;
  return suffix.symbol === typed && /^[67]?$/.test(typed) ? readSuffix(`m${typed}`) : undefined;
}

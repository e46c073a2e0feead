import { namesOf } from '../namings/names-of.ts';
import { fifthsFromC, modulo, pitchClass, readNote, writeNote } from '../pitch.ts';
import type { Letter, NoteName } from '../pitch.ts';
import type { Naming } from '../printer.ts';

/** A note read at the start of a text: how many characters it takes, and whether it is in small letters. */
export type TypedNote = { readonly note: NoteName; readonly length: number; readonly small: boolean };

const LETTERS: readonly Letter[] = ['C', 'D', 'E', 'F', 'G', 'A', 'B'];
/** Notes may have as many signs as the notes of chords on roots with two. */
const ALTERATIONS = [-3, -2, -1, 0, 1, 2, 3] as const;
const allNotes = (): readonly NoteName[] =>
  LETTERS.flatMap((letter) => ALTERATIONS.map((alteration) => writeNote({ letter, alteration })));

/** Syllables of fixed do as people type them, small: Romance spellings and Cyrillic. */
const SYLLABLES: Readonly<Record<Letter, readonly string[]>> = {
  C: ['do', 'dó', 'до'],
  D: ['re', 'ré', 'ре'],
  E: ['mi', 'ми'],
  F: ['fa', 'fá', 'фа'],
  G: ['sol', 'соль'],
  A: ['la', 'lá', 'ля'],
  B: ['si', 'си'],
};

/** Real signs as what is typed for them, each as long as it was, so that places stay: 𝄪 counts as two characters. */
export function plainSigns(text: string): string {
  return text
    .replaceAll('♯', '#')
    .replaceAll('♭', 'b')
    .replaceAll('𝄪', '##')
    .replaceAll('𝄫', 'bb')
    .replaceAll(/[−–‑]/g, '-')
    .replaceAll(/[º˚]/g, '°')
    .replaceAll(/[△∆]/g, 'Δ')
    .replaceAll(/[Ø⌀∅]/g, 'ø');
}

/** A note as it is typed under a naming, its signs in ASCII: `Bb`, `Cis`, `Sib`. */
export function typedNote(note: NoteName, naming: Naming): string {
  const { letter, sign } = namesOf(naming)(readNote(note));
  return letter + plainSigns(sign);
}

/** Whether a naming takes small roots for minor chords. */
export function hasSmallRoots(naming: Naming): boolean {
  return naming === 'german' || naming === 'mixed';
}

/** How a letter naming may have a note: as the naming prints it, and with signs after the letter. */
function spellingsOf(note: NoteName, naming: Naming): readonly string[] {
  if (naming === 'english') return [note];
  const printed = typedNote(note, naming);
  const signed = naming === 'dutch' || !note.startsWith('B') ? note : `H${note.slice(1)}`;
  const more = note === 'Bb' ? ['Bb'] : note.startsWith('A') ? [printed.replace('sas', 'ses')] : [];
  return [printed, signed, ...more];
}

/** Notes of a letter naming by their spellings, capital and small. */
const spelled = new Map<Naming, ReadonlyMap<string, NoteName>>();
const LONGEST = 'Heseses'.length;

function spellings(naming: Naming): ReadonlyMap<string, NoteName> {
  const known = spelled.get(naming);
  if (known) return known;
  const found = new Map<string, NoteName>();
  for (const note of allNotes()) {
    for (const spelling of spellingsOf(note, naming)) found.set(spelling, note).set(spelling.toLowerCase(), note);
  }
  spelled.set(naming, found);
  return found;
}

/**
 * Every way in which the start of a text, its signs plain, can be a note under a naming, the longest first: `Es` before `E`. Small
 * letters count only where `small` says so. Under `mixed` a bare B is none.
 */
export function notesAt(plain: string, naming: Naming, small = hasSmallRoots(naming)): readonly TypedNote[] {
  if (naming === 'fixed-do') return syllablesAt(plain);
  const found: TypedNote[] = [];
  for (let length = Math.min(LONGEST, plain.length); length > 0; length -= 1) {
    const typed = plain.slice(0, length);
    const note = spellings(naming).get(typed);
    const isSmall = /^[a-h]/.test(typed);
    if (note !== undefined && (small || !isSmall)) found.push({ note, length, small: isSmall });
  }
  return found;
}

function syllablesAt(plain: string): readonly TypedNote[] {
  const lower = plain.toLowerCase();
  return LETTERS.flatMap((letter) =>
    SYLLABLES[letter]
      .flatMap((syllable) => [syllable, syllable.normalize('NFD')])
      .filter((syllable) => lower.startsWith(syllable))
      .map(({ length }) => {
        const signs = /^(?:#{1,3}|b{1,3})?/.exec(plain.slice(length))?.[0] ?? '';
        return { note: letter + signs, length: length + signs.length, small: false };
      }),
  ).toSorted((one, other) => other.length - one.length);
}

/** A root by the name with the fewest signs that sounds the same. */
export function simpleRoot(letter: Letter, alteration: number): NoteName {
  const sound = modulo(pitchClass(letter) + alteration, 12);
  const same = allNotes().filter((note) => pitchClass(note) === sound);
  const far = (note: NoteName) => Math.abs(fifthsFromC(note));
  return same.reduce((best, note) => (far(note) < far(best) ? note : best));
}

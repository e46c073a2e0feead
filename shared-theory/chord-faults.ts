import { hasSmallRoots, notesAt, plainSigns, simpleRoot, typedNote } from './chord-reading/roots.ts';
import type { TypedNote } from './chord-reading/roots.ts';
import { canBeWritten, isElsewhere, nearestSuffix, readSuffix } from './chord-reading/suffixes.ts';
import { readNote, transpose } from './pitch.ts';
import type { NoteName } from './pitch.ts';
import type { Naming } from './printer.ts';
import { ReadingError } from './reading-error.ts';

/** A chord that could not be read, as far as it could. `text` has no spaces around it; `plain` is it with plain signs. */
type Typed = { readonly text: string; readonly plain: string; readonly place: number; readonly naming: Naming };

/**
 * Says what is wrong with a chord that could not be read from `place` on, and what would be right under the naming. `text` has
 * no spaces around it.
 */
export function chordFault(text: string, place: number, naming: Naming): ReadingError {
  const typed: Typed = { text, plain: plainSigns(text), place, naming };
  if (text === '')
    return new ReadingError('nothing', 0, '', ['E', 'D'].map((root) => typedNote(root, naming)).join(' '));
  return wordFault(typed) ?? foreignFault(typed) ?? rootFault(typed) ?? restFault(typed);
}

/** What stands for no chord, or for the chord before: `N.C.`, a repeated bar. */
function wordFault({ text, naming }: Typed): ReadingError | null {
  if (/^n\.?\s?c\.?$|^no chord$|^tacet$/i.test(text)) return new ReadingError('no-chord', 0, text);
  if (text !== '%' && text !== '𝄎') return null;
  const em = chord('E', 'm', naming);
  return new ReadingError('same-again', 0, text, `${em} ${em}`);
}

/** Roots as another naming has them. */
function foreignFault({ text, plain, naming }: Typed): ReadingError | null {
  const fault = (name: 'syllable-name' | 'german-h' | 'german-ending', root: TypedNote) =>
    new ReadingError(name, 0, text, nearest(root.note, plain.slice(root.length), naming));
  if (naming === 'fixed-do') return null;
  const [syllable] = notesAt(plain, 'fixed-do');
  if (syllable && !/^fa(?:dd|ug)/i.test(plain)) {
    const right = nearest(syllable.note, plain.slice(syllable.length), naming);
    // Only this syllable may be a letter with what can follow it: an o for diminished.
    const also = /^do7?$/i.test(plain) ? ` or ${chord('D', plain.length > 2 ? 'dim7' : 'dim', naming)}` : '';
    return new ReadingError('syllable-name', 0, text, right + also);
  }
  const [german] = notesAt(plain, 'german', true);
  if (!german) return null;
  if (/^h/i.test(plain)) return hasSmallRoots(naming) ? null : fault('german-h', german);
  const ended = naming === 'english' && /^[a-g](?:is|es|s)/i.test(plain.slice(0, german.length));
  return ended && readSuffix(headOf(plain.slice(german.length))) ? fault('german-ending', german) : null;
}

/** Roots that the naming does not have so. */
function rootFault({ text, plain, naming }: Typed): ReadingError | null {
  const letter = /^([A-Ga-g])([#b]*)/.exec(plain);
  if (naming === 'fixed-do') {
    if (notesAt(plain, naming).length > 0) return syllableOrLetter(text, plain);
    const [named] = [...notesAt(plain, 'english', true), ...notesAt(plain, 'german', true)].toSorted(
      (one, other) => other.length - one.length,
    );
    const right = named && nearest(named.note, plain.slice(named.length), naming);
    return right === undefined
      ? new ReadingError('no-syllable', 0, text, chord('E', 'm', naming))
      : new ReadingError('letter-name', 0, text, right);
  }
  const signFirst = /^([#b])([A-GH])/.exec(plain);
  const behind = signFirst && notesAt(`${signFirst[2]}${signFirst[1]}`, naming)[0];
  if (behind) return new ReadingError('no-letter', 0, text, nearest(behind.note, plain.slice(2), naming));
  if (naming === 'mixed' && /^b(?!b)/i.test(plain)) {
    const rest = plain.slice(1);
    return new ReadingError(
      'bare-b',
      0,
      text,
      eitherB(plain.startsWith('b') ? small(rest) : nearestSuffix(rest), naming),
    );
  }
  if (notesAt(plain, naming).length > 0) return null;
  if (!letter) return new ReadingError('no-letter', 0, text, chord('E', 'm', naming));
  const [, name = '', signs = ''] = letter;
  const rest = plain.slice(1 + signs.length);
  const root = name.toUpperCase() + signs;
  const [capital] = notesAt(root, naming);
  const note = capital?.note ?? name.toUpperCase();
  // A bare small letter is a minor chord in some song sheets and a slip in others.
  const bare = rest === '' && signs === '';
  const right = bare ? `${chord(note, '', naming)} or ${chord(note, 'm', naming)}` : nearest(note, rest, naming);
  return new ReadingError('lower-case-root', 0, text, right);
}

/** `Fadd9` under fixed do: a letter with its suffix, where the syllable leaves nothing that can be read. */
function syllableOrLetter(text: string, plain: string): ReadingError | null {
  const [letter] = notesAt(plain, 'english');
  const rest = letter ? headOf(plain.slice(letter.length)) : '';
  if (!letter || rest === '' || rest === 'o' || !readSuffix(rest)) return null;
  return new ReadingError('letter-name', 0, text, nearest(letter.note, rest, 'fixed-do'));
}

/** What follows a root that can be read. */
function restFault({ text, plain, place, naming }: Typed): ReadingError {
  const roots = notesAt(plain, naming);
  const root = roots.find(({ length }) => readSuffix(headOf(plain.slice(length)))) ?? roots[0];
  if (!root) return new ReadingError('no-letter', 0, text, chord('E', 'm', naming));
  const rest = plain.slice(root.length);
  const { letter, alteration } = readNote(root.note);
  const suffix = readSuffix(headOf(rest));
  if (Math.abs(alteration) > 2 || !canBeWritten(root.note, suffix) || /^[#b]*[#b](?![\d(])/.test(rest)) {
    const more = /^[#b]*/.exec(rest)?.[0] ?? '';
    const sum = alteration + more.split('#').length - more.split('b').length;
    const right = nearest(simpleRoot(letter, sum), rest.slice(more.length), naming);
    return new ReadingError('too-many-accidentals', place, text, right);
  }
  if (suffix && root.small && !rest.includes('/')) {
    return new ReadingError('lower-case-root', 0, text, chord(root.note, suffix.symbol, naming));
  }
  if (suffix && /\/|\bover\b/i.test(rest)) return bassFault({ text, plain, place, naming }, root.note, suffix.symbol);
  const right = nearest(root.note, rest, naming);
  return new ReadingError(isElsewhere(headOf(rest)) ? 'not-ours' : 'unknown-suffix', place, text, right);
}

/** What stands after a slash. */
function bassFault({ text, plain, place, naming }: Typed, root: NoteName, suffix: string): ReadingError {
  const tail = tailOf(plain);
  const name = chord(root, suffix, naming);
  if (/^(?:maj|M|Δ|\^)?\d/.test(tail)) {
    // A slash within a suffix: 6/9, m/maj9.
    return new ReadingError('not-ours', place, text, chord(root, nearestSuffix(suffix + tail), naming));
  }
  if (naming === 'mixed' && /^b(?:$|[^b])/i.test(tail)) {
    return new ReadingError('bare-b', place, text, `${name}/Bb or ${name}/H`);
  }
  const [bass] = notesAt(tail, naming, true);
  const fifth = transpose(root, { steps: 4, semitones: 7 });
  return new ReadingError('slash-bass', place, text, `${name}/${typedNote(bass?.note ?? fifth, naming)}`);
}

/** Of what follows a root, the part before a slash; of a slash that belongs to a suffix nothing is known here. */
function headOf(rest: string): string {
  return rest.replace(/\s*(?:\/|\bover\b).*$/i, '');
}

/** Of what follows a root, the part after a slash. */
function tailOf(rest: string): string {
  return /(?:\/|\bover\b)\s*(.*)$/i.exec(rest)?.[1] ?? '';
}

/** What to write for a chord whose root can be read: the nearest suffix, over the same bass. */
function nearest(root: NoteName, rest: string, naming: Naming): string {
  const head = headOf(rest);
  const tail = tailOf(rest);
  const bass = notesAt(tail, naming, true).find(({ length }) => length === tail.length);
  const over = bass ? `/${typedNote(bass.note, naming)}` : '';
  return chord(root, readSuffix(head)?.symbol ?? nearestSuffix(head), naming) + over;
}

function chord(root: NoteName, suffix: string, naming: Naming): string {
  return typedNote(root, naming) + suffix;
}

function small(rest: string): string {
  const head = headOf(rest);
  return readSuffix(`m${head}`)?.symbol ?? readSuffix(head)?.symbol ?? 'm';
}

function eitherB(suffix: string, naming: Naming): string {
  return ['Bb', 'B'].map((root) => chord(root, suffix, naming)).join(' or ');
}

import { foreignFault, rootFault } from './chord-reading/root-faults.ts';
import { notesAt, plainSigns, simpleRoot, typedNote } from './chord-reading/roots.ts';
import { canBeWritten, isElsewhere, nearestSuffix, readSuffix } from './chord-reading/suffixes.ts';
import { chordTyped, headOf, nearest, tailOf } from './chord-reading/suggestions.ts';
import type { Unread } from './chord-reading/suggestions.ts';
import { readNote, transpose } from './pitch.ts';
import type { NoteName } from './pitch.ts';
import type { Naming } from './printer.ts';
import { ReadingError } from './reading-error.ts';

/**
 * Says what is wrong with a chord that could not be read from `place` on, and what would be right under the naming. `text` has
 * no spaces around it.
 */
export function chordFault(text: string, place: number, naming: Naming): ReadingError {
  const unread: Unread = { text, plain: plainSigns(text), place, naming };
  if (text === '') return nothingTyped(text, naming);
  return wordFault(unread) ?? foreignFault(unread) ?? rootFault(unread) ?? restFault(unread);
}

/** Says that no chord was typed where some were wanted; `found` is what stood there instead. */
export function nothingTyped(found: string, naming: Naming): ReadingError {
  return new ReadingError('nothing', 0, found, `${chordTyped('E', 'm', naming)} ${chordTyped('D', '', naming)}`);
}

/** What stands for no chord, or for the chord before: `N.C.`, a repeated bar. */
function wordFault({ text, naming }: Unread): ReadingError | null {
  if (/^n\.?\s?c\.?$|^no chord$|^tacet$/i.test(text)) return new ReadingError('no-chord', 0, text);
  if (text !== '%' && text !== '𝄎') return null;
  const em = chordTyped('E', 'm', naming);
  return new ReadingError('same-again', 0, text, `${em} ${em}`);
}

/** What follows a root that can be read. */
function restFault({ text, plain, place, naming }: Unread): ReadingError {
  const roots = notesAt(plain, naming);
  const root = roots.find(({ length }) => readSuffix(headOf(plain.slice(length)))) ?? roots[0];
  if (!root) return new ReadingError('no-letter', 0, text, chordTyped('E', 'm', naming));
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
    return new ReadingError('lower-case-root', 0, text, chordTyped(root.note, suffix.symbol, naming));
  }
  if (suffix && /\/|\bover\b/i.test(rest)) return bassFault({ text, plain, place, naming }, root.note, suffix.symbol);
  const right = nearest(root.note, rest, naming);
  return new ReadingError(isElsewhere(headOf(rest)) ? 'not-ours' : 'unknown-suffix', place, text, right);
}

/** What stands after a slash. */
function bassFault({ text, plain, place, naming }: Unread, root: NoteName, suffix: string): ReadingError {
  const tail = tailOf(plain);
  const name = chordTyped(root, suffix, naming);
  if (/^(?:maj|M|Δ|\^)?\d/.test(tail)) {
    // A slash within a suffix: 6/9, m/maj9.
    return new ReadingError('not-ours', place, text, chordTyped(root, nearestSuffix(suffix + tail), naming));
  }
  if (naming === 'mixed' && /^b(?:$|[^b])/i.test(tail)) {
    return new ReadingError('bare-b', place, text, `${name}/Bb or ${name}/H`);
  }
  const [bass] = notesAt(tail, naming, true);
  const fifth = transpose(root, { steps: 4, semitones: 7 });
  return new ReadingError('slash-bass', place, text, `${name}/${typedNote(bass?.note ?? fifth, naming)}`);
}

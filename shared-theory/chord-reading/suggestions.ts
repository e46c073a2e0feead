import type { NoteName } from '../pitch.ts';
import type { Naming } from '../printer.ts';
import { notesAt, typedNote } from './roots.ts';
import { nearestSuffix, readSuffix } from './suffixes.ts';

/** A chord that could not be read, as far as it could. `text` has no spaces around it; `plain` is it with plain signs. */
export type Unread = { readonly text: string; readonly plain: string; readonly place: number; readonly naming: Naming };

/** Of what follows a root, the part before a slash; of a slash that belongs to a suffix nothing is known here. */
export function headOf(rest: string): string {
  return rest.replace(/\s*(?:\/|\bover\b).*$/i, '');
}

/** Of what follows a root, the part after a slash. */
export function tailOf(rest: string): string {
  return /(?:\/|\bover\b)\s*(.*)$/i.exec(rest)?.[1] ?? '';
}

/** What to write for a chord whose root can be read: the nearest suffix, over the same bass. */
export function nearest(root: NoteName, rest: string, naming: Naming): string {
  const head = headOf(rest);
  const tail = tailOf(rest);
  const bass = notesAt(tail, naming, true).find(({ length }) => length === tail.length);
  const over = bass ? `/${typedNote(bass.note, naming)}` : '';
  return chordTyped(root, nearestSymbol(head), naming) + over;
}

/** A chord as it is typed under a naming, its suffix as the program writes it. */
export function chordTyped(root: NoteName, suffix: string, naming: Naming): string {
  return typedNote(root, naming) + suffix;
}

/** The suffix of ours that was typed, or else the nearest. */
export function nearestSymbol(head: string): string {
  return readSuffix(head)?.symbol ?? nearestSuffix(head);
}

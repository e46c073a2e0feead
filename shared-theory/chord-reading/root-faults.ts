import type { Naming } from '../printer.ts';
import { ReadingError } from '../reading-error.ts';
import { hasSmallRoots, notesAt } from './roots.ts';
import type { TypedNote } from './roots.ts';
import { readSuffix } from './suffixes.ts';
import { chordTyped, headOf, nearest, nearestSymbol } from './suggestions.ts';
import type { Unread } from './suggestions.ts';

/** Roots as another naming has them; null where the fault is another. */
export function foreignFault({ text, plain, naming }: Unread): ReadingError | null {
  if (naming === 'fixed-do') return letterFault(text, plain);
  return syllableFault(text, plain, naming) ?? germanFault(text, plain, naming);
}

function syllableFault(text: string, plain: string, naming: Naming): ReadingError | null {
  const [syllable] = notesAt(plain, 'fixed-do');
  if (!syllable || /^fa(?:dd|ug)/i.test(plain)) return null;
  const right = nearest(syllable.note, plain.slice(syllable.length), naming);
  // Only this syllable may be a letter with what can follow it: an o for diminished.
  const also = /^do7?$/i.test(plain) ? ` or ${chordTyped('D', plain.length > 2 ? 'dim7' : 'dim', naming)}` : '';
  return new ReadingError('syllable-name', 0, text, right + also);
}

/** H where B is called B, and endings where signs are written. */
function germanFault(text: string, plain: string, naming: Naming): ReadingError | null {
  const [german] = notesAt(plain, 'german', true);
  if (!german || hasSmallRoots(naming)) return null;
  const rest = plain.slice(german.length);
  const right = nearest(german.note, rest, naming);
  if (/^h/i.test(plain)) return new ReadingError('german-h', 0, text, right);
  const ended = naming === 'english' && /^[a-g](?:is|es|s)/i.test(plain.slice(0, german.length));
  return ended && readSuffix(headOf(rest)) ? new ReadingError('german-ending', 0, text, right) : null;
}

/** Letters where syllables are said. */
function letterFault(text: string, plain: string): ReadingError | null {
  const named = notesAt(plain, 'fixed-do').length > 0 ? letterBehindSyllable(plain) : letterAt(plain);
  if (!named) return null;
  return new ReadingError('letter-name', 0, text, nearest(named.note, plain.slice(named.length), 'fixed-do'));
}

/** The note that letters begin with, in English or with a German ending or H. */
function letterAt(plain: string): TypedNote | undefined {
  const [english] = notesAt(plain, 'english', true);
  const [german] = notesAt(plain, 'german', true);
  return (german?.length ?? 0) > (english?.length ?? 0) ? german : english;
}

/** `Fadd9`: a letter with its suffix, where the syllable leaves nothing that can be read. */
function letterBehindSyllable(plain: string): TypedNote | undefined {
  const [letter] = notesAt(plain, 'english');
  const rest = letter ? headOf(plain.slice(letter.length)) : '';
  return rest !== '' && rest !== 'o' && readSuffix(rest) ? letter : undefined;
}

/** Roots that no naming has so, or that the naming does not have alone; null where the root can be read. */
export function rootFault({ text, plain, naming }: Unread): ReadingError | null {
  if (naming === 'mixed' && /^b(?!b)/i.test(plain)) return bareB(text, plain);
  if (notesAt(plain, naming).length > 0) return null;
  const [, sign = '', behind = ''] = /^([#b])([A-GH])/.exec(plain) ?? [];
  const [turned] = notesAt(behind + sign, naming);
  if (turned) return new ReadingError('no-letter', 0, text, nearest(turned.note, plain.slice(2), naming));
  const [small] = naming === 'fixed-do' ? [] : notesAt(plain, naming, true);
  if (small) return smallFault(text, plain, small, naming);
  const fault = naming === 'fixed-do' ? 'no-syllable' : 'no-letter';
  return new ReadingError(fault, 0, text, chordTyped('E', 'm', naming));
}

function bareB(text: string, plain: string): ReadingError {
  const head = headOf(plain.slice(1));
  const minor = plain.startsWith('b') ? (readSuffix(`m${head}`)?.symbol ?? readSuffix(head)?.symbol ?? 'm') : null;
  const right = ['Bb', 'B'].map((root) => chordTyped(root, minor ?? nearestSymbol(head), 'mixed'));
  return new ReadingError('bare-b', 0, text, right.join(' or '));
}

function smallFault(text: string, plain: string, { note, length }: TypedNote, naming: Naming): ReadingError {
  // A bare small letter is a minor chord in some song sheets and a slip in others.
  const right =
    plain.length === 1
      ? `${chordTyped(note, '', naming)} or ${chordTyped(note, 'm', naming)}`
      : nearest(note, plain.slice(length), naming);
  return new ReadingError('lower-case-root', 0, text, right);
}

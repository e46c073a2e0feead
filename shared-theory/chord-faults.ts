import { itemAt } from './items.ts';
import { modulo, pitchClass } from './pitch.ts';
import { ReadingError } from './reading-error.ts';

/** Fixed-do names of the letters. */
const SYLLABLES: Readonly<Record<string, string>> = {
  do: 'C',
  re: 'D',
  ré: 'D',
  mi: 'E',
  fa: 'F',
  sol: 'G',
  la: 'A',
  si: 'B',
};
const SYLLABLE = /^(do|ré|re|mi|fa(?!dd|ug)|sol|la|si)([#b]?)(.*)$/i;

/** The usual spelling of each pitch class as a chord root on a guitar. */
const USUAL_ROOTS = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'] as const;

/** Sharp and flat signs as ASCII; everything else stays. Lengths may change, so places are taken from the text itself. */
export function plainSigns(text: string): string {
  return text.replaceAll('♯', '#').replaceAll('♭', 'b').replaceAll('𝄪', '##').replaceAll('𝄫', 'bb');
}

/** The suffix of ours that is nearest to one we do not have. */
function nearestSuffix(rest: string): string {
  if (/^(m|mi|min|-)7?\(?[b-]5|^[øØ]|^(dim|DIM|Dim|o|°|º|d)/.test(rest)) return 'dim';
  if (/sus.?2|^2/i.test(rest)) return 'sus2';
  if (/sus|^4/i.test(rest)) return 'sus4';
  if (/^(\+|aug)|[#+]5/i.test(rest)) return 'aug';
  if (/^(m(?!aj|a)|-)|^mi/i.test(rest) && !/^M(?![Ii])/.test(rest)) return 'm';
  return '';
}

/** What to write instead of a chord whose root can be read. */
function nearest(root: string, rest: string): string {
  return root + nearestSuffix(rest.replace(/\/.*$/, ''));
}

/** Says what is wrong with a chord that could not be read, and what would be right. `text` has no spaces around it. */
export function chordFault(text: string): ReadingError {
  if (text === '') return new ReadingError('nothing', 0, '');
  const plain = plainSigns(text);

  const syllable = SYLLABLE.exec(plain);
  if (syllable) {
    const [, name = '', sign = '', rest = ''] = syllable;
    return new ReadingError('syllable-name', 0, text, nearest(`${SYLLABLES[name.toLowerCase()]}${sign}`, rest));
  }
  const signFirst = /^([#b])([A-G])(.*)$/.exec(plain);
  if (signFirst) {
    const [, sign = '', letter = '', rest = ''] = signFirst;
    return new ReadingError('no-letter', 0, text, nearest(letter + sign, rest));
  }
  if (/^[Hh]/.test(plain)) return new ReadingError('german-h', 0, text, nearest('B', plain.slice(1)));

  const parts = /^([A-Ga-g])([#b]*)(.*)$/.exec(plain);
  if (!parts) return new ReadingError('no-letter', 0, text, 'Em');
  const [, typed = '', signs = '', rest = ''] = parts;
  const letter = typed.toUpperCase();
  if (typed !== letter) {
    // A bare small letter is a minor chord in some song sheets and a slip in others.
    const right = rest === '' && signs === '' ? `${letter} or ${letter}m` : nearest(letter + signs.slice(0, 1), rest);
    return new ReadingError('lower-case-root', 0, text, right);
  }
  if (signs.length > 1) return new ReadingError('double-accidental', 1, text, nearest(simpleRoot(letter, signs), rest));

  const place = 1 + signs.length;
  const right = nearest(letter + signs, rest);
  if (rest.includes('/')) return new ReadingError('slash-bass', text.indexOf('/'), text, right);
  const more = /[679]|1[13]|add|alt|[Δ△øØ^]|^[24]$/.test(rest);
  return new ReadingError(more ? 'seventh-or-more' : 'unknown-suffix', place, text, right);
}

/** A root with many accidentals by its usual name. */
function simpleRoot(letter: string, signs: string): string {
  const sharps = signs.split('#').length - 1;
  const raised = pitchClass(letter) + sharps - (signs.length - sharps);
  return itemAt(USUAL_ROOTS, modulo(raised, 12));
}

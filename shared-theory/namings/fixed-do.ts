import type { Names } from '../printer.ts';
import type { Letter } from '../pitch.ts';
import { withSign } from './signs.ts';

/** Syllable of each letter, and how a reader of English says it. */
const SYLLABLES: Readonly<Record<Letter, readonly [print: string, said: string]>> = {
  C: ['Do', 'Doh'],
  D: ['Re', 'Ray'],
  E: ['Mi', 'Mee'],
  F: ['Fa', 'Fah'],
  G: ['Sol', 'Sol'],
  A: ['La', 'Lah'],
  B: ['Si', 'See'],
};

/** Syllables that stay with their note in every key, as in Romance and many other languages. */
export const fixedDo: Names = ({ letter, alteration }) => withSign(...SYLLABLES[letter], alteration);

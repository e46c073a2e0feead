import type { NoteParts } from './signs.ts';
import type { SpelledNote } from '../pitch.ts';

/** How a stem is said where it would be read as something else, by readers of English and of German alike. */
const SAID_STEMS: Readonly<Record<string, string>> = { C: 'Ts', G: 'Gh', A: 'A-', E: 'E-' };

/**
 * A note named by its stem and an ending for each sign: Cis, Des, Fisis. E and A draw the ending of their flat together: Es and
 * As, never Ees and Aes. The name is one word, so nothing of it is set apart as a sign.
 */
export function withEnding(stem: string, alteration: number): NoteParts {
  if (alteration === 0) return { letter: stem, sign: '', spoken: stem };
  if (alteration > 0) {
    const ending = 'is'.repeat(alteration);
    return { letter: stem + ending, sign: '', spoken: (SAID_STEMS[stem] ?? stem) + ending };
  }
  const first = stem === 'E' || stem === 'A' ? 's' : 'es';
  const more = (stem === 'A' ? 'as' : 'es').repeat(-alteration - 1);
  const letter = stem + first + more;
  return { letter, sign: '', spoken: saidFlat(stem, more) ?? letter };
}

/** Es and As alone are English words; Ces and Ges begin with a sound that English readers miss. */
function saidFlat(stem: string, more: string): string | undefined {
  if (stem === 'E') return `Ess${more}`;
  if (stem === 'A') return `Ahs${more}`;
  return stem === 'C' || stem === 'G' ? `${SAID_STEMS[stem]}es${more}` : undefined;
}

/** Whether a note is the one for which German has a name of its own. */
export const isBFlat = ({ letter, alteration }: SpelledNote): boolean => letter === 'B' && alteration === -1;

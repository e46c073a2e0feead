import { chordSymbol, qualityAdditions, readSymbol } from '../../shared-theory/chords.ts';
import type { AskedSeventh } from '../../shared-theory/questions/question.ts';

/**
 * A triad with a seventh, in ASCII: `Am` with a seventh is `Am7`. Undefined where the triad is not known, or where not every seventh
 * of the pad has a symbol with it: what cannot be written would be no choice.
 */
export function seventhSymbol(triad: string | undefined, seventh: AskedSeventh): string | undefined {
  if (triad === undefined) return undefined;
  const { root, quality } = readSymbol(triad);
  const known = qualityAdditions(quality);
  if (!known.includes('seventh') || !known.includes('major-seventh')) return undefined;
  return chordSymbol(seventh === 'none' ? { root, quality } : { root, quality, addition: seventh });
}

import { chordSymbol, qualityAdditions, readSymbol } from '../../shared-theory/chords.ts';
import type { AskedSeventh } from '../../shared-theory/questions/question.ts';

/** A triad with each seventh of the pad, in ASCII: of `Am` `Am`, `Am7` and `Am(maj7)`. */
export type SeventhSymbols = Readonly<Record<AskedSeventh, string>>;

/**
 * Undefined where the triad is not known, or where not every seventh of the pad has a symbol with it: what cannot be written would
 * be no choice.
 */
export function seventhSymbols(triad: string | undefined): SeventhSymbols | undefined {
  if (triad === undefined) return undefined;
  const { root, quality } = readSymbol(triad);
  const known = qualityAdditions(quality);
  if (!known.includes('seventh') || !known.includes('major-seventh')) return undefined;
  return {
    none: chordSymbol({ root, quality }),
    seventh: chordSymbol({ root, quality, addition: 'seventh' }),
    'major-seventh': chordSymbol({ root, quality, addition: 'major-seventh' }),
  };
}

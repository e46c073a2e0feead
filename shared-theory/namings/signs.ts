import { itemAt } from '../items.ts';

/** A note's name in parts that a screen can set apart: letter large, sign raised; `spoken` is for screen readers. */
export type NoteParts = { readonly letter: string; readonly sign: string; readonly spoken: string };

/** Real signs, and their names, from three flats to three sharps. */
const SIGNS = ['♭𝄫', '𝄫', '♭', '', '♯', '𝄪', '♯𝄪'] as const;
const SAID_SIGNS = ['triple flat', 'double flat', 'flat', '', 'sharp', 'double sharp', 'triple sharp'] as const;
const MOST_FLATS = 3;

/** Names with real signs after a letter or syllable. */
export function withSign(letter: string, said: string, alteration: number): NoteParts {
  const place = alteration + MOST_FLATS;
  return { letter, sign: itemAt(SIGNS, place), spoken: words(said, itemAt(SAID_SIGNS, place)) };
}

/** Words in a row; empty ones leave no gap. */
export function words(...parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(' ');
}

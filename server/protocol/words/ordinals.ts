import { capital } from './counting.ts';
import { fill } from './fill.ts';

/** Words for places in a row; apart from those that count, since fewer of a phone's questions need them. */
export const ordinalWords = {
  /** By slot of the loop; the slot after the first is the next one, whatever comes later. */
  ordinals: [
    'first',
    'next',
    'third',
    'fourth',
    'fifth',
    'sixth',
    'seventh',
    'eighth',
    'ninth',
    'tenth',
    'eleventh',
    'twelfth',
    'thirteenth',
    'fourteenth',
    'fifteenth',
    'sixteenth',
  ],
  /** By last figure, for places beyond the words. */
  ordinalEndings: ['th', 'st', 'nd', 'rd'],
} as const;

/** Slot of the loop as an ordinal: 0 `first`, 1 `next`, 2 `third`; beyond the words in figures: `21st`. */
export function ordinal(slot: number): string {
  return ordinalWords.ordinals[slot] ?? figureOrdinal(slot);
}

/** Slot of the loop in figures, for narrow places: 0 `1st`, 1 `2nd`, 10 `11th`. */
export function figureOrdinal(slot: number): string {
  const place = slot + 1;
  const teen = place % 100 > 10 && place % 100 < 14;
  return `${place}${(!teen && ordinalWords.ordinalEndings[place % 10]) || ordinalWords.ordinalEndings[0]}`;
}

/** A sentence about one chord, which is named by its slot: `{Which} chord` or `{which} chord`. */
export function ofChord(sentence: string, slot: number): string {
  const which = ordinal(slot);
  return fill(sentence, { which, Which: capital(which) });
}

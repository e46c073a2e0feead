import { fill } from './fill.ts';

/** Words that count and join; all pages. */
export const countingWords = {
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
  numbers: ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'],
  and: 'and',
  or: 'or',
} as const;

/** Names in a row, each once: `D, E and F#`. */
export function listed(names: readonly string[], last: string = countingWords.and): string {
  const each = [...new Set(names)];
  const end = each.pop() ?? '';
  return each.length === 0 ? end : `${each.join(', ')} ${last} ${end}`;
}

/** A count in words up to twelve, in figures above. */
export function numberWord(count: number): string {
  return countingWords.numbers[count] ?? String(count);
}

/** Slot of the loop as an ordinal: 0 `first`, 1 `next`, 2 `third`; beyond the words in figures: `21st`. */
export function ordinal(slot: number): string {
  return countingWords.ordinals[slot] ?? figureOrdinal(slot);
}

/** Slot of the loop in figures, for narrow places: 0 `1st`, 1 `2nd`, 10 `11th`. */
export function figureOrdinal(slot: number): string {
  const place = slot + 1;
  const teen = place % 100 > 10 && place % 100 < 14;
  return `${place}${(!teen && countingWords.ordinalEndings[place % 10]) || countingWords.ordinalEndings[0]}`;
}

/** A sentence about one chord, which is named by its slot: `{Which} chord` or `{which} chord`. */
export function ofChord(sentence: string, slot: number): string {
  const which = ordinal(slot);
  return fill(sentence, { which, Which: capital(which) });
}

/** With a capital letter, as a sentence begins. */
export function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}

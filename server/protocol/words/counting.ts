/** Words that count and join; all pages. */
export const countingWords = {
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

/** With a capital letter, as a sentence begins. */
export function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}

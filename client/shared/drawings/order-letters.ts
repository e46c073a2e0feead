/** An order as it is being written: by bar the index of its letter, `''` where nothing stands yet. The first bar is always 0. */
export type WrittenOrder = readonly (number | '')[];

/** The letters named anew in order of appearance, so that a new one is always the next. */
export function inOrder(order: WrittenOrder): WrittenOrder {
  const known: number[] = [];
  return order.map((letter) => {
    if (letter === '') return '';
    if (!known.includes(letter)) known.push(letter);
    return known.indexOf(letter);
  });
}

/**
 * What one more tap on a bar makes of it: the letters of the other bars in turn, then the next new one, then nothing. The first
 * bar stays. null where no bar but the first holds anything.
 */
export function tapped(order: WrittenOrder, bar: number): WrittenOrder | null {
  if (bar === 0) return order;
  // The other bars named on their own: by them it is known which letter would be new.
  const others = inOrder(order.map((letter, at) => (at === bar ? '' : letter)));
  const letters = new Set(others.filter((letter) => letter !== ''));
  const here = order[bar] ?? '';
  const twin = here === '' ? -1 : order.findIndex((letter, at) => at !== bar && letter === here);
  const now = here === '' ? -1 : twin < 0 ? letters.size : Number(others[twin]);
  const next = now === letters.size ? '' : now + 1;
  const written = inOrder(others.map((letter, at) => (at === bar ? next : letter)));
  return written.slice(1).every((letter) => letter === '') ? null : written;
}

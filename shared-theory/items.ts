/** The item at a place of a list, from 0. RangeError where the list has none there. */
export function itemAt<T>(items: readonly T[], place: number): T {
  const item = items[place];
  if (item === undefined) throw new RangeError(`No item ${place} in a list of ${items.length}.`);
  return item;
}

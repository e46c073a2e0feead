import type { LessonItem } from '../../server/protocol/messages.ts';

/** The first round of the plan that has not been played; null where all have been, or none is planned. */
export function nextItem(items: readonly LessonItem[], played: readonly string[]): LessonItem | null {
  return items.find(({ item }) => !played.includes(item)) ?? null;
}

/** The list with one item further up (`by` -1) or down (1); unchanged at its ends. */
export function moved(items: readonly LessonItem[], item: string, by: -1 | 1): readonly LessonItem[] {
  const from = items.findIndex((each) => each.item === item);
  const [one, other] = [items[from], items[from + by]];
  if (one === undefined || other === undefined) return items;
  return items.map((each) => (each === one ? other : each === other ? one : each));
}

export function without(items: readonly LessonItem[], item: string): readonly LessonItem[] {
  return items.filter((each) => each.item !== item);
}

/** The list with one kind of question added to an item or taken from it, in the order of `kinds`; the last one stays. */
export function withKind(
  items: readonly LessonItem[],
  item: string,
  kind: string,
  kinds: readonly string[],
): readonly LessonItem[] {
  return items.map((each) => {
    if (each.item !== item) return each;
    const chosen = kinds.filter((known) => (known === kind) !== each.kinds.includes(known));
    return chosen.length === 0 ? each : { ...each, kinds: chosen };
  });
}

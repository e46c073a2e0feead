/** What is right on each slot of a grid: one thing, or several; the first stands for them. */
export type RightSlots<T> = readonly (readonly [T, ...T[]])[];

/** So many whole answers at most are listed beside the right one. */
const MOST_LISTED = 63;

/** Whether every slot is right. Another length is wrong. */
export function allRight<T>(answer: readonly T[], right: RightSlots<T>): boolean {
  return answer.length === right.length && right.every((each, slot) => each.includes(answer[slot] as T));
}

/** The right answer: on each slot what stands for all that is right there. */
export function standingFor<T>(right: RightSlots<T>): readonly T[] {
  return right.map(([first]) => first);
}

/** Other answers that are right on every slot, those that differ from the first in the fewest slots before others; 63 at most. */
export function alsoOnTheGrid<T>(right: RightSlots<T>): readonly (readonly T[])[] {
  const first = standingFor(right);
  const found: (readonly T[])[] = [];
  // Each round changes one slot more, behind those that are changed already.
  let last: readonly { readonly answer: readonly T[]; readonly from: number }[] = [{ answer: first, from: 0 }];
  while (last.length > 0 && found.length < MOST_LISTED) {
    last = last.flatMap(({ answer, from }) =>
      right.flatMap(([, ...others], slot) =>
        slot < from ? [] : others.map((other) => ({ answer: answer.with(slot, other), from: slot + 1 })),
      ),
    );
    found.push(...last.slice(0, MOST_LISTED - found.length).map(({ answer }) => answer));
  }
  return found;
}

/** How many answers are right on every slot. */
export function rightAnswers<T>(right: RightSlots<T>): number {
  return right.reduce((product, { length }) => product * length, 1);
}

/**
 * How much of what sounds an answer has right, 0 to 1: what is lost slot by slot, 0 to 1 each, of as many slots as sound. A mark where
 * nothing sounds is lost too, and silence where nothing sounds earns nothing: neither can make up for what was not heard.
 */
export function shareKept<T>(
  answer: readonly T[],
  right: RightSlots<T>,
  { sounds, lost }: { readonly sounds: (each: T) => boolean; readonly lost: (given: T, slot: number) => number },
): number {
  const sounding = right.filter(([usual]) => sounds(usual)).length;
  const losses = answer.reduce((sum, given, slot) => sum + (right[slot]?.includes(given) ? 0 : lost(given, slot)), 0);
  return Math.max(0, 1 - losses / sounding);
}

/** A share stretched so that what is had without hearing is 0. */
export function stretched(share: number, unheard: number): number {
  return Math.max(0, (share - unheard) / (1 - unheard));
}

/** Whether silence on what is muted is most of what an answer has wrong: one such slot among many other faults shows nothing. */
export function mostlyRests<T>(
  answer: readonly T[],
  right: RightSlots<T>,
  { silent, muted }: { readonly silent: T; readonly muted: (slot: number) => boolean },
): boolean {
  const wrong = answer.flatMap((given, slot) => (right[slot]?.includes(given) ? [] : [slot]));
  return 2 * wrong.filter((slot) => answer[slot] === silent && muted(slot)).length > wrong.length;
}

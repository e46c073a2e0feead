/** Credits, 0 to 1, of one student's answers to one question; null where that sheet was not answered. */
export type SheetCredits = { readonly first: number | null; readonly again: number | null };

/**
 * Credit of a question for the friendly ledger, 0 to 1: the first answer, and half of what the one after the talk with the
 * neighbour is better. It never falls by talking.
 */
export function creditWithTalk({ first, again }: SheetCredits): number {
  const alone = first ?? 0;
  return alone + Math.max(0, (again ?? alone) - alone) / 2;
}

/** A credit as points: every question is worth ten. */
export function pointsOf(credit: number): number {
  return credit * 10;
}

/** Least credit that is called partly right: what earns less is no half of the answer, whatever it earns. */
const PARTLY = 0.5;

/** Whether a credit is called partly right where the answer is not right. */
export function isPartly(credit: number): boolean {
  return credit >= PARTLY;
}

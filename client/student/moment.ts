import { NOT_SURE } from '../../shared-theory/questions/question.ts';

/** Where a question stands on this phone: what the foot of the page says. */
export type Moment =
  /** The foot's buttons: nothing written, or something else chosen since. */
  | { readonly kind: 'choosing' }
  | { readonly kind: 'sending' }
  | { readonly kind: 'in'; readonly answer: unknown }
  | { readonly kind: 'kept'; readonly closed: boolean }
  | { readonly kind: 'closed'; readonly answer: unknown; readonly chosen: boolean }
  | { readonly kind: 'late' }
  | { readonly kind: 'shown'; readonly answer: unknown };

export type Standing = {
  readonly phase: 'open' | 'closed' | 'shown';
  /** On disk for this question; null where nothing is. */
  readonly written: unknown;
  /** On its way for this question; undefined where nothing is, null where an answer is being taken back. */
  readonly pending: unknown;
  /** The last one was refused for this question. */
  readonly refused: boolean;
  /** On the pad now. */
  readonly chosen: unknown;
  /** The student wants the pad back though an answer is in. */
  readonly changing: boolean;
  readonly live: boolean;
  /** The last sending came back unacknowledged. */
  readonly slow: boolean;
};

/** Answers are plain data, so their text tells them apart; the parts of a place are put in one order first. */
export const sameAnswer = (one: unknown, other: unknown): boolean => text(one) === text(other);

function text(answer: unknown): string {
  if (typeof answer !== 'object' || answer === null || Array.isArray(answer)) return JSON.stringify(answer ?? null);
  const parts = Object.entries(answer).map((entry) => JSON.stringify(entry));
  // Sorting in place: these phones know no other way.
  // oxlint-disable-next-line unicorn/no-array-sort
  return parts.sort().join();
}

/** Whether an answer can be written: a list with an empty place is not finished. */
export const isWhole = (answer: unknown): boolean => !(Array.isArray(answer) && answer.includes(''));

/** What is true of a question on this phone: "in" only once it is acknowledged. */
export function momentOf(standing: Standing): Moment {
  const { phase, written, pending, refused } = standing;
  const underway = pending !== undefined;
  if (phase === 'shown') return { kind: 'shown', answer: written };
  if (phase === 'closed') {
    if (underway) return { kind: 'kept', closed: true };
    if (refused && !sameAnswer(standing.chosen, written)) return { kind: 'late' };
    return {
      kind: 'closed',
      answer: written,
      chosen: !sameAnswer(standing.chosen, written) && standing.chosen !== null,
    };
  }
  const settled = underway ? pending : written;
  // "Not sure" leaves the pad empty.
  const shownAs = settled === NOT_SURE ? null : settled;
  if (!sameAnswer(standing.chosen, shownAs) || standing.changing) return { kind: 'choosing' };
  if (underway) return standing.live && !standing.slow ? { kind: 'sending' } : { kind: 'kept', closed: false };
  return written === null ? { kind: 'choosing' } : { kind: 'in', answer: written };
}

import type { ErrorKind } from './error-kinds.ts';
import type { AnswerOf, Kind, Mark, MarkingContext, Target } from './question.ts';
import { questionId } from './round-questions.ts';

/** The mark of a right answer. */
export const RIGHT: Mark = { credit: 1, exact: true, errors: [] };

/** The mark of an answer that is wrong by itself and right from the student's own earlier one on: nothing is lost twice. */
export const FOLLOWS: Mark = { credit: 1, exact: false, errors: [], note: 'follows-own-answer' };

/** The mark of an answer that is not right: its friendly credit (0 to below 1) and what it shows, if anything. */
export function notRight(credit: number, error: ErrorKind | null): Mark {
  return { credit, exact: false, errors: error === null ? [] : [error] };
}

/** An error kind, and whether an answer shows it. */
export type ErrorRule = readonly [ErrorKind, boolean];

/** The first error kind that an answer shows, of rules in their precedence; null where it shows none. */
export function firstShown(rules: readonly ErrorRule[]): ErrorKind | null {
  return rules.find(([, shown]) => shown)?.[0] ?? null;
}

/** The student's own answer to another question of the round; null where none stands or may be told of. */
export function ownAnswer<K extends Kind>({ own }: MarkingContext, kind: K, target: Target): AnswerOf<K> | null {
  return (own[questionId(kind, target)] as AnswerOf<K> | undefined) ?? null;
}

/** A right answer that must be there. Throws RangeError where the question cannot be asked of the round. */
export function needed<T>(value: T | null | undefined, kind: Kind, target: Target): T {
  if (value === null || value === undefined) {
    throw new RangeError(`${kind}-${target} cannot be asked of this round: it has no right answer`);
  }
  return value;
}

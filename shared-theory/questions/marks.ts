import type { ErrorKind } from './error-kinds.ts';
import type { Kind, Mark, Target } from './question.ts';

/** The mark of a right answer. */
export const RIGHT: Mark = { credit: 1, exact: true, errors: [] };

/** The mark of an answer that is not right: its friendly credit (0 to below 1) and what it shows, if anything. */
export function notRight(credit: number, error: ErrorKind | null): Mark {
  return { credit, exact: false, errors: error === null ? [] : [error] };
}

/** A right answer that must be there. Throws RangeError where the question cannot be asked of the round. */
export function needed<T>(value: T | null | undefined, kind: Kind, target: Target): T {
  if (value === null || value === undefined) {
    throw new RangeError(`${kind}-${target} cannot be asked of this round: it has no right answer`);
  }
  return value;
}

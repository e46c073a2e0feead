import { gridWords } from '../../server/protocol/words/grid-words.ts';
import { gridText as textOf, type DrawnKind } from '../../shared-theory/grid-text.ts';

/** An answer that is drawn on the grid, in a few words; `named` is the grid that was drawn on, where it is known. */
export function gridText(kind: DrawnKind, answer: readonly unknown[], named?: string): string {
  return textOf(kind, answer, gridWords, named);
}

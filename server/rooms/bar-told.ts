import { GRID_KINDS } from '../../shared-theory/questions/question.ts';
import type { Kind } from '../../shared-theory/questions/question.ts';
import { parseQuestionId } from '../../shared-theory/questions/round-questions.ts';
import type { RoundRecord } from './state.ts';

/** Kinds whose right answer the number of slots on a beat grid says. */
const TOLD_BY_THE_GRID: readonly Kind[] = ['bar-count', 'threes'];

/** Whether a question of a kind asks what a beat grid that was drawn on in this round has told already. */
export function isTold(record: RoundRecord, kind: Kind): boolean {
  return TOLD_BY_THE_GRID.includes(kind) && gridDrawn(record);
}

/** Whether a question of the round that is answered on the beat grid has been opened. */
function gridDrawn({ questions }: RoundRecord): boolean {
  for (const [id, { sheets }] of questions) {
    const kind = parseQuestionId(id)?.kind;
    if (sheets.length > 0 && kind !== undefined && GRID_KINDS.has(kind)) return true;
  }
  return false;
}

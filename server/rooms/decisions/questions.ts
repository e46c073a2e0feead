import { parseQuestionId } from '../../../shared-theory/questions/round-questions.ts';
import type { CommandOf, Decision } from '../commands.ts';
import { already, happens, refuse } from '../commands.ts';
import type { QuestionRecord, RoomState, Sheet } from '../state.ts';
import { questionOf } from '../state.ts';
import { runningRound } from './running-round.ts';
import { andFull } from './sound.ts';

/** Opens a question of the running round; a question that was opened before is answered, not opened twice. */
export function openQuestion(state: RoomState, { round, question }: CommandOf<'OpenQuestion'>): Decision {
  const running = runningRound(state, round);
  if ('reason' in running) return running;
  const record = running.questions.get(question);
  if (record === undefined) return refuse('question-unknown');
  const last = record.sheets.at(-1);
  if (last !== undefined) return already({ ask: last.ask });
  if (state.open !== null) return refuse('question-still-open');
  return opened(state, round, question, 1);
}

/** After talk with the neighbour: another sheet of a question that is closed and not yet shown. */
export function answerAgain(state: RoomState, { ask }: CommandOf<'AnswerAgain'>): Decision {
  const found = sheetOf(state, ask);
  if ('reason' in found) return found;
  const { sheet, record } = found;
  const next = record.sheets[sheet.sheet];
  if (next !== undefined) return already({ ask: next.ask });
  if (record.shown) return refuse('question-shown');
  if (sheet.closed === null) return refuse('question-not-closed');
  const running = runningRound(state, sheet.round.id);
  if ('reason' in running) return running;
  if (state.open !== null) return refuse('question-still-open');
  return opened(state, sheet.round.id, sheet.question, sheet.sheet + 1);
}

export function closeQuestion(state: RoomState, { ask }: CommandOf<'CloseQuestion'>): Decision {
  const sheet = state.sheets.get(ask);
  if (sheet === undefined) return refuse('question-unknown');
  return sheet.closed === null ? happens([{ type: 'QuestionClosed', ask }]) : already();
}

/** Shows on the host how the answers fell, with the right one unmarked. */
export function showSpread(state: RoomState, { ask }: CommandOf<'ShowSpread'>): Decision {
  const found = sheetOf(state, ask);
  if ('reason' in found) return found;
  if (found.sheet.spreadShown) return already();
  return showable(state, found.sheet) ?? happens([{ type: 'SpreadShown', ask }]);
}

/** Shows the right answer, which ends the grace for late answers. */
export function showAnswer(state: RoomState, { ask }: CommandOf<'ShowAnswer'>): Decision {
  const found = sheetOf(state, ask);
  if ('reason' in found) return found;
  if (found.record.shown) return already();
  return showable(state, found.sheet) ?? happens([{ type: 'QuestionShown', ask }]);
}

function opened(state: RoomState, round: string, question: string, sheet: number): Decision {
  const ask = `a${state.sheets.size + 1}`;
  const allowed = happens([{ type: 'QuestionOpened', ask, round, question, sheet }], { ask });
  return parseQuestionId(question)?.kind === 'strokes' ? andFull(allowed, state) : allowed;
}

/** Why a closed sheet of the running round cannot be shown now; null where it can. */
function showable(state: RoomState, sheet: Sheet): ReturnType<typeof refuse> | null {
  if (sheet.closed === null) return refuse('question-not-closed');
  if (state.open !== null) return refuse('question-still-open');
  const running = runningRound(state, sheet.round.id);
  return 'reason' in running ? running : null;
}

function sheetOf(
  state: RoomState,
  ask: string,
): { readonly sheet: Sheet; readonly record: QuestionRecord } | ReturnType<typeof refuse> {
  const sheet = state.sheets.get(ask);
  const record = sheet && questionOf(state, sheet);
  return sheet === undefined || record === undefined ? refuse('question-unknown') : { sheet, record };
}

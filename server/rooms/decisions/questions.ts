import { TAPPED_KINDS } from '../../../shared-theory/questions/question.ts';
import type { Kind } from '../../../shared-theory/questions/question.ts';
import { parseQuestionId } from '../../../shared-theory/questions/round-questions.ts';
import type { AskHow } from '../../protocol/messages.ts';
import type { Allowed, CommandOf, Context, Decision } from '../commands.ts';
import { isTold } from '../bar-told.ts';
import { already, happens, refuse } from '../commands.ts';
import type { QuestionRecord, RoomState, RoundRecord, Sheet } from '../state.ts';
import { currentRound, phoneSheets, questionOf, SILENCE } from '../state.ts';
import { isOfTheFeel, soundAfter, soundsForAsking } from './asking.ts';
import { askedInstead } from './instead.ts';
import { change, ordering } from './orders.ts';
import { asksQuestion, runningRound } from './running-round.ts';

/**
 * Opens a question of the running round; a question that was opened before is answered, not opened twice. One that was asked
 * aloud may still be asked on the phones. From memory it opens once two bars have passed in silence.
 */
export function openQuestion(state: RoomState, command: CommandOf<'OpenQuestion'>, context: Context): Decision {
  const { round, question, how } = command;
  const running = runningRound(state, round);
  if ('reason' in running) return running;
  const record = running.questions.get(question);
  if (record === undefined || !asksQuestion(running.heard, question)) return refuse('question-unknown');
  const last = record.sheets.at(-1);
  if (last !== undefined && (last.how !== 'aloud' || how === 'aloud' || record.shown))
    return already({ ask: last.ask });
  if (state.open !== null) return refuse('question-still-open');
  // A settler first sounds as it is asked: nothing of it could be remembered.
  if (how === 'memory' && isSettler(question)) return refuse('settler-from-memory');
  const kind = parseQuestionId(question)?.kind;
  // What is remembered is the feel that was swapped in, and what is right the one that was written.
  if (how === 'memory' && kind !== undefined && isOfTheFeel(kind) && isSwapped(state, round)) {
    return refuse('groove-swapped');
  }
  // Also where it was asked aloud before: what phones say now would be evidence of nothing.
  if (kind !== undefined && isTold(running, kind)) return refuse('bar-told');
  if (kind !== undefined && TAPPED_KINDS.has(kind) && nothingToTap(state, running, kind, how)) {
    return refuse('nothing-plays');
  }
  if (how === 'memory' && sounds(state, round, context)) {
    const waits = state.awaited === question ? already() : happens([{ type: 'MemoryAwaited', round, question }]);
    return ordering(waits, change(round, { kind: 'silence' }));
  }
  const opening = opened(state, running, { round, question, how });
  return how === 'memory' ? quieted(opening, state, round, context) : opening;
}

/**
 * After talk with the neighbour: another sheet of a question that is closed and not yet shown. Once the class has seen how the
 * answers fell there is none.
 */
export function answerAgain(state: RoomState, { ask }: CommandOf<'AnswerAgain'>, context: Context): Decision {
  const found = sheetOf(state, ask);
  if ('reason' in found) return found;
  const { sheet, record } = found;
  const next = record.sheets[record.sheets.indexOf(sheet) + 1];
  if (next !== undefined) return already({ ask: next.ask });
  if (record.shown) return refuse('question-shown');
  if (sheet.closed === null) return refuse('question-not-closed');
  const running = runningRound(state, sheet.round.id);
  if ('reason' in running) return running;
  if (record.sheets.some(({ spreadShown }) => spreadShown)) return refuse('spread-seen');
  if (state.open !== null) return refuse('question-still-open');
  const kind = parseQuestionId(sheet.question)?.kind;
  if (kind !== undefined && TAPPED_KINDS.has(kind) && nothingToTap(state, running, kind, 'phones')) {
    return refuse('nothing-plays');
  }
  const round = sheet.round.id;
  const how = sheet.how === 'memory' && !sounds(state, round, context) ? 'memory' : 'phones';
  const opening = opened(state, running, { round, question: sheet.question, how });
  return how === 'memory' ? quieted(opening, state, round, context) : opening;
}

export function closeQuestion(state: RoomState, { ask }: CommandOf<'CloseQuestion'>): Decision {
  const sheet = state.sheets.get(ask);
  if (sheet?.among !== null) return refuse('question-unknown');
  return sheet.closed === null ? happens([{ type: 'QuestionClosed', ask }]) : already();
}

/** Shows on the host how the answers fell, with the right one unmarked. */
export function showSpread(state: RoomState, { ask }: CommandOf<'ShowSpread'>): Decision {
  const found = sheetOf(state, ask);
  if ('reason' in found) return found;
  if (found.sheet.spreadShown) return already();
  if (found.sheet.how === 'aloud') return refuse('asked-aloud');
  return showable(state, found.sheet) ?? happens([{ type: 'SpreadShown', ask }]);
}

/** Shows the right answer, which ends the grace for late answers. */
export function showAnswer(state: RoomState, { ask }: CommandOf<'ShowAnswer'>): Decision {
  const found = sheetOf(state, ask);
  if ('reason' in found) return found;
  if (found.record.shown) return already();
  return showable(state, found.sheet) ?? happens([{ type: 'QuestionShown', ask }]);
}

function isSettler(question: string): boolean {
  return parseQuestionId(question)?.kind === 'settler';
}

/** What is asked, where and how. */
type Opening = { readonly round: string; readonly question: string; readonly how: AskHow };

/** The opening of another sheet, what those are asked beyond whom it lies, and what is to sound with it. */
function opened(state: RoomState, running: RoundRecord, { round, question, how }: Opening): Allowed {
  const ask = `a${state.asks + 1}`;
  const sheet = phoneSheets(running.questions.get(question)).length + 1;
  const changes = soundsForAsking(state, question, how);
  const sounding = state.sound.playing && state.sound.round === round ? state.sound : SILENCE;
  const instead = askedInstead(state, running, { ask, question, how }, soundAfter(sounding, changes));
  const kind = parseQuestionId(question)?.kind;
  const tempo = kind !== undefined && TAPPED_KINDS.has(kind) ? tempoHeard(state, running) : null;
  const allowed = happens([{ type: 'QuestionOpened', ask, round, question, sheet, how, tempo }, ...instead], { ask });
  return ordering(allowed, ...changes.map((each) => change(round, each)));
}

/** Whether there is nothing to tap along with: what drops out or is tapped together sounds while it is asked. */
function nothingToTap(state: RoomState, running: RoundRecord, kind: Kind, how: AskHow): boolean {
  if (how === 'memory' && (kind === 'drop-out' || kind === 'together')) return true;
  return tempoHeard(state, running) === null;
}

/** Beats a minute of what sounds of a round: of our vamp while it plays, of the teacher's guitar as he named it; null where none is known. */
function tempoHeard({ sound }: RoomState, { heard }: RoundRecord): number | null {
  if (heard.source === 'guitar') return heard.tempo;
  return sound.playing && sound.round === heard.id ? sound.tempo : null;
}

/**
 * Takes back what may be on its way to be heard, ordered and not yet told of: the page takes orders in their sequence, and a
 * question from memory is answered from silence.
 */
function quieted(opening: Allowed, { sound }: RoomState, round: string, { soundHolder }: Context): Allowed {
  if (soundHolder === null) return opening;
  const silent = sound.playing && sound.round === round;
  return ordering(opening, silent ? change(round, { kind: 'silence' }) : { order: 'stop' });
}

/** Adds the question of the running round that waits for two silent bars to what has brought them. */
export function withAwaited(allowed: Allowed, state: RoomState): Allowed {
  const { awaited } = state;
  const running = currentRound(state);
  if (awaited === null || state.open !== null || running === null) return allowed;
  const round = running.heard.id;
  const opening = opened(state, running, { round, question: awaited, how: 'memory' });
  return { ...allowed, events: [...allowed.events, ...opening.events] };
}

/** Whether the round's vamp is heard now, or was within the last two bars. One of the round before is on its way to an end. */
function sounds({ sound }: RoomState, round: string, { soundHolder }: Context): boolean {
  return sound.playing && sound.round === round && soundHolder !== null && !sound.kept;
}

/** Whether the round's vamp plays in another feel than was written. */
function isSwapped({ sound }: RoomState, round: string): boolean {
  return sound.playing && sound.round === round && sound.feel !== 'written';
}

/** Why a closed sheet of the running round cannot be shown now; null where it can. */
function showable(state: RoomState, sheet: Sheet): ReturnType<typeof refuse> | null {
  if (sheet.closed === null) return refuse('question-not-closed');
  if (state.open !== null) return refuse('question-still-open');
  const running = runningRound(state, sheet.round.id);
  return 'reason' in running ? running : null;
}

/** A sheet of the class, of a question that its round still has. */
export function sheetOf(
  state: RoomState,
  ask: string,
): { readonly sheet: Sheet; readonly record: QuestionRecord } | ReturnType<typeof refuse> {
  const sheet = state.sheets.get(ask);
  const record = sheet && questionOf(state, sheet);
  const isOfAll = sheet?.among === null;
  return !isOfAll || record === undefined || !asksQuestion(sheet.round, sheet.question)
    ? refuse('question-unknown')
    : { sheet, record };
}

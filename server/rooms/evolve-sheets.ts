import { GRID_KINDS } from '../../shared-theory/questions/question.ts';
import { parseQuestionId } from '../../shared-theory/questions/round-questions.ts';
import type { HeardRound, RoomEvent, Stamp } from './events.ts';
import { cameHome } from './evolve-sound.ts';
import type { RoomState, Sheet } from './state.ts';
import { phoneSheets, roundOf } from './state.ts';

/** A question opens on another sheet. */
export function openSheet(state: RoomState, event: Extract<RoomEvent, { type: 'QuestionOpened' }>, stamp: Stamp): void {
  const { ask, question, how, tempo } = event;
  const record = roundOf(state, event.round);
  const asked = record?.questions.get(question);
  if (record === undefined || asked === undefined) return;
  const aloud = how === 'aloud';
  state.turn += 1;
  state.asks += 1;
  const opened = plain(stamp);
  const closed = aloud ? { stamp: opened, turn: state.turn } : null;
  const returned = cameHome(record, stamp);
  const asking = { ask, question, sheet: event.sheet, how, tempo, opened, returned, closed, among: null };
  const sheet = blank(record.heard, asking);
  if (!aloud && phoneSheets(asked).length === 0) asked.firsts.push(sheet);
  asked.sheets.push(sheet);
  state.sheets.set(ask, sheet);
  state.open = aloud ? null : sheet;
  state.current = sheet;
  state.awaited = null;
}

/** A student is asked something else than the room, on a sheet of its own, or listens. */
export function askInstead(
  state: RoomState,
  { student, ask, question }: Extract<RoomEvent, { type: 'AskedInstead' }>,
): void {
  const sheet = state.sheets.get(ask);
  const asked = question === null ? undefined : state.rounds[(sheet?.round.number ?? 0) - 1]?.questions.get(question);
  if (sheet === undefined) return;
  if (question === null || asked === undefined) {
    sheet.instead.set(student, null);
    return;
  }
  // What is asked names itself on the pad: its name tells no more.
  const name = `${ask}.${question}`;
  let aside = state.sheets.get(name);
  if (aside === undefined) {
    const { how, opened, returned, closed } = sheet;
    const among = new Set<string>();
    aside = blank(sheet.round, { ask: name, question, sheet: 1, how, tempo: null, opened, returned, closed, among });
    asked.firsts.push(aside);
    state.sheets.set(name, aside);
  }
  aside.among?.add(student);
  sheet.instead.set(student, name);
}

type Asked = Pick<Sheet, 'ask' | 'question' | 'sheet' | 'how' | 'tempo' | 'opened' | 'returned' | 'closed' | 'among'>;

/** A sheet on which nobody has written. */
function blank(round: HeardRound, asked: Asked): Sheet {
  return {
    ...asked,
    round,
    settler: settlerOf(round, asked.question),
    grid: gridOf(round, asked.question),
    spreadShown: false,
    answers: new Map(),
    cannotHear: new Set(),
    instead: new Map(),
  };
}

function settlerOf({ truth }: HeardRound, question: string): Sheet['settler'] {
  const asked = parseQuestionId(question);
  const settler = asked?.kind === 'settler' ? truth.settlers[asked.target] : undefined;
  return settler === undefined ? null : { chord: settler.chord, note: settler.note };
}

/** The grid that a question is answered on; null for one that is not. */
function gridOf({ truth }: HeardRound, question: string): Sheet['grid'] {
  const asked = parseQuestionId(question);
  return asked !== null && GRID_KINDS.has(asked.kind) ? (truth.rhythm?.grid ?? null) : null;
}

/** A row of the log carries more than its stamp. */
export function plain({ at, mono, boot }: Stamp): Stamp {
  return { at, mono, boot };
}

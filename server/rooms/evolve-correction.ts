import type { HeardRound, RoomEvent, Stamp } from './events.ts';
import type { RoomState } from './state.ts';
import { roundOf, unasked } from './state.ts';

/**
 * Folds a correction: other answers are right from now on; what was shown stays known, so that no points are lost by it. `stamp` is
 * kept.
 */
export function correct(state: RoomState, event: Extract<RoomEvent, { type: 'TruthCorrected' }>, stamp: Stamp): void {
  const round = roundOf(state, event.round.id);
  if (round === undefined) return;
  const before = round.heard;
  round.heard = event.round;
  round.corrections += 1;
  round.revision += 1;
  for (const [id, record] of round.questions) {
    if (event.pointsMayFall) {
      record.shownUnder = [];
      // What is gone keeps the points of being struck only while no points may fall.
      if (!asks(event.round, id)) record.struck = false;
    } else if (record.shown && asks(before, id)) record.shownUnder = [...record.shownUnder, before];
    for (const sheet of [...record.sheets, ...record.firsts]) sheet.round = event.round;
  }
  for (const { id } of event.round.questions) if (!round.questions.has(id)) round.questions.set(id, unasked());
  const gone = state.current?.round === event.round && !asks(event.round, state.current.question);
  if (gone) state.current = null;
  const dropped = dropAsides(state, event.round, stamp);
  // As with what is let stand: only of what was shown is there something new to see.
  if (gone || dropped || [...round.questions.values()].some(({ shown }) => shown)) state.turn += 1;
}

/**
 * Who is asked in the place of the class what the round has no more listens from now on; an open sheet of it closes. Whether there
 * was any.
 */
function dropAsides(state: RoomState, round: HeardRound, stamp: Stamp): boolean {
  let dropped = false;
  for (const sheet of state.sheets.values()) {
    if (sheet.round !== round) continue;
    for (const [student, ask] of sheet.instead) {
      const aside = ask === null ? undefined : state.sheets.get(ask);
      if (aside === undefined || asks(round, aside.question)) continue;
      aside.closed ??= { stamp, turn: state.turn + 1 };
      sheet.instead.set(student, null);
      dropped = true;
    }
  }
  return dropped;
}

function asks({ questions }: HeardRound, question: string): boolean {
  return questions.some(({ id }) => id === question);
}

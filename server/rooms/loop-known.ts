import { LEVELS } from '../../shared-theory/levels.ts';
import type { Loop } from '../../shared-theory/questions/question.ts';
import { questionId } from '../../shared-theory/questions/round-questions.ts';
import type { HeardRound } from './events.ts';
import type { RoomState } from './state.ts';

/**
 * How many chords a loop has, as far as everyone knows: the count has been shown, a later chord has been asked about, or the
 * level has no other. It may not depend on chords that have not been shown.
 */
export function loopKnown(state: RoomState, round: HeardRound): Loop | null {
  const records = state.rounds[round.number - 1]?.questions;
  if (records?.get(questionId('count', 0))?.shown === true) {
    const { count } = round.truth;
    return count === 1 ? 'one' : count === 2 ? 'two' : 'more';
  }
  const laterAsked = round.questions.some(
    ({ id, kind, target }) => kind !== 'settler' && target > 0 && (records?.get(id)?.sheets.length ?? 0) > 0,
  );
  const level = LEVELS.find((each) => each.level === round.level);
  // Where they are counted, a level has longer loops as well.
  if (level === undefined || round.kinds.includes('count')) return laterAsked ? 'more' : null;
  const { held, return: longer } = level.balance.forms;
  if (longer > 0) return laterAsked ? 'more' : null;
  return laterAsked || held === 0 ? 'two' : null;
}

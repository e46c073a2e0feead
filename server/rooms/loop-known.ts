import type { Kind, Loop, Target } from '../../shared-theory/questions/question.ts';
import { questionId } from '../../shared-theory/questions/round-questions.ts';
import type { HeardRound } from './events.ts';
import { rightAnswer } from './marking.ts';
import type { RoomState } from './state.ts';

/** Whether a question presupposes more chords than one. */
function tellsOfSeveral(kind: Kind, target: Target): boolean {
  return kind === 'order' || kind === 'home' || (kind !== 'settler' && target > 0);
}

/** How many different chords the loop has, once that has been shown: whether another bass makes another chord is the class's choice. */
export function countShown(state: RoomState, round: HeardRound): number | null {
  const counted = round.questions.find(({ id }) => id === questionId('count', 0));
  if (counted === undefined || state.rounds[round.number - 1]?.questions.get(counted.id)?.shown !== true) return null;
  const count = rightAnswer(round, counted);
  return typeof count === 'number' ? count : null;
}

/**
 * How many chords a loop has, as far as everyone knows: the count has been shown, a later chord has been asked about, or
 * rounds of its sort have no other. It may not depend on chords that have not been shown.
 */
export function loopKnown(state: RoomState, round: HeardRound): Loop | null {
  const records = state.rounds[round.number - 1]?.questions;
  const count = countShown(state, round);
  if (count !== null) return count === 1 ? 'one' : count === 2 ? 'two' : 'more';
  const laterAsked = round.questions.some(
    ({ id, kind, target }) => tellsOfSeveral(kind, target) && (records?.get(id)?.sheets.length ?? 0) > 0,
  );
  if (round.loops === 'two') return 'two';
  if (!laterAsked) return null;
  return round.loops === 'one-or-two' ? 'two' : 'more';
}

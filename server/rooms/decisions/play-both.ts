import type { CommandOf, Context, Decision } from '../commands.ts';
import { happens, refuse } from '../commands.ts';
import { bothReadings } from '../both-readings.ts';
import type { RoomState } from '../state.ts';
import { change, ordering } from './orders.ts';
import { sheetOf } from './questions.ts';
import { runningRound } from './running-round.ts';

/** Plays the most chosen wrong answer of a closed question and the right one by turns, in the running groove. */
export function playBothReadings(state: RoomState, { ask }: CommandOf<'PlayBoth'>, context: Context): Decision {
  const found = sheetOf(state, ask);
  if ('reason' in found) return found;
  const { sheet } = found;
  if (sheet.closed === null) return refuse('question-not-closed');
  const { id, source } = sheet.round;
  const running = runningRound(state, id);
  if ('reason' in running) return running;
  if (state.open !== null) return refuse('question-still-open');
  if (source === 'guitar') return refuse('not-played-here');
  const both = bothReadings(state, sheet);
  if (both === null) return refuse('nothing-to-compare');
  if (!state.sound.playing || state.sound.round !== id) return refuse('nothing-plays');
  if (context.soundHolder === null) return refuse('no-host-sound');
  return ordering(happens([]), change(id, { kind: 'both', ask, ...both }));
}

import { echoGroove } from '../../../shared-theory/echo-groove.ts';
import type { AnswerOf } from '../../../shared-theory/questions/question.ts';
import type { Weight } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import type { EchoOf } from '../../protocol/messages.ts';
import type { CommandOf, Context, Decision } from '../commands.ts';
import { happens, refuse } from '../commands.ts';
import type { NewEvent } from '../events.ts';
import { drawnBy, meanGrid, nearestWeights } from '../drawn-grids.ts';
import { questionOn, rightAnswer } from '../marking.ts';
import { grooveHeard } from '../own-grooves.ts';
import type { RoomState, Sheet } from '../state.ts';
import { change, ordering } from './orders.ts';
import { sheetOf } from './questions.ts';
import { runningRound } from './running-round.ts';

/**
 * Plays a grid of accents that was drawn on a closed sheet, on muted strings in the running tempo: one student's, the middle one of
 * the class, or the right one. Whose it is stands in no order.
 */
export function playEcho(state: RoomState, { ask, of }: CommandOf<'PlayEcho'>, context: Context): Decision {
  const found = sheetOf(state, ask);
  if ('reason' in found) return found;
  const { sheet } = found;
  if (questionOn(sheet).kind !== 'accents') return refuse('no-grid');
  if (sheet.closed === null) return refuse('question-not-closed');
  const { id, source } = sheet.round;
  const running = runningRound(state, id);
  if ('reason' in running) return running;
  if (state.open !== null) return refuse('question-still-open');
  if (source === 'guitar') return refuse('not-played-here');
  const student = of.grid === 'student' ? of.student : null;
  if (student !== null && !state.students.has(student)) return refuse('student-unknown');
  const weights = weightsOf(sheet, of);
  const [groove] = grooveHeard(sheet.round);
  if (weights === null || groove === undefined) return refuse('no-grid');
  // Pressed again it is the same one that is ordered once more.
  const { echo, echoes } = state;
  const last = echo?.student === student ? echoGroove(groove, weights, echoes) : null;
  const isSame = last !== null && last === echo?.groove;
  const text = isSame ? last : echoGroove(groove, weights, echoes + 1);
  if (text === null) return refuse('no-grid');
  if (!state.sound.playing || state.sound.round !== id) return refuse('nothing-plays');
  if (context.soundHolder === null) return refuse('no-host-sound');
  const events: readonly NewEvent[] = isSame ? [] : [{ type: 'EchoOrdered', student, groove: text }];
  return ordering(happens(events), change(id, { kind: 'echo', groove: text }));
}

function weightsOf(sheet: Sheet, of: EchoOf): readonly Weight[] | null {
  switch (of.grid) {
    case 'student':
      return drawnBy(sheet, of.student);
    case 'class': {
      const mean = meanGrid(sheet);
      return mean === null ? null : nearestWeights(mean);
    }
    case 'right':
      return rightAnswer(sheet.round, questionOn(sheet)) as AnswerOf<'accents'> | null;
  }
}

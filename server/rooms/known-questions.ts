import type { Kind } from '../../shared-theory/questions/question.ts';
import type { RoundQuestion } from '../../shared-theory/questions/round-questions.ts';
import { loopKnown } from './loop-known.ts';
import type { RoomState, RoundRecord } from './state.ts';

/** What can be asked of any first chord, whatever it is. */
const OF_ANY_FIRST: readonly Kind[] = ['root'];
/** Of a round that Hearsay plays also: its chords can be counted and stand on the pad. Not every groove has strokes to ask about. */
const OF_ANY_PLAYED: readonly Kind[] = [...OF_ANY_FIRST, 'bass', 'quality', 'count'];
/** Of the second of two. */
const OF_ANY_SECOND: readonly Kind[] = ['direction', 'distance', 'quality', 'bass'];

/**
 * The questions of a round that everybody may know to be among its questions, in their order: those that rounds of its sort always
 * have, and those that have been asked of the room. It may not depend on chords that have not been shown.
 */
export function knownQuestions(state: RoomState, { heard, questions }: RoundRecord): readonly RoundQuestion[] {
  const { source, loops } = heard;
  const loop = loopKnown(state, heard);
  const first = source === 'host' ? OF_ANY_PLAYED : OF_ANY_FIRST;
  const second: readonly Kind[] =
    loops === 'two' ? OF_ANY_SECOND : loop === 'two' || loop === 'more' ? ['direction'] : [];
  return heard.questions.filter(({ id, kind, target }) => {
    const always = (target === 0 && first.includes(kind)) || (target === 1 && second.includes(kind));
    return always || (questions.get(id)?.sheets.length ?? 0) > 0;
  });
}

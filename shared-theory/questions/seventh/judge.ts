import { seventhOf } from '../../truth.ts';
import { firstShown, needed, notRight, RIGHT } from '../marks.ts';
import { chordsOf } from '../own-chords.ts';
import type { AskedOf, AskedSeventh, Judge, MarkingContext } from '../question.ts';
import { inversionOnOwnRoot } from '../root/inversion.ts';
import { questionId } from '../round-questions.ts';
import { readingsOfSound } from '../same-sound.ts';
import { ASKED_SEVENTHS } from './ask.ts';

/**
 * Quality and seventh are two questions of equal worth and say together what a chord is. A chord whose seventh is missed should
 * earn 0.7 of the two: 1 for its quality and 0.4 here make (1 + 0.4) / 2; so does a seventh too many. One whose sevenths are
 * exchanged should earn 0.6: 1 and 0.2 make (1 + 0.2) / 2.
 */
const MISSED = 0.4;
const SWAPPED = 0.2;

/** Whether a chord has a seventh, and which. */
export const seventhJudge: Judge<'seventh'> = {
  kind: 'seventh',
  truth: rightSeventh,
  mark: (answer, context) => {
    const right = needed(rightSeventh(context), 'seventh', context.target);
    if (answer === right || alsoRight(context).includes(answer) || fitsOwnRoot(answer, context)) return RIGHT;
    const swapped = answer !== 'none' && right !== 'none';
    const error = firstShown([
      ['seventh-swallowed', answer === 'none'],
      ['hears-a-seventh-too-many', right === 'none'],
      ['sevenths-swapped', swapped],
    ]);
    return notRight(swapped ? SWAPPED : MISSED, error);
  },
  also: alsoRight,
  heard: (answer) => answer,
  chance: (context) => (1 + alsoRight(context).length) / ASKED_SEVENTHS.length,
  leansOn: (target) => [questionId('root', target)],
};

/** Null where a diminished seventh sounds: the pad has no name for it. */
function rightSeventh({ truth, target }: AskedOf): AskedSeventh | null {
  return ASKED_SEVENTHS.find((seventh) => seventh === truth.sevenths[target]) ?? null;
}

/** Whether the seventh is that of the chord which the student heard inverted, by the student's own root: C6 as Am7, from A. */
function fitsOwnRoot(answer: AskedSeventh, context: MarkingContext): boolean {
  const inverted = inversionOnOwnRoot(context);
  return inverted !== null && seventhOf(inverted) === answer;
}

/** The sevenths of the other ways to read what sounds: Am/G may be heard as Am7 over its seventh. */
function alsoRight(asked: AskedOf): readonly AskedSeventh[] {
  const right = rightSeventh(asked);
  const written = chordsOf(asked.truth)[asked.target];
  if (right === null || written === undefined) return [];
  const heard = readingsOfSound(written).map(seventhOf);
  return ASKED_SEVENTHS.filter((seventh) => seventh !== right && heard.includes(seventh));
}

import { needed, notRight, RIGHT } from '../marks.ts';
import type { AskedOf, Judge } from '../question.ts';
import { MOST_CHORDS } from './ask.ts';

/** How many different chords. */
export const countJudge: Judge<'count'> = {
  kind: 'count',
  truth: rightCount,
  mark: (answer, context) => {
    const right = needed(rightCount(context), 'count', context.target);
    return answer === right ? RIGHT : notRight(Math.abs(answer - right) === 1 ? 0.3 : 0, null);
  },
  also: () => [],
  heard: (answer) => String(answer),
  chance: () => 1 / MOST_CHORDS,
};

function rightCount({ truth }: AskedOf): number | null {
  return truth.count <= MOST_CHORDS ? truth.count : null;
}

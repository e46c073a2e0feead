import { needed, notRight, RIGHT } from '../marks.ts';
import type { Judge } from '../question.ts';

/** Whether the strokes that sound are all downs or go down and up: exact or nothing. */
export const strokesJudge: Judge<'strokes'> = {
  kind: 'strokes',
  truth: ({ truth }) => truth.strokes,
  mark: (answer, { truth, target }) => {
    const right = needed(truth.strokes, 'strokes', target);
    if (answer === right) return RIGHT;
    return notRight(
      0,
      right === 'all-downs' ? 'hears-down-up-where-all-are-down' : 'hears-all-downs-where-they-alternate',
    );
  },
  also: () => [],
  heard: (answer) => answer,
  chance: () => 1 / 2,
};

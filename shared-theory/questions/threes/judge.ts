import { needed } from '../marks.ts';
import type { Judge } from '../question.ts';

export const threesJudge: Judge<'threes'> = {
  kind: 'threes',
  truth: () => null,
  mark: (_answer, { target }) => needed<never>(null, 'threes', target),
  also: () => [],
  heard: String,
  chance: () => 0,
};

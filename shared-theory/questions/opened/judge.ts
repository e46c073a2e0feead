import { needed } from '../marks.ts';
import type { Judge } from '../question.ts';

export const openedJudge: Judge<'opened'> = {
  kind: 'opened',
  truth: () => null,
  mark: (_answer, { target }) => needed<never>(null, 'opened', target),
  also: () => [],
  heard: String,
  chance: () => 0,
};

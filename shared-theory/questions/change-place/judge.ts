import { needed } from '../marks.ts';
import type { Judge } from '../question.ts';

export const changePlaceJudge: Judge<'change-place'> = {
  kind: 'change-place',
  truth: () => null,
  mark: (_answer, { target }) => needed<never>(null, 'change-place', target),
  also: () => [],
  heard: String,
  chance: () => 0,
};

import { needed } from '../marks.ts';
import type { Judge } from '../question.ts';

export const togetherJudge: Judge<'together'> = {
  kind: 'together',
  truth: () => null,
  mark: (_answer, { target }) => needed<never>(null, 'together', target),
  also: () => [],
  heard: String,
  chance: () => 0,
};

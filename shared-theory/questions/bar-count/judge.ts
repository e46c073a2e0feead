import { needed } from '../marks.ts';
import type { Judge } from '../question.ts';

export const barCountJudge: Judge<'bar-count'> = {
  kind: 'bar-count',
  truth: () => null,
  mark: (_answer, { target }) => needed<never>(null, 'bar-count', target),
  also: () => [],
  heard: String,
  chance: () => 0,
};

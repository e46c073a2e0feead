import { needed } from '../marks.ts';
import type { Judge } from '../question.ts';

export const swingJudge: Judge<'swing'> = {
  kind: 'swing',
  truth: () => null,
  mark: (_answer, { target }) => needed<never>(null, 'swing', target),
  also: () => [],
  heard: String,
  chance: () => 0,
};

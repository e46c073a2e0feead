import { needed } from '../marks.ts';
import type { Judge } from '../question.ts';

export const steadinessJudge: Judge<'steadiness'> = {
  kind: 'steadiness',
  truth: () => null,
  mark: (_answer, { target }) => needed<never>(null, 'steadiness', target),
  also: () => [],
  heard: String,
  chance: () => 0,
};

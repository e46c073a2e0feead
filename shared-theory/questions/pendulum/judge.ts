import { needed } from '../marks.ts';
import type { Judge } from '../question.ts';

export const pendulumJudge: Judge<'pendulum'> = {
  kind: 'pendulum',
  truth: () => null,
  mark: (_answer, { target }) => needed<never>(null, 'pendulum', target),
  also: () => [],
  heard: String,
  chance: () => 0,
};

import { needed } from '../marks.ts';
import type { Judge } from '../question.ts';

export const halfTimeJudge: Judge<'half-time'> = {
  kind: 'half-time',
  truth: () => null,
  mark: (_answer, { target }) => needed<never>(null, 'half-time', target),
  also: () => [],
  heard: String,
  chance: () => 0,
};

import { needed } from '../marks.ts';
import type { Judge } from '../question.ts';

export const dropOutJudge: Judge<'drop-out'> = {
  kind: 'drop-out',
  truth: () => null,
  mark: (_answer, { target }) => needed<never>(null, 'drop-out', target),
  also: () => [],
  heard: String,
  chance: () => 0,
};

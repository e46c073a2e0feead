import { needed } from '../marks.ts';
import type { Judge } from '../question.ts';

export const strokeGridJudge: Judge<'stroke-grid'> = {
  kind: 'stroke-grid',
  truth: () => null,
  mark: (_answer, { target }) => needed<never>(null, 'stroke-grid', target),
  also: () => [],
  heard: String,
  chance: () => 0,
};

import { needed } from '../marks.ts';
import type { Judge } from '../question.ts';

export const tempoJudge: Judge<'tempo'> = {
  kind: 'tempo',
  truth: () => null,
  mark: (_answer, { target }) => needed<never>(null, 'tempo', target),
  also: () => [],
  heard: String,
  chance: () => 0,
};

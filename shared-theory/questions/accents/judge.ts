import { needed } from '../marks.ts';
import type { Judge } from '../question.ts';

export const accentsJudge: Judge<'accents'> = {
  kind: 'accents',
  truth: () => null,
  mark: (_answer, { target }) => needed<never>(null, 'accents', target),
  also: () => [],
  heard: String,
  chance: () => 0,
};

import { needed } from '../marks.ts';
import type { Judge } from '../question.ts';

export const driveJudge: Judge<'drive'> = {
  kind: 'drive',
  truth: () => null,
  mark: (_answer, { target }) => needed<never>(null, 'drive', target),
  also: () => [],
  heard: String,
  chance: () => 0,
};

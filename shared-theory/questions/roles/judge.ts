import { needed } from '../marks.ts';
import type { Judge } from '../question.ts';

export const rolesJudge: Judge<'roles'> = {
  kind: 'roles',
  truth: () => null,
  mark: (_answer, { target }) => needed<never>(null, 'roles', target),
  also: () => [],
  heard: String,
  chance: () => 0,
};

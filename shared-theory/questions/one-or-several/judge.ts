import { needed, notRight, RIGHT } from '../marks.ts';
import type { AskedOf, Judge, OneOrSeveral } from '../question.ts';

/** One key or several: a relative pair is one family, and counts as one. */
export const oneOrSeveralJudge: Judge<'one-or-several'> = {
  kind: 'one-or-several',
  truth: right,
  mark: (answer, context) =>
    answer === needed(right(context), 'one-or-several', context.target) ? RIGHT : notRight(0, null),
  also: () => [],
  heard: (answer) => answer,
  chance: () => 1 / 2,
};

/** Null where no key owns all. */
function right({ truth }: AskedOf): OneOrSeveral | null {
  const owners = truth.keys.majors.length;
  return owners === 0 ? null : owners === 1 ? 'one' : 'several';
}

import { partsOf } from '../keys/ask.ts';
import { familiesOf } from '../keys/families.ts';
import { rightKeys } from '../keys/right-keys.ts';
import { needed, notRight, ownAnswer, RIGHT } from '../marks.ts';
import { questionsOfKinds } from '../own-chords.ts';
import type { AskedOf, Judge, MarkingContext, OneOrSeveral } from '../question.ts';

/** Credit of a student who found one owner and was sure of it where there are several. */
const FOUND_ONE = 0.5;

/** One key or several: a relative pair is one family and counts as one, and so does a minor that owns all by its raised seventh alone. */
export const oneOrSeveralJudge: Judge<'one-or-several'> = {
  kind: 'one-or-several',
  truth: rightAnswer,
  mark: (answer, context) => {
    const right = needed(rightAnswer(context), 'one-or-several', context.target);
    if (answer === right) return RIGHT;
    if (right === 'one') return notRight(0, null);
    return notRight(namesOneOwner(context) ? FOUND_ONE : 0, 'settles-too-early');
  },
  also: () => [],
  heard: (answer) => answer,
  chance: () => 1 / 2,
  leansOn: (_target, questions) => questionsOfKinds(questions, ['keys']),
};

/** Null where no key owns all. */
function rightAnswer({ truth, settings: { policy } }: AskedOf): OneOrSeveral | null {
  const owners = familiesOf(rightKeys(truth.keys, policy)).size;
  return owners === 0 ? null : owners === 1 ? 'one' : 'several';
}

/** Whether the student's own keys are one, or one with its relative, that owns the loop. */
function namesOneOwner(context: MarkingContext): boolean {
  const right = rightKeys(context.beside.keys, context.settings.policy);
  const named = familiesOf(partsOf(ownAnswer(context, 'keys', 0) ?? []).keys, right);
  const owners = familiesOf(right);
  return named.size === 1 && [...named].every((family) => owners.has(family));
}

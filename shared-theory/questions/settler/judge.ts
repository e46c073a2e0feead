import type { ErrorKind } from '../error-kinds.ts';
import { KEY_IDS } from '../keys/ask.ts';
import type { Family } from '../keys/families.ts';
import { asksForMajors, familiesOf, isOneStepOff, sameSet, setScore } from '../keys/families.ts';
import { rightKeys } from '../keys/right-keys.ts';
import { firstShown, needed, notRight, RIGHT } from '../marks.ts';
import type { AskedOf, Judge, KeyId, MarkingContext } from '../question.ts';
import { settlerAsk } from './ask.ts';

/** The keys that a settler leaves, marked as keys are; under `modes` their parent scales alone. */
export const settlerJudge: Judge<'settler'> = {
  kind: 'settler',
  truth: (context) => {
    const left = keysLeft(context);
    return left && KEY_IDS.filter((id) => left.has(id));
  },
  mark: (answer, context) => {
    const left = needed(keysLeft(context), 'settler', context.target);
    const given = new Set(answer);
    if (sameSet(given, left)) return RIGHT;
    const score = setScore(given, left, context.settings.policy);
    return notRight(score, errorOf(familiesOf(given, left), left, context));
  },
  also: () => [],
  heard: settlerAsk.key,
  // One of the keys that own the loop is out, or more: who guesses blindly guesses among them.
  chance: ({ truth, settings: { policy } }) => 1 / Math.max(2, familiesOf(rightKeys(truth.keys, policy)).size),
};

function keysLeft({ truth, target, settings: { policy } }: AskedOf): ReadonlySet<KeyId> | null {
  const settler = truth.settlers[target];
  return settler === undefined ? null : rightKeys(settler.keys, policy);
}

function errorOf(
  named: ReadonlySet<Family>,
  right: ReadonlySet<KeyId>,
  { beside, settings: { policy } }: MarkingContext,
): ErrorKind | null {
  const left = familiesOf(right);
  const before = familiesOf(rightKeys(beside.keys, policy), right);
  const byMinors = asksForMajors(policy);
  return firstShown([
    ['finds-no-owner', named.size === 0],
    ['relative-minors-for-majors', byMinors && sameSet(named, left)],
    ['names-one-of-the-pair', !byMinors && sameSet(named, left)],
    ['ignores-the-settler', sameSet(named, before)],
    ['one-step-round-the-circle', isOneStepOff(named, left)],
  ]);
}

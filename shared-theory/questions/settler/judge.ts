import type { ErrorKind } from '../error-kinds.ts';
import { KEY_IDS } from '../keys/ask.ts';
import type { Family } from '../keys/families.ts';
import { familiesOf, isOneStepOff, sameSet, setScore } from '../keys/families.ts';
import { idsOf } from '../keys/judge.ts';
import { firstShown, needed, notRight, RIGHT } from '../marks.ts';
import type { AskedOf, Judge, KeyId, MarkingContext } from '../question.ts';
import { settlerAsk } from './ask.ts';

/** The keys that a settler leaves, marked as keys are. */
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
    const owners = familiesOf(left);
    return notRight(setScore(given, owners, context.settings.policy), errorOf(familiesOf(given), owners, context));
  },
  also: () => [],
  heard: settlerAsk.key,
  // One of the keys that own the loop is out, or more: who guesses blindly guesses among them.
  chance: ({ truth }) => 1 / Math.max(2, truth.keys.majors.length),
};

function keysLeft({ truth, target, settings: { policy } }: AskedOf): ReadonlySet<KeyId> | null {
  const settler = truth.settlers[target];
  return settler === undefined ? null : idsOf(settler.keys[policy]);
}

function errorOf(
  named: ReadonlySet<Family>,
  left: ReadonlySet<Family>,
  { beside, settings: { policy } }: MarkingContext,
): ErrorKind | null {
  const before = familiesOf(idsOf(beside.owners));
  return firstShown([
    ['finds-no-owner', named.size === 0],
    ['relative-minors-for-majors', policy === 'majors' && sameSet(named, left)],
    ['names-one-of-the-pair', policy === 'relatives' && sameSet(named, left)],
    ['ignores-the-settler', sameSet(named, before)],
    ['one-step-round-the-circle', isOneStepOff(named, left)],
  ]);
}

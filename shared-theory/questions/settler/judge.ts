import { keyId, parseKeyName } from '../../keys.ts';
import { needed, notRight, RIGHT } from '../marks.ts';
import type { AskedOf, Judge, KeyId } from '../question.ts';
import { KEY_IDS } from '../keys/ask.ts';
import { settlerAsk } from './ask.ts';

/** The keys that the settler leaves. */
export const settlerJudge: Judge<'settler'> = {
  kind: 'settler',
  truth: left,
  mark: (answer, context) => {
    const right = needed(left(context), 'settler', context.target);
    return settlerAsk.key(answer) === settlerAsk.key(right) ? RIGHT : notRight(0, null);
  },
  also: () => [],
  heard: settlerAsk.key,
  chance: ({ truth }) => 1 / Math.max(2, truth.keys.majors.length),
};

function left({ truth, target, settings: { policy } }: AskedOf): readonly KeyId[] | null {
  const settler = truth.settlers[target];
  if (settler === undefined) return null;
  const names = new Set(settler.keys[policy].map((name) => keyId(parseKeyName(name))));
  return KEY_IDS.filter((id) => names.has(id));
}

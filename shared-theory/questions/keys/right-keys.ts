import type { Chord } from '../../chords.ts';
import { keyId, parseKeyName } from '../../keys.ts';
import type { Policy, Truth } from '../../truth.ts';
import { MOST_HOMES } from '../home/ask.ts';
import type { KeyId } from '../question.ts';
import { HOME_IDS } from './ask.ts';

/** Keys as answers, by their names. */
function idsOf(names: readonly string[]): ReadonlySet<KeyId> {
  return new Set(names.map((name) => keyId(parseKeyName(name))));
}

/** The keys that are right under a policy, of those that own a loop or that a settler leaves; under `modes` the parent scales. */
export function rightKeys(keys: Truth['keys'], policy: Policy): ReadonlySet<KeyId> {
  // Every parent of a mode is a major key that owns all, and a loop of diminished chords has a parent without a home in it.
  return idsOf(policy === 'modes' ? keys.majors : keys[policy]);
}

/** The homes on the pad that are valid, of different chords: nothing rests on a diminished one. */
export function validHomes(different: readonly Chord[]): readonly KeyId[] {
  return different
    .slice(0, MOST_HOMES)
    .flatMap(({ quality }, index) => (quality === 'diminished' ? [] : HOME_IDS.slice(index, index + 1)));
}

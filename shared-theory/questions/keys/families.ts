import type { Key } from '../../keys.ts';
import { keyId, relativeKey, usualKey } from '../../keys.ts';
import type { Policy } from '../../truth.ts';
import type { KeyId } from '../question.ts';

/** A major key and its relative minor are one family: tonic's pitch class of the major. */
export type Family = number;

/** The families with their two members, looked up once: a lesson holds thousands of answers. */
export const FAMILIES: readonly {
  readonly family: Family;
  readonly key: Key;
  readonly major: KeyId;
  readonly minor: KeyId;
}[] = Array.from({ length: 12 }, (_, family) => {
  const major = usualKey(`${family}M`);
  return { family, key: major, major: keyId(major), minor: keyId(relativeKey(major)) };
});
const FAMILY_OF: ReadonlyMap<KeyId, Family> = new Map(
  FAMILIES.flatMap(({ family, major, minor }) => [
    [major, family],
    [minor, family],
  ]),
);

/** Credit, of each family, for one member under `relatives`; of the whole, for a relative minor under `majors`. */
const RELATIVE_CREDIT = 0.75;
const FIFTH = 7;
const FOURTH = 5;

/** The families of keys. RangeError for a text that is no key as an answer. */
export function familiesOf(ids: Iterable<KeyId>): ReadonlySet<Family> {
  return new Set(Array.from(ids, familyOf));
}

function familyOf(id: KeyId): Family {
  const family = FAMILY_OF.get(id);
  if (family === undefined) throw new RangeError(`${id} is no key as an answer: 0M to 11M or 0m to 11m`);
  return family;
}

/** Whether two sets hold the same. */
export function sameSet<T>(one: ReadonlySet<T>, other: ReadonlySet<T>): boolean {
  return one.size === other.size && [...one].every((each) => other.has(each));
}

/**
 * Credit 0 to 1 of a set of keys against the families that are right: right ones named over all right ones and wrong ones named,
 * less where a relative minor stands for its major, or one of a pair for both.
 */
export function setScore(given: ReadonlySet<KeyId>, owners: ReadonlySet<Family>, policy: Policy): number {
  const named = familiesOf(given);
  const right = FAMILIES.filter(({ family }) => named.has(family) && owners.has(family));
  const counted = owners.size + named.size - right.length;
  if (policy === 'majors') {
    const byMinor = right.some(({ minor }) => given.has(minor));
    return (right.length / counted) * (byMinor ? RELATIVE_CREDIT : 1);
  }
  const earned = right.map(({ major, minor }) => (given.has(major) && given.has(minor) ? 1 : RELATIVE_CREDIT));
  return earned.reduce((sum, credit) => sum + credit, 0) / counted;
}

/** Whether the named families are the right ones, all moved one step round the circle of fifths. */
export function isOneStepOff(named: ReadonlySet<Family>, owners: ReadonlySet<Family>): boolean {
  return [FIFTH, FOURTH].some((step) => sameSet(named, new Set(Array.from(owners, (family) => (family + step) % 12))));
}

import type { Key } from '../../keys.ts';
import { keyId, relativeKey, usualKey } from '../../keys.ts';
import type { Policy } from '../../truth.ts';
import type { KeyId } from '../question.ts';

/**
 * A major key and its relative minor are one family: tonic's pitch class of the major. A minor that is right where its relative
 * major is not, by its raised seventh, is a family of its own: so many more.
 */
export type Family = number;
const ALONE = 12;

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

/**
 * The families of keys, where certain keys are right (by default the keys themselves). RangeError for a text that is no key as an
 * answer.
 */
export function familiesOf(ids: ReadonlySet<KeyId>, right: ReadonlySet<KeyId> = ids): ReadonlySet<Family> {
  return new Set(Array.from(ids, (id) => familyOf(id, right)));
}

function familyOf(id: KeyId, right: ReadonlySet<KeyId>): Family {
  const family = FAMILY_OF.get(id);
  if (family === undefined) throw new RangeError(`${id} is no key as an answer: 0M to 11M or 0m to 11m`);
  return standsAlone(id, family, right) ? family + ALONE : family;
}

function standsAlone(id: KeyId, family: number, right: ReadonlySet<KeyId>): boolean {
  return right.has(id) && id.endsWith('m') && !right.has(`${family}M`);
}

/** Whether two sets hold the same. */
export function sameSet<T>(one: ReadonlySet<T>, other: ReadonlySet<T>): boolean {
  return one.size === other.size && [...one].every((each) => other.has(each));
}

/** Whether only majors are asked for: by themselves, or as the parents of modes. */
export function asksForMajors(policy: Policy): boolean {
  return policy === 'majors' || policy === 'modes';
}

/**
 * Credit 0 to 1 of a set of keys against the keys that are right, by families: right ones named over all right ones and wrong ones
 * named, less where a relative minor stands for its major, or one of a pair for both. 1 where nothing is right and nothing named.
 */
export function setScore(given: ReadonlySet<KeyId>, right: ReadonlySet<KeyId>, policy: Policy): number {
  const [named, owners] = [familiesOf(given, right), familiesOf(right)];
  const found = [...named].filter((family) => owners.has(family));
  const counted = owners.size + named.size - found.length;
  if (counted === 0) return 1;
  const pairs = FAMILIES.filter(({ family }) => found.includes(family));
  if (asksForMajors(policy)) {
    const byMinor = pairs.some(({ minor }) => given.has(minor));
    return (found.length / counted) * (byMinor ? RELATIVE_CREDIT : 1);
  }
  const half = pairs.filter(({ major, minor }) => !(given.has(major) && given.has(minor)));
  return (found.length - half.length * (1 - RELATIVE_CREDIT)) / counted;
}

/** Whether the named families are the right ones, all moved one step round the circle of fifths. */
export function isOneStepOff(named: ReadonlySet<Family>, owners: ReadonlySet<Family>): boolean {
  const moved = (families: ReadonlySet<Family>, step: number) =>
    new Set(Array.from(families, (family) => (family + step) % ALONE));
  return [FIFTH, FOURTH].some((step) => sameSet(moved(named, 0), moved(owners, step)));
}

import type { Key } from '../../keys.ts';
import { keyHolds, keyId, keyOwns, parseKeyName, relativeKey, usualKey } from '../../keys.ts';
import { pitchClass } from '../../pitch.ts';
import type { ErrorKind } from '../error-kinds.ts';
import { notRight, RIGHT } from '../marks.ts';
import type { Policy, Truth } from '../../truth.ts';
import type { AskedOf, Judge, KeyId } from '../question.ts';
import { KEY_IDS, keysAsk } from './ask.ts';

/** A major key and its relative minor are one family: tonic's pitch class of the major. */
type Family = number;

/** The families with their two members, looked up once: a lesson holds thousands of answers. */
const FAMILIES = Array.from({ length: 12 }, (_, family) => {
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
 * What the answers to one round are held against: the right keys and the chords, since keys are shown with the chords they own.
 * `owners`, `rootsFit` and `ownsSome` hold families.
 */
type RoundKeys = {
  readonly right: readonly KeyId[];
  readonly owners: ReadonlySet<Family>;
  /** Families whose scale holds the root of every chord. */
  readonly rootsFit: ReadonlySet<Family>;
  /** Families that own one chord at least. */
  readonly ownsSome: ReadonlySet<Family>;
};

/** Keys that own all chords: right ones marked over all right ones and wrong ones marked, counted by families. */
export const keysJudge: Judge<'keys'> = {
  kind: 'keys',
  truth: (context) => roundKeys(context).right,
  mark: (answer, context) => {
    const round = roundKeys(context);
    const given = new Set(answer);
    if (given.size === round.right.length && round.right.every((id) => given.has(id))) return RIGHT;
    const named = familiesOf(given);
    return notRight(creditOf(given, named, round, context), errorOf(named, round, context));
  },
  also: () => [],
  heard: keysAsk.key,
  // Owners are always neighbours on the circle. So the blind guess to beat is not any of 2^12 sets but one of the arcs of one,
  // two or three neighbours (or as many as there are) from any of twelve places, or none.
  chance: (context) => 1 / (12 * Math.max(3, roundKeys(context).owners.size) + 1),
};

/** Worked out once for each truth and policy: thousands of answers are held against it. */
const worked = new WeakMap<Truth, Partial<Record<Policy, RoundKeys>>>();

function roundKeys({ truth, settings: { policy } }: AskedOf): RoundKeys {
  const known = worked.get(truth)?.[policy];
  if (known !== undefined) return known;
  const names = new Set(truth.keys[policy].map((name) => keyId(parseKeyName(name))));
  const right = KEY_IDS.filter((id) => names.has(id));
  const chords = truth.roots.map((root, slot) => ({ root, quality: truth.qualities[slot] ?? 'major' }));
  const families = (fits: (key: Key) => boolean) =>
    new Set(FAMILIES.filter(({ key }) => fits(key)).map(({ family }) => family));
  const round = {
    right,
    owners: familiesOf(right),
    rootsFit: families((key) => chords.every(({ root }) => keyHolds(key, pitchClass(root)))),
    ownsSome: families((key) => chords.some((chord) => keyOwns(key, chord))),
  };
  worked.set(truth, { ...worked.get(truth), [policy]: round });
  return round;
}

function familyOf(id: KeyId): Family {
  const family = FAMILY_OF.get(id);
  if (family === undefined) throw new RangeError(`${id} is no key as an answer: 0M to 11M or 0m to 11m`);
  return family;
}

function familiesOf(ids: Iterable<KeyId>): Set<Family> {
  return new Set(Array.from(ids, familyOf));
}

function creditOf(
  given: ReadonlySet<KeyId>,
  named: ReadonlySet<Family>,
  { owners }: RoundKeys,
  { settings }: AskedOf,
): number {
  const right = FAMILIES.filter(({ family }) => named.has(family) && owners.has(family));
  const counted = owners.size + named.size - right.length;
  if (settings.policy === 'majors') {
    const byMinor = right.some(({ minor }) => given.has(minor));
    return (right.length / counted) * (byMinor ? RELATIVE_CREDIT : 1);
  }
  const earned = right.map(({ major, minor }) => (given.has(major) && given.has(minor) ? 1 : RELATIVE_CREDIT));
  return earned.reduce((sum, credit) => sum + credit, 0) / counted;
}

function errorOf(
  named: ReadonlySet<Family>,
  { owners, rootsFit, ownsSome }: RoundKeys,
  { settings }: AskedOf,
): ErrorKind | null {
  if (named.size === 0) return 'finds-no-owner';
  const wrong = [...named].filter((family) => !owners.has(family));
  if (wrong.length === 0) {
    if (named.size < owners.size) return named.size === 1 ? 'stops-at-one-key' : 'leaves-an-owner-out';
    return settings.policy === 'relatives' ? 'names-one-of-the-pair' : 'relative-minors-for-majors';
  }
  if (isShifted(named, owners, FIFTH) || isShifted(named, owners, FOURTH)) return 'one-step-round-the-circle';
  if (wrong.some((family) => rootsFit.has(family))) return 'roots-fit-qualities-do-not';
  return wrong.some((family) => ownsSome.has(family)) ? 'either-chord-not-both' : null;
}

/** Whether the named families are the owners, all moved by some semitones. */
function isShifted(named: ReadonlySet<Family>, owners: ReadonlySet<Family>, semitones: number): boolean {
  return named.size === owners.size && [...owners].every((family) => named.has((family + semitones) % 12));
}

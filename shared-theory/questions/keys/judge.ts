import type { Chord } from '../../chords.ts';
import { keyHolds, keyId, keyOwns, parseKeyName, relativeKey, usualKey } from '../../keys.ts';
import { pitchClass } from '../../pitch.ts';
import type { ErrorKind } from '../error-kinds.ts';
import { notRight, RIGHT } from '../marks.ts';
import type { Judge, KeyId, MarkingContext } from '../question.ts';
import { KEY_IDS, keysAsk } from './ask.ts';

type Context = Omit<MarkingContext, 'earlier'>;

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

/** Keys that own all chords: right ones marked over all right ones and wrong ones marked, counted by families. */
export const keysJudge: Judge<'keys'> = {
  kind: 'keys',
  truth: rightKeys,
  mark: (answer, context) => {
    const given = new Set(answer);
    const right = new Set(rightKeys(context));
    if (given.size === right.size && [...given].every((id) => right.has(id))) return RIGHT;
    return notRight(creditOf(given, right, context), errorOf(given, right, context));
  },
  also: () => [],
  heard: keysAsk.key,
  // Owners are always neighbours on the circle. So the blind guess to beat is not any of 2^12 sets but one of the arcs of one,
  // two or three neighbours (or as many as there are) from any of twelve places, or none.
  chance: (context) => 1 / (12 * Math.max(3, familiesOf(rightKeys(context)).size) + 1),
};

function rightKeys({ truth, settings }: Context): readonly KeyId[] {
  const right = new Set(truth.keys[settings.policy].map((name) => keyId(parseKeyName(name))));
  return KEY_IDS.filter((id) => right.has(id));
}

function familyOf(id: KeyId): Family {
  const family = FAMILY_OF.get(id);
  if (family === undefined) throw new RangeError(`${id} is no key as an answer: 0M to 11M or 0m to 11m`);
  return family;
}

function familiesOf(ids: Iterable<KeyId>): Set<Family> {
  return new Set(Array.from(ids, familyOf));
}

function creditOf(given: Set<KeyId>, right: Set<KeyId>, { settings }: Context): number {
  const owners = familiesOf(right);
  const named = familiesOf(given);
  const wrong = [...named].filter((family) => !owners.has(family)).length;
  const rightNamed = [...named].filter((family) => owners.has(family));
  if (settings.policy === 'majors') {
    const byMinor = FAMILIES.some(({ family, minor }) => owners.has(family) && given.has(minor));
    return (rightNamed.length / (owners.size + wrong)) * (byMinor ? RELATIVE_CREDIT : 1);
  }
  const earned = FAMILIES.filter(({ family }) => rightNamed.includes(family)).map(({ major, minor }) =>
    given.has(major) && given.has(minor) ? 1 : RELATIVE_CREDIT,
  );
  return earned.reduce((sum, credit) => sum + credit, 0) / (owners.size + wrong);
}

function errorOf(given: Set<KeyId>, right: Set<KeyId>, context: Context): ErrorKind | null {
  const owners = familiesOf(right);
  const named = familiesOf(given);
  if (named.size === 0) return 'finds-no-owner';
  const allRight = [...named].every((family) => owners.has(family));
  if (allRight && named.size === owners.size) {
    return context.settings.policy === 'relatives' ? 'names-one-of-the-pair' : 'relative-minors-for-majors';
  }
  if (allRight) return named.size === 1 ? 'stops-at-one-key' : 'leaves-an-owner-out';
  if (isShifted(named, owners, FIFTH) || isShifted(named, owners, FOURTH)) return 'one-step-round-the-circle';
  return errorOfWrongKeys(
    [...named].filter((family) => !owners.has(family)),
    context,
  );
}

/** Whether the named families are the owners, all moved by some semitones. */
function isShifted(named: Set<Family>, owners: Set<Family>, semitones: number): boolean {
  return named.size === owners.size && [...owners].every((family) => named.has((family + semitones) % 12));
}

function errorOfWrongKeys(wrong: readonly Family[], { truth }: Context): ErrorKind | null {
  const chords: readonly Chord[] = truth.roots.flatMap((root, slot) => {
    const quality = truth.qualities[slot];
    return quality === undefined ? [] : [{ root, quality }];
  });
  const keys = FAMILIES.filter(({ family }) => wrong.includes(family)).map(({ key }) => key);
  if (keys.some((key) => chords.every(({ root }) => keyHolds(key, pitchClass(root))))) {
    return 'roots-fit-qualities-do-not';
  }
  return keys.some((key) => chords.some((chord) => keyOwns(key, chord))) ? 'either-chord-not-both' : null;
}

import type { Chord } from '../../chords.ts';
import { soundsAs } from '../../chords.ts';
import type { Key } from '../../keys.ts';
import { candidateKeys } from '../../candidates.ts';
import { keyHolds, keyOwns } from '../../degrees.ts';
import { keyId, parseKeyName } from '../../keys.ts';
import { pitchClass } from '../../pitch.ts';
import type { Policy, Truth } from '../../truth.ts';
import type { ErrorKind } from '../error-kinds.ts';
import { firstShown, FOLLOWS, notRight, ownAnswer, RIGHT } from '../marks.ts';
import { chordsOf, firstSlots, ownChords, questionsOfKinds } from '../own-chords.ts';
import type { AskedOf, Judge, KeyId, MarkingContext } from '../question.ts';
import { pitchClassAt } from '../root/places.ts';
import { KEY_IDS, keysAsk } from './ask.ts';
import type { Family } from './families.ts';
import { FAMILIES, familiesOf, isOneStepOff, sameSet, setScore } from './families.ts';

/** Least credit of one right key for a student who said that there are several. */
const KNOWS_OF_OTHERS = 0.7;

/**
 * What the answers to one round are held against: the right keys and the chords, since keys are shown with the chords they own.
 * `owners`, `rootsFit` and `ownsSome` hold families.
 */
type RoundKeys = {
  readonly right: ReadonlySet<KeyId>;
  readonly owners: ReadonlySet<Family>;
  /** Families whose scale holds the root of every chord. */
  readonly rootsFit: ReadonlySet<Family>;
  /** Families that own one chord at least. */
  readonly ownsSome: ReadonlySet<Family>;
  /** The different chords, in order of their first sounding. */
  readonly chords: readonly Chord[];
};

/** Keys that own all chords: right ones marked over all right ones and wrong ones marked, counted by families. */
export const keysJudge: Judge<'keys'> = {
  kind: 'keys',
  truth: (context) => KEY_IDS.filter((id) => roundKeys(context).right.has(id)),
  mark: (answer, context) => {
    const round = roundKeys(context);
    const given = new Set(answer);
    if (sameSet(given, round.right)) return RIGHT;
    const named = familiesOf(given);
    if (followsOwnChords(given, round, context)) return FOLLOWS;
    return notRight(creditOf(given, named, round, context), errorOf(named, round, context));
  },
  also: () => [],
  heard: keysAsk.key,
  // Owners are always neighbours on the circle. So the blind guess to beat is not any of 2^12 sets but one of the arcs of one,
  // two or three neighbours (or as many as there are) from any of twelve places, or none.
  chance: (context) => 1 / (12 * Math.max(LONGEST_ARC, roundKeys(context).owners.size) + 1),
  leansOn: (_target, questions) => questionsOfKinds(questions, ['quality', 'root', 'distance', 'one-or-several']),
};

/** The usual owners of two chords and more are one, two or three neighbours on the circle. */
export const LONGEST_ARC = 3;

/** Worked out once for each truth and policy: thousands of answers are held against it. */
const worked = new WeakMap<Truth, Partial<Record<Policy, RoundKeys>>>();

function roundKeys({ truth, settings: { policy } }: AskedOf): RoundKeys {
  const known = worked.get(truth)?.[policy];
  if (known !== undefined) return known;
  const right = idsOf(truth.keys[policy]);
  const chords = chordsOf(truth);
  const families = (fits: (key: Key) => boolean) =>
    new Set(FAMILIES.filter(({ key }) => fits(key)).map(({ family }) => family));
  const round = {
    right,
    owners: familiesOf(right),
    rootsFit: families((key) => chords.every(({ root }) => keyHolds(key, pitchClass(root)))),
    ownsSome: families((key) => chords.some((chord) => keyOwns(key, chord))),
    chords: firstSlots(chords).flatMap((slot) => chords[slot] ?? []),
  };
  worked.set(truth, { ...worked.get(truth), [policy]: round });
  return round;
}

/** Keys as answers, by their names. */
export function idsOf(names: readonly string[]): ReadonlySet<KeyId> {
  return new Set(names.map((name) => keyId(parseKeyName(name))));
}

/** Whether the keys are all those that own the chords as the student's own answers have them, which are not those that sounded. */
function followsOwnChords(given: ReadonlySet<KeyId>, { chords }: RoundKeys, context: MarkingContext): boolean {
  const root = ownAnswer(context, 'root', 0);
  const own = root === null ? null : ownChords(context, pitchClassAt(root));
  if (own === null || own.every((chord, index) => chords[index] && soundsAs(chord, chords[index]))) return false;
  return sameSet(given, new Set(candidateKeys(own, context.settings.policy).map(({ id }) => id)));
}

function creditOf(
  given: ReadonlySet<KeyId>,
  named: ReadonlySet<Family>,
  { right, owners }: RoundKeys,
  context: MarkingContext,
): number {
  const score = setScore(given, owners, context.settings.policy);
  const oneRight = named.size === 1 && owners.size > 1 && [...given].every((id) => right.has(id));
  const knows = oneRight && ownAnswer(context, 'one-or-several', 0) === 'several';
  return knows ? Math.max(KNOWS_OF_OTHERS, score) : score;
}

function errorOf(
  named: ReadonlySet<Family>,
  { owners, rootsFit, ownsSome }: RoundKeys,
  { settings: { policy } }: AskedOf,
): ErrorKind | null {
  const wrong = [...named].filter((family) => !owners.has(family));
  const whole = wrong.length === 0 && named.size > 0;
  return firstShown([
    ['finds-no-owner', named.size === 0],
    ['relative-minors-for-majors', whole && policy === 'majors' && named.size === owners.size],
    ['names-one-of-the-pair', whole && policy === 'relatives' && named.size === owners.size],
    ['stops-at-one-key', whole && named.size === 1],
    ['leaves-an-owner-out', whole],
    ['one-step-round-the-circle', isOneStepOff(named, owners)],
    ['roots-fit-qualities-do-not', wrong.some((family) => rootsFit.has(family))],
    ['either-chord-not-both', wrong.some((family) => ownsSome.has(family))],
  ]);
}

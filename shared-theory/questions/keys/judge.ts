import type { Chord } from '../../chords.ts';
import { soundsAs } from '../../chords.ts';
import type { Key } from '../../keys.ts';
import { candidateKeys, seventhsUnder } from '../../candidates.ts';
import { keyHolds, keyOwns } from '../../degrees.ts';
import { differentChords } from '../../different-chords.ts';
import { relativeKey } from '../../keys.ts';
import { pitchClass } from '../../pitch.ts';
import type { Policy, Truth } from '../../truth.ts';
import type { ErrorKind } from '../error-kinds.ts';
import { firstShown, FOLLOWS, notRight, ownAnswer, RIGHT } from '../marks.ts';
import { chordsOf, ownChords, questionsOfKinds } from '../own-chords.ts';
import type { AskedOf, Judge, KeyId, MarkingContext } from '../question.ts';
import { pitchClassAt } from '../root/places.ts';
import { HOME_IDS, KEY_IDS, keysAsk, partsOf } from './ask.ts';
import type { Family } from './families.ts';
import { asksForMajors, FAMILIES, familiesOf, isOneStepOff, sameSet, setScore } from './families.ts';
import { blindKeySets, LONGEST_ARC } from './guesses.ts';
import { rightKeys, validHomes } from './right-keys.ts';

/** Least credit of one right key for a student who said that there are several. */
const KNOWS_OF_OTHERS = 0.7;
/** Share of the parent scales under `modes`; the rest is the home's. */
const PARENTS_SHARE = 0.5;

/**
 * What the answers to one round are held against: the right keys and the chords, since keys are shown with the chords they own.
 * `owners`, `rootsFit` and `ownsSome` hold families.
 */
type RoundKeys = {
  readonly right: ReadonlySet<KeyId>;
  readonly owners: ReadonlySet<Family>;
  /** Where no key owns the loop: minors that do with their seventh raised, which this class does not count. */
  readonly raised: ReadonlySet<KeyId>;
  /** Homes that are right beside the parent scales; empty where none is asked for, or no chord can be home. */
  readonly homes: readonly KeyId[];
  /** Families whose scale holds the root of every chord. */
  readonly rootsFit: ReadonlySet<Family>;
  /** Families that own one chord at least. */
  readonly ownsSome: ReadonlySet<Family>;
  /** The different chords, in order of their first sounding. */
  readonly chords: readonly Chord[];
};

/**
 * Keys that own all chords: right ones marked over all right ones and wrong ones marked, counted by families. Under `modes` that is
 * half, of the parent scales; the other half is a home on which the loop can rest.
 */
export const keysJudge: Judge<'keys'> = {
  kind: 'keys',
  truth: (context) => rightAnswers(context)[0] ?? [],
  mark: (answer, context) => {
    const round = roundKeys(context);
    const { keys: given, home } = partsOf(answer);
    const rightHome = round.homes.length === 0 || (home !== null && round.homes.includes(home));
    const rightSet = sameSet(given, round.right);
    if (rightSet && rightHome) return RIGHT;
    if (rightHome && followsOwnChords(given, round, context)) return FOLLOWS;
    if (raisedAnswers(round).some((minors) => sameSet(given, new Set(minors))))
      return { ...RIGHT, note: 'names-the-raised-seventh-minor' };
    const heard = [...given].some((id) => round.raised.has(id)) ? withRaised(round) : round;
    const named = familiesOf(given, heard.right);
    const error = rightSet ? null : errorOf(named, heard, context);
    const credit = rightSet ? 1 : creditOf(given, named, heard, context);
    if (round.homes.length === 0) return notRight(credit, error);
    return notRight(PARENTS_SHARE * credit + (rightHome ? 1 - PARENTS_SHARE : 0), error);
  },
  also: (context) => rightAnswers(context).slice(1),
  heard: keysAsk.key,
  // Owners are always neighbours on the circle. So the blind guess to beat is not any of 2^12 sets.
  chance: (context) => {
    const { owners, chords } = roundKeys(context);
    const guesses = blindKeySets(context.settings.policy, Math.max(LONGEST_ARC, owners.size), chords.length).map(
      keysAsk.key,
    );
    const right = new Set(rightAnswers(context).map(keysAsk.key));
    return guesses.filter((guess) => right.has(guess)).length / guesses.length;
  },
  leansOn: (_target, questions) =>
    questionsOfKinds(questions, ['quality', 'root', 'seventh', 'distance', 'one-or-several']),
};

/** Worked out once for each truth and policy: thousands of answers are held against it. */
const worked = new WeakMap<Truth, Partial<Record<Policy, RoundKeys>>>();

function roundKeys({ truth, settings: { policy } }: AskedOf): RoundKeys {
  const known = worked.get(truth)?.[policy];
  if (known !== undefined) return known;
  const right = rightKeys(truth.keys, policy);
  const chords = chordsOf(truth);
  const sevenths = seventhsUnder(policy);
  const families = (fits: (key: Key) => boolean) =>
    new Set(FAMILIES.filter(({ key }) => fits(key) || fits(relativeKey(key))).map(({ family }) => family));
  const different = differentChords(chords);
  const counts = policy === 'majors' || policy === 'relatives';
  const round = {
    right,
    raised: counts && right.size === 0 ? rightKeys(truth.keys, 'raised-seventh') : new Set<KeyId>(),
    owners: familiesOf(right),
    homes: policy === 'modes' && right.size > 0 ? validHomes(different) : [],
    rootsFit: families((key) => chords.every(({ root }) => keyHolds(key, pitchClass(root), sevenths))),
    ownsSome: families((key) => chords.some((chord) => keyOwns(key, chord, sevenths))),
    chords: different,
  };
  worked.set(truth, { ...worked.get(truth), [policy]: round });
  return round;
}

/** Every right answer: the right keys, under `modes` with each valid home. */
function rightAnswers(context: AskedOf): readonly (readonly KeyId[])[] {
  const { right, homes } = roundKeys(context);
  const keys = KEY_IDS.filter((id) => right.has(id));
  if (homes.length > 0) return homes.map((home) => [...keys, home]);
  // A home without a scale says no more than that no scale owns all.
  const alone = right.size === 0 && context.settings.policy === 'modes' ? HOME_IDS.map((home) => [home]) : [];
  return [keys, ...alone, ...raisedAnswers(roundKeys(context))];
}

/** Where no key of the policy owns the loop: each minor alone that does with its seventh raised, and all of them. */
function raisedAnswers({ raised }: RoundKeys): readonly (readonly KeyId[])[] {
  const minors = KEY_IDS.filter((id) => raised.has(id));
  return [...minors.map((id) => [id]), ...(minors.length > 1 ? [minors] : [])];
}

/** The round as one is held against it who counts raised sevenths. */
function withRaised(round: RoundKeys): RoundKeys {
  return { ...round, right: round.raised, owners: familiesOf(round.raised) };
}

/** Whether the keys are all those that own the chords as the student's own answers have them, which are not those that sounded. */
function followsOwnChords(given: ReadonlySet<KeyId>, { chords }: RoundKeys, context: MarkingContext): boolean {
  const root = ownAnswer(context, 'root', 0);
  const own = root === null ? null : ownChords(context, pitchClassAt(root));
  if (own === null || own.every((chord, index) => chords[index] && soundsAs(chord, chords[index]))) return false;
  const { policy } = context.settings;
  const owning = candidateKeys(own, policy === 'modes' ? 'majors' : policy);
  return sameSet(given, new Set(owning.map(({ id }) => id)));
}

function creditOf(
  given: ReadonlySet<KeyId>,
  named: ReadonlySet<Family>,
  { right, owners }: RoundKeys,
  context: MarkingContext,
): number {
  const score = setScore(given, right, context.settings.policy);
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
  const byMinors = asksForMajors(policy);
  return firstShown([
    ['finds-no-owner', named.size === 0],
    ['relative-minors-for-majors', whole && byMinors && named.size === owners.size],
    ['names-one-of-the-pair', whole && !byMinors && named.size === owners.size],
    ['stops-at-one-key', whole && named.size === 1],
    ['leaves-an-owner-out', whole],
    ['one-step-round-the-circle', isOneStepOff(named, owners)],
    ['roots-fit-qualities-do-not', wrong.some((family) => rootsFit.has(family))],
    ['either-chord-not-both', wrong.some((family) => ownsSome.has(family))],
  ]);
}

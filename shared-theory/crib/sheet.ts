import { candidateKeys } from '../candidates.ts';
import type { Crib } from '../crib.ts';
import { cribOf } from '../crib.ts';
import type { Decider } from '../deciders.ts';
import { differentChords } from '../different-chords.ts';
import type { NoteName } from '../pitch.ts';
import type { PolicyChange } from '../policy-change.ts';
import { policyChanges } from '../policy-change.ts';
import type { ErrorKind } from '../questions/error-kinds.ts';
import { askableQuestions, judgeOf } from '../questions/judges.ts';
import { withAdditions } from '../questions/numeral/additions.ts';
import { chordsOf } from '../questions/own-chords.ts';
import { RHYTHM_KINDS } from '../questions/question.ts';
import type { Answer, Kind, QuestionId, QuestionSettings, Target } from '../questions/question.ts';
import type { RoundQuestion } from '../questions/round-questions.ts';
import { parseQuestionId } from '../questions/round-questions.ts';
import type { Isolation, Settler } from '../settlers.ts';
import { isolationsOf, settlingOf } from '../settlers.ts';
import type { Truth } from '../truth.ts';
import { keysByPolicy } from '../truth.ts';
import type { VisitedKey } from '../visited-keys.ts';
import { visitedKeys } from '../visited-keys.ts';
import type { NamedAnswer, Names } from './answer-names.ts';
import { namedAnswer } from './answer-names.ts';
import { likelyWrong } from './likely-wrong.ts';
import { soloNotes } from './solo-notes.ts';
import type { SoloSource } from './solo-notes.ts';

/** A likely wrong answer by its names; `with` says which answers to other questions go with it. */
export type CribWrong = {
  readonly answer: NamedAnswer;
  /** Null where it is simply the other answer. */
  readonly error: ErrorKind | null;
  /** Friendly credit, 0 to below 1. */
  readonly credit: number;
  readonly with?: Readonly<Record<QuestionId, NamedAnswer>>;
};

/** One question of a vamp with its right answer and the likely wrong ones. */
export type CribQuestion = {
  readonly question: QuestionId;
  readonly kind: Kind;
  readonly target: Target;
  /** The chord, or the settler (a chord or a sung note), that it asks about; null where it asks about the whole loop. */
  readonly of: string | null;
  /** True where that is a note sung over the loop. */
  readonly sung?: true;
  /** Null where no answer is right: it is asked for opinions. */
  readonly answer: NamedAnswer | null;
  /** Of counts of the beat and of the bar: others that are as lawful, where there are any. */
  readonly also?: readonly NamedAnswer[];
  readonly wrong: readonly CribWrong[];
};

/** All that the teacher's sheet says of a vamp; names in ASCII. */
export type CribSheet = Crib & {
  /** Notes that every candidate key has, from the first chord's root up: safe to solo on, and they settle nothing. */
  readonly safeNotes: readonly NoteName[];
  /** What those are of, where no candidate key owns the vamp; null where they are shared, or there are none. */
  readonly safeOf: SoloSource | null;
  /** Notes that settle it when they are sung over the loop: those that leave one key first. */
  readonly melodyNotes: readonly Decider[];
  /** Chords whose seventh settles what their triad leaves open. */
  readonly sevenths: readonly Settler[];
  /** The least that leaves each key alone. */
  readonly isolating: readonly Isolation[];
  /** The names of the candidate keys by policy. */
  readonly policies: Truth['keys'];
  /** What the choice of the key policy changes. */
  readonly policyChanges: readonly PolicyChange[];
  /** Where no key owns all: keys that do but for a visitor or two, the likeliest first. */
  readonly visited: readonly VisitedKey[];
  readonly questions: readonly CribQuestion[];
};

/**
 * The teacher's sheet for a vamp: of its different chords what `cribOf` says and more, and its questions with their answers. RangeError
 * without chords.
 */
export function cribSheet(
  truth: Truth,
  settings: QuestionSettings,
  questions: readonly RoundQuestion[] = askableQuestions(truth, settings),
): CribSheet {
  const { policy } = settings;
  // A foreign bass is a note that a key must hold: here each chord counts over each of its basses.
  const chords = differentChords(chordsOf(truth), { slashIsNew: true });
  const keys = candidateKeys(chords, policy);
  const crib = cribOf(chords, policy);
  const safe = soloNotes(chords, keys);
  const names: Names = { chords: differentChords(chords), keys, grid: truth.rhythm?.grid ?? null };
  return {
    ...crib,
    safeNotes: safe.notes,
    safeOf: safe.of,
    melodyNotes: crib.deciders.toSorted((one, other) => one.leaves.length - other.leaves.length),
    sevenths: settlingOf(chords, keys, policy).sevenths,
    isolating: isolationsOf(chords, keys, policy),
    policies: keysByPolicy(chords),
    policyChanges: policyChanges(chords),
    visited: keys.length === 0 ? visitedKeys(chords) : [],
    questions: questions.map((question) => cribQuestion(question, truth, settings, names)),
  };
}

function cribQuestion(question: RoundQuestion, truth: Truth, settings: QuestionSettings, names: Names): CribQuestion {
  const { id, kind, target } = question;
  const asked = { truth, target, settings };
  const right = judgeOf<Kind>(kind).truth(asked);
  const also = right !== null && COUNTED.has(kind) ? judgeOf<Kind>(kind).also(asked) : [];
  const wrong = right === null ? [] : likelyWrong(question, truth, settings);
  return {
    question: id,
    kind,
    target,
    ...askedOf(question, truth),
    answer: right === null ? null : rightNamed(kind, right, names),
    ...(also.length > 0 ? { also: also.map((answer) => namedAnswer(kind, answer, names)) } : {}),
    wrong: wrong.map(({ answer, error, own, credit }) => {
      const others = Object.entries(own);
      const named = others.map(([other, said]) => [other, namedAnswer(kindOf(other), said, names)] as const);
      return {
        answer: namedAnswer(kind, answer, names),
        error,
        credit,
        ...(others.length > 0 ? { with: Object.fromEntries(named) } : {}),
      };
    }),
  };
}

/** The right answer by its names; numerals with what more their chords have. */
function rightNamed(kind: Kind, right: Answer, names: Names): NamedAnswer {
  const named = namedAnswer(kind, right, names);
  return kind === 'numeral' && Array.isArray(named) ? withAdditions(named.map(String), names.chords) : named;
}

/** Kinds of which a sheet says every lawful answer: the others are right by the same ear, these by another count. */
const COUNTED: ReadonlySet<Kind> = new Set<Kind>(['tempo', 'bar-count']);

const WHOLE_LOOP: ReadonlySet<Kind> = new Set<Kind>([
  ...RHYTHM_KINDS,
  'count',
  'order',
  'numeral',
  'one-or-several',
  'keys',
  'home',
]);

function askedOf({ kind, target }: RoundQuestion, truth: Truth): Pick<CribQuestion, 'of' | 'sung'> {
  if (WHOLE_LOOP.has(kind)) return { of: null };
  if (kind !== 'settler') return { of: truth.chords[target] ?? null };
  const { chord = null, note = null } = truth.settlers[target] ?? {};
  return note === null ? { of: chord } : { of: note, sung: true };
}

function kindOf(id: QuestionId): Kind {
  const question = parseQuestionId(id);
  if (question === null) throw new RangeError(`${id} names no question.`);
  return question.kind;
}

import type { ErrorKind } from '../questions/error-kinds.ts';
import type { Kind, QuestionId } from '../questions/question.ts';
import { NOT_SURE } from '../questions/question.ts';
import type { Truth } from '../truth.ts';
import { evidenceQuestions, placeOf } from './asked.ts';
import type { AskedRound, EvidenceQuestion } from './asked.ts';
import { blindAnswers } from './blind.ts';
import { wilsonInterval } from './wilson.ts';

/** A mishearing found in a class. */
export type CommonError = {
  readonly error: ErrorKind;
  /** Answers that show it. */
  readonly times: number;
  /** Answers to questions in which it could be shown; not sure and silence are none. */
  readonly chances: number;
  /** Share of the chances, lowest and highest, at 95 % (Wilson). */
  readonly interval: readonly [number, number];
  /** Share of the chances that answers without hearing would give. */
  readonly guessing: number;
  readonly kinds: readonly Kind[];
  /** Where most of it happened. */
  readonly where: { readonly round: number; readonly question: QuestionId };
};

/** One answer is only a hint: it is a finding from this share of the hands on one question, */
const OF_ONE_QUESTION = 0.3;
/** or on so many questions, */
const QUESTIONS = 3;
/** and never below so many answers. */
const LEAST = 2;

type Found = {
  readonly byQuestion: Map<EvidenceQuestion, { times: number; hands: number }>;
  chances: number;
  guessed: number;
};

/**
 * The common errors of a lesson, by first sheets, most often first: those given by three of ten hands on one question, or on three
 * questions, and more often than answers without hearing would give them. No names.
 */
export function commonErrors(rounds: readonly AskedRound[]): readonly CommonError[] {
  const found = new Map<ErrorKind, Found>();
  for (const asked of evidenceQuestions(rounds)) tally(asked, found);
  return [...found]
    .flatMap(([error, each]) => findingOf(error, each) ?? [])
    .toSorted((a, b) => b.times - a.times || a.error.localeCompare(b.error, 'en'));
}

function tally(asked: EvidenceQuestion, found: Map<ErrorKind, Found>): void {
  const shown = new Map<ErrorKind, number>();
  let hands = 0;
  for (const { answer, mark } of asked.hands) {
    if (answer === NOT_SURE) continue;
    hands += 1;
    const [error] = mark.errors;
    if (error !== undefined) shown.set(error, (shown.get(error) ?? 0) + 1);
  }
  if (hands === 0) return;
  const guessing = guessingOf(asked);
  for (const error of new Set([...shown.keys(), ...guessing.keys()])) {
    const each = found.get(error) ?? { byQuestion: new Map(), chances: 0, guessed: 0 };
    found.set(error, each);
    const times = shown.get(error) ?? 0;
    each.chances += hands;
    each.guessed += hands * (guessing.get(error) ?? 0);
    if (times > 0) each.byQuestion.set(asked, { times, hands });
  }
}

function findingOf(error: ErrorKind, { byQuestion, chances, guessed }: Found): CommonError | null {
  const places = [...byQuestion].toSorted(([, a], [, b]) => b.times - a.times);
  const [most] = places;
  const times = places.reduce((sum, [, each]) => sum + each.times, 0);
  const onOne = places.some(([, each]) => each.times >= LEAST && each.times >= OF_ONE_QUESTION * each.hands);
  if (most === undefined || times < LEAST || times <= guessed) return null;
  if (!onOne && places.length < QUESTIONS) return null;
  return {
    error,
    times,
    chances,
    interval: wilsonInterval(times, chances),
    guessing: guessed / chances,
    kinds: [...new Set(places.map(([{ question }]) => question.kind))],
    where: placeOf(most[0]),
  };
}

/** By truth and question: what answers without hearing would show. Marks that lean on own answers are none of it. */
const guessed = new WeakMap<Truth, Map<string, ReadonlyMap<ErrorKind, number>>>();

function guessingOf({ round, question, mark }: EvidenceQuestion): ReadonlyMap<ErrorKind, number> {
  const { truth, settings } = round;
  const { kind, target, id } = question;
  const known = guessed.get(truth) ?? new Map<string, ReadonlyMap<ErrorKind, number>>();
  guessed.set(truth, known);
  const name = `${id} ${settings.policy} ${settings.qualities.join()} ${round.steady} ${question.returned} ${[...(question.letStand ?? [])].join()}`;
  const before = known.get(name);
  if (before !== undefined) return before;
  const answers = blindAnswers(kind, { truth, settings, target });
  const shares = new Map<ErrorKind, number>();
  for (const answer of answers) {
    const [error] = mark(answer, NOBODY).errors;
    if (error !== undefined) shares.set(error, (shares.get(error) ?? 0) + 1 / answers.length);
  }
  known.set(name, shares);
  return shares;
}

/** No student has this name: a mark for nobody leans on no own answer. */
const NOBODY = '';

import { itemAt } from './items.ts';
import { levelOf } from './levels.ts';
import { MASTERY_RULES, type Condition, type Trait } from './mastery-rules.ts';
import type { ErrorKind } from './questions/error-kinds.ts';
import type { Kind, Target } from './questions/question.ts';

/** One marked answer of a student. Who was not sure said nothing: that is no evidence. */
export type MasteryEvidence = {
  readonly kind: Kind;
  readonly target: Target;
  /** Names the vamp that was asked about. */
  readonly vamp: string;
  /** Names the day, or session, of the answer. */
  readonly day: string;
  readonly right: boolean;
  /** 0 to 1. */
  readonly credit: number;
  /** What was right, as one text: `minor`. */
  readonly truth: string;
  readonly error: ErrorKind | null;
  readonly traits: readonly Trait[];
};

/** What one condition still lacks: `have` beside what is needed. */
export type Missing = { readonly kinds: readonly Kind[] } & (
  | { readonly what: 'trials'; readonly have: number; readonly need: number }
  | { readonly what: 'right'; readonly have: number; readonly need: number; readonly outOf: number }
  | { readonly what: 'mean-credit'; readonly have: number; readonly need: number; readonly outOf: number }
  | { readonly what: 'cases'; readonly trait: Trait; readonly have: number; readonly need: number }
  | { readonly what: 'side'; readonly answer: string; readonly have: number; readonly need: number }
  | { readonly what: 'biased'; readonly answer: string; readonly have: number; readonly most: number }
  | { readonly what: 'errors'; readonly errors: readonly ErrorKind[]; readonly have: number; readonly most: number }
  | { readonly what: 'days'; readonly have: number; readonly need: number }
);

export type Mastery = { readonly met: boolean; readonly missing: readonly Missing[] };

/** Answers that are right or wrong together. */
type Trial = readonly MasteryEvidence[];

/**
 * Whether a level is mastered by what a student answered, oldest first, and else what is missing. Only the last trials of each
 * condition count: who has forgotten can lose it, who has learnt is not held by old mistakes. RangeError for a level that is none.
 */
export function mastery(level: number, evidence: readonly MasteryEvidence[]): Mastery {
  const conditions = MASTERY_RULES[levelOf(level).level] ?? [];
  const missing = conditions.flatMap((condition) => missingOf(condition, trialsOf(condition, evidence)));
  return { met: missing.length === 0, missing };
}

/** The trials of a condition, in the order of their first answers; those that lack an answer to one of its kinds are none. */
function trialsOf({ kinds, each, among }: Condition, evidence: readonly MasteryEvidence[]): readonly Trial[] {
  const trials = new Map<string, MasteryEvidence[]>();
  for (const [index, answer] of evidence.entries()) {
    if (!kinds.includes(answer.kind) || (among && !answer.traits.includes(among))) continue;
    const { vamp, target } = answer;
    const name = each === 'answer' ? String(index) : each === 'chord' ? `${vamp} ${target}` : vamp;
    trials.set(name, [...(trials.get(name) ?? []), answer]);
  }
  return [...trials.values()].filter((trial) => kinds.every((kind) => trial.some((answer) => answer.kind === kind)));
}

function missingOf(condition: Condition, trials: readonly Trial[]): readonly Missing[] {
  const { days } = condition;
  if (days === undefined) return missingFrom(condition, trials);
  const dayOf = (trial: Trial) => itemAt(trial, 0).day;
  const met = [...new Set(trials.map(dayOf))].filter(
    (day) =>
      missingFrom(
        condition,
        trials.filter((trial) => dayOf(trial) === day),
      ).length === 0,
  ).length;
  return met >= days ? [] : [{ kinds: condition.kinds, what: 'days', have: met, need: days }];
}

function missingFrom(condition: Condition, trials: readonly Trial[]): readonly Missing[] {
  const { kinds, outOf, cases, sides, errors } = condition;
  if (trials.length < outOf) return [{ kinds, what: 'trials', have: trials.length, need: outOf }];
  const last = trials.slice(-outOf);
  const isRight = (trial: Trial) => trial.every((answer) => rightEnough(condition, answer));
  const answers = last.flat();
  return [
    ...successMissing(condition, last, isRight),
    ...(cases ? casesMissing(kinds, cases, cases.right ? last.filter(isRight) : last) : []),
    ...(sides ? sidesMissing(condition, sides, answers) : []),
    ...(errors ? errorsMissing(kinds, errors, answers) : []),
  ];
}

function rightEnough({ fromCredit }: Condition, { right, credit }: MasteryEvidence): boolean {
  return right || (fromCredit !== undefined && credit >= fromCredit);
}

function successMissing(
  { kinds, needs, outOf }: Condition,
  trials: readonly Trial[],
  isRight: (trial: Trial) => boolean,
): readonly Missing[] {
  if ('right' in needs) {
    const have = trials.filter(isRight).length;
    return have >= needs.right ? [] : [{ kinds, what: 'right', have, need: needs.right, outOf }];
  }
  const credits = trials.flat().map(({ credit }) => credit);
  const have = credits.reduce((sum, credit) => sum + credit, 0) / credits.length;
  return have >= needs.meanCredit ? [] : [{ kinds, what: 'mean-credit', have, need: needs.meanCredit, outOf }];
}

function casesMissing(
  kinds: readonly Kind[],
  { trait, least }: NonNullable<Condition['cases']>,
  trials: readonly Trial[],
): readonly Missing[] {
  const have = trials.filter((trial) => trial.some(({ traits }) => traits.includes(trait))).length;
  return have >= least ? [] : [{ kinds, what: 'cases', trait, have, need: least }];
}

function sidesMissing(
  condition: Condition,
  { answers: sides, least, mostWrong }: NonNullable<Condition['sides']>,
  answers: readonly MasteryEvidence[],
): readonly Missing[] {
  const { kinds } = condition;
  return sides.flatMap((answer): readonly Missing[] => {
    const asked = answers.filter(({ truth }) => truth === answer);
    const wrong = asked.filter((each) => !rightEnough(condition, each)).length;
    return [
      ...(asked.length < least ? [{ kinds, what: 'side', answer, have: asked.length, need: least } as const] : []),
      ...(wrong > mostWrong ? [{ kinds, what: 'biased', answer, have: wrong, most: mostWrong } as const] : []),
    ];
  });
}

function errorsMissing(
  kinds: readonly Kind[],
  { kinds: errors, most }: NonNullable<Condition['errors']>,
  answers: readonly MasteryEvidence[],
): readonly Missing[] {
  const have = answers.filter(({ error }) => error !== null && errors.includes(error)).length;
  return have <= most ? [] : [{ kinds, what: 'errors', errors, have, most }];
}

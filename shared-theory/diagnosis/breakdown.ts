import { besideAll } from '../questions/beside.ts';
import { judgeOf } from '../questions/judges.ts';
import type { Answer, Kind, QuestionId, QuestionSettings, Target } from '../questions/question.ts';
import type { Truth } from '../truth.ts';
import type { Answered, MarkedTally, Spread, WrongAnswer } from './spread.ts';
import { markedTallies, spreadOf, wrongAnswers } from './spread.ts';

/** One sheet that was opened and closed: its answers and the students who could answer it. */
export type ClosedSheet = { readonly answers: Answered; readonly seats: Iterable<string> };

/** One question of a round; the first sheet is evidence, a second (after talk with the neighbour) is support. */
export type AskedQuestion = {
  readonly id: QuestionId;
  readonly kind: Kind;
  readonly target: Target;
  readonly sheets: readonly ClosedSheet[];
};

/** One round as the breakdown needs it: what sounded and what was asked. */
export type AskedRound = {
  readonly number: number;
  readonly truth: Truth;
  readonly settings: QuestionSettings;
  readonly questions: readonly AskedQuestion[];
  /** False once the tempo was changed while the round ran; otherwise true or absent. */
  readonly steady?: boolean;
};

/** How one sheet came out. Right is exact, part earned some credit, wrong none; the five add up to `of`. */
export type SheetResult = {
  readonly right: number;
  readonly part: number;
  readonly wrong: number;
  readonly notSure: number;
  readonly silent: number;
  readonly of: number;
};

/** One question of the lesson. */
export type BreakdownLine = SheetResult & {
  readonly question: QuestionId;
  readonly round: number;
  readonly kind: Kind;
  readonly target: Target;
  /** The right answer. */
  readonly truth: Answer;
  /** Answers that were not right, most first. */
  readonly missed: readonly WrongAnswer[];
  /** The last sheet after talk with the neighbour, told apart; null where there was none. */
  readonly again: SheetResult | null;
};

/** Wrong answers kept a line. */
const MISSED_SHOWN = 3;

/**
 * How a lesson's questions came out, round by round in the order given. Questions without a closed sheet, or without a right
 * answer under the round's settings, have no line. Each different answer is marked once, then counted.
 */
export function breakdownOf(rounds: readonly AskedRound[]): readonly BreakdownLine[] {
  return rounds.flatMap((round) => round.questions.flatMap((question) => lineOf(round, question) ?? []));
}

function lineOf(round: AskedRound, question: AskedQuestion): BreakdownLine | null {
  const { id, kind, target, sheets } = question;
  const [first] = sheets;
  const judge = judgeOf<Kind>(kind);
  const context = {
    truth: round.truth,
    settings: round.settings,
    target,
    beside: besideAll(round.truth, round.steady),
  };
  const truth = judge.truth(context);
  if (first === undefined || truth === null) return null;
  const spread = spreadOf(kind, first.answers, first.seats);
  const marked = markedTallies(spread, judge, context);
  const last = sheets.length > 1 ? sheets.at(-1) : undefined;
  const talked = last === undefined ? null : spreadOf(kind, last.answers, last.seats);
  return {
    question: id,
    round: round.number,
    kind,
    target,
    truth,
    ...resultOf(spread, marked),
    missed: wrongAnswers(marked, judge).slice(0, MISSED_SHOWN),
    again: talked === null ? null : resultOf(talked, markedTallies(talked, judge, context)),
  };
}

function resultOf({ notSure, silent, of }: Spread, marked: readonly MarkedTally[]): SheetResult {
  const tally = { right: 0, part: 0, wrong: 0 };
  for (const { count, mark } of marked) tally[mark.exact ? 'right' : mark.credit > 0 ? 'part' : 'wrong'] += count;
  return { ...tally, notSure, silent, of };
}

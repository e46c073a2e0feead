import { judgeOf } from '../questions/judges.ts';
import { isPartly } from '../questions/points.ts';
import type { Answer, Kind, QuestionId, Target } from '../questions/question.ts';
import { againMarker, evidenceQuestions } from './asked.ts';
import type { AskedRound, EvidenceQuestion } from './asked.ts';
import type { MarkedTally, Spread, WrongAnswer } from './spread.ts';
import { handsOf, markedTallies, spreadOf, wrongAnswers } from './spread.ts';

/**
 * How one sheet came out. Right is exact, part earned half the credit or more by itself or from the student's own earlier answer
 * on, wrong less; the five add up to `of`.
 */
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
 * How a lesson's questions came out, round by round in the order given. Questions without a closed sheet, without a right answer
 * under the round's settings, or struck, have no line. Each different answer is marked once, then counted.
 */
export function breakdownOf(rounds: readonly AskedRound[]): readonly BreakdownLine[] {
  return evidenceQuestions(rounds).map(lineOf);
}

function lineOf({ round, question, first, right, mark, hands }: EvidenceQuestion): BreakdownLine {
  const { id, kind, target, sheets } = question;
  const judge = judgeOf<Kind>(kind);
  const marked = markedTallies(kind, hands);
  const last = sheets.length > 1 ? sheets.at(-1) : undefined;
  return {
    question: id,
    round: round.number,
    kind,
    target,
    truth: right,
    ...resultOf(spreadOf(kind, first.answers, first.seats), marked),
    missed: wrongAnswers(marked, judge).slice(0, MISSED_SHOWN),
    again:
      last === undefined
        ? null
        : resultOf(
            spreadOf(kind, last.answers, last.seats),
            markedTallies(kind, handsOf(last.answers, againMarker(round, question, mark))),
          ),
  };
}

function resultOf({ notSure, silent, of }: Spread, marked: readonly MarkedTally[]): SheetResult {
  const tally = { right: 0, part: 0, wrong: 0 };
  for (const { count, mark } of marked) tally[mark.exact ? 'right' : isPartly(mark.credit) ? 'part' : 'wrong'] += count;
  return { ...tally, notSure, silent, of };
}

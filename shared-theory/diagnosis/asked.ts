import { besideAll } from '../questions/beside.ts';
import { judgeOf } from '../questions/judges.ts';
import type { Answer, Kind, NotSure, QuestionId, QuestionSettings } from '../questions/question.ts';
import type { RoundQuestion } from '../questions/round-questions.ts';
import type { Truth } from '../truth.ts';
import { markerOf } from './marker.ts';
import type { Marked } from './marker.ts';
import { handsOf } from './spread.ts';
import type { Answered } from './spread.ts';

/** One sheet that was opened and closed: its answers and the students who could answer it. */
export type ClosedSheet = {
  readonly answers: Answered;
  readonly seats: Iterable<string>;
  /** Beats a minute of what sounded as it opened, where that is another tempo than the round's own. */
  readonly tempo?: number;
};

/** One question of a round; the first sheet is evidence, a later one (after talk with the neighbour) is support. */
export type AskedQuestion = RoundQuestion & {
  readonly sheets: readonly ClosedSheet[];
  /** Answers by their key that the teacher let stand. */
  readonly letStand?: ReadonlySet<string>;
  /** Spoiled: everybody has its points, and it is evidence of nothing. */
  readonly struck?: boolean;
  /** It was asked from memory: nothing sounded while it was answered. */
  readonly memory?: boolean;
  /** Whether the loop had come home before the question was opened; null or absent where nobody knows. */
  readonly returned?: boolean | null;
  /** Other right answers than the present ones under which it was once shown: no points are lost by a correction. */
  readonly shownUnder?: readonly { readonly truth: Truth; readonly letStand: ReadonlySet<string> }[];
  /** The round was corrected and has it no more: it is evidence of nothing, and keeps the points of what was shown. */
  readonly gone?: boolean;
};

/** One round as the diagnosis needs it: what sounded and what was asked. */
export type AskedRound = {
  readonly number: number;
  readonly truth: Truth;
  readonly settings: QuestionSettings;
  readonly questions: readonly AskedQuestion[];
  /** False once the tempo was changed while the round ran; otherwise true or absent. */
  readonly steady?: boolean;
};

/** Marks one student's answer to one question, beside the student's own other answers. */
export type StudentMarker = (answer: Answer | NotSure, student: string) => Marked;

const NONE: ReadonlySet<string> = new Set();

/**
 * The teacher's marks of one question of a round, on its first sheet or another, under its truth or another that was shown; null where
 * it has no right answer there.
 */
export function studentMarker(
  round: AskedRound,
  question: AskedQuestion,
  known: Truth = round.truth,
  sheet: ClosedSheet | undefined = question.sheets[0],
): StudentMarker | null {
  const truth = heardOn(known, sheet);
  const { kind, target } = question;
  const { settings } = round;
  // Under what was shown before, the questions of that time may be leaned on as well.
  const questions = known === round.truth ? round.questions.filter(({ gone }) => gone !== true) : round.questions;
  if (judgeOf<Kind>(kind).truth({ truth, settings, target }) === null) return null;
  const mark = markerOf({
    question,
    questions,
    truth,
    settings,
    beside: besideAll(truth, { steady: round.steady ?? true, returned: question.returned ?? null }),
    letStand: question.letStand ?? NONE,
    mayLeanOn: () => true,
  });
  const byId = new Map(questions.map((each) => [each.id, each]));
  return (answer, student) => mark(answer, (id) => ownAnswer(byId.get(id), student));
}

/** What was right while a sheet was open: the tempo may have been another than the round's own. */
function heardOn(truth: Truth, sheet: ClosedSheet | undefined): Truth {
  return sheet?.tempo === undefined ? truth : { ...truth, tempo: sheet.tempo };
}

/** What a student last wrote to a question; null where nothing stands. */
export function ownAnswer(
  question: { readonly sheets: readonly { readonly answers: Answered }[] } | undefined,
  student: string,
): Answer | NotSure | null {
  if (question === undefined) return null;
  for (let sheet = question.sheets.length - 1; sheet >= 0; sheet -= 1) {
    const answer = question.sheets[sheet]?.answers.get(student)?.answer ?? null;
    if (answer !== null) return answer;
  }
  return null;
}

/** A question whose first sheet is evidence, with its marks. */
export type EvidenceQuestion = {
  readonly round: AskedRound;
  readonly question: AskedQuestion;
  readonly first: ClosedSheet;
  /** The right answer. */
  readonly right: Answer;
  readonly mark: StudentMarker;
  /** Every answer of the first sheet that stands, with its mark: made once, read by all that counts. */
  readonly hands: readonly Hand[];
};

/** One student's answer and its mark. */
export type Hand = { readonly student: string; readonly answer: Answer | NotSure; readonly mark: Marked };

/** By question as it was handed over: what is asked of it again and again is worked out once. */
const known = new WeakMap<AskedQuestion, { readonly round: AskedRound; readonly evidence: EvidenceQuestion | null }>();

/**
 * The questions that are evidence: asked on the phones and closed, with a right answer, and not struck. A question must be handed
 * over as a new object once its answers have changed.
 */
export function evidenceQuestions(rounds: readonly AskedRound[]): readonly EvidenceQuestion[] {
  return rounds.flatMap((round) => round.questions.flatMap((question) => evidenceOf(round, question) ?? []));
}

/** One question of a round as evidence; null where it is none. */
export function evidenceOf(round: AskedRound, question: AskedQuestion): EvidenceQuestion | null {
  const before = known.get(question);
  if (before?.round === round) return before.evidence;
  const evidence = workedOut(round, question);
  known.set(question, { round, evidence });
  return evidence;
}

function workedOut(round: AskedRound, question: AskedQuestion): EvidenceQuestion | null {
  const [first] = question.sheets;
  if (first === undefined || question.struck === true || question.gone === true) return null;
  const { settings } = round;
  const truth = heardOn(round.truth, first);
  const right = judgeOf<Kind>(question.kind).truth({ truth, settings, target: question.target });
  const mark = studentMarker(round, question);
  if (right === null || mark === null) return null;
  return { round, question, first, right, mark, hands: handsOf(first.answers, mark) };
}

/** The marker of the last sheet, after talk with the neighbour: that of the first, unless another tempo sounded by then. */
export function againMarker(round: AskedRound, question: AskedQuestion, mark: StudentMarker): StudentMarker {
  const [first, ...others] = question.sheets;
  const last = others.at(-1);
  if (last === undefined || last.tempo === first?.tempo) return mark;
  return studentMarker(round, question, round.truth, last) ?? mark;
}

/** Names a question of a lesson. */
export function placeOf({ round, question }: EvidenceQuestion): {
  readonly round: number;
  readonly question: QuestionId;
} {
  return { round: round.number, question: question.id };
}

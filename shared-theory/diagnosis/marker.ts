import { answerKey } from '../questions/asks.ts';
import type { Beside } from '../questions/beside.ts';
import { judgeOf, markAnswer } from '../questions/judges.ts';
import type { Evidence } from '../questions/judges.ts';
import type { Answer, Kind, Mark, NotSure, QuestionId, QuestionSettings } from '../questions/question.ts';
import { NOT_SURE, TAPPED_KINDS } from '../questions/question.ts';
import type { RoundQuestion } from '../questions/round-questions.ts';
import type { Truth } from '../truth.ts';

/** The mark of an answer with what it counts as evidence. */
export type Marked = Mark & { readonly evidence: Evidence };

/** Marks one student's answer to one question; `own` finds the student's answer to another question of the round. */
export type Marker = (answer: Answer | NotSure, own: (question: QuestionId) => Answer | NotSure | null) => Marked;

/** All that the marks of one question depend on, answers apart. */
export type MarkedQuestion = {
  readonly question: RoundQuestion;
  readonly questions: readonly RoundQuestion[];
  readonly truth: Truth;
  readonly settings: QuestionSettings;
  readonly beside: Beside;
  /** Answers by their key that the teacher let stand. */
  readonly letStand: ReadonlySet<string>;
  /** Questions whose own answers a mark may be held against: all for the teacher, those shown for a student. */
  readonly mayLeanOn: (question: QuestionId) => boolean;
};

/** A marker that makes each mark once: for each different answer, beside each different set of own answers that it reads. */
export function markerOf(asked: MarkedQuestion): Marker {
  const { question, questions, truth, settings, beside, letStand } = asked;
  const { kind, target } = question;
  const leans = (judgeOf<Kind>(kind).leansOn?.(target, questions) ?? []).flatMap((id) => {
    const found = questions.find((each) => each.id === id);
    return found && asked.mayLeanOn(id) ? [found] : [];
  });
  const marks = new Map<string, Marked>();
  return (answer, own) => {
    // Taps of one tempo are marked apart: they differ in all else.
    let key = TAPPED_KINDS.has(kind) ? JSON.stringify(answer) : answerKey<Kind>(kind, answer);
    const read: Record<QuestionId, Answer> = {};
    for (const { id, kind: other } of leans) {
      const given = own(id);
      if (given === null || given === NOT_SURE) continue;
      read[id] = given;
      key += `|${id}=${answerKey<Kind>(other, given)}`;
    }
    const known = marks.get(key);
    if (known !== undefined) return known;
    const mark =
      standing(asked, answer, letStand) ??
      markAnswer<Kind>(kind, answer, { truth, settings, target, beside, own: read });
    marks.set(key, mark);
    return mark;
  };
}

function standing(
  { question }: MarkedQuestion,
  answer: Answer | NotSure,
  letStand: ReadonlySet<string>,
): Marked | null {
  if (answer === NOT_SURE || !letStand.has(answerKey<Kind>(question.kind, answer))) return null;
  return { credit: 1, exact: true, errors: [], note: 'also-right', evidence: 'right' };
}

import { countJudge } from './count/judge.ts';
import { directionJudge } from './direction/judge.ts';
import { distanceJudge } from './distance/judge.ts';
import { keysJudge } from './keys/judge.ts';
import { numeralJudge } from './numeral/judge.ts';
import { oneOrSeveralJudge } from './one-or-several/judge.ts';
import { qualityJudge } from './quality/judge.ts';
import type { AnswerOf, Judge, Kind, Mark, MarkingContext, NotSure, QuestionSettings } from './question.ts';
import { NOT_SURE } from './question.ts';
import { rootJudge } from './root/judge.ts';
import type { RoundQuestion } from './round-questions.ts';
import { questionsOf } from './round-questions.ts';
import { settlerJudge } from './settler/judge.ts';
import { strokesJudge } from './strokes/judge.ts';
import { pitchClass } from '../pitch.ts';
import type { Truth } from '../truth.ts';

/** The marking side of every question. For the server and the commands; never in what a phone loads. */
export const judges: { readonly [K in Kind]: Judge<K> } = {
  strokes: strokesJudge,
  count: countJudge,
  direction: directionJudge,
  quality: qualityJudge,
  root: rootJudge,
  distance: distanceJudge,
  numeral: numeralJudge,
  'one-or-several': oneOrSeveralJudge,
  keys: keysJudge,
  settler: settlerJudge,
};

/** The judge of a kind. */
export function judgeOf<K extends Kind>(kind: K): Judge<K> {
  return judges[kind];
}

/** The strict ledger: not sure abstains and is never wrong. */
export type Evidence = 'right' | 'wrong' | 'abstain';

/** The mark of an answer that may be `not-sure`, with what it counts as evidence. Throws RangeError where the truth is null. */
export function markAnswer<K extends Kind>(
  kind: K,
  answer: AnswerOf<K> | NotSure,
  context: MarkingContext,
): Mark & { readonly evidence: Evidence } {
  if (answer === NOT_SURE) return { credit: 0, exact: false, errors: [], evidence: 'abstain' };
  const mark = judges[kind].mark(answer, context);
  return { ...mark, evidence: mark.exact ? 'right' : 'wrong' };
}

/**
 * The questions of a round in the usual order, without those that have no right answer under the settings, without the numeral of
 * one chord alone, which is right in three keys, and without the way of a bass where a teacher plays one chord alone. Of a vamp made for a level it is asked there too: the bass stays.
 */
export function askableQuestions(truth: Truth, settings: QuestionSettings): readonly RoundQuestion[] {
  const chords = truth.roots.map((root, slot) => `${pitchClass(root)} ${truth.qualities[slot]}`);
  // What rings on top is known of made vamps alone.
  const held = truth.top.length === 0 && new Set(chords).size === 1 && new Set(truth.bass).size === 1;
  return questionsOf({ chords, strokesKnown: truth.strokes !== null, settlers: truth.settlers.length })
    .filter(({ kind }) => !(held && kind === 'direction') && !(truth.count === 1 && kind === 'numeral'))
    .filter(({ kind, target }) => judges[kind].truth({ truth, target, settings }) !== null);
}

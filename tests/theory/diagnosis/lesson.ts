import type { AskedQuestion, AskedRound } from '../../../shared-theory/diagnosis/asked.ts';
import type { Answer, NotSure } from '../../../shared-theory/questions/question.ts';
import { parseQuestionId } from '../../../shared-theory/questions/round-questions.ts';
import { EM_D, SETTINGS } from '../questions/given.ts';

/** Answers in turn from students s1, s2 …; undefined for one who wrote nothing. */
export type Given = readonly (Answer | NotSure | null | undefined)[];

/** A question with its closed sheets. */
export function question(id: string, ...sheets: readonly Given[]): AskedQuestion {
  const named = parseQuestionId(id);
  if (named === null) throw new Error(`${id} names no question`);
  const closed = sheets.map((given) => {
    const rows = given.map((answer, index) => [`s${index + 1}`, answer] as const);
    const written = rows.flatMap(([student, answer]) => (answer === undefined ? [] : [[student, { answer }] as const]));
    return { answers: new Map(written), seats: rows.map(([student]) => student) };
  });
  return { ...named, sheets: closed };
}

/** A round of Em D. */
export function round(...questions: readonly AskedQuestion[]): AskedRound {
  return { number: 1, truth: EM_D, settings: SETTINGS, questions };
}

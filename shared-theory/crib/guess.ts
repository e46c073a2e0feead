import type { AnswerOf, AskedOf, Kind, OwnAnswers } from '../questions/question.ts';

/** An answer that a class might give, and the own answers to other questions that would go with it. */
export type Guess<K extends Kind = Kind> = { readonly answer: AnswerOf<K>; readonly own: OwnAnswers };

/** The answers that a class might give to each kind of question. */
export type Guesses = { readonly [K in Kind]: (asked: AskedOf) => readonly Guess<K>[] };

/** Answers that go with none to other questions. */
export function alone<K extends Kind>(answers: readonly AnswerOf<K>[]): readonly Guess<K>[] {
  return answers.map((answer) => ({ answer, own: {} }));
}

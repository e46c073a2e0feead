import { asks } from './asks.ts';
import type { Kind, QuestionId, Target } from './question.ts';
import { KINDS } from './question.ts';

/** One question of a round. */
export type RoundQuestion = { readonly id: QuestionId; readonly kind: Kind; readonly target: Target };

/** What decides which questions a round has. */
export type RoundShape = {
  /** One text per slot of the loop, equal where the same chord stands. */
  readonly chords: readonly string[];
  /** Whether a groove is known whose strokes all go down or go down and up. */
  readonly strokesKnown: boolean;
};

/** Names a question of a round: `quality-1`. */
export function questionId(kind: Kind, target: Target): QuestionId {
  return `${kind}-${target}`;
}

/** Reads `quality-1`; null where it names no question. */
export function parseQuestionId(text: string): RoundQuestion | null {
  const parts = /^([a-z]+)-(0|[1-9]\d?)$/.exec(text);
  const kind = KINDS.find((known) => known === parts?.[1]);
  return kind === undefined ? null : { id: text, kind, target: Number(parts?.[2]) };
}

/**
 * The questions of a round in the usual order: the strokes, where the bass goes, the first chord's quality and root,
 * the quality of each chord not heard before, the keys.
 */
export function questionsOf({ chords, strokesKnown }: RoundShape): readonly RoundQuestion[] {
  const targets = (kind: Kind) => asks[kind].targets(chords.length, { groove: strokesKnown });
  const question = (kind: Kind) => (target: Target) => ({ id: questionId(kind, target), kind, target });
  const firstHeard = targets('quality').filter((target) => chords.indexOf(chords[target] ?? '') === target);
  return [
    ...targets('strokes').map(question('strokes')),
    ...targets('direction').map(question('direction')),
    ...firstHeard.slice(0, 1).map(question('quality')),
    ...targets('root').slice(0, 1).map(question('root')),
    ...firstHeard.slice(1).map(question('quality')),
    ...targets('keys').map(question('keys')),
  ];
}

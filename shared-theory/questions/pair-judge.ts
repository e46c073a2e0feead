import type { RhythmTruth } from '../rhythm/rhythm-truth.ts';
import type { Truth } from '../truth.ts';
import type { ErrorKind } from './error-kinds.ts';
import { needed, notRight, RIGHT } from './marks.ts';
import type { Answers, Judge } from './question.ts';

/** Kinds whose answer is one of two. */
export type PairKind = 'threes' | 'half-time' | 'swing' | 'drive' | 'strokes' | 'pendulum' | 'change-place';

/** The marking side of a question with two answers: exact or nothing. `wrong` names what the other answer shows, by the right one. */
export function pairJudge<K extends PairKind>(
  kind: K,
  rightOf: (truth: Truth) => Answers[K] | null,
  wrong: (right: Answers[K]) => ErrorKind,
): Judge<K> {
  return {
    kind,
    truth: ({ truth }) => rightOf(truth),
    mark: (answer, { truth, target }) => {
      const right = needed(rightOf(truth), kind, target);
      return answer === right ? RIGHT : notRight(0, wrong(right));
    },
    also: () => [],
    heard: String,
    chance: () => 1 / 2,
  };
}

/** Reads one of two from what the groove was; null where no groove is known. */
export function ofRhythm<T>(read: (rhythm: RhythmTruth) => T | null): (truth: Truth) => T | null {
  return ({ rhythm }) => (rhythm ? read(rhythm) : null);
}

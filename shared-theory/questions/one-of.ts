import { ofTheGroove } from './of-the-groove.ts';
import type { Answers, Ask } from './question.ts';

/** Kinds that are answered by choosing one of a few. */
export type ChosenKind = 'bar-count' | 'threes' | 'half-time' | 'swing' | 'drive' | 'pendulum' | 'change-place';

/** The asking side of a question about the groove that is answered by choosing one of a few; `choices` in the pad's order. */
export function oneOf<K extends ChosenKind>(kind: K, choices: readonly Answers[K][]): Ask<K> {
  return {
    kind,
    targets: ofTheGroove,
    ask: () => ({ kind, target: 0 }),
    read: (value) => choices.find((choice) => choice === value) ?? null,
    key: String,
  };
}

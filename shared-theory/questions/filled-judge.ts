import type { RhythmTruth } from '../rhythm/rhythm-truth.ts';
import { allRight, alsoOnTheGrid, rightAnswers, standingFor } from './grid-choices.ts';
import type { RightSlots } from './grid-choices.ts';
import { needed, notRight, RIGHT } from './marks.ts';
import type { FilledKind } from './on-the-grid.ts';
import type { AnswerOf, Answers, Ask, AskedOf, Judge, Mark } from './question.ts';

/** One slot of an answer. */
type SlotOf<K extends FilledKind> = Answers[K][number];

/** What tells one question on the grid from another. */
export type Filled<K extends FilledKind> = {
  readonly ask: Ask<K>;
  /** How many a slot of the pad has to choose from. */
  readonly choices: number;
  /** What is right on each slot; null where it cannot be asked. */
  readonly right: (rhythm: RhythmTruth) => RightSlots<SlotOf<K>> | null;
  /** The mark of an answer that is wrong on some slot; it has as many slots as the grid. */
  readonly wrong: (answer: readonly SlotOf<K>[], right: RightSlots<SlotOf<K>>, rhythm: RhythmTruth) => Mark;
};

/** The marking side of a question that is answered by filling the beat grid. Only an answer right on every slot is right. */
export function filledJudge<K extends FilledKind>({ ask, choices, right, wrong }: Filled<K>): Judge<K> {
  const { kind } = ask;
  const rightOf = ({ truth: { rhythm } }: AskedOf) => (rhythm ? right(rhythm) : null);
  return {
    kind,
    truth: (context) => {
      const slots = rightOf(context);
      return slots && (standingFor(slots) as AnswerOf<K>);
    },
    mark: (answer, context) => {
      const slots = needed(rightOf(context), kind, context.target);
      const rhythm = needed(context.truth.rhythm, kind, context.target);
      // A grid of another length was drawn for another groove.
      if (answer.length !== slots.length) return notRight(0, null);
      return allRight<SlotOf<K>>(answer, slots) ? RIGHT : wrong(answer, slots, rhythm);
    },
    also: (context) => alsoOnTheGrid(rightOf(context) ?? []) as readonly AnswerOf<K>[],
    heard: ask.key,
    chance: (context) => {
      const slots = rightOf(context);
      return slots === null ? 0 : rightAnswers(slots) / choices ** slots.length;
    },
  };
}

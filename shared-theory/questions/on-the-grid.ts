import { GRIDS } from '../groove-grid.ts';
import { ofTheGroove } from './of-the-groove.ts';
import type { AnswerOf, Answers, Ask } from './question.ts';

/** Kinds that are answered by filling every slot of the beat grid. */
export type FilledKind = 'accents' | 'stroke-grid' | 'roles';

const SIZES: ReadonlySet<number> = new Set(Object.values(GRIDS).map(({ slots }) => slots));

/** Whether some grid has so many slots. */
function isGridSize(slots: number): boolean {
  return SIZES.has(slots);
}

/** The asking side of a question that is answered on the beat grid, one of `choices` a slot; in the text of an answer each is a sign. */
export function onTheGrid<K extends FilledKind>(
  kind: K,
  choices: readonly Answers[K][number][],
  sign: (choice: Answers[K][number]) => string,
): Ask<K> {
  return {
    kind,
    targets: ofTheGroove,
    ask: (target, _settings, { grid }) => ({ kind, target, ...(grid === undefined ? {} : { grid }) }),
    read: (value) => {
      if (!Array.isArray(value) || !isGridSize(value.length)) return null;
      // As it is on the pad: a zero that came with a minus is none.
      const known = value.flatMap((each) => choices.find((choice) => choice === each) ?? []);
      return known.length === value.length ? (known as Answers[K][number][] & AnswerOf<K>) : null;
    },
    key: (answer) => answer.map(sign).join(''),
  };
}

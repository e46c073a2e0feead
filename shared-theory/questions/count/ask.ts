import type { Ask } from '../question.ts';

/** No pad counts further: more chords than these are not asked about. */
export const MOST_CHORDS = 5;

/** How many different chords the loop has. */
export const countAsk: Ask<'count'> = {
  kind: 'count',
  targets: (slots) => (slots > 0 ? [0] : []),
  ask: () => ({ kind: 'count', target: 0 }),
  read: (value) =>
    typeof value === 'number' && Number.isInteger(value) && value >= 1 && value <= MOST_CHORDS ? value : null,
  key: (answer) => String(answer),
};

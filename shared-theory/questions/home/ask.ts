import type { Ask } from '../question.ts';

/** No pad shows more chords to stop on. */
export const MOST_HOMES = 4;

/** On which of the different chords the student would stop. */
export const homeAsk: Ask<'home'> = {
  kind: 'home',
  targets: (slots) => (slots > 1 ? [0] : []),
  ask: (_target, _settings, { loop }) => ({ kind: 'home', target: 0, ...(loop === undefined ? {} : { loop }) }),
  read: (value) =>
    typeof value === 'number' && Number.isInteger(value) && value >= 0 && value < MOST_HOMES ? value + 0 : null,
  key: (answer) => String(answer),
};

import type { Ask, OneOrSeveral } from '../question.ts';

const ANSWERS: readonly OneOrSeveral[] = ['one', 'several'];

/** Whether one key owns all chords, or several do. */
export const oneOrSeveralAsk: Ask<'one-or-several'> = {
  kind: 'one-or-several',
  targets: (slots) => (slots > 0 ? [0] : []),
  ask: (_target, settings) => ({ kind: 'one-or-several', target: 0, options: [settings.policy] }),
  read: (value) => ANSWERS.find((answer) => answer === value) ?? null,
  key: (answer) => answer,
};

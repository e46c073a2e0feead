import type { Ask, AskedSeventh } from '../question.ts';

/** The sevenths on the pad, in pad order. */
export const ASKED_SEVENTHS: readonly AskedSeventh[] = ['none', 'seventh', 'major-seventh'];

/** Whether a chord has a seventh, and which. */
export const seventhAsk: Ask<'seventh'> = {
  kind: 'seventh',
  targets: (slots) => Array.from({ length: slots }, (_, index) => index),
  ask: (target, _settings, { letter }) => ({ kind: 'seventh', target, ...(letter === undefined ? {} : { letter }) }),
  read: (value) => ASKED_SEVENTHS.find((seventh) => seventh === value) ?? null,
  key: (answer) => answer,
};

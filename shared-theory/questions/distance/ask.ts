import type { Ask } from '../question.ts';

/** The line goes one octave up and one down from home. */
export const OCTAVE = 12;

/** How far from home the target's root lies, and on which side. */
export const distanceAsk: Ask<'distance'> = {
  kind: 'distance',
  targets: (slots) => Array.from({ length: Math.max(0, slots - 1) }, (_, index) => index + 1),
  ask: (target, _settings, { loop }) => ({ kind: 'distance', target, ...(loop === undefined ? {} : { loop }) }),
  read: (value) =>
    typeof value === 'number' && Number.isInteger(value) && Math.abs(value) <= OCTAVE ? value + 0 : null,
  key: (answer) => String(answer),
};

import type { StrokeFeel } from '../../truth.ts';
import type { Ask } from '../question.ts';

const FEELS: readonly StrokeFeel[] = ['all-downs', 'down-up'];

/** Whether the hand strikes all downs, or down and up by turns. */
export const strokesAsk: Ask<'strokes'> = {
  kind: 'strokes',
  targets: (slots, { groove }) => (groove && slots > 0 ? [0] : []),
  ask: () => ({ kind: 'strokes', target: 0 }),
  read: (value) => FEELS.find((feel) => feel === value) ?? null,
  key: (answer) => answer,
};

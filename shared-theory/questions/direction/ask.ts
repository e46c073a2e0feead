import type { Direction } from '../../truth.ts';
import type { Ask } from '../question.ts';

const DIRECTIONS: readonly Direction[] = ['up', 'down', 'same'];

/** Where the bass went from the first chord to the target's. */
export const directionAsk: Ask<'direction'> = {
  kind: 'direction',
  targets: (slots) => Array.from({ length: Math.max(0, slots - 1) }, (_, index) => index + 1),
  ask: (target, _settings, { loop }) => ({ kind: 'direction', target, ...(loop === undefined ? {} : { loop }) }),
  read: (value) => DIRECTIONS.find((direction) => direction === value) ?? null,
  key: (answer) => answer,
};

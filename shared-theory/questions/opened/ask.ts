import { ofTheGroove } from '../of-the-groove.ts';
import type { Ask } from '../question.ts';

/** Slots of the longest pattern. */
const MOST_SLOTS = 16;

const isSlot = (value: unknown): value is number =>
  Number.isInteger(value) && (value as number) >= 0 && (value as number) < MOST_SLOTS;

export const openedAsk: Ask<'opened'> = {
  kind: 'opened',
  targets: ofTheGroove,
  ask: (target, _settings, { grid }) => ({ kind: 'opened', target, ...(grid === undefined ? {} : { grid }) }),
  read: (value) => {
    if (!Array.isArray(value) || value.length === 0 || !value.every(isSlot)) return null;
    return [...new Set(value)].toSorted((one, other) => one - other);
  },
  key: (slots) => slots.join(' '),
};

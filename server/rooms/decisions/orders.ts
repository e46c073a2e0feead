import type { SoundChange, SoundOrder } from '../../protocol/messages.ts';
import type { Allowed } from '../commands.ts';

/** Adds an order to what is allowed. Nobody hears it where no page holds the sound. */
export function ordering(allowed: Allowed, order: SoundOrder): Allowed {
  return { ...allowed, effects: [{ kind: 'order', order }] };
}

/** The order to change the sound of a round, from its next bar line on. */
export function change(round: string, change: SoundChange): SoundOrder {
  return { order: 'change', round, change };
}

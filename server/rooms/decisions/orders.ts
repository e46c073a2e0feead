import type { SoundChange, SoundOrder } from '../../protocol/messages.ts';
import type { Allowed } from '../commands.ts';

/** Adds orders to what is allowed, to be followed one after the other. Nobody hears them where no page holds the sound. */
export function ordering(allowed: Allowed, ...orders: readonly SoundOrder[]): Allowed {
  if (orders.length === 0) return allowed;
  return { ...allowed, effects: orders.map((order) => ({ kind: 'order', order })) };
}

/** The order to change the sound of a round, from its next bar line on. */
export function change(round: string, change: SoundChange): SoundOrder {
  return { order: 'change', round, change };
}

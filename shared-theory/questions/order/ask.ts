import type { Ask } from '../question.ts';

/** The pad has one bar line with so many bars: only loops of exactly so many slots are asked. */
export const BARS = 4;

/** Every order that four slots can have: each slot a chord heard before, or the next new one. */
export const ORDERS: readonly (readonly number[])[] = Array.from({ length: BARS }).reduce<readonly number[][]>(
  (orders) =>
    orders.flatMap((order) => Array.from({ length: Math.max(-1, ...order) + 2 }, (_, chord) => [...order, chord])),
  [[]],
);

/** In which order the different chords come. */
export const orderAsk: Ask<'order'> = {
  kind: 'order',
  targets: (slots) => (slots === BARS ? [0] : []),
  ask: () => ({ kind: 'order', target: 0 }),
  read: (value) => {
    if (!Array.isArray(value)) return null;
    const given: readonly unknown[] = value;
    return (
      ORDERS.find((order) => order.length === given.length && order.every((chord, slot) => chord === given[slot])) ??
      null
    );
  },
  key: (answer) => answer.join(' '),
};

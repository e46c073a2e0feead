import { orderAnswers } from '../../server/protocol/words/asked/order.ts';

/** An order as letters: `A B A C`. */
export const orderText = (order: readonly number[]): string =>
  order.map((chord) => orderAnswers.letters[chord] ?? '').join(' ');

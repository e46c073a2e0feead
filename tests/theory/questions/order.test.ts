import { describe, expect, test } from 'vitest';
import { orderAsk, ORDERS } from '../../../shared-theory/questions/order/ask.ts';
import { orderJudge } from '../../../shared-theory/questions/order/judge.ts';
import type { ErrorKind } from '../../../shared-theory/questions/error-kinds.ts';
import { context, played, SETTINGS } from './given.ts';

const asked = (text: string, slashIsNew = false) => context(0, played(text), { slashIsNew });

describe('the orders of four slots', () => {
  test('are the fifteen ways to part four things: common practice', () => {
    expect(ORDERS).toHaveLength(15);
    expect(new Set(ORDERS.map(orderAsk.key)).size).toBe(15);
  });

  test.each<[unknown, boolean]>([
    [[0, 1, 0, 2], true],
    [[0, 0, 0, 0], true],
    [[0, 1, 2, 3], true],
    // The first is 0, and a new one the next number.
    [[1, 0, 1, 0], false],
    [[0, 2, 0, 1], false],
    [[0, 1, 0], false],
    [[0, 1, 0, 1, 0], false],
    [['0', '1', '0', '2'], false],
    ['0102', false],
  ])('%j is read: %s', (value, read) => {
    expect(orderAsk.read(value, SETTINGS)).toEqual(read ? value : null);
  });

  test.each([
    [3, []],
    [4, [0]],
    [5, []],
  ])('of %i slots: %j', (slots, targets) => {
    expect(orderAsk.targets(slots, { groove: true, settlers: 0 })).toEqual(targets);
  });
});

describe('the right order', () => {
  test.each([
    ['A Bm A D', [0, 1, 0, 2]],
    ['C G Am F', [0, 1, 2, 3]],
    ['E E E E', [0, 0, 0, 0]],
    // A seventh makes another chord, another bass does not.
    ['A A7 A D', [0, 1, 0, 2]],
    ['C C/E C F', [0, 0, 0, 1]],
  ])('of %s', (text, order) => {
    expect(orderJudge.truth(asked(text))).toEqual(order);
  });

  test('over another bass as the class counts it', () => {
    expect(orderJudge.truth(asked('C C/E C F', true))).toEqual([0, 1, 0, 2]);
  });

  test('is asked of four slots alone', () => {
    expect(orderJudge.truth(asked('C G Am'))).toBeNull();
    expect(() => orderJudge.mark([0, 1, 2, 3], asked('C G Am'))).toThrow(/order-0 cannot be asked/);
  });
});

describe('the mark of an order', () => {
  test.each<[string, readonly number[], number, ErrorKind | null]>([
    ['A Bm A D', [0, 1, 0, 2], 1, null],
    // The loop from its second slot: A Bm A D is B A C B.
    ['A Bm A D', [0, 1, 2, 1], 0.6, 'starts-the-loop-elsewhere'],
    ['C F G F', [0, 1, 0, 2], 0.6, 'starts-the-loop-elsewhere'],
    ['A Bm A D', [0, 1, 2, 3], 0.5, 'hears-a-return-as-new'],
    ['A Bm A D', [0, 1, 0, 1], 0.75, 'hears-a-new-chord-as-a-return'],
    ['A Bm A D', [0, 0, 0, 0], 0.5, 'hears-a-new-chord-as-a-return'],
    ['C G Am F', [0, 1, 2, 0], 0.75, 'hears-a-new-chord-as-a-return'],
    // As many chords, and no rotation.
    ['A A D E', [0, 1, 2, 1], 0.25, null],
  ])('%s, answered %j: %f', (text, answer, credit, error) => {
    expect(orderJudge.mark(answer, asked(text))).toEqual({
      credit,
      exact: credit === 1,
      errors: error === null ? [] : [error],
    });
  });
});

import { expect, test } from 'vitest';
import { itemAt } from '../../shared-theory/items.ts';

test('the item at a place, or an error', () => {
  expect(itemAt(['a', 'b'], 1)).toBe('b');
  expect(() => itemAt(['a', 'b'], 2)).toThrow('No item 2 in a list of 2.');
  expect(() => itemAt([], 0)).toThrow(RangeError);
});

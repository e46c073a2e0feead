import { describe, expect, test } from 'vitest';
import { rake, type Limit } from '../../shared-theory/rake.ts';

type Item = { row: string; column: string };
const items: readonly Item[] = ['a', 'b'].flatMap((row) => ['x', 'y'].map((column) => ({ row, column })));
const share = (weights: readonly number[], keep: (item: Item) => boolean) => {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return (
    weights.reduce((sum, weight, index) => sum + (keep(items[index] ?? { row: '', column: '' }) ? weight : 0), 0) /
    total
  );
};
const exact = (of: 'row' | 'column', shares: Record<string, number>): Limit<Item> => ({
  within: () => 'all',
  group: (item) => item[of],
  share: (group) => [shares[group] ?? 0, shares[group] ?? 0],
});

describe('raking', () => {
  test('both margins hold, and the odds of the table stay (the property that defines the method)', () => {
    const raked = rake(items, [1, 2, 3, 4], [exact('row', { a: 0.3, b: 0.7 }), exact('column', { x: 0.6, y: 0.4 })]);
    expect(share(raked, (item) => item.row === 'a')).toBeCloseTo(0.3, 3);
    expect(share(raked, (item) => item.column === 'x')).toBeCloseTo(0.6, 3);
    const [ax = 0, ay = 0, bx = 0, by = 0] = raked;
    expect((ax * by) / (ay * bx)).toBeCloseTo((1 * 4) / (2 * 3), 6);
  });

  test('a range leaves what is inside it alone', () => {
    const range: Limit<Item> = { within: () => 'all', group: (item) => item.row, share: () => [0.2, 0.8] };
    expect(rake(items, [1, 2, 3, 4], [range])).toEqual([1, 2, 3, 4]);
    const capped = rake(items, [1, 1, 9, 9], [{ ...range, share: () => [0, 0.6] }]);
    expect(share(capped, (item) => item.row === 'b')).toBeCloseTo(0.6, 3);
  });

  test('classes apart are balanced apart; items without class or group are left alone', () => {
    const within: Limit<Item> = {
      within: (item) => (item.row === 'a' ? 'a' : null),
      group: (item) => item.column,
      share: () => [0.5, 0.5],
    };
    const raked = rake(items, [1, 3, 5, 7], [within]);
    expect(raked[0]).toBeCloseTo(raked[1] ?? 0, 3);
    expect(raked.slice(2)).toEqual([5, 7]);
  });

  test('a class of one group has nothing to balance', () => {
    expect(rake(items.slice(0, 1), [2], [exact('row', { a: 0.5 })])).toEqual([2]);
  });
});

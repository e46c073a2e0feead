import { expect, test } from 'vitest';
import { fiveRuns, middle } from '../../../server/bench/row.ts';

test('the middle of five is the third, the spread the ends', () => {
  expect(middle([3, 9, 1, 7, 5])).toEqual({ median: 5, spread: [1, 9] });
  expect(() => middle([])).toThrow('Nothing was measured.');
});

test('five runs of each, by turns, after one of each to warm up', async () => {
  const order: string[] = [];
  const { times, baselines } = await fiveRuns(
    () => order.push('ours'),
    () => order.push('bare'),
  );
  expect([times.length, baselines.length]).toEqual([5, 5]);
  expect(order.join(' ')).toBe('ours bare '.repeat(6).trim());
  expect((await fiveRuns(() => undefined)).baselines).toEqual([]);
});

import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { GRIDS } from '../../../shared-theory/groove-grid.ts';
import type { Grid } from '../../../shared-theory/groove-grid.ts';
import { openedJudge } from '../../../shared-theory/questions/opened/judge.ts';
import { context } from './given.ts';
import { heard, markOf } from './given-rhythm.ts';
import { rhythms } from './rhythms.ts';

const RIGHT = { credit: 1, exact: true, errors: [] };
const mark = (answer: readonly number[], opened: readonly number[], grid: Grid = 'E8') =>
  markOf('opened', answer, { opened, grid });

describe('which slot opens', () => {
  test('all that ring open, and in a row the first alone, or with some of those after it', () => {
    expect(mark([6, 7], [6, 7])).toEqual(RIGHT);
    expect(mark([6], [6, 7])).toEqual(RIGHT);
    expect(mark([5], [5, 6, 7])).toEqual(RIGHT);
    expect(mark([5, 6], [5, 6, 7])).toEqual(RIGHT);
    expect(mark([1, 3, 5, 7], [1, 3, 5, 7])).toEqual(RIGHT);
    expect(mark([2, 6], [2, 3, 6, 7])).toEqual(RIGHT);
  });

  test('a row goes on round the bar line: it opened on its first slot there', () => {
    expect(mark([7], [0, 7])).toEqual(RIGHT);
    expect(mark([0, 7], [0, 7])).toEqual(RIGHT);
    expect(mark([0], [0, 7])).toMatchObject({ credit: expect.closeTo(1 / 3, 12), exact: false });
  });

  test('all of them stand for the right answer, the others are listed, and chance is that of any set of slots', () => {
    const given = heard({ opened: [6, 7] });
    expect(openedJudge.truth(given)).toEqual([6, 7]);
    expect(openedJudge.also(given)).toEqual([[6]]);
    expect(openedJudge.chance(given)).toBeCloseTo(2 / 255, 12);
    expect(openedJudge.also(heard({ opened: [1, 3, 5, 7] }))).toEqual([]);
  });

  test.each([
    // By rote every slot: half of these are right; of two in a row a quarter.
    [[1], [1, 3, 5, 7], [], 0],
    [[1, 3, 5], [1, 3, 5, 7], [], 1 / 2],
    [[3, 7], [1, 3, 5, 7], [], 0],
    [[1, 3, 5, 7], [7], [], 0],
    [[3, 7], [7], [], 1 / 3],
    [[0, 2, 4, 6], [1, 3, 5, 7], ['opens-one-slot-off'], 0],
    [[7], [6, 7], ['opens-one-slot-off'], 1 / 3],
    [[5, 6], [6, 7], ['opens-one-slot-off'], 1 / 9],
    [[0, 7], [6, 7], ['opens-one-slot-off'], 1 / 9],
    [[5], [6, 7], ['opens-one-slot-off'], 0],
    [[0], [7], ['opens-one-slot-off'], 0],
    [[3], [6, 7], [], 0],
    [[0, 1, 2, 3, 4, 5, 6, 7], [6, 7], [], 0],
    [[6, 7, 0], [6, 7], [], 5 / 9],
  ])('%j where %j ring shows %j', (answer, opened, errors, credit) => {
    const given = mark(answer, opened);
    expect(given.errors).toEqual(errors);
    expect(given.credit).toBeCloseTo(credit, 12);
    expect(given.exact).toBe(false);
  });

  test('a slot that the grid has not earns nothing', () => {
    expect(mark([6, 7, 12], [6, 7])).toEqual({ credit: 0, exact: false, errors: [] });
    expect(mark([6], [5], 'C6')).toEqual({ credit: 0, exact: false, errors: [] });
  });

  test('is not asked where all or nothing rings, nor without a groove', () => {
    for (const given of [heard({ opened: null }), context(0)]) {
      expect(openedJudge.truth(given)).toBeNull();
      expect(openedJudge.also(given)).toEqual([]);
      expect(() => openedJudge.mark([0], given)).toThrow('opened-0 cannot be asked');
    }
  });

  test('to pick every slot is never right, and worth nothing', () => {
    const asked = rhythms.filter(({ opened }) => opened !== null);
    fc.assert(
      fc.property(asked, (rhythm) => {
        const { slots } = GRIDS[rhythm.grid];
        const all = Array.from({ length: slots }, (_, slot) => slot);
        const { credit, exact } = openedJudge.mark(all, heard(rhythm));
        expect(exact).toBe(false);
        expect(credit).toBe(0);
      }),
    );
  });
});

import { describe, expect, test } from 'vitest';
import { analyseTaps } from '../../../shared-theory/taps/analysis.ts';
import { evenedSevens } from '../../../shared-theory/taps/sevens.ts';
import { judges } from '../../../shared-theory/questions/judges.ts';
import { context } from '../questions/given.ts';
import { RELAXED } from '../questions/given-rhythm.ts';

/** Milliseconds by which a hand strays, in turn: their standard deviation is 18. */
const STRAYS = [12, -20, 5, 24, -9, -27, 16, 3, -14, 21, -6, 18, -23, 8, -17, 26];

/** Taps on the groups of bars of seven at a tempo of quarters, the first of them being `first`, exactly or as a hand does. */
function groups(
  tempo: number,
  first: 0 | 1 | 2,
  { count = 16, strays = [0] }: { count?: number; strays?: number[] } = {},
) {
  let time = 0;
  const taps = Array.from({ length: count }, (_, tap) => {
    const at = time;
    time += ((tap + first) % 3 === 2 ? 3 : 2) * (30_000 / tempo);
    return at + (strays[tap % strays.length] ?? 0);
  });
  return taps.map((each) => each - (taps[0] ?? 0));
}

const SEVEN = context(0, { tempo: 120, rhythm: { ...RELAXED, grid: 'V7', counts: [1, 2], barCounts: [7, 3] } });

describe('taps on the groups of a bar of seven', () => {
  test.each([0, 1, 2] as const)('begun on group %d: the tempo of its pairs', (first) => {
    const exact = analyseTaps(groups(120, first));
    expect(exact?.tempo).toBeCloseTo(120, 9);
    expect(exact?.unevenness).toBeCloseTo(0, 9);
    expect(exact?.sevens).toBe(true);
    const tapped = groups(120, first, { strays: STRAYS });
    expect(Math.abs((analyseTaps(tapped)?.tempo ?? 0) / 120 - 1)).toBeLessThan(0.01);
    expect(judges.tempo.mark(tapped, SEVEN)).toMatchObject({ exact: true, errors: [] });
    expect(judges.steadiness.mark(groups(120, first), SEVEN)).toMatchObject({ credit: 1 });
  });

  test('too fast by a tenth it is wrong, and when it began changes nothing', () => {
    expect(judges.tempo.mark(groups(132, 0, { strays: STRAYS }), SEVEN)).toMatchObject({ credit: 0, exact: false });
    const late = groups(120, 1, { strays: STRAYS }).map((tap) => tap + 250);
    expect(evenedSevens(late)?.map((tap) => Math.round(tap - 250))).toEqual(
      evenedSevens(groups(120, 1, { strays: STRAYS }))?.map(Math.round),
    );
  });

  test('even taps, limping ones, long and short ones and three and three and two are none', () => {
    const rows = [
      [500],
      [500, 560],
      [400, 200],
      [450, 450, 300],
      [500, 500, 500, 1000],
      [310, 720, 450, 880, 260, 990, 530],
    ];
    for (const row of rows) {
      let time = 0;
      const taps = Array.from({ length: 16 }, (_, tap) => (time += row[tap % row.length] ?? 0) - (row[0] ?? 0));
      expect([row, evenedSevens(taps)]).toEqual([row, null]);
      expect(analyseTaps(taps)?.sevens).toBeUndefined();
    }
  });

  test('nine taps could be anything', () => {
    expect(evenedSevens(groups(120, 0, { count: 9 }))).toBeNull();
  });
});

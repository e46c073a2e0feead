import { grooveWords } from '../../server/protocol/words/groove-words.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import { GRIDS, slotsPerBar, type Grid } from '../../shared-theory/groove-grid.ts';

/** How a slot is counted: `2`, `&`; heavier where a beat or a group begins. */
export type Count = { readonly sign: string; readonly strong: boolean };

/** Signs of one beat, its number apart; null where each slot of the bar has a number of its own. */
const WITHIN: Readonly<Record<Grid, readonly string[] | null>> = {
  E8: ['&'],
  E16: ['&'],
  W6: ['&'],
  S16: ['e', '&', 'a'],
  T12: ['&', 'a'],
  C6: null,
  V7: null,
};
/** Slots on which groups begin where each slot has a number: two threes, and two, two and three. */
const GROUPS: Readonly<Partial<Record<Grid, readonly number[]>>> = { C6: [0, 3], V7: [0, 2, 4] };

/** Slots that stand side by side at most: two beats in eighths, one beat in sixteenths or triplets, one group of three. */
const ROW: Readonly<Record<Grid, number>> = { E8: 4, E16: 4, W6: 4, S16: 4, T12: 3, C6: 3, V7: 4 };

/** How the slot of a bar is counted; `place` from 0. */
export function countOf(grid: Grid, place: number): Count {
  const inBar = place % slotsPerBar({ grid });
  const within = WITHIN[grid];
  if (within === null) return { sign: String(inBar + 1), strong: GROUPS[grid]?.includes(inBar) ?? false };
  const inBeat = inBar % (within.length + 1);
  if (inBeat > 0) return { sign: within[inBeat - 1] ?? '', strong: false };
  return { sign: String(inBar / (within.length + 1) + 1), strong: true };
}

/** A count as it is said: `2`, `2 and`, `bar 2, 3 and`. */
export function saidCount(grid: Grid, place: number): string {
  const { sign, strong } = countOf(grid, place);
  const within = WITHIN[grid];
  const beat =
    within === null || strong
      ? ''
      : countOf(grid, place - ((place % slotsPerBar({ grid })) % (within.length + 1))).sign;
  const said = [beat, sign === '&' ? grooveWords.and : sign].filter(Boolean).join(' ');
  const { bars } = GRIDS[grid];
  const bar = Math.floor(place / slotsPerBar({ grid })) + 1;
  return bars > 1 ? `${fill(grooveWords.editor.bar, { bar })}, ${said}` : said;
}

/** Rows of slots on the page, by their first slot and how many; of a groove of several bars each bar begins a row. */
export function rowsOf(grid: Grid, slots: number): readonly { readonly from: number; readonly count: number }[] {
  const perBar = slotsPerBar({ grid });
  return Array.from({ length: slots / perBar }, (_, bar) =>
    Array.from({ length: Math.ceil(perBar / ROW[grid]) }, (_, row) => ({
      from: bar * perBar + row * ROW[grid],
      count: Math.min(ROW[grid], perBar - row * ROW[grid]),
    })),
  ).flat();
}

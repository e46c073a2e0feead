import { GRIDS, slotsPerBar, type Grid } from '../../../shared-theory/groove-grid.ts';

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

/** Number of the beat that a slot belongs to: for the and of two, `2`. */
export function beatOf(grid: Grid, place: number): string {
  const step = (WITHIN[grid]?.length ?? 0) + 1;
  return countOf(grid, place - ((place % slotsPerBar({ grid })) % step)).sign;
}

/** Rows of slots, by their first slot and how many; of a pattern of several bars each bar begins a row. */
export function rowsOf(
  grid: Grid,
  slots: number,
  most = ROW[grid],
): readonly { readonly from: number; readonly count: number }[] {
  const perBar = slotsPerBar({ grid });
  return Array.from({ length: slots / perBar }, (_, bar) =>
    Array.from({ length: Math.ceil(perBar / most) }, (_, row) => ({
      from: bar * perBar + row * most,
      count: Math.min(most, perBar - row * most),
    })),
  ).flat();
}

type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** One slot of a drawn grid: its whole column, and where on it marks stand. */
export type GridCell = Box & {
  /** From 0. */
  readonly slot: number;
  readonly count: Count;
  /** Middle of the column. */
  readonly middle: number;
  /** Height at which its count is written, and that of the figures. */
  readonly label: number;
  readonly figure: number;
  /** Where the lane of marks begins, and the line that they stand on. */
  readonly lane: number;
  readonly base: number;
};

/** One row of a drawn grid, from its bar line to the next. */
export type GridRow = Box & {
  readonly cells: readonly GridCell[];
  readonly lane: number;
  readonly base: number;
  /** The pattern ends here. */
  readonly last: boolean;
};

/**
 * The beat grid in a box: rows of columns of one width under their counts. `most`: columns side by side, by default as many as a
 * thumb can tell apart. `under` is the share of a lane below the line that marks stand on. Units are those of the box.
 */
export function beatGrid(
  grid: Grid,
  { x, y, width, height }: Box,
  { most, under = 0.16 }: { readonly most?: number; readonly under?: number } = {},
): readonly GridRow[] {
  const parts = rowsOf(grid, GRIDS[grid].slots, most);
  const column = width / Math.max(...parts.map(({ count }) => count));
  const pitch = height / parts.length;
  const figure = Math.min(pitch * 0.19, column * 0.34);
  return parts.map(({ from, count }, index) => {
    const top = y + index * pitch;
    const lane = top + figure * 1.45;
    const end = top + pitch * 0.96;
    const base = end - (end - lane) * under;
    const cells = Array.from({ length: count }, (_, at): GridCell => ({
      slot: from + at,
      count: countOf(grid, from + at),
      x: x + at * column,
      y: top,
      width: column,
      height: pitch,
      middle: x + (at + 0.5) * column,
      label: top + figure,
      figure,
      lane,
      base,
    }));
    const row = { x, y: top, width: count * column, height: end - top, lane, base };
    return { ...row, cells, last: index === parts.length - 1 };
  });
}

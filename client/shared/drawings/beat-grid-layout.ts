import { GRIDS, slotsPerBar, type Grid } from '../../../shared-theory/groove-grid.ts';
import { countOf, type Count } from '../../../shared-theory/slot-count.ts';

/** Slots that stand side by side at most: two beats in eighths, one beat in sixteenths or triplets, one group of three. */
const ROW: Readonly<Record<Grid, number>> = { E8: 4, E16: 4, W6: 4, S16: 4, T12: 3, C6: 3, V7: 4 };

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

export type Cell = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

/** Cells of a pad with two columns, row by row; a last odd one stands alone at the left. */
export function letterCells(count: number, width: number, height: number): readonly Cell[] {
  const rows = Math.max(1, Math.ceil(count / 2));
  return Array.from({ length: count }, (_, index) => ({
    x: index % 2 === 0 ? 0 : width / 2,
    y: (Math.floor(index / 2) * height) / rows,
    width: width / 2,
    height: height / rows,
  }));
}

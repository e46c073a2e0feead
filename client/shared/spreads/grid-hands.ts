import type { WireSpread, WireTruth } from '../../../server/protocol/views.ts';
import { GRIDS, type Grid } from '../../../shared-theory/groove-grid.ts';
import { beatGrid, type GridRow } from '../drawings/beat-grid-layout.ts';
import type { SpreadProps } from './spread-props.ts';

/** Narrower columns, in units of the host screen, are not read from the back row; on a desk in pixels. */
const LEAST_COLUMN = 84;
const LEAST_DESK_COLUMN = 40;

/** The grid of a question; eighths in four where it is not told. */
export function gridOf({ asking: { grid } }: WireSpread): Grid {
  return grid !== undefined && Object.hasOwn(GRIDS, grid) ? (grid as Grid) : 'E8';
}

/** The grid of a spread in its whole size: as many slots in a row as can be read. */
export function layGrid(grid: Grid, { width, height, scale }: SpreadProps['size'], under?: number): readonly GridRow[] {
  const least = Math.max(LEAST_COLUMN * scale, LEAST_DESK_COLUMN);
  const most = Math.max(1, Math.floor((width - 4 * scale) / least));
  const box = { x: 2 * scale, y: 0, width: width - 4 * scale, height };
  return beatGrid(grid, box, { most: evenRows(grid, most), ...(under === undefined ? {} : { under }) });
}

/** Slots in a row, at most `most`, so that rows are alike and begin on a beat where that can be. */
function evenRows(grid: Grid, most: number): number {
  const perBar = GRIDS[grid].slots / GRIDS[grid].bars;
  const rows = Math.ceil(perBar / most);
  return Math.ceil(perBar / rows);
}

/** Hands on each slot by what was marked there: one map a slot, from choices to hands. */
export function handsOnSlots(spread: WireSpread): readonly ReadonlyMap<unknown, number>[] {
  const { slots } = GRIDS[gridOf(spread)];
  return Array.from({ length: slots }, (_, slot) => {
    const hands = new Map<unknown, number>();
    for (const { answer, count } of spread.counts) {
      const marked: unknown = Array.isArray(answer) ? answer[slot] : undefined;
      if (marked !== undefined) hands.set(marked, (hands.get(marked) ?? 0) + count);
    }
    return hands;
  });
}

/** Hands that marked each slot as one that rings open. */
export function handsOnOpened(spread: WireSpread): readonly number[] {
  const { slots } = GRIDS[gridOf(spread)];
  return Array.from({ length: slots }, (_, slot) =>
    spread.counts.reduce(
      (sum, { answer, count }) => sum + (Array.isArray(answer) && answer.includes(slot) ? count : 0),
      0,
    ),
  );
}

/** What is right on each slot, as shown: entries of the right answer. */
export function rightSlots(truth: WireTruth | null | undefined): readonly unknown[] {
  return Array.isArray(truth?.answer) ? (truth.answer as readonly unknown[]) : [];
}

/** Signs that are right on each slot, in the text of an answer: where bars differ, each of theirs. */
export function signsOn(truth: WireTruth | null | undefined): readonly ReadonlySet<string>[] {
  if (!truth) return [];
  const texts = [truth.key, ...(truth.also ?? [])];
  return Array.from(truth.key, (_, slot) => new Set(texts.flatMap((text) => text[slot] ?? [])));
}

/** Slots on which most of the room is right, of an answer that has a sign for each slot; the room's sign is the one with most hands. */
export function slotsMostHave({ counts }: Pick<WireSpread, 'counts'>, truth: WireTruth): number {
  return signsOn(truth).filter((right, slot) => {
    const hands = new Map<string, number>();
    for (const { key, count } of counts) {
      const sign = key[slot];
      if (sign !== undefined) hands.set(sign, (hands.get(sign) ?? 0) + count);
    }
    const most = Math.max(0, ...hands.values());
    const first = [...hands].find(([, count]) => count === most)?.[0];
    return first !== undefined && right.has(first);
  }).length;
}

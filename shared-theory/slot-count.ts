import { slotsPerBar, type Grid } from './groove-grid.ts';

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

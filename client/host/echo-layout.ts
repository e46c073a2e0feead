import type { HostView } from '../../server/protocol/views.ts';
import { GRIDS, beatsPerSlot, slotsPerBar, type Grid } from '../../shared-theory/groove-grid.ts';
import { parseGroove } from '../../shared-theory/groove-text.ts';
import type { GridRow } from '../shared/drawings/beat-grid-layout.ts';
import type { Heard } from './sound-view.ts';

/** A grid that was drawn, as it sounds: by slot 0 silent to 2 heavy. */
export type DrawnGrid = { readonly grid: Grid; readonly weights: readonly number[] };

/** The drawn grid that the log says is played; null while none is. */
export function echoOf({ sound, vamp }: Pick<HostView, 'sound' | 'vamp'>): { readonly groove: string } | null {
  const { playing, round, change } = sound;
  return playing && round === vamp?.round && change.kind === 'echo' ? change : null;
}

/** What is drawn for each accent of a groove's text. */
const WEIGHTS = { 0: 0, 1: 1, 2: 1.5, 3: 2 } as const;

/** Reads a drawn grid from the text in which it was ordered. Throws `GrooveError` for a text that is none. */
export function drawnGrid(text: string): DrawnGrid {
  const { grid, slots } = parseGroove(text);
  return { grid, weights: slots.map(({ accent }) => WEIGHTS[accent]) };
}

/** Where the sweep stands over a drawn grid: x, and the row that sounds; null while no bar of the loop is heard. */
export function echoSweep(
  grid: Grid,
  rows: readonly GridRow[],
  heard: Heard | null,
  still = false,
): { readonly x: number; readonly row: GridRow } | null {
  if (heard?.phase !== 'vamp' || heard.silent) return null;
  const perBar = slotsPerBar({ grid });
  const beat = still ? Math.floor(heard.beat) : heard.beat;
  const inBar = Math.min(perBar - 1e-6, Math.max(0, beat / beatsPerSlot({ grid })));
  const place = (heard.bar % GRIDS[grid].bars) * perBar + inBar;
  const row = rows.find(({ cells }) => cells.some(({ slot }) => slot === Math.floor(place)));
  const cell = row?.cells.find(({ slot }) => slot === Math.floor(place));
  // A slot sounds on the middle of its column, as a slash stands there.
  return row && cell ? { x: cell.middle + (place - cell.slot) * cell.width, row } : null;
}

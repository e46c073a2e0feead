import type { GridStroke } from '../../rhythm/rhythm-truth.ts';
import { onTheGrid } from '../on-the-grid.ts';

/** What the hand does on a slot, on the pad. */
export const GRID_STROKES: readonly GridStroke[] = ['down', 'up', 'silent'];

const SIGNS = { down: 'D', up: 'U', silent: '-' } as const;

export const strokeGridAsk = onTheGrid('stroke-grid', GRID_STROKES, (stroke) => SIGNS[stroke]);

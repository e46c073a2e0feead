import { onTheGrid } from '../on-the-grid.ts';

const SIGNS = { down: 'D', up: 'U', silent: '-' } as const;

export const strokeGridAsk = onTheGrid('stroke-grid', ['down', 'up', 'silent'], (stroke) => SIGNS[stroke]);

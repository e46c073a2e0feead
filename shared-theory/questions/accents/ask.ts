import { onTheGrid } from '../on-the-grid.ts';

export const accentsAsk = onTheGrid('accents', [0, 1, 2], String);

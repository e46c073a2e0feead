import type { Weight } from '../../rhythm/rhythm-truth.ts';
import { onTheGrid } from '../on-the-grid.ts';

/** Weights on the pad: silent, light, heavy. */
export const WEIGHTS: readonly Weight[] = [0, 1, 2];

export const accentsAsk = onTheGrid('accents', WEIGHTS, String);

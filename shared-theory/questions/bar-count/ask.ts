import type { BarCount } from '../../rhythm/rhythm-truth.ts';
import { oneOf } from '../one-of.ts';

/** Counts on the pad. */
export const BAR_COUNTS: readonly BarCount[] = [2, 3, 4, 6, 7];

export const barCountAsk = oneOf('bar-count', BAR_COUNTS);

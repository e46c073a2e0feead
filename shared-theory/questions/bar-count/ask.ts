import { oneOf } from '../one-of.ts';

export const barCountAsk = oneOf('bar-count', [2, 3, 4, 6, 7]);

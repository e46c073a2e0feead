import { oneOf } from '../one-of.ts';

export const halfTimeAsk = oneOf('half-time', ['full-time', 'half-time']);

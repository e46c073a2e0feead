import { oneOf } from '../one-of.ts';

export const threesAsk = oneOf('threes', ['two-threes', 'three-twos']);

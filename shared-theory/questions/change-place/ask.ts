import { oneOf } from '../one-of.ts';

export const changePlaceAsk = oneOf('change-place', ['on-one', 'pushed']);

import { oneOf } from '../one-of.ts';

export const swingAsk = oneOf('swing', ['straight', 'swung']);

import { oneOf } from '../one-of.ts';

export const pendulumAsk = oneOf('pendulum', ['keeps', 'breaks']);

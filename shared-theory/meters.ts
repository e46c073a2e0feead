import type { Meter } from './vamps.ts';

/** Beats that the tempo counts in one bar: quarters, in 6/8 and 12/8 dotted quarters. */
export const BEATS_PER_BAR: Readonly<Record<Meter, number>> = {
  '4/4': 4,
  '3/4': 3,
  '6/8': 2,
  '12/8': 4,
  '7/8': 3.5,
};

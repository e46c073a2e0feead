import { MOST_DRIFT, rushesOrDrags } from '../taps/holding.ts';
import type { TempoChange } from '../taps/analyse.ts';
import { CLOSE } from '../taps/level.ts';

/** Where nothing is left, in percent of the tempo. */
const LOST = 10;

/**
 * Credit for a tempo that is kept, 0 to 1: all within 2 percent, none from 10 on. What is not beyond doubt takes nothing away while it is
 * within 4, where no ear hears it.
 */
export function heldCredit(change: TempoChange): number {
  const away = Math.abs(change.percent);
  if (rushesOrDrags(change) === null && away <= 100 * CLOSE) return 1;
  return linear(away, MOST_DRIFT, LOST);
}

/** 1 up to a value, 0 from another on, a straight line between; to a hundredth. */
export function linear(value: number, full: number, none: number): number {
  return Math.floor(100 * Math.min(1, Math.max(0, (none - value) / (none - full)))) / 100;
}

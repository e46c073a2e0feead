import type { Touch } from '../perform.ts';

/**
 * Level of each string beside the mean of a strum, 1 to 6, in decibels: the bass forward, since direction is asked of it and
 * the ear follows the top.
 */
export const STRING_DB = [-2.5, -2.5, -2, 1, 2, 2] as const;

/**
 * K-weighted level of a touch over the ear's first glance beside an open string of the same accent, in decibels: marks hold
 * across touches. Muted strings put all they have into its first half and stay a little under; a choke rings for all of it
 * and is missed after.
 */
export const TOUCH_DB: Readonly<Record<Touch, number>> = { open: 0, ring: 0, half: 0, palm: -2, dead: -2, choke: 1.5 };

/** The noise of a pick on a string that is muted, beside an open one: there is little to catch. */
export const NOISE_TOUCH_DB: Readonly<Record<Touch, number>> = {
  open: 0,
  ring: 0,
  half: -5,
  palm: -12,
  dead: -12,
  choke: 0,
};

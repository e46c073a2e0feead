import type { Touch } from './perform.ts';

/** How much louder than the mean of a strum each string is, 1 to 6, in decibels: wound strings carry it. */
const STRING_DECIBELS = [-2.5, -2.5, -2, 1, 2, 2] as const;

/**
 * What a stroke's strings gain or lose by its touch, in decibels, so that marks hold across touches: muted strings are shorter than
 * the ear's first glance, choked ones ring for all of it.
 */
const TOUCH_DECIBELS: Readonly<Record<Touch, number>> = { open: 0, ring: 0, half: 0, palm: 3.5, dead: 5, choke: -1.5 };

/** An up is a little weaker than a down of the same mark, less than marks lie apart. */
const UP_DECIBELS = -1;

const power = (string: number) => 10 ** ((STRING_DECIBELS[string - 1] ?? 0) / 10);
const FULL_POWER = STRING_DECIBELS.reduce((sum, _, index) => sum + power(index + 1), 0);

/**
 * Decibels that each string of a stroke gains so that its mark alone says how loud it is: a player who takes few strings puts the
 * power of a full stroke on them. `strings` are those struck, 1 to 6.
 */
export function strokeTrim(strings: readonly number[], touch: Touch, up: boolean): number {
  const struck = strings.reduce((sum, string) => sum + power(string), 0);
  const shared = struck > 0 ? 10 * Math.log10(FULL_POWER / struck) : 0;
  return shared + TOUCH_DECIBELS[touch] + (up ? UP_DECIBELS : 0);
}

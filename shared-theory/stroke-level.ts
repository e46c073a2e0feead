import { STRING_DB } from './sound/string-levels.ts';

/** An up is a little weaker than a down of the same mark, less than marks lie apart. */
const UP_DECIBELS = -1;

const power = (string: number) => 10 ** ((STRING_DB[string - 1] ?? 0) / 10);
const FULL_POWER = STRING_DB.reduce((sum, _, index) => sum + power(index + 1), 0);

/**
 * Decibels that each string of a stroke gains so that its mark alone says how loud it is: a player who takes few strings puts the
 * power of a full stroke on them. `strings` are those struck, 1 to 6.
 */
export function strokeTrim(strings: readonly number[], up: boolean): number {
  const struck = strings.reduce((sum, string) => sum + power(string), 0);
  const shared = struck > 0 ? 10 * Math.log10(FULL_POWER / struck) : 0;
  return shared + (up ? UP_DECIBELS : 0);
}

import { bluesOf, bluesOn } from '../../blues.ts';
import type { Chord } from '../../chords.ts';
import { parseKeyName } from '../../keys.ts';
import type { Key } from '../../keys.ts';
import { visitedKeys } from '../../visited-keys.ts';

/** A key with the numerals of a loop's chords in it, as written: `II7`, `bVII`. */
export type NamedKey = { readonly key: Key; readonly numerals: readonly string[] };

/**
 * How chords that no key owns are named, the likeliest first: in their blues, from its first chord or from another (E7 A7 is I–IV on
 * E and V–I on A), or in the keys that have them but for a visitor. RangeError without chords.
 */
export function unownedReadings(chords: readonly Chord[]): readonly NamedKey[] {
  if (bluesOf(chords) === null)
    return visitedKeys(chords).map(({ key, numerals }): NamedKey => ({ key: parseKeyName(key), numerals }));
  const homes = chords.flatMap(({ root }) => bluesOn(root, chords) ?? []);
  return homes.map(({ tonic, numerals }): NamedKey => ({ key: { tonic, mode: 'major' }, numerals }));
}

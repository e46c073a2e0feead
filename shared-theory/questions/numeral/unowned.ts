import { bluesOf } from '../../blues.ts';
import type { Chord } from '../../chords.ts';
import { parseKeyName } from '../../keys.ts';
import type { Key } from '../../keys.ts';
import { isTonicOf, visitedKeys } from '../../visited-keys.ts';

/** A key with the numerals of a loop's chords in it, as written: `II7`, `bVII`. */
export type NamedKey = { readonly key: Key; readonly numerals: readonly string[] };

/**
 * How chords that no key owns are named: in their blues, or in the keys that have them but for a visitor. Those whose tonic chord
 * opens the loop stand apart; elsewhere only those whose tonic chord sounds count. RangeError without chords.
 */
export function unownedReadings(chords: readonly Chord[]): {
  readonly onHome: readonly NamedKey[];
  readonly elsewhere: readonly NamedKey[];
} {
  const blues = bluesOf(chords);
  if (blues)
    return { onHome: [{ key: { tonic: blues.tonic, mode: 'major' }, numerals: blues.numerals }], elsewhere: [] };
  const [first, ...others] = chords;
  const keys = visitedKeys(chords).map(({ key, numerals }): NamedKey => ({ key: parseKeyName(key), numerals }));
  const restsOn = (among: readonly Chord[]) => keys.filter(({ key }) => among.some((chord) => isTonicOf(chord, key)));
  const onHome = restsOn(first ? [first] : []);
  return { onHome, elsewhere: restsOn(others).filter((key) => !onHome.includes(key)) };
}

import { bluesOf } from './blues.ts';
import { soundsAsOverBass } from './chords.ts';
import type { Chord } from './chords.ts';
import { keyOwns, numeralIn, respellIn } from './degrees.ts';
import { itemAt } from './items.ts';
import { keyId, keyName, keySignature, majorOf, relativeKey } from './keys.ts';
import type { Key } from './keys.ts';
import { pitchClass } from './pitch.ts';
import type { KeyId } from './questions/question.ts';
import { visitorOf, VISITS } from './visitors.ts';
import type { Visitor } from './visitors.ts';

/** A key that owns a vamp but for one visitor, or for two. */
export type VisitedKey = {
  readonly key: string;
  readonly id: KeyId;
  /** One for each chord of the vamp, visitors by their places. */
  readonly numerals: readonly string[];
  /** The different ones, in order of first sounding. */
  readonly visitors: readonly Visitor[];
};

/** Most visitors of a key. */
const MOST_VISITORS = 2;

/**
 * The major keys and natural minors that own a vamp but for one visitor, or for two that come from the same place; the key of the
 * first chord may have two from any. That key stands before the others, then minors that raise their sevenths, those with fewer visitors, those whose tonic chord sounds, those by where the visitor comes from, and those with fewer signs.
 * Empty for a blues, whose sevenths visit nobody, and for one chord alone. RangeError without chords.
 */
export function visitedKeys(chords: readonly Chord[]): readonly VisitedKey[] {
  const [first] = chords;
  if (!first) throw new RangeError('Visitors are sought among at least one chord.');
  if (bluesOf(chords)) return [];
  const different = chords.filter(
    (chord, slot) => chords.findIndex((other) => soundsAsOverBass(chord, other)) === slot,
  );
  const found = ALL_KEYS.flatMap((sounding) => {
    const strangers = different.filter((chord) => !keyOwns(sounding, chord)).length;
    if (strangers === 0 || strangers === different.length || strangers > MOST_VISITORS) return [];
    const key = spelledFor(chords, sounding);
    const visitors = visitorsIn(different, key);
    const fits = visitors !== null && (isTonicOf(first, key) || areAlike([...visitors.values()]));
    return fits ? [{ key, visitors }] : [];
  });
  const rank = ({ key, visitors }: { readonly key: Key; readonly visitors: ReadonlyMap<Chord, Visitor> }) => {
    const [visitor] = visitors.values();
    return [
      isTonicOf(first, key) ? 0 : 1,
      [...visitors.values()].every(({ visit }) => visit === 'raised-seventh') ? 0 : 1,
      visitors.size,
      different.some((chord) => isTonicOf(chord, key)) ? 0 : 1,
      VISITS.findIndex((visit) => visit === visitor?.visit),
      Math.abs(keySignature(key)),
    ];
  };
  return found
    .toSorted((one, other) => firstDifference(rank(one), rank(other)))
    .map(({ key, visitors }) => ({
      key: keyName(key),
      id: keyId(key),
      numerals: chords.map((chord) => {
        const known = different.find((other) => soundsAsOverBass(chord, other));
        return (known && visitors.get(known)?.numeral) ?? numeralIn(chord, key);
      }),
      visitors: [...visitors.values()],
    }));
}

/** The chords that a key does not own, by their names as visitors; null where one has none. */
function visitorsIn(different: readonly Chord[], key: Key): ReadonlyMap<Chord, Visitor> | null {
  const strangers = different.filter((chord) => !keyOwns(key, chord));
  const visitors = new Map<Chord, Visitor>();
  for (const chord of strangers) {
    const visitor = visitorOf(chord, key, different);
    if (visitor === null) return null;
    visitors.set(chord, visitor);
  }
  return visitors;
}

/** Whether visitors come from the same place, and applied ones lead to the same. */
function areAlike(visitors: readonly Visitor[]): boolean {
  const places = visitors.map(({ visit, of = '' }) => visit + of.slice(of.indexOf('/')));
  return new Set(places).size === 1;
}

/** Whether a key rests on a chord: it stands on its tonic, minor where the key is, or without a third. */
export function isTonicOf({ root, quality }: Chord, { tonic, mode }: Key): boolean {
  const restsOn = quality === mode || quality === 'power' || quality.startsWith('suspended');
  return restsOn && pitchClass(root) === pitchClass(tonic);
}

/** The twelve majors and twelve minors by sound. */
const ALL_KEYS: readonly Key[] = Array.from({ length: 12 }, (_, place) => majorOf(place)).flatMap((major) => [
  major,
  relativeKey(major),
]);

/** A key on the side that writes most roots as the chords do, else on that with fewer signs. */
function spelledFor(chords: readonly Chord[], key: Key): Key {
  const signature = keySignature(key);
  const sides = [signature - 12, signature, signature + 12]
    .filter((each) => Math.abs(each) <= 7)
    .map((each) => (key.mode === 'major' ? majorOf(each) : relativeKey(majorOf(each))));
  const written = (side: Key) =>
    chords.filter((chord) => keyOwns(side, chord) && respellIn(chord, side).root === chord.root).length;
  const [best = key] = sides.toSorted(
    (one, other) => written(other) - written(one) || Math.abs(keySignature(one)) - Math.abs(keySignature(other)),
  );
  return best;
}

function firstDifference(one: readonly number[], other: readonly number[]): number {
  return one.map((each, place) => each - itemAt(other, place)).find((difference) => difference !== 0) ?? 0;
}

import { bluesOf } from './blues.ts';
import { readSymbol } from './chords.ts';
import type { Chord } from './chords.ts';
import { keyOwns, numeralIn, respellIn } from './degrees.ts';
import { differentChords, isSameSound } from './different-chords.ts';
import { itemAt } from './items.ts';
import { keyId, keyName, keySignature, majorOf, relativeKey, scaleNotes } from './keys.ts';
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

/** A key with its visitors, by the chords that they are. */
type Found = { readonly key: Key; readonly visitors: ReadonlyMap<Chord, Visitor> };

/** So many of them are told at once: the likeliest. */
export const MOST_TOLD = 3;

/** Most visitors of a key; of a minor key whose sixth and seventh rise, as ii, IV and V together. */
const MOST_VISITORS = 2;
const MOST_RISEN = 3;

/**
 * The major keys and natural minors that own a vamp but for one visitor, or for two that come from the same place; the key of the
 * first chord may have two from any. Only those that are heard: their tonic chord sounds, or V and vii° on a raised seventh stand
 * for it, or V beside one borrowed chord, or it is the relative major of a vi that its V leads to. The key of the first chord stands before the others, unless its visitor leads to
 * its fifth where that is the V of a minor that raises its seventh; then those with their visitors spelled as
 * written, minors that raise their sixths and sevenths, those with fewer visitors, those whose tonic chord sounds, those
 * by where the visitor comes from, and those with fewer signs.
 * Empty for a blues, whose sevenths visit nobody, and for one chord alone. RangeError without chords.
 */
export function visitedKeys(chords: readonly Chord[]): readonly VisitedKey[] {
  const [first] = chords;
  if (!first) throw new RangeError('Visitors are sought among at least one chord.');
  if (bluesOf(chords)) return [];
  const different = differentChords(chords, { slashIsNew: true });
  const found = ALL_KEYS.flatMap((sounding): readonly Found[] => {
    const strangers = different.filter((chord) => !keyOwns(sounding, chord)).length;
    if (strangers === 0 || strangers === different.length || strangers > MOST_RISEN) return [];
    const key = spelledFor(chords, sounding);
    const visitors = visitorsIn(different, key);
    if (visitors === null) return [];
    const all = [...visitors.values()];
    const few = all.length <= MOST_VISITORS || rises(all);
    const fits = few && (isTonicOf(first, key) || areAlike(all)) && isHeard(key, all, different);
    return fits ? [{ key, visitors }] : [];
  });
  const minorOwns = found.some(({ visitors }) => rises([...visitors.values()]));
  const rank = ({ key, visitors }: Found) => {
    const [visitor] = visitors.values();
    const all = [...visitors.values()];
    const sounds = different.some((chord) => isTonicOf(chord, key));
    return [
      minorOwns && all.some(({ of }) => of?.endsWith('/V')) ? 1 : 0,
      isTonicOf(first, key) ? 0 : 1,
      (sounds || rises(all)) && isAsWritten(visitors) ? 0 : 1,
      rises(all) ? 0 : 1,
      visitors.size,
      sounds ? 0 : 1,
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
        const known = different.find((other) => isSameSound(chord, other));
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

/** Whether visitors come from the same place, and applied ones lead to the same. The risen sixth and seventh of a minor are one. */
function areAlike(visitors: readonly Visitor[]): boolean {
  const places = visitors.map(({ visit, of = '' }) => (isRisen(visit) ? 'risen' : visit) + of.slice(of.indexOf('/')));
  return new Set(places).size === 1;
}

function isRisen(visit: Visitor['visit']): boolean {
  return visit === 'raised-seventh' || visit === 'dorian';
}

/** Whether a minor key owns all with its seventh raised, its sixth as well or not: ascending it takes both. */
function rises(visitors: readonly Visitor[]): boolean {
  return visitors.every(({ visit }) => isRisen(visit)) && visitors.some(({ visit }) => visit === 'raised-seventh');
}

/** Whether a key is heard in a vamp: its tonic chord sounds, be it with its fifth raised, or the visitors need none to be understood. */
function isHeard(key: Key, visitors: readonly Visitor[], different: readonly Chord[]): boolean {
  if (different.some((chord) => isTonicOf(chord, key)) || visitors.some(({ numeral }) => numeral === 'I+')) return true;
  if (visitors.every(({ visit }) => visit === 'raised-seventh')) return true;
  const has = (degree: number, quality: Chord['quality']) =>
    different.some((chord) => chord.quality === quality && isOnDegree(chord, degree, key));
  const [visitor, ...others] = visitors;
  if (visitor?.visit === 'borrowed') return others.length === 0 && has(4, 'major');
  return visitors.every(({ of }) => of?.endsWith('/vi')) && has(5, 'minor');
}

function isOnDegree({ root }: Chord, degree: number, key: Key): boolean {
  return pitchClass(root) === pitchClass(itemAt(scaleNotes(key), degree));
}

/** Whether each visitor has the root in the key that it was written with. */
function isAsWritten(visitors: ReadonlyMap<Chord, Visitor>): boolean {
  return [...visitors].every(([{ root }, { chord }]) => readSymbol(chord).root === root);
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

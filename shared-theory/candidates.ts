import { chordNotes } from './chords.ts';
import type { Chord } from './chords.ts';
import { keyOwns, numeralsIn, placeIn, respellIn, spelledScale } from './degrees.ts';
import type { Sevenths } from './degrees.ts';
import { itemAt } from './items.ts';
import { HOME_MODES, keyId, keyName, keySignature, majorOf, relativeKey, scaleNotes } from './keys.ts';
import type { Key } from './keys.ts';
import { modulo } from './pitch.ts';
import type { KeyId } from './questions/question.ts';
import type { Policy } from './truth.ts';

/** A key that owns all chords of a vamp, with the numerals of the vamp's chords in it. */
export type CandidateKey = Key & { readonly id: KeyId; readonly name: string; readonly numerals: readonly string[] };

/** What counts as a minor key's own under a policy. */
export function seventhsUnder(policy: Policy): Sevenths {
  return policy === 'raised-seventh' ? 'raised-too' : 'natural';
}

/**
 * The keys that own all chords, by sound, one spelling for each sounding key, all on one side so that neighbours share their
 * letters: the side that writes most of the chords' roots as they are written, else the one with fewer signs. Neighbours on the
 * circle of fifths, flat side first. Under `relatives` each major key is followed by its relative minor; under `raised-seventh`
 * the minors that own all with their seventh raised stand before and behind them by their signatures; under `modes` each parent scale is
 * named by each chord of the vamp that can be home in it: any on one of its degrees but a diminished one, with a third or without. Empty where no key owns all. RangeError without chords.
 */
export function candidateKeys(chords: readonly Chord[], policy: Policy): readonly CandidateKey[] {
  if (chords.length === 0) throw new RangeError('Keys are sought for at least one chord.');
  const sevenths = seventhsUnder(policy);
  return keysUnder(chords, policy).map((key) => ({
    ...key,
    id: keyId(key),
    name: keyName(key),
    numerals: numeralsIn(chords, key, sevenths),
  }));
}

function keysUnder(chords: readonly Chord[], policy: Policy): readonly Key[] {
  const majors = owningMajors(chords);
  switch (policy) {
    case 'majors':
      return majors;
    case 'relatives':
      return majors.flatMap((key) => [key, relativeKey(key)]);
    case 'raised-seventh':
      return withRaised(majors, chords);
    case 'modes':
      return majors.flatMap((parent) => homesIn(parent, chords));
  }
}

/** The keys by their places on the circle of fifths, C major and A minor first, however they are spelled. */
const PLACES = Array.from({ length: 12 }, (_, place) => place);
const MAJORS = PLACES.map((place) => majorOf(place > 6 ? place - 12 : place));
const MINORS = MAJORS.map(relativeKey);

type Owned = { readonly majors: number; readonly raised: number };

/** Places of the majors that own a chord, and of the minors that do with either seventh, as bits. Pools hold the same chords over and over. */
const owned = new WeakMap<Chord, Owned>();

function ownersOf(chord: Chord): Owned {
  const known = owned.get(chord);
  if (known !== undefined) return known;
  const bits = (keys: readonly Key[], sevenths: Sevenths) =>
    keys.reduce((sum, key, place) => (keyOwns(key, chord, sevenths) ? sum | (1 << place) : sum), 0);
  const worked = { majors: bits(MAJORS, 'natural'), raised: bits(MINORS, 'raised-too') };
  owned.set(chord, worked);
  return worked;
}

/** Places whose key owns all chords. */
function placesOwning(chords: readonly Chord[], among: keyof Owned): readonly boolean[] {
  const shared = chords.reduce((bits, chord) => bits & ownersOf(chord)[among], 0xfff);
  return PLACES.map((place) => (shared & (1 << place)) !== 0);
}

function owningMajors(chords: readonly Chord[]): readonly Key[] {
  const owning = placesOwning(chords, 'majors');
  // The owners stand in one arc of the circle: it starts after a key that does not own them.
  const start = owning.findIndex((owns, place) => owns && !owning[modulo(place - 1, 12)]);
  const arc = owning.map((_, place) => modulo(start + place, 12)).filter((place) => owning[place]);
  return spelledAlike(arc, chords);
}

/** The homes of a parent scale: the chords of the vamp in their order, named by the mode on their degree; none on a diminished one. */
function homesIn(parent: Key, chords: readonly Chord[]): readonly Key[] {
  const homes = new Map<number, Key>();
  for (const chord of chords) {
    const degree = placeIn(chord, parent)?.degree;
    const mode = degree === undefined ? undefined : HOME_MODES[degree];
    if (degree === undefined || mode === undefined || homes.has(degree)) continue;
    homes.set(degree, { tonic: itemAt(scaleNotes(parent), degree), mode });
  }
  return [...homes.values()];
}

/** The majors with their relatives, and before and behind them, by signatures, the minors that own all only with their seventh raised. */
function withRaised(majors: readonly Key[], chords: readonly Chord[]): readonly Key[] {
  const natural = majors.flatMap((key) => [key, relativeKey(key)]);
  const named = new Set(natural.map(keyId));
  const first = majors[0];
  const owning = placesOwning(chords, 'raised');
  // Whose it is goes by sound; only then is the owner spelled.
  const raised = PLACES.filter((place) => owning[place] && !named.has(keyId(itemAt(MINORS, place)))).map((place) =>
    minorOn(place, chords, first),
  );
  const start = first ? keySignature(first) : 0;
  const bySignature = raised.toSorted((one, other) => keySignature(one) - keySignature(other));
  return [
    ...bySignature.filter((key) => keySignature(key) < start),
    ...natural,
    ...bySignature.filter((key) => keySignature(key) >= start),
  ];
}

/**
 * The minor key a number of fifths (0 to 11) above A, on the side that writes most notes of the chords as they are written; where
 * both write as many, the one nearer to the first of the majors that own them, else the one with fewer signs.
 */
function minorOn(place: number, chords: readonly Chord[], near: Key | undefined): Key {
  const sides = [place, place - 12]
    .filter((signature) => Math.abs(signature) <= 7)
    .map((signature) => ({ signature, key: relativeKey(majorOf(signature)) }));
  const written = chords.flatMap(chordNotes);
  const writes = ({ key }: { readonly key: Key }) => {
    const notes = new Set([...spelledScale(key, false), ...spelledScale(key, true)]);
    return written.filter((note) => notes.has(note)).length;
  };
  const middle = near ? keySignature(near) : 0;
  const [best] = sides.toSorted(
    (one, other) =>
      writes(other) - writes(one) || Math.abs(one.signature - middle) - Math.abs(other.signature - middle),
  );
  return itemAt(best ? [best.key] : [], 0);
}

/**
 * Neighbours on the circle spelled on one side. Five or six keys that share only two or three notes may have no side where none
 * has more than seven signs: then those beyond are written on the other.
 */
function spelledAlike(arc: readonly number[], chords: readonly Chord[]): readonly Key[] {
  const [start] = arc;
  if (start === undefined) return [];
  const sides = [start, start - 12].map((first) => {
    const signatures = arc.map((_, step) => first + step);
    const keys = signatures.map(majorOf);
    return {
      keys,
      beyond: signatures.filter((signature) => Math.abs(signature) > 7).length,
      written: keys
        .map(scaleNotes)
        .reduce((sum, notes) => sum + chords.filter(({ root }) => notes.includes(root)).length, 0),
      signs: signatures.reduce((sum, signature) => sum + Math.abs(signature), 0),
    };
  });
  // Where all is equal (F# or Gb by its six signs) the sharps stand first.
  return sides.reduce((best, side) => {
    const better = best.beyond - side.beyond || side.written - best.written || best.signs - side.signs;
    return better > 0 ? side : best;
  }).keys;
}

/** A minor key that owns the chords of a vamp once its seventh is raised, with the numerals of the chords in it. */
export type RaisedSeventh = { readonly key: Key; readonly numerals: readonly string[] };

/**
 * The minor keys that own all chords with their seventh raised, as the chords are written: Am E is i–V of A minor. Empty where
 * the chords, spelled anew, would stand in another minor key as well (Caug sounds in three): then none is meant before others.
 */
export function raisedSevenths(chords: readonly Chord[]): readonly RaisedSeventh[] {
  const owners = candidateKeys(chords, 'raised-seventh').filter(({ mode }) => mode === 'minor');
  const asWritten = owners.filter((key) =>
    chords.every((chord) => respellIn(chord, key, 'raised-too').root === chord.root),
  );
  if (asWritten.length !== owners.length) return [];
  return asWritten.map(({ tonic, mode, numerals }) => ({ key: { tonic, mode }, numerals }));
}

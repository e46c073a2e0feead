import type { CandidateKey } from './candidates.ts';
import { seventhsUnder } from './candidates.ts';
import { chordSymbol, soundsAs, triadOf } from './chords.ts';
import type { Chord } from './chords.ts';
import { decidersOf, holdsUnder, spelledBy } from './deciders.ts';
import { diatonicChart, keyOwns, respellIn, spelledScale } from './degrees.ts';
import { lateness, reach, seventhLateness } from './guitar-order.ts';
import { itemAt } from './items.ts';
import { parentKey, scaleNotes } from './keys.ts';
import type { Key } from './keys.ts';
import { pitchClass } from './pitch.ts';
import type { NoteName } from './pitch.ts';
import type { Policy } from './truth.ts';

/** A third chord that throws keys out, and the names of the keys it leaves. */
export type Settler = { readonly chord: string; readonly leaves: readonly string[] };

/** What settles a vamp's keys, and what does not. Chords and notes in ASCII. */
type Settling = {
  /** Third triads that throw some of the keys out: those that leave one first, common guitar chords first, diminished last. */
  readonly settlers: readonly Settler[];
  /** Chords whose seventh throws out what their triad leaves in: C7 leaves F where C leaves F and C. */
  readonly sevenths: readonly Settler[];
  /** Third triads that all the keys own: they leave it open. */
  readonly open: readonly string[];
};

/** The least that leaves some of the keys alone: those that nothing tells apart from one of them. */
export type Isolation = {
  readonly leaves: readonly string[];
  /** Third chords that do it alone, what a guitarist meets first before the others: triads, sevenths, diminished. */
  readonly chords: readonly string[];
  /** One note that does it, else two that do it together; empty where no two do. */
  readonly notes: readonly NoteName[];
  /** Two triads that do it together; empty where a single major or minor one does, or no two do. */
  readonly chordPair: readonly string[];
};

/** A chord with the places of the keys that it leaves. */
type Leaving = { readonly chord: Chord; readonly left: readonly CandidateKey[] };

/** What settles the keys of a vamp. All is empty where nothing throws one out. */
export function settlingOf(chords: readonly Chord[], keys: readonly CandidateKey[], policy: Policy): Settling {
  const triads = settlingTriads(chords, keys, policy);
  return {
    ...triads,
    sevenths: triads.settlers.length === 0 ? [] : helpfulSevenths(chords, keys, policy).map(named),
  };
}

/** The same without sevenths. */
export function settlingTriads(
  chords: readonly Chord[],
  keys: readonly CandidateKey[],
  policy: Policy,
): Pick<Settling, 'settlers' | 'open'> {
  const thirds = leavingOf(thirdChords(chords, keys, policy), keys, policy);
  const settling = thirds.filter(({ left }) => left.length < keys.length);
  if (settling.length === 0) return { settlers: [], open: [] };
  return {
    settlers: settling
      .toSorted((one, other) => reach(one.chord) - reach(other.chord) || one.left.length - other.left.length)
      .map(named),
    open: thirds.filter(({ left }) => left.length === keys.length).map(({ chord }) => chordSymbol(chord)),
  };
}

function named({ chord, left }: Leaving): Settler {
  return { chord: chordSymbol(chord), leaves: left.map(({ name }) => name) };
}

/** For each of the keys, in their order, the least that leaves it alone, or alone with those that nothing tells from it. */
export function isolationsOf(
  chords: readonly Chord[],
  keys: readonly CandidateKey[],
  policy: Policy,
): readonly Isolation[] {
  const triads = leavingOf(thirdChords(chords, keys, policy), keys, policy);
  const sevenths = helpfulSevenths(chords, keys, policy);
  const byReach = [...triads, ...sevenths].toSorted((one, other) => reach(one.chord) - reach(other.chord));
  const plain = triads.filter(({ chord }) => reach(chord) === 0);
  const deciders = decidersOf(keys, policy).map(({ note }) => ({
    note,
    left: keys.filter((key) => holdsUnder(key, pitchClass(note), policy)),
  }));
  return unitsOf(keys, policy).map((unit) => {
    const alone = <T extends { readonly left: readonly CandidateKey[] }>(each: readonly T[]) =>
      each.filter(({ left }) => sameKeys(left, unit));
    const together = <T extends { readonly left: readonly CandidateKey[] }>(each: readonly T[]) =>
      pairsOf(each).find(([one, other]) =>
        sameKeys(
          one.left.filter((key) => other.left.includes(key)),
          unit,
        ),
      ) ?? [];
    const single = alone(deciders).slice(0, 1);
    // What leaves a key is spelled as that key spells it.
    const first = itemAt(unit, 0);
    return {
      leaves: unit.map(({ name }) => name),
      chords: alone(byReach).map(({ chord }) => chordSymbol(chord)),
      notes: (single.length > 0 ? single : together(deciders)).map(({ note }) => spelledBy(first, pitchClass(note))),
      chordPair: (alone(plain).length > 0 ? [] : together(plain)).map(({ chord }) =>
        chordSymbol(respellIn(chord, first, seventhsUnder(policy))),
      ),
    };
  });
}

/** The keys by what can be told apart: with each stand those that own all that it owns, as a minor does with its relative. */
function unitsOf(keys: readonly CandidateKey[], policy: Policy): readonly (readonly CandidateKey[])[] {
  const sounds = Array.from({ length: 12 }, (_, sound) => sound);
  const units: (readonly CandidateKey[])[] = [];
  for (const key of keys) {
    const own = sounds.filter((sound) => holdsUnder(key, sound, policy));
    const unit = keys.filter((other) => own.every((sound) => holdsUnder(other, sound, policy)));
    if (unit.length < keys.length && !units.some((known) => sameKeys(known, unit))) units.push(unit);
  }
  return units;
}

function sameKeys(one: readonly CandidateKey[], other: readonly CandidateKey[]): boolean {
  return one.length === other.length && one.every((key) => other.includes(key));
}

function pairsOf<T>(items: readonly T[]): readonly (readonly [T, T])[] {
  return items.flatMap((one, place) => items.slice(place + 1).map((other) => [one, other] as const));
}

function leavingOf(chords: readonly Chord[], keys: readonly CandidateKey[], policy: Policy): readonly Leaving[] {
  const sevenths = seventhsUnder(policy);
  return chords.map((chord) => ({ chord, left: keys.filter((key) => keyOwns(key, chord, sevenths)) }));
}

/**
 * Triads of the keys that the vamp does not have, each sounding chord once, spelled as the first key that owns it. Where the
 * raised seventh counts, V and vii° of the minors are among them.
 */
function thirdChords(chords: readonly Chord[], keys: readonly Key[], policy: Policy): readonly Chord[] {
  const natural = keys.flatMap(diatonicChart).map(({ chord }) => chord);
  const raised = policy === 'raised-seventh' ? keys.flatMap(raisedTriads) : [];
  return eachOnce([...natural, ...raised], chords).toSorted((one, other) => lateness(one) - lateness(other));
}

/** V and vii° of a minor key on its raised seventh; none of a major one. */
function raisedTriads(key: Key): readonly Chord[] {
  if (key.mode !== 'minor') return [];
  const notes = spelledScale(key, true);
  return [
    { root: itemAt(notes, 4), quality: 'major' },
    { root: itemAt(notes, 6), quality: 'diminished' },
  ];
}

/** Sevenths that leave fewer keys than their triads: V7, Imaj7 and IVmaj7 of each parent, and V7 of minors where it counts. */
function helpfulSevenths(chords: readonly Chord[], keys: readonly CandidateKey[], policy: Policy): readonly Leaving[] {
  const ofParents = keys.map(parentKey).flatMap((key): readonly Chord[] => {
    const notes = scaleNotes(key);
    return [
      { root: itemAt(notes, 4), quality: 'major', addition: 'seventh' },
      { root: itemAt(notes, 0), quality: 'major', addition: 'major-seventh' },
      { root: itemAt(notes, 3), quality: 'major', addition: 'major-seventh' },
    ];
  });
  const ofMinors = policy === 'raised-seventh' ? keys.flatMap(raisedTriads) : [];
  const dominants = ofMinors.flatMap((chord): readonly Chord[] =>
    chord.quality === 'major' ? [{ ...chord, addition: 'seventh' }] : [],
  );
  const leftBy = (chord: Chord) => itemAt(leavingOf([chord], keys, policy), 0).left.length;
  return leavingOf(eachOnce([...ofParents, ...dominants], chords), keys, policy)
    .filter(({ chord, left }) => left.length > 0 && left.length < leftBy(triadOf(chord)))
    .toSorted(
      (one, other) => one.left.length - other.left.length || seventhLateness(one.chord) - seventhLateness(other.chord),
    );
}

/** Chords that are not among the vamp's, each sounding chord once. */
function eachOnce(found: readonly Chord[], chords: readonly Chord[]): readonly Chord[] {
  const thirds: Chord[] = [];
  for (const chord of found) if (![...chords, ...thirds].some((known) => soundsAs(known, chord))) thirds.push(chord);
  return thirds;
}

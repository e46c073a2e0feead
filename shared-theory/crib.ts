import { candidateKeys, raisedSevenths, seventhsUnder } from './candidates.ts';
import { chordNotes, chordPitchClasses, chordSymbol, soundsAs } from './chords.ts';
import type { Chord } from './chords.ts';
import { decidersOf } from './deciders.ts';
import type { Decider } from './deciders.ts';
import { diatonicChart, numeralsIn, placeIn, respellIn, spelledScale } from './degrees.ts';
import type { Place } from './degrees.ts';
import { itemAt } from './items.ts';
import { keyId, keyName, scaleNotes } from './keys.ts';
import type { Key } from './keys.ts';
import { fifthsFromC, modulo, pitchClass } from './pitch.ts';
import type { NoteName, PitchClass } from './pitch.ts';
import type { KeyId } from './questions/question.ts';
import { settlingOf } from './settlers.ts';
import type { Settler } from './settlers.ts';
import type { Policy } from './truth.ts';

/** The teacher's sheet for a vamp. Chords, notes and keys in ASCII. */
export type Crib = {
  readonly chords: readonly string[];
  readonly policy: Policy;
  /** Keys that own all chords, neighbours on the circle of fifths, flat side first. */
  readonly keys: readonly { readonly key: string; readonly numerals: readonly string[] }[];
  /** Notes that throw some of the keys out. */
  readonly deciders: readonly Decider[];
  /** Third chords that throw some of the keys out: those that leave one first, common guitar chords first, diminished last. */
  readonly settlers: readonly Settler[];
  /** Third chords that all the keys own: they leave it open. */
  readonly open: readonly string[];
  /** Where no key owns all: the two notes of the chords furthest apart by fifths; no major key or natural minor writes both. */
  readonly clash?: readonly [NoteName, NoteName];
  /** Where no key owns all: minor keys that do with their seventh raised. */
  readonly raisedSeventh?: readonly { readonly key: string; readonly numerals: readonly string[] }[];
};

/** The crib of a vamp's chords under a key policy. RangeError without chords. */
export function cribOf(chords: readonly Chord[], policy: Policy): Crib {
  const keys = candidateKeys(chords, policy);
  const { settlers, open } = settlingOf(chords, keys, policy);
  const apart = keys.length === 0 ? clashOf(chords) : null;
  const raised = keys.length === 0 ? raisedSevenths(chords) : [];
  return {
    chords: chords.map(chordSymbol),
    policy,
    keys: keys.map(({ name, numerals }) => ({ key: name, numerals })),
    deciders: decidersOf(keys, policy),
    settlers,
    open,
    ...(apart ? { clash: apart } : {}),
    ...(raised.length > 0
      ? { raisedSeventh: raised.map(({ key, numerals }) => ({ key: keyName(key), numerals })) }
      : {}),
  };
}

/**
 * The two notes furthest apart on the line of fifths (F C G D …), which no key writes together. Null where the chords are
 * spelled farther apart than they sound, or the two are of one augmented chord, which any of its notes may name: then another
 * spelling would be to blame, not the notes.
 */
function clashOf(chords: readonly Chord[]): readonly [NoteName, NoteName] | null {
  const notes = chords.flatMap(chordNotes).toSorted((one, other) => fifthsFromC(one) - fifthsFromC(other));
  const low = itemAt(notes, 0);
  const high = itemAt(notes, notes.length - 1);
  const inOne = chords.map(chordNotes).some((each) => each.includes(low) && each.includes(high));
  if (inOne) return null;
  return fifthsFromC(high) - fifthsFromC(low) === leastSpan(chords.flatMap(chordPitchClasses)) ? [low, high] : null;
}

/** Length of the shortest arc of the circle of fifths that holds the pitch classes. */
function leastSpan(sounds: readonly PitchClass[]): number {
  const places = [...new Set(sounds.map((sound) => modulo(sound * 7, 12)))].toSorted((one, other) => one - other);
  const gaps = places.map((place, index) => (places[index + 1] ?? itemAt(places, 0) + 12) - place);
  return 12 - Math.max(...gaps);
}

/** One key that owns a vamp, as the host draws it: its seven chords and notes from the vamp's first chord on. */
export type ChartRows = {
  readonly key: string;
  readonly id: KeyId;
  readonly row: readonly {
    readonly symbol: string;
    readonly numeral: string;
    /** The vamp has this chord, or another on this root, which then stands here. */
    readonly inVamp: boolean;
    /** The chord holds a note that throws another key out. */
    readonly holdsDecider: boolean;
  }[];
  readonly notes: readonly NoteName[];
};

/**
 * The chart of a key that owns the vamp under a policy, starting on the vamp's first chord. Where the raised seventh counts and
 * only it sounds, the notes have it. RangeError where the key does not own all chords.
 */
export function chartRows(chords: readonly Chord[], key: Key, policy: Policy = 'relatives'): ChartRows {
  const sevenths = seventhsUnder(policy);
  const places = chords.flatMap((chord) => placeIn(chord, key, sevenths) ?? []);
  if (chords.length === 0 || places.length < chords.length) {
    throw new RangeError(`${keyName(key)} does not own all of ${chords.map(chordSymbol).join(' ')}.`);
  }
  const numerals = numeralsIn(chords, key, sevenths);
  const deciding = new Set(decidersOf(candidateKeys(chords, policy), policy).map(({ note }) => pitchClass(note)));
  const start = itemAt(places, 0).degree;
  const fromFirst = <T>(items: readonly T[]): readonly T[] => [...items.slice(start), ...items.slice(0, start)];
  /** What stands on a place: its triad, or the vamp's own chord there where it is another one (C5 for C, E for Em). */
  const row = diatonicChart(key).map(({ chord: triad, numeral }, degree) => {
    const here = chords.flatMap((_, slot) => (places[slot]?.degree === degree ? [slot] : []));
    const own = here.find((slot) => soundsAs(itemAt(chords, slot), triad)) ?? here[0];
    const chord = own === undefined ? triad : respellIn(itemAt(chords, own), key, sevenths);
    return {
      symbol: chordSymbol(chord),
      numeral: own === undefined ? numeral : itemAt(numerals, own),
      inVamp: own !== undefined,
      holdsDecider: chordPitchClasses(chord).some((sound) => deciding.has(sound)),
    };
  });
  return {
    key: keyName(key),
    id: keyId(key),
    row: fromFirst(row),
    notes: fromFirst(spelledScale(key, soundsRaised(chords, places, key))),
  };
}

/** Whether a vamp has a minor key's raised seventh and nowhere its natural one. */
function soundsRaised(chords: readonly Chord[], places: readonly Place[], key: Key): boolean {
  const natural = pitchClass(itemAt(scaleNotes(key), 6));
  return places.some(({ raised }) => raised) && !chords.some((chord) => chordPitchClasses(chord).includes(natural));
}

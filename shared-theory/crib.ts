import { candidateKeys, raisedSevenths } from './candidates.ts';
import { chordNotes, chordPitchClasses, chordSymbol, soundsAs } from './chords.ts';
import type { Chord } from './chords.ts';
import { decidersOf } from './deciders.ts';
import type { Decider } from './deciders.ts';
import { diatonicChart, numeralIn, respellIn } from './degrees.ts';
import type { Diatonic } from './degrees.ts';
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

/** The chart of a key that owns the vamp, starting on the vamp's first chord. RangeError where the key does not own all chords. */
export function chartRows(chords: readonly Chord[], key: Key): ChartRows {
  const candidates = candidateKeys(chords, 'relatives');
  if (!candidates.some(({ id }) => id === keyId(key))) {
    throw new RangeError(`${keyName(key)} does not own all of ${chords.map(chordSymbol).join(' ')}.`);
  }
  const deciding = new Set(decidersOf(candidates, 'relatives').map(({ note }) => pitchClass(note)));
  const start = scaleNotes(key).indexOf(respellIn(itemAt(chords, 0), key).root);
  const fromFirst = <T>(items: readonly T[]): readonly T[] => [...items.slice(start), ...items.slice(0, start)];
  return {
    key: keyName(key),
    id: keyId(key),
    row: fromFirst(diatonicChart(key)).map((place) => {
      const { chord, numeral, inVamp } = standingAt(place, chords, key);
      const holdsDecider = chordPitchClasses(chord).some((sound) => deciding.has(sound));
      return { symbol: chordSymbol(chord), numeral, inVamp, holdsDecider };
    }),
    notes: fromFirst(scaleNotes(key)),
  };
}

/** What stands on a place of the chart: its triad, or the vamp's own chord on that root where it is another one (C5 for C). */
function standingAt(place: Diatonic, chords: readonly Chord[], key: Key) {
  const here = chords.filter(({ root }) => pitchClass(root) === pitchClass(place.chord.root));
  const own = here.find((chord) => soundsAs(chord, place.chord)) ?? here[0];
  const chord = own ? respellIn(own, key) : place.chord;
  return { chord, numeral: own ? numeralIn(own, key) : place.numeral, inVamp: own !== undefined };
}

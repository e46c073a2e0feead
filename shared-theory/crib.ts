import { chordNotes, chordPitchClasses, chordSymbol, parseChord, soundsAs } from './chords.ts';
import type { Chord } from './chords.ts';
import { candidateKeys, raisedSevenths } from './candidates.ts';
import { diatonicChart, keyHolds, keyOwns, numeralIn, respellIn } from './degrees.ts';
import { keyId, keyName, scaleNotes } from './keys.ts';
import type { CandidateKey } from './candidates.ts';
import type { Diatonic } from './degrees.ts';
import type { Key } from './keys.ts';
import { itemAt } from './items.ts';
import { fifthsFromC, modulo, pitchClass } from './pitch.ts';
import type { NoteName, PitchClass } from './pitch.ts';
import type { KeyId } from './questions/question.ts';
import type { Policy } from './truth.ts';

/** A note that throws keys out, and the names of the keys it leaves. */
export type Decider = { readonly note: NoteName; readonly leaves: readonly string[] };
/** A third chord that throws keys out, and the names of the keys it leaves. */
export type Settler = { readonly chord: string; readonly leaves: readonly string[] };

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

/** The 24 major and minor triads by how soon a guitarist meets them: open shapes, then the first barres, then the rest. */
const GUITAR_ORDER = 'G C D A E Em Am Dm F Bm Bb B F#m Gm Cm C#m Eb Ab Db F# Fm G#m Bbm Ebm'.split(' ').map(parseChord);

/** The crib of a vamp's chords under a key policy. RangeError without chords. */
export function cribOf(chords: readonly Chord[], policy: Policy): Crib {
  const keys = candidateKeys(chords, policy);
  const deciders = decidersOf(keys);
  const thirds = thirdChords(chords, keys);
  const apart = keys.length === 0 ? clashOf(chords) : null;
  const raised = keys.length === 0 ? raisedSevenths(chords) : [];
  return {
    chords: chords.map(chordSymbol),
    policy,
    keys: keys.map(({ name, numerals }) => ({ key: name, numerals })),
    deciders,
    settlers: settlersOf(thirds, keys),
    open:
      deciders.length > 0 ? thirds.filter((chord) => keys.every((key) => keyOwns(key, chord))).map(chordSymbol) : [],
    ...(apart ? { clash: apart } : {}),
    ...(raised.length > 0
      ? { raisedSeventh: raised.map(({ key, numerals }) => ({ key: keyName(key), numerals })) }
      : {}),
  };
}

/**
 * The notes that throw keys out. Two neighbours differ in one letter: the flat side's fourth degree is the sharp side's seventh,
 * one fret lower. The lower note leaves all keys up to the flat side, the higher one all from the sharp side on.
 */
function decidersOf(keys: readonly CandidateKey[]): readonly Decider[] {
  const families = keys.filter(({ mode }) => mode === 'major').map((key) => scaleNotes(key));
  const letters = families
    .slice(1)
    .flatMap((sharpSide, place) => [itemAt(itemAt(families, place), 3), itemAt(sharpSide, 6)]);
  return letters.map((note) => ({
    note,
    leaves: keys.filter((key) => keyHolds(key, pitchClass(note))).map(({ name }) => name),
  }));
}

function settlersOf(thirds: readonly Chord[], keys: readonly CandidateKey[]): readonly Settler[] {
  return thirds
    .map((chord) => ({ chord, leaves: keys.filter((key) => keyOwns(key, chord)).map(({ name }) => name) }))
    .filter(({ leaves }) => leaves.length < keys.length)
    .toSorted((one, other) => isLast(one.chord) - isLast(other.chord) || one.leaves.length - other.leaves.length)
    .map(({ chord, leaves }) => ({ chord: chordSymbol(chord), leaves }));
}

/** Triads of the keys that the vamp does not have, each sounding chord once, spelled as the first key that owns it. */
function thirdChords(chords: readonly Chord[], keys: readonly Key[]): readonly Chord[] {
  const thirds: Chord[] = [];
  for (const { chord } of keys.flatMap(diatonicChart)) {
    if (![...chords, ...thirds].some((known) => soundsAs(known, chord))) thirds.push(chord);
  }
  return thirds.toSorted((one, other) => lateness(one) - lateness(other));
}

/** 1 for the triads that guitarists reach for last, else 0. */
function isLast({ quality }: Chord): number {
  return quality === 'diminished' ? 1 : 0;
}

/** How late a guitarist meets a triad: its place in the guitar order; diminished ones come after all others. */
export function lateness(chord: Chord): number {
  const place = GUITAR_ORDER.findIndex((known) => soundsAs(known, chord));
  return place < 0 ? GUITAR_ORDER.length : place;
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
  const deciding = new Set(decidersOf(candidates).map(({ note }) => pitchClass(note)));
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

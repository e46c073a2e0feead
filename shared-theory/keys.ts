import { chordNotes, chordPitchClasses, chordSymbol } from './chords.ts';
import type { Chord, Quality } from './chords.ts';
import { itemAt } from './items.ts';
import { modulo, pitchClass, transpose } from './pitch.ts';
import type { NoteName, PitchClass } from './pitch.ts';
import type { KeyId } from './questions/question.ts';
import type { Policy } from './truth.ts';

export type Mode = 'major' | 'minor';

/** A key as musicians write it: a spelled tonic and its mode. Minor is the natural minor. */
export type Key = { readonly tonic: NoteName; readonly mode: Mode };

/** The fifteen major tonics by fifths, from seven flats to seven sharps. */
const MAJOR_TONICS = ['Cb', 'Gb', 'Db', 'Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#'] as const;
/** Their relative minors in the same order. */
const MINOR_TONICS = ['Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#', 'G#', 'D#', 'A#'] as const;
const TONICS = { major: MAJOR_TONICS, minor: MINOR_TONICS } as const;
const FLATTEST = -7;

/** Semitones from the tonic, and the triad and numeral on each degree. */
const SCALES: Readonly<Record<Mode, readonly number[]>> = {
  major: [0, 2, 4, 5, 7, 9, 11],
  minor: [0, 2, 3, 5, 7, 8, 10],
};
const TRIADS: Readonly<Record<Mode, readonly Quality[]>> = {
  major: ['major', 'minor', 'minor', 'major', 'major', 'minor', 'diminished'],
  minor: ['minor', 'diminished', 'major', 'minor', 'minor', 'major', 'major'],
};
const ROMAN = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'] as const;

/** Sharps (positive) or flats (negative) of the key signature, -7 to 7. RangeError for a key beyond seven. */
export function keySignature({ tonic, mode }: Key): number {
  const place = (TONICS[mode] as readonly string[]).indexOf(tonic);
  if (place < 0) throw new RangeError(`No key of ${tonic} ${mode}: its signature would have more than seven signs.`);
  return place + FLATTEST;
}

/** The key of the other mode with the same notes: E minor for G major. */
export function relativeKey(key: Key): Key {
  const mode = key.mode === 'major' ? 'minor' : 'major';
  return { tonic: itemAt(TONICS[mode], keySignature(key) - FLATTEST), mode };
}

/** Name of a key in ASCII: `Gb major`, `F# minor`. */
export function keyName({ tonic, mode }: Key): string {
  return `${tonic} ${mode}`;
}

/** Reads the name of a key, `Gb major`. RangeError where it is none. */
export function parseKeyName(name: string): Key {
  const [tonic = '', mode, ...rest] = name.split(' ');
  if ((mode !== 'major' && mode !== 'minor') || rest.length > 0) {
    throw new RangeError(`Not the name of a key: ${JSON.stringify(name)}. Write such as Gb major.`);
  }
  const key: Key = { tonic, mode };
  keySignature(key);
  return key;
}

/** A key as an answer, one for each sound: `7M` is G major, `4m` E minor. */
export function keyId({ tonic, mode }: Key): KeyId {
  return `${pitchClass(tonic)}${mode === 'major' ? 'M' : 'm'}`;
}

/** The major key of a signature; one that nobody writes (more than seven signs) is written on the other side. */
function majorOf(signature: number): Key {
  const written = signature > 7 ? signature - 12 : signature < FLATTEST ? signature + 12 : signature;
  return { tonic: itemAt(MAJOR_TONICS, written - FLATTEST), mode: 'major' };
}

/** The usual spelling of a key by its id: the fewest signs, F# major and D# minor where six stand against six. */
export function usualKey(id: KeyId): Key {
  if (!/^([0-9]|1[01])[Mm]$/.test(id)) {
    throw new RangeError(`Not a key: ${JSON.stringify(id)}. Write 0M to 11M or 0m to 11m.`);
  }
  const sound = Number.parseInt(id, 10);
  // Six sharps stand before six flats: on guitars F# is the commoner name.
  const usual = (major: PitchClass) => {
    const place = (major * 7) % 12;
    return majorOf(place > 6 ? place - 12 : place);
  };
  return id.endsWith('M') ? usual(sound) : relativeKey(usual(sound + 3));
}

/** The seven notes of a key, spelled, from the tonic up. */
export function scaleNotes(key: Key): readonly NoteName[] {
  keySignature(key);
  return SCALES[key.mode].map((semitones, steps) => transpose(key.tonic, { steps, semitones }));
}

/** One chord of a key's chart. */
export type Diatonic = { readonly chord: Chord; readonly numeral: string; readonly notes: readonly NoteName[] };

/** The seven triads of a key with their numerals (ASCII, `viio`) and notes, from the tonic up. */
export function diatonicChart(key: Key): readonly Diatonic[] {
  return scaleNotes(key).map((root, degree) => {
    const chord: Chord = { root, quality: itemAt(TRIADS[key.mode], degree) };
    return { chord, numeral: degreeNumeral(TRIADS[key.mode], degree, chord.quality), notes: chordNotes(chord) };
  });
}

/** What a quality adds to its numeral. */
const NUMERAL_SUFFIX: Readonly<Record<Quality, string>> = {
  major: '',
  minor: '',
  diminished: 'o',
  augmented: '+',
  power: '5',
  'suspended-second': 'sus2',
  'suspended-fourth': 'sus4',
};

/** Numeral of a quality on a degree 0 to 6. Where no third sounds, its case is that of the scale's own triad there: `ii5`. */
function degreeNumeral(triads: readonly Quality[], degree: number, quality: Quality): string {
  const roman = itemAt(ROMAN, degree);
  const third = quality === 'power' || quality.startsWith('suspended') ? itemAt(triads, degree) : quality;
  const small = third === 'minor' || third === 'diminished';
  return (small ? roman.toLowerCase() : roman) + NUMERAL_SUFFIX[quality];
}

/** Degree 0 to 6 of a pitch class in a key, or -1. */
function degreeOf(sound: PitchClass, key: Key): number {
  return SCALES[key.mode].indexOf(modulo(sound - pitchClass(key.tonic), 12));
}

/** Whether a key holds a pitch class. */
export function keyHolds(key: Key, sound: PitchClass): boolean {
  return degreeOf(sound, key) >= 0;
}

/** Whether a key owns a chord: all its notes are in the scale, by sound. */
export function keyOwns(key: Key, chord: Chord): boolean {
  return chordPitchClasses(chord).every((sound) => keyHolds(key, sound));
}

/** Numeral of a chord in a key that owns it: `vi`, `viio`, `Isus4`, `ii5`. RangeError where the key does not own it. */
export function numeralIn(chord: Chord, key: Key): string {
  return degreeNumeral(TRIADS[key.mode], ownedDegree(chord, key), chord.quality);
}

/** A chord spelled as a key that owns it spells it: Gb major writes B as Cb. RangeError where the key does not own it. */
export function respellIn(chord: Chord, key: Key): Chord {
  return { root: itemAt(scaleNotes(key), ownedDegree(chord, key)), quality: chord.quality };
}

function ownedDegree(chord: Chord, key: Key): number {
  if (!keyOwns(key, chord)) throw new RangeError(`${keyName(key)} does not own ${chordSymbol(chord)}.`);
  return degreeOf(pitchClass(chord.root), key);
}

/** A key that owns all chords of a vamp, with the numerals of the vamp's chords in it. */
export type CandidateKey = Key & { readonly id: KeyId; readonly name: string; readonly numerals: readonly string[] };

/**
 * The keys that own all chords, by sound, one spelling for each sounding key, all on one side so that neighbours share their
 * letters: the side that writes most of the chords' roots as they are written, else the one with fewer signs. Neighbours on the
 * circle of fifths, flat side first; under `relatives` each major key is followed by its relative minor. Empty where no key owns
 * all. RangeError without chords.
 */
export function candidateKeys(chords: readonly Chord[], policy: Policy): readonly CandidateKey[] {
  if (chords.length === 0) throw new RangeError('Keys are sought for at least one chord.');
  const sounds = [...new Set(chords.flatMap(chordPitchClasses))];
  const owning = Array.from({ length: 12 }, (_, place) =>
    sounds.every((sound) => SCALES.major.includes(modulo(sound - place * 7, 12))),
  );
  // The owners stand in one arc of the circle: it starts after a key that does not own them.
  const start = owning.findIndex((owns, place) => owns && !owning[modulo(place - 1, 12)]);
  const arc = owning.map((_, place) => modulo(start + place, 12)).filter((place) => owning[place]);
  const keys = spelledAlike(arc, chords);
  return keys
    .flatMap((key) => (policy === 'relatives' ? [key, relativeKey(key)] : [key]))
    .map((key) => ({
      ...key,
      id: keyId(key),
      name: keyName(key),
      numerals: chords.map((chord) => numeralIn(chord, key)),
    }));
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

/** Triads of the minor scale with its raised seventh (harmonic minor). */
const RAISED_TRIADS: readonly Quality[] = ['minor', 'diminished', 'augmented', 'minor', 'major', 'major', 'diminished'];
const LEADING_NOTE = 6;

/** A minor key that owns the chords of a vamp once its seventh is raised, with the numerals of the chords in it. */
export type RaisedSeventh = { readonly key: Key; readonly numerals: readonly string[] };

/**
 * The minor keys that own all chords with their seventh raised, as the chords are written: Am E is i–V of A minor. Empty where
 * the chords, spelled anew, would stand in another minor key as well (Caug sounds in three): then none is meant before others.
 */
export function raisedSevenths(chords: readonly Chord[]): readonly RaisedSeventh[] {
  const raised = MINOR_TONICS.map((tonic) => {
    const key: Key = { tonic, mode: 'minor' };
    const notes = scaleNotes(key).map((note, degree) =>
      degree === LEADING_NOTE ? transpose(note, { steps: 0, semitones: 1 }) : note,
    );
    return { key, notes };
  });
  const written = [...new Set(chords.flatMap(chordNotes))];
  const sounds = written.map(pitchClass);
  const sounding = raised.filter(({ notes }) => {
    const scale = notes.map(pitchClass);
    return sounds.every((sound) => scale.includes(sound));
  });
  const owners = sounding.filter(({ notes }) => written.every((note) => notes.includes(note)));
  const known = owners.map(({ key }) => keyId(key));
  if (!sounding.every(({ key }) => known.includes(keyId(key)))) return [];
  return owners.map(({ key, notes }) => ({
    key,
    numerals: chords.map(({ root, quality }) => degreeNumeral(RAISED_TRIADS, notes.indexOf(root), quality)),
  }));
}

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

/** Spellings of the major key that stands at a place of the circle of fifths (0 is C, 11 is F), fewest signs first. */
function majorSpellings(place: number): readonly Key[] {
  const signatures = [place, place - 12].filter((signature) => Math.abs(signature) <= 7);
  // Six sharps stand before six flats: on guitars F# is the commoner name.
  const ordered = signatures.toSorted((one, other) => Math.abs(one) - Math.abs(other));
  return ordered.map((signature) => ({ tonic: itemAt(MAJOR_TONICS, signature - FLATTEST), mode: 'major' }));
}

/** The usual spelling of a key by its id: the fewest signs, F# major and D# minor where six stand against six. */
export function usualKey(id: KeyId): Key {
  if (!/^([0-9]|1[01])[Mm]$/.test(id)) {
    throw new RangeError(`Not a key: ${JSON.stringify(id)}. Write 0M to 11M or 0m to 11m.`);
  }
  const sound = Number.parseInt(id, 10);
  const usual = (major: PitchClass) => itemAt(majorSpellings((major * 7) % 12), 0);
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
    return { chord, numeral: degreeNumeral(key.mode, degree, chord.quality), notes: chordNotes(chord) };
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

/** Numeral of a quality on a degree 0 to 6. Where no third sounds, its case is that of the key's own triad there: `ii5`. */
function degreeNumeral(mode: Mode, degree: number, quality: Quality): string {
  const roman = itemAt(ROMAN, degree);
  const third = quality === 'power' || quality.startsWith('suspended') ? itemAt(TRIADS[mode], degree) : quality;
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
  return degreeNumeral(key.mode, ownedDegree(chord, key), chord.quality);
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
 * The keys that own all chords, by sound, one spelling for each sounding key: the one that writes most of the chords' roots
 * as they are written, else the one with fewer signs. Neighbours on the circle of fifths, flat side first; under `relatives`
 * each major key is followed by its relative minor. Empty where no key owns all. RangeError without chords.
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
  const keys = arc.map((place) => bestSpelling(majorSpellings(place), chords));
  return keys
    .flatMap((key) => (policy === 'relatives' ? [key, relativeKey(key)] : [key]))
    .map((key) => ({
      ...key,
      id: keyId(key),
      name: keyName(key),
      numerals: chords.map((chord) => numeralIn(chord, key)),
    }));
}

/** Of the spellings of one sounding key, the one that writes most of the chords' roots as they are written. */
function bestSpelling(spelled: readonly Key[], chords: readonly Chord[]): Key {
  const fit = (key: Key): number => {
    const notes = scaleNotes(key);
    return chords.filter(({ root }) => notes.includes(root)).length;
  };
  return spelled.reduce((best, key) => (fit(key) > fit(best) ? key : best));
}

import { chordIntervals, chordNotes, chordSymbol, overRoot } from './chords.ts';
import type { Addition, Chord, Quality } from './chords.ts';
import { itemAt } from './items.ts';
import { isModal, keyName, modeScale, modeTriads, scaleNotes } from './keys.ts';
import type { Key, Mode } from './keys.ts';
import { modulo, pitchClass, transpose } from './pitch.ts';
import type { Interval, NoteName, PitchClass } from './pitch.ts';

const ROMAN = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'] as const;
const DOMINANT = 4;
const LEADING_DEGREE = 6;
/** Triads of the minor scale with its raised seventh (harmonic minor). */
const RAISED_TRIADS: readonly Quality[] = ['minor', 'diminished', 'augmented', 'minor', 'major', 'major', 'diminished'];

/** Where a chord stands in a key: degree 0 to 6, and whether it takes the raised seventh of a minor key. */
export type Place = { readonly key: Key; readonly degree: number; readonly raised: boolean };

/** What may count as a minor key's own: its natural seventh alone, or the raised one as well. */
export type Sevenths = 'natural' | 'raised-too';

/** The seven notes of a key, spelled, with the seventh of a minor key raised or not. */
export function spelledScale(key: Key, raised: boolean): readonly NoteName[] {
  const notes = scaleNotes(key);
  if (!raised) return notes;
  return notes.map((note, degree) => (degree === LEADING_DEGREE ? transpose(note, { steps: 0, semitones: 1 }) : note));
}

/** Whether a key has a raised seventh beside its own: minor keys, where it counts. */
function mayRaise({ mode }: Key, sevenths: Sevenths): boolean {
  return sevenths === 'raised-too' && mode === 'minor';
}

/** Whether a key holds a pitch class. */
export function keyHolds(key: Key, sound: PitchClass, sevenths: Sevenths = 'natural'): boolean {
  const above = modulo(sound - pitchClass(key.tonic), 12);
  return modeScale(key.mode).includes(above) || (mayRaise(key, sevenths) && above === 11);
}

/**
 * Semitones from a root to the others that a chord sounds the same from: one that divides the octave evenly, augmented or with a
 * diminished seventh, may be read from each of its notes.
 */
function rootsApart({ quality, addition }: Chord): readonly number[] {
  if (quality === 'augmented') return [0, 4, 8];
  return addition === 'diminished-seventh' ? [0, 3, 6, 9] : [0];
}

/**
 * Degree on which a scale carries a chord whose root lies `above` semitones above the tonic: its root stands there and each of its
 * notes on the letter that the chord asks for; -1 where none does.
 */
function degreeOn(scale: readonly number[], chord: Chord, above: number): number {
  for (const apart of rootsApart(chord)) {
    const root = (above + apart) % 12;
    const degree = scale.indexOf(root);
    const fits = ({ steps, semitones }: Interval) => itemAt(scale, (degree + steps) % 7) === (root + semitones) % 12;
    if (degree >= 0 && chordIntervals(chord).every(fits)) return degree;
  }
  return -1;
}

/** A scale by mode and seventh, and the bits of the semitones that it holds. */
type Scale = { readonly name: string; readonly semitones: readonly number[]; readonly holds: number };

const scales = new Map<string, Scale>();

/** Semitones of each degree above the tonic, with the seventh of a minor key raised or not. */
function scaleOf(mode: Mode, raised: boolean): Scale {
  const name = raised ? `${mode} raised` : mode;
  const known = scales.get(name);
  if (known !== undefined) return known;
  const semitones = modeScale(mode).map((above, degree) => (raised && degree === LEADING_DEGREE ? 11 : above));
  const scale = { name, semitones, holds: semitones.reduce((bits, above) => bits | (1 << above), 0) };
  scales.set(name, scale);
  return scale;
}

/** Degrees by semitones above the tonic, of every kind of chord in every scale: hundreds, asked for thousands of times a vamp. */
const degrees = new Map<string, readonly number[]>();

function degreeIn({ name, semitones }: Scale, chord: Chord, above: number): number {
  const kind = `${name} ${chord.quality} ${chord.addition}`;
  const known = degrees.get(kind);
  if (known !== undefined) return itemAt(known, above);
  const worked = Array.from({ length: 12 }, (_, root) => degreeOn(semitones, chord, root));
  degrees.set(kind, worked);
  return itemAt(worked, above);
}

function placeOn(chord: Chord, key: Key, raised: boolean): Place | null {
  const tonic = pitchClass(key.tonic);
  const scale = scaleOf(key.mode, raised);
  const degree = degreeIn(scale, chord, modulo(pitchClass(chord.root) - tonic, 12));
  if (degree < 0) return null;
  const { bass } = chord;
  if (bass !== undefined && !(scale.holds & (1 << modulo(pitchClass(bass) - tonic, 12)))) return null;
  return { key, degree, raised };
}

/** Where a key has a chord, by sound; null where it does not own it. The bass must be a note of the same scale. */
export function placeIn(chord: Chord, key: Key, sevenths: Sevenths = 'natural'): Place | null {
  return placeOn(chord, key, false) ?? (mayRaise(key, sevenths) ? placeOn(chord, key, true) : null);
}

/** Whether a key owns a chord: one of its degrees carries it. */
export function keyOwns(key: Key, chord: Chord, sevenths: Sevenths = 'natural'): boolean {
  return placeIn(chord, key, sevenths) !== null;
}

/** What a quality, and then an addition, adds to a numeral. */
const QUALITY_SUFFIX: Readonly<Record<Quality, string>> = {
  major: '',
  minor: '',
  diminished: 'o',
  augmented: '+',
  power: '5',
  'suspended-second': 'sus2',
  'suspended-fourth': 'sus4',
};
const ADDITION_SUFFIX: Readonly<Record<Addition, string>> = {
  seventh: '7',
  'major-seventh': 'maj7',
  'diminished-seventh': '7',
  sixth: 'add6',
  ninth: 'add9',
};
const HALF_DIMINISHED = 'm7b5';

/** What a chord's quality and addition add to its numeral: `7`, `o7`, `m7b5`, `sus4`. */
export function numeralSuffix({ quality, addition }: Pick<Chord, 'quality' | 'addition'>): string {
  if (addition === undefined) return QUALITY_SUFFIX[quality];
  // A small numeral with 7 alone would be a minor seventh chord, with o7 a diminished one.
  if (quality === 'diminished' && addition === 'seventh') return HALF_DIMINISHED;
  return QUALITY_SUFFIX[quality] + ADDITION_SUFFIX[addition];
}

/**
 * Numeral of a chord on a degree, ASCII. Where no third sounds, its case is that of the scale's own triad there: `ii5`. In a mode
 * degrees are counted on the major scale: `bVII`; in a minor key on its own: `VII`.
 */
export function numeralOn({ key, degree, raised }: Place, chord: Pick<Chord, 'quality' | 'addition'>): string {
  const triads = raised ? RAISED_TRIADS : modeTriads(key.mode);
  const third = hasThird(chord) ? chord.quality : itemAt(triads, degree);
  const small = third === 'minor' || third === 'diminished';
  const roman = itemAt(ROMAN, degree);
  return signOf(key, degree) + (small ? roman.toLowerCase() : roman) + numeralSuffix(chord);
}

/** Power and suspended chords have none. */
function hasThird({ quality }: Pick<Chord, 'quality'>): boolean {
  return quality !== 'power' && !quality.startsWith('suspended');
}

function signOf({ mode }: Key, degree: number): string {
  if (!isModal(mode)) return '';
  const off = itemAt(modeScale(mode), degree) - itemAt(modeScale('major'), degree);
  return off < 0 ? 'b' : off > 0 ? '#' : '';
}

function owned(chord: Chord, key: Key, sevenths: Sevenths): Place {
  const place = placeIn(chord, key, sevenths);
  if (place === null) throw new RangeError(`${keyName(key)} does not own ${chordSymbol(chord)}.`);
  return place;
}

/** Numeral of a chord in a key that owns it: `vi`, `viio`, `Isus4`, `V7`. RangeError where the key does not own it. */
export function numeralIn(chord: Chord, key: Key, sevenths: Sevenths = 'natural'): string {
  return numeralOn(owned(chord, key, sevenths), chord);
}

/**
 * Numerals of a vamp's chords in a key that owns them all. A chord without a third on the fifth degree of a minor key is that of
 * the other chords there: before E or G#dim, and no Em, Esus4 is Vsus4 of A minor, else vsus4. RangeError where the key does not
 * own one.
 */
export function numeralsIn(chords: readonly Chord[], key: Key, sevenths: Sevenths = 'natural'): readonly string[] {
  const places = chords.map((chord) => owned(chord, key, sevenths));
  const minorDominant = places.some(
    ({ degree, raised }, slot) => degree === DOMINANT && !raised && hasThird(itemAt(chords, slot)),
  );
  const raises = !minorDominant && places.some(({ raised }) => raised);
  return places.map((place, slot) => {
    const chord = itemAt(chords, slot);
    const open = place.degree === DOMINANT && !hasThird(chord);
    return numeralOn(open && raises ? { ...place, raised: true } : place, chord);
  });
}

/** A chord spelled as a key that owns it spells it: Gb major writes B as Cb. RangeError where the key does not own it. */
export function respellIn(chord: Chord, key: Key, sevenths: Sevenths = 'natural'): Chord {
  const { degree, raised } = owned(chord, key, sevenths);
  const notes = spelledScale(key, raised);
  const { bass } = chord;
  const respelled = { ...overRoot(chord), root: itemAt(notes, degree) };
  if (bass === undefined) return respelled;
  const spelled = notes.find((note) => pitchClass(note) === pitchClass(bass));
  return spelled === undefined ? respelled : { ...respelled, bass: spelled };
}

/** One chord of a key's chart. */
export type Diatonic = { readonly chord: Chord; readonly numeral: string; readonly notes: readonly NoteName[] };

/** The seven triads of a key with their numerals (ASCII, `viio`) and notes, from the tonic up. */
export function diatonicChart(key: Key): readonly Diatonic[] {
  return scaleNotes(key).map((root, degree) => {
    const chord: Chord = { root, quality: itemAt(modeTriads(key.mode), degree) };
    return { chord, numeral: numeralOn({ key, degree, raised: false }, chord), notes: chordNotes(chord) };
  });
}

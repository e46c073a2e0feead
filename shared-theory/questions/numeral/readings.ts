import type { Chord, Quality } from '../../chords.ts';
import { distanceNumber } from '../../distance-line.ts';
import { candidateKeys } from '../../candidates.ts';
import { numeralOn, placeIn } from '../../degrees.ts';
import type { Sevenths } from '../../degrees.ts';
import { itemAt } from '../../items.ts';
import type { Key, Mode } from '../../keys.ts';
import { pitchClass } from '../../pitch.ts';
import type { NoteName, PitchClass } from '../../pitch.ts';
import type { Policy } from '../../truth.ts';
import type { NoteKind } from '../error-kinds.ts';
import { isTonicOf } from '../../visited-keys.ts';
import { alteredDominants } from '../../visitors.ts';
import { namesOfSound } from '../same-sound.ts';
import type { Numeral } from './numerals.ts';
import { unownedReadings } from './unowned.ts';
import type { NamedKey } from './unowned.ts';
import { degreeOfDistance, readChordNumeral, says, waysToSay, writeNumeral } from './numerals.ts';

/** Where a chord stands in a key, and what it is. */
export type Place = Pick<Numeral, 'sign' | 'degree' | 'small'> & { readonly quality: Quality };

/**
 * The chords' places in one key, and what is said beside an answer in it. By chord: more than one place where what sounds may be
 * named from another root as well.
 */
export type Reading = {
  readonly places: readonly (readonly Place[])[];
  readonly note: NoteKind | null;
  /** Pitch class of what is counted as one. */
  readonly one: PitchClass;
};

/** A way to read a loop: what a degree is counted from, and the places there. */
type InKey = { readonly mode: Mode; readonly tonic: NoteName; readonly places: Reading['places'] };

/** Modes that are heard from any of their homes, beside the keys that own the same chords: i-IV and I-bVII. */
const USUAL_MODES: ReadonlySet<Mode> = new Set(['dorian', 'mixolydian']);
/** Modes whose home chord is minor: before III, VI and VII some write no flat. */
const MINOR_HOMES: ReadonlySet<Mode> = new Set(['dorian', 'phrygian', 'aeolian']);

/**
 * Every way to read chords, the class's policy first: in each major key that owns them, flat side first; in the relative minor of
 * each, without and with flats before III, VI and VII; in each minor key that owns them by its raised seventh; where no key owns
 * them, in each that does but for a visitor, or in their blues; and counted on the major scale from the first chord in whichever mode it
 * makes them (i-bII, I-II), or from another home that makes them dorian or mixolydian, under `modes` from any home. Chords that
 * follow in `chords` beyond the first `asked` decide the keys, but have no place.
 */
export function readingsOf(chords: readonly Chord[], asked: number, policy: Policy): readonly Reading[] {
  const [first] = chords;
  if (!first) return [];
  const inKey = (key: Key, sevenths: Sevenths): InKey => ({
    ...key,
    places: chords.slice(0, asked).map((chord) => withAltered(placesIn(chord, key, sevenths), chord, key, chords)),
  });
  const natural = candidateKeys(chords, 'relatives').map((key) => inKey(key, 'natural'));
  const owned = new Set(natural.map(({ tonic, mode }) => `${tonic} ${mode}`));
  const raised = candidateKeys(chords, 'raised-seventh')
    .filter(({ tonic, mode }) => mode === 'minor' && !owned.has(`${tonic} ${mode}`))
    .map((key) => inKey(key, 'raised-too'));
  // Where a key owns all, a visitor in another is no reading of its own: it would excuse whoever takes home for one.
  const visited = natural.length > 0 ? [] : unownedReadings(chords).map((key) => named(chords, asked, key));
  const far = raised.filter((key) => isFarOff(key, chords));
  const near = raised.filter((key) => !far.includes(key));
  const modal = candidateKeys(chords, 'modes').map((key) => inKey(key, 'natural'));
  const noted = (readings: readonly InKey[], note: NoteKind) => readings.map((reading) => ({ ...reading, note }));
  const inKeys = [
    ...noted(only(natural, 'major'), OTHER_KEY),
    ...noted(only(natural, 'minor'), 'other-minor-frame'),
    ...noted([...inOrder(policy, visited, near), ...far], OTHER_KEY),
  ];
  const isHome = (tonic: NoteName) => pitchClass(tonic) === pitchClass(first.root);
  const usual = modal.filter(({ mode, tonic }) => USUAL_MODES.has(mode) || isHome(tonic));
  const all =
    policy === 'modes'
      ? [...noted(modal, OTHER_KEY), ...inKeys]
      : [...inKeys, ...noted(usual, 'counted-from-a-modal-home')];
  return all.flatMap((reading, index) =>
    withFlats(reading).map((places): Reading => ({
      places,
      note: index === 0 ? null : reading.note,
      one: pitchClass(reading.tonic),
    })),
  );
}

const OTHER_KEY = 'right-in-another-key';

/** Whether a minor key has an augmented triad as its III+ alone, and its tonic nowhere: a dominant is heard in it sooner. */
function isFarOff({ tonic, mode }: InKey, chords: readonly Chord[]): boolean {
  return (
    chords.some(({ quality }) => quality === 'augmented') && !chords.some((chord) => isTonicOf(chord, { tonic, mode }))
  );
}

/** The likeliest first, keys by a raised seventh where they stand among those with visitors; before these, where the class counts them. */
function inOrder(policy: Policy, visited: readonly InKey[], raised: readonly InKey[]): readonly InKey[] {
  const isSame = (one: InKey, other: InKey) =>
    one.mode === other.mode && pitchClass(one.tonic) === pitchClass(other.tonic);
  const merged = visited.map((key) => raised.find((other) => isSame(key, other)) ?? key);
  const others = raised.filter((key) => !merged.includes(key));
  if (policy !== 'raised-seventh') return [...merged, ...others];
  return [...raised, ...merged.filter((key) => !raised.includes(key))];
}

/** Chords where a key's numerals name them. */
function named(chords: readonly Chord[], asked: number, { key, numerals }: NamedKey): InKey {
  const places = chords.slice(0, asked).map((chord, index) => {
    const place = placeOf(itemAt(numerals, index), chord.quality);
    return withAltered([place], chord, key, chords);
  });
  return { ...key, places };
}

function placeOf(numeral: string, quality: Quality): Place {
  const { sign, degree, small } = readChordNumeral(numeral);
  return { sign, degree, small, quality };
}

/** The places of an augmented triad with those that it has as a dominant, the one on its written root first. */
function withAltered(places: readonly Place[], chord: Chord, key: Key, beside: readonly Chord[]): readonly Place[] {
  const altered = alteredDominants(chord, key, beside);
  const asPlaces = altered.map(({ numeral }) => placeOf(numeral, chord.quality));
  const [first] = altered;
  const asWritten = first !== undefined && pitchClass(first.root) === pitchClass(chord.root);
  return asWritten ? [...asPlaces, ...places] : [...places, ...asPlaces];
}

function only(readings: readonly InKey[], mode: Mode): readonly InKey[] {
  return readings.filter((reading) => reading.mode === mode);
}

/** Where a key has a chord, under each name of what sounds. */
function placesIn(chord: Chord, key: Key, sevenths: Sevenths): readonly Place[] {
  return namesOfSound(chord).flatMap((reading): readonly Place[] => {
    const place = placeIn(reading, key, sevenths);
    if (place === null) return [];
    return [placeOf(numeralOn(place, reading), reading.quality)];
  });
}

/** Degrees of the natural minor that lie one fret below those of the major scale: some write a flat before them. */
const LOWERED: ReadonlySet<string> = new Set(['III', 'VI', 'VII']);

/** A minor key's places without and with flats before the lowered degrees, a minor mode's with and without. */
function withFlats({ mode, places }: InKey): readonly Reading['places'][] {
  const each = (change: (place: Place) => Place) => places.map((ofChord) => ofChord.map(change));
  if (mode === 'minor') return [places, each((place) => (isLowered(place) ? { ...place, sign: 'b' } : place))];
  if (!MINOR_HOMES.has(mode)) return [places];
  return [places, each((place) => (place.sign === 'b' && LOWERED.has(place.degree) ? { ...place, sign: '' } : place))];
}

/** Whether a degree of a minor key is a lowered one: not the raised seventh, whose chord is diminished. */
function isLowered({ degree, quality }: Place): boolean {
  return LOWERED.has(degree) && !(degree === 'VII' && quality === 'diminished');
}

/** Every text that says a reading: more than one where a chord without a third may have either case. */
export function textsOf({ places }: Pick<Reading, 'places'>): readonly (readonly string[])[] {
  return places.reduce<readonly (readonly string[])[]>(
    (texts, ofChord) =>
      texts.flatMap((text) =>
        ofChord.flatMap((place) => waysToSay(place, place.quality)).map((way) => [...text, writeNumeral(way)]),
      ),
    [[]],
  );
}

/** How one numeral fits its place: `own` is right but for a quality that the student misheard before. */
const FITS = ['right', 'own', 'case', 'sign', 'flat', 'wrong'] as const;
export type Fit = (typeof FITS)[number];

/** How a numeral fits a chord in the best of its places, beside the quality that the student gave the chord. */
export function fitOf(numeral: Numeral | undefined, places: readonly Place[], own: Quality | null): Fit {
  const fits = places.map((place) => fitAt(numeral, place, own));
  return FITS.find((fit) => fits.includes(fit)) ?? 'wrong';
}

/** How a numeral fits a place. */
function fitAt(numeral: Numeral | undefined, place: Place, own: Quality | null): Fit {
  if (!numeral || numeral.degree !== place.degree) return 'wrong';
  if (numeral.sign !== place.sign) {
    return numeral.sign === '' && place.sign === 'b' && says(numeral, place.quality) ? 'flat' : 'wrong';
  }
  if (says(numeral, place.quality)) return 'right';
  if (own !== null && says(numeral, own)) return 'own';
  return waysToSay(place, place.quality).some(({ small }) => small === numeral.small) ? 'sign' : 'case';
}

/**
 * Whether numerals count from the first chord as one: `flat` where only a flat is missing, null where they do not. Above a
 * minor home III, VI and VII need none.
 */
export function countedFromHome(numerals: readonly Numeral[], chords: readonly Chord[]): 'counted' | 'flat' | null {
  const [home] = chords;
  if (!home || numerals.length !== chords.length) return null;
  const minorHome = numerals[0]?.small === true;
  const fits = chords.map((chord, index) => {
    const distance = distanceNumber(pitchClass(chord.root) - pitchClass(home.root));
    const names = [degreeOfDistance(distance), ...(distance === '#4' ? [{ sign: 'b', degree: 'V' } as const] : [])];
    const places = names.map((name): Place => ({ ...name, small: false, quality: chord.quality }));
    const numeral = numerals[index];
    const all = places.map((place) => fitOf(numeral, [place], null));
    if (all.includes('right')) return 'counted';
    if (!all.includes('flat')) return null;
    return minorHome && numeral && LOWERED.has(numeral.degree) ? 'counted' : 'flat';
  });
  if (fits.includes(null)) return null;
  return fits.includes('flat') ? 'flat' : 'counted';
}

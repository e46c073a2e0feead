import type { Chord, Quality } from '../../chords.ts';
import { distanceNumber } from '../../distance-line.ts';
import { itemAt } from '../../items.ts';
import { candidateKeys } from '../../candidates.ts';
import { pitchClass } from '../../pitch.ts';
import type { NoteKind } from '../error-kinds.ts';
import type { Numeral } from './numerals.ts';
import { degreeOfDistance, readNumeral, says, waysToSay, writeNumeral } from './numerals.ts';

/** Where a chord stands in a key, and what it is. */
export type Place = Pick<Numeral, 'sign' | 'degree' | 'small'> & { readonly quality: Quality };

/** The chords' places in one key, and what is said beside an answer in it. */
export type Reading = { readonly places: readonly Place[]; readonly note: NoteKind | null };

/**
 * Every way to read chords: in each major key that owns them, flat side first; then in the relative minor of each, without and
 * with flats before III, VI and VII. Chords that follow in `chords` beyond the first `asked` decide the keys, but have no place.
 */
export function readingsOf(chords: readonly Chord[], asked: number): readonly Reading[] {
  const keys = chords.length === 0 ? [] : candidateKeys(chords, 'relatives');
  const inKeys = keys.map(({ mode, numerals }) => ({
    mode,
    places: chords.slice(0, asked).map(({ quality }, index): Place => {
      const { sign, degree, small } = readNumeral(itemAt(numerals, index).replace(/(?:5|sus[24])$/, ''));
      return { sign, degree, small, quality };
    }),
  }));
  const majors = inKeys.filter(({ mode }) => mode === 'major').map(({ places }) => places);
  const minors = inKeys.filter(({ mode }) => mode === 'minor').map(({ places }) => places);
  return [
    ...majors.map((places, index): Reading => ({ places, note: index === 0 ? null : 'right-in-another-key' })),
    ...minors.flatMap((places): Reading[] =>
      [places, places.map(flattened)].map((each) => ({ places: each, note: 'other-minor-frame' })),
    ),
  ];
}

/** Degrees of the natural minor that lie one fret below those of the major scale: some write a flat before them. */
const LOWERED: ReadonlySet<string> = new Set(['III', 'VI', 'VII']);

function flattened(place: Place): Place {
  return LOWERED.has(place.degree) ? { ...place, sign: 'b' } : place;
}

/** Every text that says a reading: more than one where a chord without a third may have either case. */
export function textsOf({ places }: Pick<Reading, 'places'>): readonly (readonly string[])[] {
  return places.reduce<readonly (readonly string[])[]>(
    (texts, place) =>
      texts.flatMap((text) => waysToSay(place, place.quality).map((way) => [...text, writeNumeral(way)])),
    [[]],
  );
}

/** How one numeral fits its place: `own` is right but for a quality that the student misheard before. */
export type Fit = 'right' | 'own' | 'case' | 'sign' | 'flat' | 'wrong';

/** How a numeral fits a place, beside the quality that the student gave the chord. */
export function fitOf(numeral: Numeral | undefined, place: Place | undefined, own: Quality | null): Fit {
  if (!numeral || !place || numeral.degree !== place.degree) return 'wrong';
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
    const all = places.map((place) => fitOf(numeral, place, null));
    if (all.includes('right')) return 'counted';
    if (!all.includes('flat')) return null;
    return minorHome && numeral && LOWERED.has(numeral.degree) ? 'counted' : 'flat';
  });
  if (fits.includes(null)) return null;
  return fits.includes('flat') ? 'flat' : 'counted';
}

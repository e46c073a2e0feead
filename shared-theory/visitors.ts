import { chordPitchClasses, chordSymbol, overRoot } from './chords.ts';
import type { Chord } from './chords.ts';
import { diatonicChart, keyHolds, keyOwns, numeralOn, placeIn, spelledScale } from './degrees.ts';
import { itemAt } from './items.ts';
import { modeScale, scaleNotes } from './keys.ts';
import type { HomeMode, Key } from './keys.ts';
import { modulo, pitchClass, transpose } from './pitch.ts';
import type { NoteName } from './pitch.ts';

/**
 * Where a visitor comes from. `borrowed`: from the minor key on the same tonic. `raised-seventh`, `dorian`, `phrygian`: from
 * another form of the minor scale. `applied`: the dominant or leading-note chord of a degree that is not the tonic.
 */
export const VISITS = ['borrowed', 'raised-seventh', 'dorian', 'phrygian', 'applied'] as const;
type Visit = (typeof VISITS)[number];

/** A chord that a key does not own, and how it is called there. */
export type Visitor = {
  /** As the key spells it, in ASCII. */
  readonly chord: string;
  readonly visit: Visit;
  /** Its place in the key: `bVII`, `iv`, `II7`, `IV`; in a major key flats are counted on the major scale. */
  readonly numeral: string;
  /** Of an applied chord, what it is there and of which degree: `V7/V`, `viio7/ii`. */
  readonly of?: string;
};

/**
 * How a chord that a key does not own is called there; null where it has no usual name. A leading-note chord is one only beside
 * the chord it leads to, and so is the major chord on a minor key's tonic: `beside` are the chords of the vamp.
 */
export function visitorOf(chord: Chord, key: Key, beside: readonly Chord[]): Visitor | null {
  const [altered = null] = alteredDominants(chord, key, beside);
  const asWritten = altered !== null && pitchClass(altered.root) === pitchClass(chord.root) ? altered : null;
  const found =
    key.mode === 'major'
      ? (appliedDominant(chord, key, beside) ?? borrowed(chord, key, beside) ?? leadingNote(chord, key, beside))
      : (asWritten ?? ofMinor(chord, key) ?? appliedDominant(chord, key, beside) ?? leadingNote(chord, key, beside));
  const named = found ?? altered;
  if (named === null) return null;
  const { root, ...visit } = named;
  return { chord: chordSymbol({ ...chord, root }), ...visit };
}

/** A visitor by the root that a key gives it. */
type Found = Omit<Visitor, 'chord'> & { readonly root: NoteName };

/** What another mode on the key's tonic has on one of the degrees, counted on the major scale; null where it does not own the chord. */
function fromMode(chord: Chord, { tonic }: Key, mode: HomeMode, degrees: readonly number[]) {
  const parallel: Key = { tonic, mode };
  const place = placeIn(chord, parallel);
  if (place === null || !degrees.includes(place.degree)) return null;
  const semitones = itemAt(modeScale(mode), place.degree);
  return { root: transpose(tonic, { steps: place.degree, semitones }), numeral: numeralOn(place, chord) };
}

const ALL_BUT_TONIC = [1, 2, 3, 4, 5, 6] as const;

/**
 * From the minor on the same tonic: iv, bVI, bVII, bIII, v, iio and i, and the vii of its raised seventh; the major seventh on bVII
 * has a sixth of the major. What only visits as i needs the I beside it.
 */
function borrowed(chord: Chord, key: Key, beside: readonly Chord[]): Found | null {
  const asMinor: Key = { tonic: key.tonic, mode: 'minor' };
  const sounds = beside.some(({ root, quality }) => quality === 'major' && pitchClass(root) === pitchClass(key.tonic));
  const found =
    fromMode(chord, key, 'aeolian', sounds ? [0, ...ALL_BUT_TONIC] : ALL_BUT_TONIC) ??
    fromMode(chord, key, 'mixolydian', [6]);
  if (found) return { ...found, visit: 'borrowed' };
  const raised = placeIn(chord, asMinor, 'raised-too');
  if (chord.addition !== 'diminished-seventh' || raised === null) return null;
  return { root: itemAt(scaleNotes(key), 6), numeral: numeralOn(raised, chord), visit: 'borrowed' };
}

/** What a minor key has with its seventh raised, its sixth raised (ii and IV) or its second lowered (bII). */
function ofMinor(chord: Chord, key: Key): Found | null {
  const raised = placeIn(chord, key, 'raised-too');
  if (raised) {
    const root = itemAt(spelledScale(key, raised.raised), raised.degree);
    return { root, numeral: numeralOn(raised, chord), visit: 'raised-seventh' };
  }
  const dorian = fromMode(chord, key, 'dorian', [1, 3]);
  if (dorian) return { ...dorian, visit: 'dorian' };
  const phrygian = fromMode(chord, key, 'phrygian', [1]);
  return phrygian && { ...phrygian, visit: 'phrygian' };
}

/** A degree that a chord may lead to: its own triad is major or minor. The fifth of a minor key is led to as V. */
function goals(key: Key): readonly { readonly degree: number; readonly root: NoteName; readonly numeral: string }[] {
  return diatonicChart(key).flatMap(({ chord, numeral }, degree) => {
    if (degree === 0 || chord.quality === 'diminished') return [];
    return [{ degree, root: chord.root, numeral: degree === 4 ? 'V' : numeral }];
  });
}

/** Whether one of the chords stands on a note, and the key owns it or leads to it. */
function standsOn(root: NoteName, key: Key, beside: readonly Chord[]): boolean {
  return beside.some(
    (chord) => pitchClass(chord.root) === pitchClass(root) && (keyOwns(key, chord) || chord.quality === 'major'),
  );
}

/** The bass is of the chord or of the key. */
function bassFits({ bass }: Chord, key: Key): boolean {
  return bass === undefined || keyHolds(key, pitchClass(bass));
}

/** A major chord, with a seventh or without, on a degree of the key, a fourth below another. */
function appliedDominant(chord: Chord, key: Key, beside: readonly Chord[]): Found | null {
  const { quality, addition } = chord;
  if (quality !== 'major' || (addition !== undefined && addition !== 'seventh') || !bassFits(chord, key)) return null;
  const goal = goals(key).find(({ root }) => modulo(pitchClass(root) - pitchClass(chord.root), 12) === 5);
  const degree = scaleNotes(key).findIndex((note) => pitchClass(note) === pitchClass(chord.root));
  if (!goal || degree < 0) return null;
  // On a minor key's tonic it may as well be a bright ending.
  if (degree === 0 && addition === undefined && !standsOn(goal.root, key, beside)) return null;
  return {
    root: itemAt(scaleNotes(key), degree),
    numeral: numeralOn({ key, degree, raised: false }, chord),
    of: `${addition === 'seventh' ? 'V7' : 'V'}/${goal.numeral}`,
    visit: 'applied',
  };
}

/** Semitones between the notes of an augmented triad: by sound any of them is its root. */
const EVEN_THIRDS = [0, 4, 8] as const;
const DOMINANT = 4;

/**
 * An augmented triad as a dominant with its fifth raised, the written root first: V+ of the tonic, whose raised note is the third of
 * the minor key, and V+ of a degree whose chord is among them, as I+ before IV.
 */
export function alteredDominants(chord: Chord, key: Key, beside: readonly Chord[]): readonly Found[] {
  if (chord.quality !== 'augmented') return [];
  const sounds = chordPitchClasses(overRoot(chord));
  if (!bassFits(chord, key) && !sounds.includes(pitchClass(chord.bass ?? chord.root))) return [];
  const scale = scaleNotes(key);
  return EVEN_THIRDS.flatMap((apart): readonly Found[] => {
    const sound = (pitchClass(chord.root) + apart) % 12;
    const degree = scale.findIndex((note) => pitchClass(note) === sound);
    if (degree < 0) return [];
    const here = { root: itemAt(scale, degree), numeral: numeralOn({ key, degree, raised: false }, chord) };
    if (degree === DOMINANT) return [{ ...here, visit: key.mode === 'major' ? 'borrowed' : 'raised-seventh' }];
    const goal = goals(key).find(
      ({ root }) => modulo(pitchClass(root) - sound, 12) === 5 && standsOn(root, key, beside),
    );
    return goal ? [{ ...here, of: `V+/${goal.numeral}`, visit: 'applied' }] : [];
  });
}

/**
 * A diminished chord a half step below a degree whose chord is among them; with a diminished seventh any of its notes may lead, and
 * below V of a major key it goes to I as well: IV–#ivo7–I.
 */
function leadingNote(chord: Chord, key: Key, beside: readonly Chord[]): Found | null {
  if (chord.quality !== 'diminished' || !bassFits(chord, key)) return null;
  const turns = chord.addition === 'diminished-seventh' ? [0, 3, 6, 9] : [0];
  const goesToTonic = key.mode === 'major' && chord.addition === 'diminished-seventh';
  for (const turn of turns) {
    const sound = (pitchClass(chord.root) + turn) % 12;
    const goal = goals(key).find(
      ({ root, degree }) =>
        modulo(pitchClass(root) - sound, 12) === 1 &&
        (standsOn(root, key, beside) || (goesToTonic && degree === DOMINANT && standsOn(key.tonic, key, beside))),
    );
    if (!goal) continue;
    const root = transpose(goal.root, { steps: -1, semitones: -1 });
    const place = { key, degree: goal.degree - 1, raised: false };
    const natural = itemAt(scaleNotes(key), place.degree);
    const sign = pitchClass(natural) === sound ? '' : '#';
    return {
      root,
      numeral: sign + numeralOn(place, chord),
      of: `${numeralOn({ key, degree: 6, raised: true }, chord)}/${goal.numeral}`,
      visit: 'applied',
    };
  }
  return null;
}

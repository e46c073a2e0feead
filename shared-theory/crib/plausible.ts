import { candidateKeys } from '../candidates.ts';
import { chordPitchClasses } from '../chords.ts';
import type { Quality } from '../chords.ts';
import { differentChords } from '../different-chords.ts';
import { distanceNumber } from '../distance-line.ts';
import { itemAt } from '../items.ts';
import { keyId, parseKeyName, relativeKey } from '../keys.ts';
import { modulo, pitchClass } from '../pitch.ts';
import type { PitchClass } from '../pitch.ts';
import { MOST_CHORDS } from '../questions/count/ask.ts';
import { OCTAVE } from '../questions/distance/ask.ts';
import { judgeOf } from '../questions/judges.ts';
import { KEY_IDS } from '../questions/keys/ask.ts';
import { asksForMajors } from '../questions/keys/families.ts';
import { degreeOfDistance, readNumeral, waysToSay, writeNumeral } from '../questions/numeral/numerals.ts';
import { chordsOf } from '../questions/own-chords.ts';
import type { AskedOf, KeyId, Kind, NeckPlace } from '../questions/question.ts';
import { ORDERS } from '../questions/order/ask.ts';
import { neckPlaces } from '../questions/root/ask.ts';
import { pitchClassAt } from '../questions/root/places.ts';
import { questionId } from '../questions/round-questions.ts';
import { ASKED_SEVENTHS } from '../questions/seventh/ask.ts';
import type { Policy } from '../truth.ts';
import { alone } from './guess.ts';
import type { Guess, Guesses } from './guess.ts';
import { RHYTHM_GUESSES } from './plausible-rhythm.ts';

/** Every answer of a kind that a class might well give, right ones among them; those nearest to what sounded first. */
export function plausibleAnswers(kind: Kind, asked: AskedOf): readonly Guess[] {
  return GUESSES[kind](asked);
}

const GUESSES: Guesses = {
  ...RHYTHM_GUESSES,
  count: () => alone(Array.from({ length: MOST_CHORDS }, (_, index) => index + 1)),
  order: (asked) => alone(ordersNear(judgeOf('order').truth(asked) ?? [])),
  direction: () => alone(['up', 'down', 'same']),
  bass: (asked) => alone(chordNotesFirst(asked)),
  quality: ({ settings }) => alone(settings.qualities),
  root: rootGuesses,
  seventh: () => alone(ASKED_SEVENTHS),
  distance: (asked) => alone(placesNear(asked)),
  numeral: (asked) => alone(numeralGuesses(asked)),
  'one-or-several': () => alone(['one', 'several']),
  keys: (asked) => alone(keySets(asked, homesOf(asked))),
  settler: (asked) => alone(keySets(asked)),
  // An opinion: no answer of it is wrong.
  home: () => [],
};

/** The places of the neck pad, the lowest frets first. */
function lowPlaces({ settings }: AskedOf): readonly NeckPlace[] {
  return neckPlaces(settings.capo).toSorted((one, other) => one.fret - other.fret);
}

/** The low places, those of the chord's own notes before others: a class that mishears a bass mostly hears another note of the chord. */
function chordNotesFirst(asked: AskedOf): readonly NeckPlace[] {
  const own = new Set(chordPitchClasses(itemAt(chordsOf(asked.truth), asked.target)));
  const strange = (place: NeckPlace) => Number(!own.has(pitchClassAt(place)));
  return lowPlaces(asked).toSorted((one, other) => strange(one) - strange(other));
}

const RELATIVE: Partial<Record<Quality, Quality>> = { major: 'minor', minor: 'major' };

/** Every place near the nut; once alone, and once with the quality of the relative chord heard before. */
function rootGuesses(asked: AskedOf): readonly Guess<'root'>[] {
  const { truth, target } = asked;
  const relative = RELATIVE[truth.qualities[target] ?? 'power'];
  const own = relative === undefined ? [] : [{ [questionId('quality', target)]: relative }];
  return [{}, ...own].flatMap((each) => lowPlaces(asked).map((answer) => ({ answer, own: each })));
}

/** Every order, those that differ in the fewest slots first. */
function ordersNear(right: readonly number[]): readonly (readonly number[])[] {
  const off = (order: readonly number[]) => order.filter((chord, slot) => chord !== right[slot]).length;
  return ORDERS.toSorted((one, other) => off(one) - off(other));
}

/**
 * Places of the line: those on the right side of home first, the nearest to the right one first. Of those on the other side only the
 * same note and the same way back, home and its octaves only where the right one is an octave: nobody who hears a step answers them.
 * And how far the basses lie, whatever it is.
 */
function placesNear(asked: AskedOf): readonly number[] {
  const { truth, target } = asked;
  const right = judgeOf('distance').truth(asked) ?? 0;
  const basses = (truth.bass[target] ?? 0) - (truth.bass[0] ?? 0);
  const isOctave = (place: number) => place % OCTAVE === 0;
  const places = Array.from({ length: 2 * OCTAVE + 1 }, (_, index) => index - OCTAVE);
  const onSide = (place: number) => Math.sign(place) === Math.sign(right);
  const isLikely = (place: number) => {
    if (place === basses || isOctave(right)) return true;
    return !isOctave(place) && (onSide(place) || place === -right || isOctave(place - right));
  };
  const far = (place: number) => (onSide(place) ? 0 : 2 * OCTAVE) + Math.abs(place - right);
  return places.filter(isLikely).toSorted((one, other) => far(one) - far(other));
}

/** Numerals counted from the first chord as one, the right ones with one in the other case, either without flats, and those exchanged. */
function numeralGuesses(asked: AskedOf): readonly (readonly string[])[] {
  const right = judgeOf('numeral').truth(asked);
  if (right === null) return [];
  const different = differentChords(chordsOf(asked.truth));
  const home = pitchClass(itemAt(different, 0).root);
  const fromHome = different.slice(0, right.length).map(({ root, quality }) => {
    const place = degreeOfDistance(distanceNumber(pitchClass(root) - home));
    return writeNumeral(itemAt(waysToSay({ ...place, small: false }, quality), 0));
  });
  const changed = (text: readonly string[], change: (numeral: string) => string) =>
    text.map((_, bar) => text.with(bar, change(itemAt(text, bar))));
  const withoutFlat = (numeral: string) => numeral.replace(/^b/, '');
  return [
    fromHome,
    ...changed(right, otherCase),
    ...[right, fromHome].map((text) => text.map(withoutFlat)),
    right.toReversed(),
  ];
}

/** `V` for `v`; a sign after it goes, as it is part of the quality. */
function otherCase(text: string): string {
  const numeral = readNumeral(text);
  return writeNumeral({ ...numeral, small: !numeral.small, suffix: '' });
}

const FIFTH = 7;
/** More neighbours than this on the circle nobody marks. */
const LONGEST_ARC = 4;
/** Steps round the circle from a place, the nearest first. */
const NEAREST_FIRST = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6] as const;

/**
 * Sets of keys: each chord's own key; one key, and up to four neighbours, those near the owners first; all that own one of the
 * chords; the owners with one missing, by their relative minors or majors alone; those of the loop without its settler; and none. Beside scales stands a home, where one is asked for.
 */
function keySets(
  { truth, settings: { policy } }: AskedOf,
  homes: readonly KeyId[] = [],
): readonly (readonly KeyId[])[] {
  const owners = truth.keys[policy].map((name) => keyId(parseKeyName(name)));
  const majors = truth.keys.majors.map(parseKeyName);
  const home = pitchClass(itemAt(truth.roots, 0));
  const middle = majors[0] === undefined ? home : pitchClass(majors[0].tonic);
  // Where nobody owns the loop, nobody looks for a key beside the owners.
  const arcs = Array.from({ length: majors.length === 0 ? 0 : LONGEST_ARC }, (_, more) =>
    NEAREST_FIRST.map((from) => Array.from({ length: more + 1 }, (_each, step) => neighbour(middle, from + step))),
  ).flat();
  const sets = [
    ...chordsOf(truth).map(({ root, quality }) => [ownKey(pitchClass(root), quality, policy)]),
    ...arcs,
    ...chordsOf(truth).map((chord) => candidateKeys([chord], policy).map(({ id }) => id)),
    ...owners.map((_, place) => owners.toSpliced(place, 1)),
    majors.map((key) => keyId(relativeKey(key))),
    majors.map(keyId),
    owners,
    ...(majors.length === 0 ? [] : KEY_IDS.map((id) => [id])),
    [],
  ];
  // A parent scale is named by its major key.
  const asked = policy === 'modes' ? sets.filter((set) => set.every((id) => id.endsWith('M'))) : sets;
  return asked.map((set) => [...KEY_IDS.filter((id) => set.includes(id)), ...(set.length > 0 ? homes : [])]);
}

/** The homes of the right answer: none but where homes are asked for. */
function homesOf(asked: AskedOf): readonly KeyId[] {
  return (judgeOf('keys').truth(asked) ?? []).filter((id) => !KEY_IDS.includes(id));
}

/** The major key so many fifths round the circle from a tonic. */
function neighbour(tonic: PitchClass, fifths: number): KeyId {
  return `${modulo(tonic + fifths * FIFTH, 12)}M`;
}

/** The key that a class names after the first chord; of a minor one its relative major, where majors alone are asked for. */
function ownKey(home: PitchClass, quality: Quality | undefined, policy: Policy): KeyId {
  if (quality !== 'minor') return `${home}M`;
  return asksForMajors(policy) ? `${(home + 3) % 12}M` : `${home}m`;
}

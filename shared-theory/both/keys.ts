import { readSymbol, soundsAs, type Chord } from '../chords.ts';
import { candidateKeys } from '../candidates.ts';
import { diatonicChart, keyOwns } from '../degrees.ts';
import { lateness } from '../guitar-order.ts';
import { keyId, parseKeyName, relativeKey, usualKey, type Key } from '../keys.ts';
import { wholeBars } from '../live.ts';
import { BEATS_PER_BAR } from '../meters.ts';
import { usualShape } from '../neck.ts';
import type { KeyId } from '../questions/question.ts';
import type { Truth } from '../truth.ts';
import type { VoicedSlot, VoicedVamp } from '../vamps.ts';
import { cheapest, type BothReadings } from './readings.ts';

/** Bars in which two keys that were left out are played one behind the other; longer loops show one. */
const MOST_BARS = 6;

/** Every triad of every major key, spelled as the first key by fifths that has it. */
const ALL_TRIADS: readonly Chord[] = Array.from({ length: 12 }, (_, fifths) => usualKey(`${(fifths * 7) % 12}M`))
  .flatMap(diatonicChart)
  .map(({ chord }) => chord)
  .filter((chord, index, all) => all.findIndex((other) => soundsAs(other, chord)) === index);

/** The loop, a bar for each chord that has one or more, and a bar of another chord behind it. */
function followedBy(vamp: VoicedVamp, chord: Chord): readonly VoicedSlot[] {
  const bar = BEATS_PER_BAR[vamp.meter];
  const loop = vamp.slots.map((slot) => ({ ...slot, beats: Math.min(slot.beats, bar) }));
  return [...wholeBars(loop, vamp.meter), { chord, beats: bar, frets: usualShape(chord) }];
}

function ownersOf(vamp: VoicedVamp): readonly Key[] {
  return candidateKeys(
    vamp.slots.map(({ chord }) => chord),
    'majors',
  );
}

/** The major keys of an answer, a minor key as its relative major. */
function majorsOf(ids: readonly KeyId[]): readonly Key[] {
  const majors = ids.map(usualKey).map((key) => (key.mode === 'major' ? key : relativeKey(key)));
  return majors.filter((key, index) => majors.findIndex((other) => keyId(other) === keyId(key)) === index);
}

function without(keys: readonly Key[], others: readonly Key[]): readonly Key[] {
  return keys.filter((key) => !others.some((other) => keyId(other) === keyId(key)));
}

function isInLoop(vamp: VoicedVamp, chord: Chord): boolean {
  return vamp.slots.some((slot) => soundsAs(slot.chord, chord));
}

/** The handiest triad of the keys that the loop has not and none of the others own; null where they own them all. */
function tellingChord(vamp: VoicedVamp, keys: readonly Key[], others: readonly Key[]): Chord | null {
  const chords = keys.flatMap(diatonicChart).map(({ chord }) => chord);
  const telling = chords.filter((chord) => !isInLoop(vamp, chord) && !others.some((other) => keyOwns(other, chord)));
  return cheapest(telling, lateness);
}

/**
 * Behind the loop a chord of a key that was named and does not own it, then one of a key that does. Where only owners were
 * named, a chord of a named one alone, then of each that was left out; where none was, a chord that no owner has comes first.
 */
export function keysReadings(vamp: VoicedVamp, answer: readonly KeyId[]): BothReadings | null {
  const owners = ownersOf(vamp);
  const named = majorsOf(answer);
  const [foreign] = without(named, owners);
  const missed = without(owners, named);
  if (foreign) return foreignKey(vamp, foreign, owners, missed.length > 0 ? missed : owners);
  if (missed.length === 0) return null;
  const wrong = named.length > 0 ? tellingOfNamed(vamp, named, missed) : leavingChord(vamp, []);
  const right = oneBehindTheOther(
    vamp,
    missed.map((key) => tellingChord(vamp, [key], named.length > 0 ? named : without(owners, [key]))),
  );
  return wrong && right.length > 0 ? { wrong: followedBy(vamp, wrong), right } : null;
}

/** The loop with the first of the chords behind it, and in a short loop again with the next that is another. */
function oneBehindTheOther(vamp: VoicedVamp, chords: readonly (Chord | null)[]): readonly VoicedSlot[] {
  const different = chords
    .filter((chord) => chord !== null)
    .filter((chord, index, all) => all.findIndex((other) => soundsAs(other, chord)) === index)
    .map((chord) => followedBy(vamp, chord));
  const [first = [], second = []] = different;
  const bars = [...first, ...second].reduce((sum, { beats }) => sum + beats, 0) / BEATS_PER_BAR[vamp.meter];
  return bars <= MOST_BARS ? [...first, ...second] : first;
}

function foreignKey(
  vamp: VoicedVamp,
  foreign: Key,
  owners: readonly Key[],
  missed: readonly Key[],
): BothReadings | null {
  const wrong = tellingChord(vamp, [foreign], owners);
  // Where no key owns the loop, the chord that the named one lacks says so.
  const lacking = vamp.slots.map(({ chord }) => chord).find((chord) => !keyOwns(foreign, chord));
  const right = missed.length > 0 ? tellingChord(vamp, missed, [foreign]) : (lacking ?? null);
  return wrong && right && { wrong: followedBy(vamp, wrong), right: followedBy(vamp, right) };
}

/** A chord of the named owners that none of those left out has, or not the first of them. */
function tellingOfNamed(vamp: VoicedVamp, named: readonly Key[], missed: readonly Key[]): Chord | null {
  return tellingChord(vamp, named, missed) ?? tellingChord(vamp, named, missed.slice(0, 1));
}

/** The handiest triad that leaves exactly these of the keys that own the loop; null where none does. */
function leavingChord(vamp: VoicedVamp, keys: readonly Key[]): Chord | null {
  const owners = ownersOf(vamp);
  const leaving = ALL_TRIADS.filter((chord) => {
    const left = owners.filter((key) => keyOwns(key, chord));
    return !isInLoop(vamp, chord) && left.length === keys.length && without(left, keys).length === 0;
  });
  return cheapest(leaving, lateness);
}

/**
 * Behind the loop a chord that would leave the answered keys, or belongs to a wrong one of them; then the settler. Where that is a
 * note, a chord says the same as it.
 */
export function settlerReadings(
  vamp: VoicedVamp,
  { settlers }: Truth,
  target: number,
  answer: readonly KeyId[],
): BothReadings | null {
  const truth = settlers[target];
  if (!truth) return null;
  const left = truth.keys.majors.map(parseKeyName);
  const named = majorsOf(answer);
  const [foreign] = without(named, left);
  if (!foreign && without(left, named).length === 0) return null;
  const telling = without(named, left).map((key) => tellingChord(vamp, [key], left));
  const wrong = leavingChord(vamp, named) ?? telling.find((chord) => chord !== null) ?? null;
  const right = truth.chord === null ? leavingChord(vamp, left) : readSymbol(truth.chord);
  return wrong && right && { wrong: followedBy(vamp, wrong), right: followedBy(vamp, right) };
}

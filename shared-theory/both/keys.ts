import { soundsAs, type Chord } from '../chords.ts';
import {
  candidateKeys,
  diatonicChart,
  keyId,
  keyOwns,
  parseKeyName,
  relativeKey,
  usualKey,
  type Key,
} from '../keys.ts';
import { BEATS_PER_BAR } from '../meters.ts';
import { usualShape } from '../neck.ts';
import type { KeyId } from '../questions/question.ts';
import { settlersOf } from '../settle.ts';
import type { Truth } from '../truth.ts';
import type { VoicedSlot, VoicedVamp } from '../vamps.ts';
import { cheapest, type BothReadings } from './readings.ts';

/** Keys that were left out and are played one behind the other, at most. */
const MOST_MISSED = 2;

/** The loop and a bar of another chord behind it. */
function followedBy(vamp: VoicedVamp, chord: Chord): readonly VoicedSlot[] {
  const bar = BEATS_PER_BAR[vamp.meter];
  const loop = vamp.slots.map((slot) => ({ ...slot, beats: Math.min(slot.beats, bar) }));
  return [...loop, { chord, beats: bar, frets: usualShape(chord) }];
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

/** How far from the nut a hand goes for a chord; diminished ones come last. */
function effort(chord: Chord): number {
  const frets = usualShape(chord).filter((fret) => fret !== null);
  return Math.max(...frets) + (chord.quality === 'diminished' ? 100 : 0);
}

/** The handiest triad of a key that the loop has not and none of the others own; null where they own them all. */
function tellingChord(vamp: VoicedVamp, key: Key, others: readonly Key[]): Chord | null {
  const chords = diatonicChart(key).map(({ chord }) => chord);
  const telling = chords.filter((chord) => !isInLoop(vamp, chord) && !others.some((other) => keyOwns(other, chord)));
  return cheapest(telling, effort);
}

/**
 * Behind the loop a chord of a key that was named and does not own it, then one of a key that does. Where only owners were
 * named, a chord of a named one alone, then of each that was left out; where none was, a chord that no owner has comes first.
 */
export function keysReadings(vamp: VoicedVamp, answer: readonly KeyId[]): BothReadings | null {
  const owners = candidateKeys(
    vamp.slots.map(({ chord }) => chord),
    'majors',
  );
  const named = majorsOf(answer);
  const [foreign] = without(named, owners);
  const missed = without(owners, named);
  if (foreign) return foreignKey(vamp, foreign, owners, missed[0] ?? owners[0]);
  if (missed.length === 0) return null;
  const wrong = named[0] ? tellingOfNamed(vamp, named, missed) : strangeChord(vamp, owners);
  const right = missed.slice(0, MOST_MISSED).map((key) => tellingChord(vamp, key, without(named, [key])));
  const told = right.filter((chord) => chord !== null);
  if (!wrong || told.length === 0) return null;
  return { wrong: followedBy(vamp, wrong), right: told.flatMap((chord) => followedBy(vamp, chord)) };
}

function foreignKey(
  vamp: VoicedVamp,
  foreign: Key,
  owners: readonly Key[],
  owner: Key | undefined,
): BothReadings | null {
  const wrong = tellingChord(vamp, foreign, owners);
  // Where no key owns the loop, the chord that the named one lacks says so.
  const lacking = vamp.slots.map(({ chord }) => chord).find((chord) => !keyOwns(foreign, chord));
  const right = owner ? tellingChord(vamp, owner, [foreign]) : (lacking ?? null);
  return wrong && right && { wrong: followedBy(vamp, wrong), right: followedBy(vamp, right) };
}

/** A chord of a named owner that none of those left out has, or not the first of them. */
function tellingOfNamed(vamp: VoicedVamp, named: readonly Key[], missed: readonly Key[]): Chord | null {
  const found = [missed, missed.slice(0, 1)].flatMap((others) => named.map((key) => tellingChord(vamp, key, others)));
  return found.find((chord) => chord !== null) ?? null;
}

/** Every triad of every major key, spelled as the first key by fifths that has it. */
function allTriads(): readonly Chord[] {
  return Array.from({ length: 12 }, (_, sound) => usualKey(`${sound}M`))
    .flatMap(diatonicChart)
    .map(({ chord }) => chord)
    .filter((chord, index, all) => all.findIndex((other) => soundsAs(other, chord)) === index);
}

/** The handiest triad that leaves exactly these keys behind the loop; null where none does. */
function leavingChord(vamp: VoicedVamp, keys: readonly Key[]): Chord | null {
  const loop = vamp.slots.map(({ chord }) => chord);
  const leaving = allTriads().filter((chord) => {
    const left = candidateKeys([...loop, chord], 'majors');
    return !isInLoop(vamp, chord) && left.length === keys.length && without(left, keys).length === 0;
  });
  return cheapest(leaving, effort);
}

/** A chord after which no key owns all. */
function strangeChord(vamp: VoicedVamp, owners: readonly Key[]): Chord | null {
  return owners.length === 0 ? null : leavingChord(vamp, []);
}

/** Behind the loop a chord that would leave the answered keys, or belongs to a wrong one of them; then the settler. */
export function settlerReadings(
  vamp: VoicedVamp,
  { settlers }: Truth,
  target: number,
  answer: readonly KeyId[],
): BothReadings | null {
  const settler = settlersOf(vamp)[target]?.slot.chord;
  const truth = settlers[target];
  if (!settler || !truth) return null;
  const left = truth.keys.majors.map(parseKeyName);
  const named = majorsOf(answer);
  const [foreign] = without(named, left);
  if (!foreign && without(left, named).length === 0) return null;
  const wrong = leavingChord(vamp, named) ?? (foreign ? tellingChord(vamp, foreign, left) : null);
  return wrong && { wrong: followedBy(vamp, wrong), right: followedBy(vamp, settler) };
}

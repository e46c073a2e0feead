import type { Chord, Quality } from '../chords.ts';
import { candidateKeys } from '../candidates.ts';
import { differentSlots, type SlashRule } from '../different-chords.ts';
import { scaleNotes, usualKey } from '../keys.ts';
import { BEATS_PER_BAR } from '../meters.ts';
import { bassOf, shapeNotes, shapesFor } from '../neck.ts';
import { modulo, pitchClass, type NoteName, type PitchClass } from '../pitch.ts';
import type { Frets, VoicedSlot, VoicedVamp } from '../vamps.ts';

/** What was wrongly heard and what sounds, as two short loops in the groove of the vamp. */
export type BothReadings = { readonly wrong: readonly VoicedSlot[]; readonly right: readonly VoicedSlot[] };

/** Readings longer than this have a bar for each chord, so that a turn of both lasts eight bars or about. */
const LONGEST_BARS = 4;

/** Weight of a semitone between two basses beside differences of the hand: a reading stays in its register. */
const BASS_WEIGHT = 10;
/** A string that only one of two shapes plays is as far off as so many frets. */
const UNPLAYED_FRETS = 3;

/** What another form of shape counts beside the fret where a form begins to lie far up the neck. */
const OTHER_FORM = 5;
const FAR_FRET = 7;
/** Barres are at home up to this fret. */
const NEAR_FRET = 5;

/** The different chords of a loop, each where it sounds first, as the class counts them. */
export function differentOf(slots: readonly VoicedSlot[], rule: SlashRule = {}): readonly VoicedSlot[] {
  return differentSlots(
    slots.map(({ chord }) => chord),
    rule,
  ).flatMap((slot) => slots[slot] ?? []);
}

/** The slots, each as short as a reading allows: as they are while they are few, else a bar for each that lasts longer. */
export function shortened({ slots, meter }: Pick<VoicedVamp, 'slots' | 'meter'>): readonly VoicedSlot[] {
  const bar = BEATS_PER_BAR[meter];
  const beats = slots.reduce((sum, slot) => sum + slot.beats, 0);
  return beats <= LONGEST_BARS * bar ? slots : slots.map((slot) => ({ ...slot, beats: Math.min(slot.beats, bar) }));
}

/** Single chords of a reading: a bar each, two where the vamp gives each of them two or more. */
export function evenly(slots: readonly VoicedSlot[], { meter }: VoicedVamp): readonly VoicedSlot[] {
  const bar = BEATS_PER_BAR[meter];
  const bars = slots.every(({ beats }) => beats >= 2 * bar - 1e-6) && slots.length <= 2 ? 2 : 1;
  return slots.map((slot) => ({ ...slot, beats: bars * bar }));
}

/** How far apart two shapes lie under the hand: frets, string by string. */
export function handMoves(one: Frets, other: Frets): number {
  return one.reduce<number>((sum, fret, string) => {
    const to = other[string] ?? null;
    if (fret === null && to === null) return sum;
    return sum + (fret === null || to === null ? UNPLAYED_FRETS : Math.abs(fret - to));
  }, 0);
}

/** Whether one shape is the other moved along the neck. */
function sameForm(one: Frets, other: Frets): boolean {
  const shift = (shapeNotes(other)[0]?.fret ?? 0) - (shapeNotes(one)[0]?.fret ?? 0);
  return one.every((fret, string) => (other[string] ?? null) === (fret === null ? null : fret + shift));
}

/** How unlike two shapes of one chord, or of two on one root, sound: by register first, then by the hand. 0 for the same. */
export function unlike(one: Frets, other: Frets): number {
  return BASS_WEIGHT * Math.abs(bassOf(one) - bassOf(other)) + handMoves(one, other);
}

/** Frets of the root beyond one that a class plays without a stretch of the neck. */
function fretsBeyond(frets: Frets, fret: number): number {
  return Math.max(0, (shapeNotes(frets)[0]?.fret ?? 0) - fret);
}

/** How unlike a shape on another root is: by register first, then whether it is the same form moved, and not too far. */
export function unlikeMoved(one: Frets, other: Frets): number {
  const form = sameForm(one, other) ? 0 : OTHER_FORM;
  return BASS_WEIGHT * Math.abs(bassOf(one) - bassOf(other)) + form + 2 * fretsBeyond(one, FAR_FRET);
}

/** The item that costs least; null where there is none. */
export function cheapest<T>(items: readonly T[], cost: (item: T) => number): T | null {
  let best: { readonly item: T; readonly cost: number } | null = null;
  for (const item of items) {
    const costs = cost(item);
    if (best === null || costs < best.cost) best = { item, cost: costs };
  }
  return best?.item ?? null;
}

/**
 * The shape of a chord that a hand reaches from another one: near in register, near the nut, with its root on a low string or
 * open; null where it has none.
 */
export function handyShape(chord: Chord, from: Frets): Frets | null {
  return cheapest(shapesFor(chord), (shape) => {
    const root = shapeNotes(shape)[0];
    const thin = root && root.string < 5 && root.fret > 0 ? OTHER_FORM : 0;
    return Math.abs(bassOf(shape) - bassOf(from)) + 2 * fretsBeyond(shape, NEAR_FRET) + thin;
  });
}

/** Names that guitarists give a note: none that would be another white key. */
const PLAIN_NAME = /^(?:[CDFGA][#b]?|Eb?|Bb?)$/;

/** A root spelled as the keys of the loop spell it, else as the usual key on it. */
export function rootName(sound: PitchClass, quality: Quality, loop: readonly VoicedSlot[]): NoteName {
  const wanted = modulo(sound, 12);
  const notes = candidateKeys(
    loop.map(({ chord }) => chord),
    'majors',
  ).flatMap(scaleNotes);
  const inKey = notes.find((note) => pitchClass(note) === wanted && PLAIN_NAME.test(note) && note !== 'Cb');
  const minor = quality === 'minor' || quality === 'diminished';
  return inKey ?? usualKey(`${wanted}${minor ? 'm' : 'M'}`).tonic;
}

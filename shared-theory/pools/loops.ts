import { chordSymbol, overRoot, soundsAs, soundsAsOverBass, type Chord } from '../chords.ts';
import { diatonicChart, type Diatonic } from '../degrees.ts';
import type { Key } from '../keys.ts';
import type { Form } from '../level.ts';
import { pitchClass, type NoteName } from '../pitch.ts';

/** A loop that a level may draw: its chords from home on, one a slot. */
export type Loop = readonly Chord[];

/** The major and minor triads of a key; its diminished one stands among no triads of a level. */
export function triads(key: Key): readonly Diatonic[] {
  return diatonicChart(key).filter(({ chord }) => chord.quality !== 'diminished');
}

export function semitonesUp(from: Chord, to: Chord): number {
  return (pitchClass(to.root) - pitchClass(from.root) + 12) % 12;
}

/** The same round from each of its chords. */
export function rotations(loop: Loop): readonly Loop[] {
  return loop.map((_, start) => [...loop.slice(start), ...loop.slice(0, start)]);
}

/** Home, another chord, home, a third one: every two different ones of the others. */
export function returnsTo(home: Chord, others: readonly Chord[]): Loop[] {
  return others.flatMap((second) =>
    others.filter((fourth) => !soundsAs(fourth, second)).map((fourth): Loop => [home, second, home, fourth]),
  );
}

/** A B A C from its second chord on: there, on, and back the way it came. */
export function thereAndBack([home, second, , fourth]: Loop): Loop[] {
  return home && second && fourth ? [[second, home, fourth, home]] : [];
}

const names = new WeakMap<Loop, string>();

/** One text for what sounds, however it is spelled. */
export function nameOf(loop: Loop): string {
  const sounding = (note: NoteName) => String(pitchClass(note));
  const known =
    names.get(loop) ??
    loop
      .map((chord) => {
        const suffix = chordSymbol(overRoot(chord)).slice(chord.root.length);
        return `${sounding(chord.root)}${suffix}/${sounding(chord.bass ?? chord.root)}`;
      })
      .join();
  names.set(loop, known);
  return known;
}

/** Each sounding loop once, as first written. */
export function kept(loops: readonly Loop[]): readonly Loop[] {
  const known = new Map<string, Loop>();
  for (const loop of loops) {
    const name = nameOf(loop);
    if (!known.has(name)) known.set(name, loop);
  }
  return [...known.values()];
}

/** Whether two loops sound the same chords over the same basses in the same order. */
export function sameLoop(one: Loop, other: Loop): boolean {
  return one.length === other.length && one.every((chord, slot) => other[slot] && soundsAsOverBass(chord, other[slot]));
}

/**
 * How many bars each slot of a loop lasts: one, but the last of three two, so that they come round in four; and of a twelve-bar
 * as its chords go on (common practice): four, two and two bars, then one and one, and two of home, or one of it and one that
 * leads back; with a change in the second bar home takes the first and the next two.
 */
export function barsOf(form: Form, loop: Loop): readonly number[] {
  if (form === 'turn') return [1, 1, 2];
  if (form !== 'twelve') return loop.map(() => 1);
  const bars = TWELVE_BARS.find((slots) => slots.length === loop.length);
  if (!bars) throw new RangeError(`No twelve-bar has ${loop.length} slots.`);
  return bars;
}

const TWELVE_BARS: readonly (readonly number[])[] = [
  [4, 2, 2, 1, 1, 2],
  [4, 2, 2, 1, 1, 1, 1],
  [1, 1, 2, 2, 2, 1, 1, 2],
];

import { soundsAs, type Chord, type Quality } from './chords.ts';
import { diatonicChart, type Diatonic, type Key } from './keys.ts';
import type { Level } from './levels.ts';
import { bassOf, shapesInPosition } from './neck.ts';
import { pitchClass } from './pitch.ts';
import type { Frets } from './vamps.ts';

/** A loop that a level may draw: one chord or two. */
export type Loop = readonly Chord[];

type Pair = readonly [Diatonic, Diatonic];

/** Semitones between roots of the leaps and thirds. */
const FOURTH_OR_FIFTH: ReadonlySet<number> = new Set([5, 7]);
const THIRD_OR_SIXTH: ReadonlySet<number> = new Set([3, 4, 8, 9]);

function semitonesUp(from: Chord, to: Chord): number {
  return (pitchClass(to.root) - pitchClass(from.root) + 12) % 12;
}

/** The major and minor triads of a key; its diminished one belongs to later levels. */
function triads(key: Key): readonly Diatonic[] {
  return diatonicChart(key).filter(({ chord }) => chord.quality !== 'diminished');
}

/** Ordered pairs of different triads of one key. */
function pairsOf(key: Key): readonly Pair[] {
  const chart = triads(key);
  return chart.flatMap((home) => chart.flatMap((other): Pair[] => (home === other ? [] : [[home, other]])));
}

function diatonicLoops(keys: readonly Key[], keep: (pair: Pair) => boolean = () => true): Loop[] {
  return keys.flatMap((key) => pairsOf(key).filter(keep)).map(([home, other]) => [home.chord, other.chord]);
}

function chordsOf(keys: readonly Key[]): readonly Chord[] {
  return keys.flatMap(triads).map(({ chord }) => chord);
}

function as(chord: Chord, quality: Quality): Chord {
  return { root: chord.root, quality };
}

/** Pairs of one quality: those of a key, thirds between two tonics of the level's keys, and each chord followed by itself. */
function oneQuality(keys: readonly Key[]): Loop[] {
  const tonics = keys.map((key): Chord => ({ root: key.tonic, quality: key.mode }));
  const thirds = tonics.flatMap((home) =>
    tonics
      .filter((other) => other.quality === home.quality && THIRD_OR_SIXTH.has(semitonesUp(home, other)))
      .map((other): Loop => [home, other]),
  );
  const still = chordsOf(keys).map((chord): Loop => [chord, chord]);
  return [...diatonicLoops(keys, ([home, other]) => home.chord.quality === other.chord.quality), ...thirds, ...still];
}

/** Roots on which a class plays major and minor alike: E A D open, G C F as barres up to the fifth fret. */
const EITHER_WAY: readonly string[] = ['E', 'A', 'D', 'G', 'C', 'F'];

/** Single chords, two qualities on one root, and pairs a fourth, fifth or step apart, with power chords among them. */
function majorOrMinor(keys: readonly Key[]): Loop[] {
  const qualities: readonly Quality[] = ['major', 'minor', 'power'];
  const singles = EITHER_WAY.flatMap((root) => qualities.map((quality): Loop => [{ root, quality }]));
  const oneRoot = EITHER_WAY.flatMap((root) =>
    qualities.flatMap((first) =>
      qualities
        .filter((second) => second !== first)
        .map((second): Loop => [
          { root, quality: first },
          { root, quality: second },
        ]),
    ),
  );
  const apart = diatonicLoops(
    keys,
    ([home, other]) =>
      EITHER_WAY.includes(home.chord.root) &&
      EITHER_WAY.includes(other.chord.root) &&
      !THIRD_OR_SIXTH.has(semitonesUp(home.chord, other.chord)),
  );
  const power = apart.flatMap(([home, other]): Loop[] =>
    home && other && FOURTH_OR_FIFTH.has(semitonesUp(home, other))
      ? [
          [as(home, 'power'), other],
          [home, as(other, 'power')],
        ]
      : [],
  );
  return [...singles, ...oneRoot, ...apart, ...power];
}

function candidates(level: Level): readonly Loop[] {
  const { keys } = level;
  switch (level.level) {
    case 2:
      return oneQuality(keys);
    case 3:
      return majorOrMinor(keys);
    case 4:
      return [...diatonicLoops(keys), ...chordsOf(keys).map((chord): Loop => [chord])];
    case 5:
      return diatonicLoops(keys, ([home]) => home.chord.quality === 'major');
    case 6:
      return diatonicLoops(keys, ([home]) => home.numeral === 'I' || home.numeral === 'i');
    case 7:
      return diatonicLoops(keys);
  }
}

/** Shapes that play a loop as a level plays it: within its frets, the bass moving no further than it may. */
export function voicingsOf(level: Level, loop: Loop): readonly (readonly Frets[])[] {
  const [home, other] = loop.map((chord) => shapesInPosition(chord, level.highestFret));
  if (home === undefined || other === undefined) return (home ?? []).map((frets) => [frets]);
  const sameRoot = loop[0] && loop[1] && semitonesUp(loop[0], loop[1]) === 0;
  return home.flatMap((first) =>
    other
      .filter((second) => {
        const move = Math.abs(bassOf(second) - bassOf(first));
        // One root in two octaves would make "stays" a matter of taste.
        return sameRoot ? move === 0 : move <= level.largestMove;
      })
      .map((second) => [first, second]),
  );
}

/**
 * Every loop that a level may draw, each sounding one once, spelled as the first of the level's keys that holds it. A loop
 * that the level's shapes cannot play is left out.
 */
export function poolOf(level: Level): readonly Loop[] {
  const kept = new Map<string, Loop>();
  for (const loop of candidates(level)) {
    const name = loop.map((chord) => `${pitchClass(chord.root)}${chord.quality}`).join();
    if (!kept.has(name) && voicingsOf(level, loop).length > 0) kept.set(name, loop);
  }
  return [...kept.values()];
}

/** Whether two loops sound the same chords in the same order. */
export function sameLoop(one: Loop, other: Loop): boolean {
  return one.length === other.length && one.every((chord, slot) => other[slot] && soundsAs(chord, other[slot]));
}

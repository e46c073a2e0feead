import { soundsAs, type Chord, type Quality } from '../chords.ts';
import type { Diatonic } from '../degrees.ts';
import type { Form, Level } from '../level.ts';
import { kept, returnsTo, semitonesUp, triads, type Loop } from './loops.ts';

/** Semitones between roots of the leaps, the thirds, and what a first ear follows: leaps and whole steps. */
const FOURTH_OR_FIFTH: ReadonlySet<number> = new Set([5, 7]);
const THIRD_OR_SIXTH: ReadonlySet<number> = new Set([3, 4, 8, 9]);
const LEAP_OR_STEP: ReadonlySet<number> = new Set([2, 5, 7, 10]);

/** The first chords of a class, all with open strings. */
const FIRST_MAJORS: ReadonlySet<string> = new Set(['E', 'A', 'D', 'G', 'C']);
const FIRST_MINORS: ReadonlySet<string> = new Set(['E', 'A', 'D']);

/** Roots on which a class plays major and minor alike: E A D open, G C F as barres up to the fifth fret. */
const EITHER_WAY: readonly string[] = ['E', 'A', 'D', 'G', 'C', 'F'];

function isFirstChord({ root, quality }: Chord): boolean {
  return (quality === 'major' ? FIRST_MAJORS : FIRST_MINORS).has(root);
}

/** Whether a level goes from one triad of a key to another one of it. */
function follows(level: Level, home: Diatonic, other: Diatonic): boolean {
  if (home === other) return false;
  switch (level.level) {
    case 1:
      return (
        isFirstChord(home.chord) && isFirstChord(other.chord) && LEAP_OR_STEP.has(semitonesUp(home.chord, other.chord))
      );
    case 2:
      return home.chord.quality === other.chord.quality;
    case 3:
      return (
        [home, other].every(({ chord }) => EITHER_WAY.includes(chord.root)) &&
        !THIRD_OR_SIXTH.has(semitonesUp(home.chord, other.chord))
      );
    case 5:
      return home.chord.quality === 'major';
    case 6:
      return isTonic(home);
    case 4:
    case 7:
    case 8:
    case 9:
    case 10:
    case 11:
    case 12:
      return true;
  }
}

function isTonic({ numeral }: Diatonic): boolean {
  return numeral === 'I' || numeral === 'i';
}

function diatonicPairs(level: Level): Loop[] {
  return level.keys.flatMap((key) => {
    const chart = triads(key);
    return chart.flatMap((home) =>
      chart.filter((other) => follows(level, home, other)).map((other): Loop => [home.chord, other.chord]),
    );
  });
}

/** Home, another chord, home, a third one, all of one key. */
function diatonicReturns(level: Level): Loop[] {
  return level.keys.flatMap((key) => {
    const chart = triads(key);
    return chart.flatMap((home) => {
      const others = chart.filter((other) => follows(level, home, other)).map(({ chord }) => chord);
      return returnsTo(home.chord, others);
    });
  });
}

/** Thirds between two tonics of the level's keys, and each of its chords followed by itself: more pairs of one quality. */
function thirdsAndStays(level: Level): Loop[] {
  const tonics = level.keys.map((key): Chord => ({
    root: key.tonic,
    quality: key.mode === 'minor' ? 'minor' : 'major',
  }));
  const thirds = tonics.flatMap((home) =>
    tonics
      .filter((other) => other.quality === home.quality && THIRD_OR_SIXTH.has(semitonesUp(home, other)))
      .map((other): Loop => [home, other]),
  );
  return [...thirds, ...chordsOf(level).map((chord): Loop => [chord, chord])];
}

function as(chord: Chord, quality: Quality): Chord {
  return { root: chord.root, quality };
}

/** Two qualities on one root, and pairs a fourth, fifth or step apart, with power chords among them. */
function majorOrMinorPairs(level: Level): Loop[] {
  const oneRoot = EITHER_WAY.flatMap((root) =>
    level.qualities.flatMap((first) =>
      level.qualities
        .filter((second) => second !== first)
        .map((second): Loop => [
          { root, quality: first },
          { root, quality: second },
        ]),
    ),
  );
  const apart = diatonicPairs(level);
  const power = apart.flatMap(([home, other]): Loop[] =>
    home && other && FOURTH_OR_FIFTH.has(semitonesUp(home, other))
      ? [
          [as(home, 'power'), other],
          [home, as(other, 'power')],
        ]
      : [],
  );
  return [...oneRoot, ...apart, ...power];
}

/** The chords that a level holds alone. */
function chordsOf(level: Level): readonly Chord[] {
  const charts = level.keys.flatMap(triads);
  switch (level.level) {
    case 1:
      return charts.map(({ chord }) => chord).filter(isFirstChord);
    case 3:
      return EITHER_WAY.flatMap((root) => level.qualities.map((quality): Chord => ({ root, quality })));
    case 5:
      return charts.map(({ chord }) => chord).filter(({ quality }) => quality === 'major');
    case 6:
      return charts.filter(isTonic).map(({ chord }) => chord);
    case 2:
    case 4:
    case 7:
    case 8:
    case 9:
    case 10:
    case 11:
    case 12:
      return charts.map(({ chord }) => chord);
  }
}

function pairsOf(level: Level): readonly Loop[] {
  if (level.level === 3) return majorOrMinorPairs(level);
  return level.level === 2 ? [...diatonicPairs(level), ...thirdsAndStays(level)] : diatonicPairs(level);
}

/** Where a level knows pairs of no key, two of them with the same home make a loop as well. */
function returnsOf(level: Level): readonly Loop[] {
  if (level.level !== 3) return diatonicReturns(level);
  const pairs = kept(majorOrMinorPairs(level));
  return chordsOf(level).flatMap((home) =>
    returnsTo(
      home,
      pairs.flatMap(([first, other]) => (first && other && soundsAs(first, home) ? [other] : [])),
    ),
  );
}

/** The loops of a level of one chord, two, or A B A C, in one of these forms. Empty for any other form. */
export function twoChordLoops(level: Level, form: Form): readonly Loop[] {
  switch (form) {
    case 'held':
      return chordsOf(level).map((chord): Loop => [chord]);
    case 'pair':
      return pairsOf(level);
    case 'return':
      return returnsOf(level);
    case 'turn':
    case 'back':
    case 'round':
    case 'twelve':
      return [];
  }
}

import type { Chord, Quality } from './chords.ts';
import { candidateKeys, type CandidateKey } from './candidates.ts';
import type { Form, Level } from './level.ts';
import { limitsOf } from './limits.ts';
import { bassOf, shapeNotes, shapesFor, STANDARD_TUNING } from './neck.ts';
import { pitchClass, type PitchClass } from './pitch.ts';
import { poolOf, type Loop } from './pools.ts';
import { rake } from './rake.ts';
import type { Distance } from './distance-line.ts';
import { directionOf, distanceOf, type Direction } from './truth.ts';
import type { Frets } from './vamps.ts';
import { voicingsOf } from './voicings.ts';

/** A change from home to another chord of the loop, and what is balanced about it. */
export type Change = {
  readonly direction: Direction;
  readonly distance: Distance;
  readonly root: PitchClass;
  readonly quality: Quality;
  /** The top note goes the way of the bass. */
  readonly together: boolean;
};

/** A loop with its shapes, and what is balanced about it. */
export type Draw = {
  readonly loop: Loop;
  readonly shapes: readonly Frets[];
  readonly root: PitchClass;
  readonly quality: Quality;
  /** Home's bass is the lowest note of the guitar. */
  readonly lowest: boolean;
  /** From home to each chord that follows it: none, one, or two. */
  readonly changes: readonly Change[];
  /** The major keys that own the loop. */
  readonly readings: readonly CandidateKey[];
};

/** Draws of one form with the sum of weights up to and with each. */
type DrawTable = { readonly draws: readonly Draw[]; readonly sums: readonly number[] };

/** How likely a shape is beside the next more usual one, and a barre beside a shape with open strings. */
const USUALNESS = 0.35;
const BARRE = 0.5;

function topOf(frets: Frets): number {
  return shapeNotes(frets).at(-1)?.midi ?? 0;
}

function likely(chord: Chord, frets: Frets): number {
  return USUALNESS ** shapesFor(chord).indexOf(frets) * (frets.includes(0) ? 1 : BARRE);
}

function changeOf(loop: Loop, shapes: readonly Frets[], slot: number): Change[] {
  const [home, other] = [loop[0], loop[slot]];
  const [from, to] = [shapes[0], shapes[slot]];
  if (!home || !other || !from || !to) return [];
  const direction = directionOf(bassOf(from), bassOf(to));
  return [
    {
      direction,
      distance: distanceOf(home.root, other.root),
      root: pitchClass(other.root),
      quality: other.quality,
      together: direction === directionOf(topOf(from), topOf(to)),
    },
  ];
}

function drawsOf(level: Level, loop: Loop): { draw: Draw; weight: number }[] {
  const [home] = loop;
  if (!home) return [];
  const readings = candidateKeys(loop, 'majors');
  return voicingsOf(level, loop).map((shapes) => {
    const weight = loop.reduce((product, chord, slot) => product * likely(chord, shapes[slot] ?? []), 1);
    const changes = [1, 3].flatMap((slot) => changeOf(loop, shapes, slot));
    const lowest = bassOf(shapes[0] ?? []) === STANDARD_TUNING[0];
    const draw = { loop, shapes, root: pitchClass(home.root), quality: home.quality, lowest, changes, readings };
    return { draw, weight };
  });
}

function build(level: Level, form: Form, stays: number): DrawTable {
  const weighted = poolOf(level, form).flatMap((loop) => drawsOf(level, loop));
  const draws = weighted.map(({ draw }) => draw);
  const weights = rake(
    draws,
    weighted.map(({ weight }) => weight),
    limitsOf(level, form, stays, draws),
  );
  let sum = 0;
  return { draws, sums: weights.map((weight) => (sum += weight)) };
}

const built = new Map<string, DrawTable>();

/**
 * Every loop of a level in one form, with all the shapes that play it, weighted so that no lazy answer earns more than chance.
 * `stays` is the share of changes whose bass stays.
 */
export function drawTable(level: Level, form: Form, stays: number): DrawTable {
  const name = `${level.level} ${form} ${stays}`;
  const known = built.get(name) ?? build(level, form, stays);
  built.set(name, known);
  return known;
}

/** The draw at a chance of 0 up to 1. */
export function drawAt({ draws, sums }: DrawTable, chance: number): Draw {
  const wanted = chance * (sums.at(-1) ?? 0);
  let low = 0;
  let high = sums.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sums[middle] ?? 0) > wanted) high = middle;
    else low = middle + 1;
  }
  const draw = draws[low];
  if (!draw) throw new RangeError('A level needs at least one loop.');
  return draw;
}

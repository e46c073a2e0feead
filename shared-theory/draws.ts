import type { Chord, Quality } from './chords.ts';
import { differentSlots } from './different-chords.ts';
import { candidateKeys, type CandidateKey } from './candidates.ts';
import type { Form, Level } from './level.ts';
import { limitsOf } from './limits.ts';
import { bassOf, shapeNotes, shapesFor, STANDARD_TUNING } from './neck.ts';
import { pitchClass, type PitchClass } from './pitch.ts';
import { barsOf, poolOf, type Loop } from './pools.ts';
import { rake } from './rake.ts';
import type { Distance } from './distance-line.ts';
import { directionOf, distanceOf, seventhOf, type Direction, type Seventh } from './truth.ts';
import type { Frets } from './vamps.ts';
import { voicingsOf } from './voicings.ts';

/** A change from home to another chord of the loop, and what is balanced about it. */
export type Change = {
  readonly direction: Direction;
  readonly distance: Distance;
  readonly root: PitchClass;
  readonly quality: Quality;
  readonly seventh: Seventh;
  /** The top note goes the way of the bass. */
  readonly together: boolean;
};

/** A loop with its shapes, and what is balanced about it. */
export type Draw = {
  readonly loop: Loop;
  /** How long each slot lasts beside the others: 1, or more where a chord stays. */
  readonly bars: readonly number[];
  readonly shapes: readonly Frets[];
  readonly root: PitchClass;
  readonly quality: Quality;
  readonly seventh: Seventh;
  /** Home's bass is the lowest note of the guitar. */
  readonly lowest: boolean;
  /** From home to each other chord of the loop, in the order of their first sounding: none, or up to three. */
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
      seventh: seventhOf(other),
      together: direction === directionOf(topOf(from), topOf(to)),
    },
  ];
}

/** Slots that go from home to a chord not heard before; the first change is one even where the chord stays. */
function changingSlots(loop: Loop): readonly number[] {
  const different = differentSlots(loop);
  return loop.map((_, slot) => slot).filter((slot) => slot === 1 || (slot > 1 && different.includes(slot)));
}

function drawsOf(level: Level, form: Form, loop: Loop): { draw: Draw; weight: number }[] {
  const [home] = loop;
  if (!home) return [];
  const readings = candidateKeys(loop, 'majors');
  const slots = changingSlots(loop);
  const bars = barsOf(form, loop);
  return voicingsOf(level, loop).map((shapes) => {
    const weight = loop.reduce((product, chord, slot) => product * likely(chord, shapes[slot] ?? []), 1);
    const changes = slots.flatMap((slot) => changeOf(loop, shapes, slot));
    const lowest = bassOf(shapes[0] ?? []) === STANDARD_TUNING[0];
    const { quality } = home;
    const seventh = seventhOf(home);
    return {
      draw: { loop, bars, shapes, root: pitchClass(home.root), quality, seventh, lowest, changes, readings },
      weight,
    };
  });
}

function build(level: Level, form: Form, stays: number): DrawTable {
  const weighted = poolOf(level, form).flatMap((loop) => drawsOf(level, form, loop));
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

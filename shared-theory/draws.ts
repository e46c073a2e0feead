import { chordSymbol, type Chord, type Quality } from './chords.ts';
import { candidateKeys, type CandidateKey } from './keys.ts';
import type { Level, ShareRange } from './levels.ts';
import { bassOf, shapeNotes, shapesFor } from './neck.ts';
import { pitchClass, type PitchClass } from './pitch.ts';
import { poolOf, voicingsOf, type Loop } from './pools.ts';
import { rake, type Limit } from './rake.ts';
import type { Distance } from './distance-line.ts';
import { directionOf, distanceOf, type Direction } from './truth.ts';
import type { Frets } from './vamps.ts';

/** A loop with its shapes, and what is balanced about it. */
export type Draw = {
  readonly loop: Loop;
  readonly shapes: readonly Frets[];
  readonly direction: Direction | 'alone';
  readonly distance: Distance | null;
  readonly roots: readonly PitchClass[];
  readonly qualities: readonly Quality[];
  /** The top note goes the way of the bass. */
  readonly together: boolean;
  /** The major keys that own the loop. */
  readonly readings: readonly CandidateKey[];
};

/** Draws of a level with the sum of weights up to and with each. */
export type DrawTable = { readonly draws: readonly Draw[]; readonly sums: readonly number[] };

/** No more than this share for one distance, one root: always saying it earns little. */
const DISTANCE_CAP = 0.24;
const ROOT_CAP = 0.15;
/** Caps are aimed at with a margin, so that a run of vamps stays under them. */
const MARGIN = 0.9;
/** No loop is rarer or more usual than so many times its even share. */
const LOOP_FLOOR = 0.5;
const LOOP_CAP = 2.4;

/** How likely a shape is beside the next more usual one, and a barre beside a shape with open strings. */
const USUALNESS = 0.35;
const BARRE = 0.5;

function topOf(frets: Frets): number {
  return shapeNotes(frets).at(-1)?.midi ?? 0;
}

function likely(chord: Chord, frets: Frets): number {
  return USUALNESS ** shapesFor(chord).indexOf(frets) * (frets.includes(0) ? 1 : BARRE);
}

function drawsOf(level: Level, loop: Loop): { draw: Draw; weight: number }[] {
  const roots = loop.map((chord) => pitchClass(chord.root));
  const qualities = loop.map((chord) => chord.quality);
  const readings = candidateKeys(loop, 'majors');
  const [home, other] = loop;
  const distance = home && other ? distanceOf(home.root, other.root) : null;
  return voicingsOf(level, loop).map((shapes) => {
    const weight = loop.reduce((product, chord, slot) => product * likely(chord, shapes[slot] ?? []), 1);
    const [homeBass = 0, otherBass] = shapes.map(bassOf);
    const [homeTop = 0, otherTop = 0] = shapes.map(topOf);
    const direction = otherBass === undefined ? 'alone' : directionOf(homeBass, otherBass);
    const together = direction === directionOf(homeTop, otherTop);
    return { draw: { loop, roots, qualities, readings, distance, shapes, direction, together }, weight };
  });
}

const ANY: ShareRange = [0, 1];
/** Which way the bass goes from a root or over a distance follows the guitar's low strings; beyond this it would tell. */
const NEAR_HALF: ShareRange = [0.35, 0.65];

function moves(draw: Draw): boolean {
  return draw.direction === 'up' || draw.direction === 'down';
}

/**
 * Up and down share each class of moving draws as near to halves as `range`. From the lowest note of a guitar there is only
 * up, and a step is never turned into a seventh: such a class is left alone.
 */
function evenDirections(within: (draw: Draw) => string, range: ShareRange = NEAR_HALF): Limit<Draw> {
  return {
    within: (draw) => (moves(draw) ? within(draw) : null),
    group: (draw) => draw.direction,
    share: () => range,
  };
}

function overall(group: (draw: Draw) => string | null, share: (group: string) => ShareRange): Limit<Draw> {
  return { within: () => 'all', group, share };
}

function limitsOf(level: Level, draws: readonly Draw[]): readonly Limit<Draw>[] {
  const { balance } = level;
  const exactly = (share: number): ShareRange => [share, share];
  const two = 1 - balance.alone;
  const directions = {
    alone: exactly(balance.alone),
    same: exactly(two * balance.stays),
    up: exactly((two * (1 - balance.stays)) / 2),
    down: exactly((two * (1 - balance.stays)) / 2),
  };
  const qualityShare = (group: string) => exactly(group === 'power' ? balance.power : (1 - balance.power) / 2);
  const rootShare = (slot: number): Limit<Draw> => {
    const roots = new Set(draws.map((draw) => draw.roots[slot])).size;
    const cap = Math.max(ROOT_CAP, 1.3 / roots) * MARGIN;
    return {
      within: (draw) => (draw.roots[slot] === undefined ? null : 'all'),
      group: (draw) => String(draw.roots[slot]),
      share: () => [0, cap],
    };
  };
  const kind = (draw: Draw) => `${draw.qualities.join(' ')} ${draw.distance ?? 'alone'}`;
  const kinds = new Set(draws.map(kind)).size;
  const loopName = (draw: Draw) => draw.loop.map(chordSymbol).join(' ');
  const loops = new Set(draws.map(loopName)).size;
  return [
    // A kind of pair that the level holds is never left out.
    overall(kind, () => [0.3 / kinds, 1]),
    {
      within: (draw) => draw.qualities[0] ?? null,
      group: (draw) => draw.qualities[1] ?? null,
      share: (group, within) => (group === 'power' || within === 'power' ? ANY : [0.4, 0.6]),
    },
    overall(loopName, () => [LOOP_FLOOR / loops, LOOP_CAP / loops]),
    evenDirections((draw) => `to ${draw.roots[1]}`, [0.2, 0.8]),
    {
      within: (draw) => (moves(draw) ? draw.direction : null),
      group: (draw) => (draw.together ? 'together' : 'apart'),
      share: () => [0.4, 0.6],
    },
    evenDirections((draw) => draw.qualities.join(' '), [0.45, 0.55]),
    evenDirections((draw) => `from ${draw.roots[0]}`, [0.44, 0.56]),
    evenDirections((draw) => `distance ${draw.distance}`, [0.42, 0.58]),
    // I to IV is as usual as V to I, and IV to I as I to V.
    {
      within: (draw) => (draw.distance === '4' || draw.distance === '5' ? draw.qualities.join(' ') : null),
      group: (draw) => draw.distance,
      share: () => [0.45, 0.55],
    },
    rootShare(0),
    rootShare(1),
    overall(
      (draw) => draw.distance,
      (group) => (group === '1' ? ANY : (balance.distances[group as Distance] ?? [0, DISTANCE_CAP])),
    ),
    overall(
      (draw) => (balance.oneKey === null ? null : String(draw.readings.length === 1)),
      (group) => exactly(group === 'true' ? (balance.oneKey ?? 0) : 1 - (balance.oneKey ?? 0)),
    ),
    overall((draw) => draw.qualities[0] ?? null, qualityShare),
    overall((draw) => draw.qualities[1] ?? null, qualityShare),
    overall(
      (draw) => draw.direction,
      (group) => directions[group as keyof typeof directions],
    ),
  ];
}

function build(level: Level): DrawTable {
  const weighted = poolOf(level).flatMap((loop) => drawsOf(level, loop));
  const draws = weighted.map(({ draw }) => draw);
  const weights = rake(
    draws,
    weighted.map(({ weight }) => weight),
    limitsOf(level, draws),
  );
  let sum = 0;
  return { draws, sums: weights.map((weight) => (sum += weight)) };
}

const built = new Map<number, DrawTable>();

/** Every loop of a level with every pair of its shapes, weighted so that no lazy answer earns more than chance. */
export function drawTable(level: Level): DrawTable {
  const known = built.get(level.level) ?? build(level);
  built.set(level.level, known);
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

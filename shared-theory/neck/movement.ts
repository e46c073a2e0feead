import type { Frets } from '../vamps.ts';
import { frettedRange } from './hand.ts';
import type { SolvedShape } from './search.ts';

/** The hand goes so many frets along the neck without a thought; each one further is a leap. */
const NEAR_FRETS = 3;
const LEAP_FRET = 3.2;
/** Between shapes alike, fewer strings change. */
const CHANGED_STRING = 0.05;

/** What it costs the hand to go from one shape to another of the same guitar: a leap along the neck, and strings that change. */
function movementCost(from: Frets, to: Frets): number {
  const [start] = frettedRange(from) ?? [null];
  const [end] = frettedRange(to) ?? [null];
  // Open strings alone hold the hand nowhere.
  const frets = start === null || end === null ? 0 : Math.abs(end - start);
  const changed = to.filter((fret, string) => fret !== (from[string] ?? null)).length;
  return LEAP_FRET * Math.max(0, frets - NEAR_FRETS) + CHANGED_STRING * changed;
}

/** A shape so many fingers harder than the usual one is not in use beside it. */
const IN_USE = 6.5;

/**
 * The shapes that players use, the usual one first: for every place of the bass the easiest, and where that has open strings the
 * easiest without.
 */
function inUse(shapes: readonly SolvedShape[]): readonly SolvedShape[] {
  const used: SolvedShape[] = [];
  const known = new Set<string>();
  const [usual] = shapes;
  for (const shape of shapes) {
    if (usual === undefined || shape.cost - usual.cost > IN_USE) break;
    const bass = shape.frets.findIndex((fret) => fret !== null);
    const place = `${bass} ${shape.frets[bass]}`;
    const closed = !shape.frets.includes(0);
    if (known.has(`${place} closed`) || (known.has(place) && !closed)) continue;
    known.add(place);
    if (closed) known.add(`${place} closed`);
    used.push(shape);
  }
  return used;
}

/**
 * The shapes of a chord, given the least costly first, as a hand takes them that comes from another shape: those in use from the
 * nearest on, then the others. No way that is saved makes a shape that nobody plays.
 */
export function nearest(shapes: readonly SolvedShape[], from: Frets): readonly SolvedShape[] {
  const used = inUse(shapes);
  const near = used
    .map((shape) => ({ shape, cost: shape.cost + movementCost(from, shape.frets) }))
    .toSorted((one, other) => one.cost - other.cost)
    .map(({ shape }) => shape);
  return [...near, ...shapes.filter((shape) => !used.includes(shape))];
}

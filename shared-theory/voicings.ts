import { soundsAsOverBass, type Chord } from './chords.ts';
import { itemAt } from './items.ts';
import type { Level } from './level.ts';
import { bassOf, shapesInPosition } from './neck.ts';
import { pitchClass } from './pitch.ts';
import type { Frets } from './vamps.ts';

/** From the lowest note of a guitar there is only up: a home on E is played up here as well, so that E does not tell. */
const HIGH_E = 7;
const E = pitchClass('E');

/** By chord as a pool made it: its loops hold the same ones over and over. */
const known = new WeakMap<Chord, Map<string, readonly Frets[]>>();

/** The shapes of a chord that a level plays, the usual one first. */
function shapesOf(level: Level, chord: Chord, highestFret = level.highestFret): readonly Frets[] {
  const own = known.get(chord) ?? new Map<string, readonly Frets[]>();
  known.set(chord, own);
  const name = `${highestFret} ${level.openShapes}`;
  const before = own.get(name);
  if (before !== undefined) return before;
  const shapes = shapesInPosition(chord, highestFret).filter((frets) => !level.openShapes || frets.includes(0));
  own.set(name, shapes);
  return shapes;
}

function homeShapes(level: Level, [home, other]: readonly Chord[]): readonly Frets[] {
  if (home === undefined) return [];
  const high = other !== undefined && pitchClass(home.root) === E;
  return shapesOf(level, home, high ? Math.max(HIGH_E, level.highestFret) : level.highestFret);
}

/** The shapes of a chord that home's shape goes to: no further than the level's largest move. */
function reached(level: Level, home: { readonly chord: Chord; readonly frets: Frets }, chord: Chord): readonly Frets[] {
  const sameRoot = pitchClass(home.chord.root) === pitchClass(chord.root);
  // One root in two octaves would make "stays" a matter of taste.
  if (sameRoot) return homeShapes(level, [chord, chord]).filter((frets) => bassOf(frets) === bassOf(home.frets));
  return shapesOf(level, chord).filter((frets) => Math.abs(bassOf(frets) - bassOf(home.frets)) <= level.largestMove);
}

/** A chord that came before, over the same bass, keeps its shape. */
function shapeBefore(loop: readonly Chord[], shapes: readonly Frets[], slot: number): Frets | undefined {
  const chord = loop[slot];
  const before = loop.slice(0, slot).findIndex((earlier) => chord && soundsAsOverBass(earlier, chord));
  return shapes[before];
}

/** So many semitones that the bass goes further are as good as the next more usual shape. */
const SEMITONES_A_RANK = 3;

/** The shapes of a loop from home's on, each as near to the one before as its level allows; null where one is not in reach. */
function leadOn(level: Level, loop: readonly Chord[], home: Frets): readonly Frets[] | null {
  const shapes = [home];
  for (const [slot, chord] of loop.entries()) {
    if (slot === 0) continue;
    const from = bassOf(itemAt(shapes, slot - 1));
    const [nearest] = shapesOf(level, chord)
      .map((frets, rank) => ({ frets, move: Math.abs(bassOf(frets) - from), rank }))
      .filter(({ move }) => move <= level.largestMove)
      .toSorted((one, other) => one.move - other.move + (one.rank - other.rank) * SEMITONES_A_RANK);
    const frets = shapeBefore(loop, shapes, slot) ?? nearest?.frets;
    if (frets === undefined || Math.abs(bassOf(frets) - from) > level.largestMove) return null;
    shapes.push(frets);
  }
  return shapes;
}

/** Home in more places than these would be the same loop once more. */
const HOMES = 2;

/** The most usual shape of home on each of its lowest basses. */
function homesOf(level: Level, home: Chord): readonly Frets[] {
  const shapes = shapesOf(level, home);
  const basses = shapes.map(bassOf);
  return shapes.filter((_, index) => basses.indexOf(basses[index] ?? 0) === index).slice(0, HOMES);
}

/**
 * Shapes that play a loop as its level plays it: within its frets, the bass moving no further than it may, a chord that comes
 * back in the shape it had. Empty where the level's shapes cannot play it.
 */
export function voicingsOf(level: Level, loop: readonly Chord[]): readonly (readonly Frets[])[] {
  const [home, ...later] = loop;
  if (home === undefined) return [];
  if (level.leadsOn)
    return homesOf(level, home).flatMap((frets) => {
      const shapes = leadOn(level, loop, frets);
      return shapes ? [shapes] : [];
    });
  return homeShapes(level, loop).flatMap((frets) =>
    later.reduce<readonly (readonly Frets[])[]>(
      (some, chord, index) =>
        some.flatMap((shapes) => {
          const before = index > 0 ? shapeBefore(loop, shapes, index + 1) : undefined;
          return (before ? [before] : reached(level, { chord: home, frets }, chord)).map((next) => [...shapes, next]);
        }),
      [[frets]],
    ),
  );
}

import type { Chord } from './chords.ts';
import type { Level } from './level.ts';
import { bassOf, shapesInPosition } from './neck.ts';
import { pitchClass } from './pitch.ts';
import type { Frets } from './vamps.ts';

/** From the lowest note of a guitar there is only up: a home on E is played up here as well, so that E does not tell. */
const HIGH_E = 7;
const E = pitchClass('E');

/** The shapes of a chord that a level plays, the usual one first. */
function shapesOf(level: Level, chord: Chord, highestFret = level.highestFret): readonly Frets[] {
  const shapes = shapesInPosition(chord, highestFret);
  return level.openShapes ? shapes.filter((frets) => frets.includes(0)) : shapes;
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

/**
 * Shapes that play a loop of one chord, of two, or of four where the third is home again, as a level plays it: within its frets,
 * the bass moving no further than it may, home always in the same shape. Empty where the level's shapes cannot play it.
 */
export function voicingsOf(level: Level, loop: readonly Chord[]): readonly (readonly Frets[])[] {
  const [home, other, , last] = loop;
  if (home === undefined) return [];
  return homeShapes(level, loop).flatMap((frets) => {
    if (other === undefined) return [[frets]];
    const others = reached(level, { chord: home, frets }, other);
    if (last === undefined) return others.map((second) => [frets, second]);
    const lasts = reached(level, { chord: home, frets }, last);
    return others.flatMap((second) => lasts.map((fourth) => [frets, second, frets, fourth]));
  });
}

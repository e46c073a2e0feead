import type { Form, Level } from '../level.ts';
import { loopOnDegrees } from './degree-chords.ts';
import { rotations, thereAndBack, type Loop } from './loops.ts';
import { parentsOf } from './rounds.ts';

/**
 * Two chords with a bass off the root (common practice), by degrees of the major scale: a major chord over its third or fifth, a
 * minor one over its seventh in passing, or a pedal that stays under both. Played as written, and from a major chord off its root.
 */
const PAIRS: readonly string[] = [
  '1 5/7',
  '1 1/3',
  '1 4/1',
  '1 4/6',
  '1 5/1',
  '1 6/5',
  '1 2/1',
  '4 1/3',
  '4 1/5',
  '4 5/7',
  '4 6/5',
  '4 5/4',
  '5 1/3',
  '5 1/5',
  '5 4/6',
  '5/7 1',
  '5/7 6',
  '1/3 4',
  '1/3 2',
  '1/3 6',
  '1/5 6',
  '4/6 1',
  '4/6 2',
  '6 5/7',
  '6 4/6',
  '6 1/3',
  '6 1/5',
  '6 6/5',
  '6 2/1',
  '6 5/6',
  '2 5/7',
  '2 1/3',
  '2 4/6',
  '2 4/1',
  '2 1/5',
  '2 2/1',
  '2 6/5',
  '2 5/2',
  '3 1/3',
  '3 5/7',
  '3 6/5',
  '3 4/6',
  '3 1/5',
];

/** Walks down and up by step, from any of their chords that may open a loop. */
const WALKS: readonly string[] = [
  '1 5/7 6 5',
  '1 5/7 6 1/5',
  '1 5/7 6 6/5',
  '1 5/7 6 4',
  '1 1/3 4 5',
  '1 1/3 4 1/5',
  '1 1/3 2 5/7',
  '1 2 1/3 4',
  '1 4/6 1/5 5',
  '4 1/3 2 1',
  '4 1/3 2 5/7',
  '4 1/3 2 2/1',
  '6 5/7 1 2',
  '6 5/7 1 1/3',
  '6 6/5 4 5',
  '6 6/5 4 1/3',
  '6 6/5 4/6 5/7',
  '6 1/5 4 1/3',
  '6 3/5 4 1/3',
  '2 2/1 5/7 1',
  '2 2/1 5/7 6',
  '2 1/3 4 5',
  '2 1/3 6 5/7',
  '2 4/6 6 1/5',
  '3 1/3 2 5/7',
  '3 5/7 6 1/5',
  '3 5/7 6 6/5',
  '6 1/3 2 5/7',
  '6 6/5 2 1/3',
  '6 3 4/6 5/7',
  '6 2 5/7 1/3',
  '6 5/7 3 4/6',
  '2 6 5/7 1',
  '2 3 4/6 5/7',
  '3 5/7 6 2',
  '3 4/6 6 5/7',
  '2 1/5 6 5/7',
  '6 1/5 2 4/6',
  '6 6/5 4/6 3',
  '6 6/5 2 5/7',
  '2 6/5 4 1/3',
  '6 2/1 5/7 3',
  '1 2/1 5/7 6',
  '3 6 2/1 5/7',
  '6 3 2/1 5/7',
  '2 6/5 4/6 3',
  '6 3 1/3 2',
  '2 3 1/5 6',
  '6 2 1/5 3',
  '1 2/1 6 5/7',
  '4 6/5 2 1/3',
  '3 6/5 2 5/7',
];
/** From home to two others and back the same way: lines by step, and chords over home's root. */
const BACKS: readonly string[] = [
  '1 5/7 6',
  '1 1/3 4',
  '1 1/5 4/6',
  '1 4/1 5/1',
  '1 2/1 5/1',
  '4 1/3 2',
  '4 1/3 6',
  '4 5/4 1/3',
  '5 1/5 4/6',
  '6 5/7 1',
  '6 6/5 4',
  '6 1/5 4',
  '6 1/3 4',
  '6 5/7 1/3',
  '6 5/6 4/6',
  '2 2/1 5/7',
  '2 1/3 4',
  '2 4/6 5/7',
  '2 1/3 6',
  '1 2 5/7',
  '1 6 4/6',
  '4 6 1/3',
  '4 2 1/3',
  '6 2 5/7',
  '6 2 1/3',
  '6 3 4/6',
  '6 3 1/5',
  '2 6 1/3',
  '2 6 5/7',
  '3 6 1/5',
  '3 6 4/6',
  '3 2 1/3',
  '6 1/3 2',
  '6 4/6 2',
  '6 1/5 2',
  '2 5/7 6',
  '2 1/5 6',
  '3 1/3 2',
  '3 1/5 6',
  '3 5/7 6',
  '3 4/6 6',
];

/** Home between two others, one of them or home off its root. */
const RETURNS: readonly string[] = [
  '1 5/7 1 4/1',
  '1 1/3 1 5/7',
  '1 4/6 1 5/7',
  '1 1/5 1 4/6',
  '1 6/5 1 4/6',
  '1 6/5 1 5/7',
  '1 2/1 1 5/7',
  '4 1/3 4 1/5',
  '4 1/3 4 5/7',
  '4 6/5 4 1/3',
  '5 1/3 5 4/6',
  '5 1/5 5 4/6',
  '6 5/7 6 4/6',
  '6 6/5 6 4/6',
  '6 6/5 6 5/7',
  '6 1/3 6 5/7',
  '6 1/5 6 5/7',
  '6 1/3 6 4/6',
  '2 2/1 2 5/7',
  '2 1/3 2 5/7',
  '2 1/3 2 4/6',
  '2 6/5 2 5/7',
  '3 1/3 3 5/7',
  '3 1/3 3 4/6',
  '3 5/7 3 4/6',
  '2 5/7 2 6',
  '2 1/3 2 3',
  '6 5/7 6 3',
  '6 1/3 6 2',
  '3 1/3 3 6',
  '3 5/7 3 6',
  '3 1/5 3 6',
  '6 4/6 6 2',
  '6 5/7 6 2',
  '6 1/5 6 3',
  '2 4/6 2 6',
  '2 5/7 2 3',
  '2 1/5 2 6',
  '6 4/6 6 3',
  '2 1/3 2 6',
  '2 4/6 2 3',
  '3 5/7 3 2',
  '3 6/5 3 4/6',
  '4 2/1 4 1/3',
  '1 2/1 1 4/6',
  '1 6/5 1 2/1',
  '1 6/5 1 2',
  '1 2/1 1 6',
  '4 2/1 4 6',
  '2 1/3 2 6/5',
  '6 1/3 6 2/1',
  '3 6/5 3 2',
  '1 5/7 1 2',
  '1 5/7 1 6',
  '4 1/3 4 2',
  '4 1/3 4 6',
  '3 6/5 3 5/7',
];

/** The chords that stand alone off their roots, and the plain ones beside them. */
const ALONE: readonly string[] = ['1', '1/3', '1/5', '2', '3', '4', '4/6', '5', '5/7', '6'];

/** A loop opens on a chord over its root, or now and then on a major one off it: then home's bass is not always its root. */
function mayOpen([home]: Loop): boolean {
  return home !== undefined && (home.bass === undefined || home.quality === 'major');
}

/** Loops over basses off the root, of the major keys with the notes of a level's keys. */
export function slashLoops(level: Level, form: Form): readonly Loop[] {
  const parents = parentsOf(level);
  const inKeys = (texts: readonly string[]) =>
    parents.flatMap((key) => texts.map((degrees) => loopOnDegrees(key, degrees)));
  switch (form) {
    case 'held':
      return inKeys(ALONE);
    case 'pair':
      return inKeys(PAIRS);
    case 'return':
      // Either of the two others comes first.
      return inKeys(RETURNS).flatMap((loop): Loop[] => [loop, [...loop.slice(2), ...loop.slice(0, 2)]]);
    case 'back':
      return [
        ...inKeys(RETURNS).flatMap(thereAndBack).filter(mayOpen),
        ...inKeys(BACKS).map((loop): Loop => [...loop, ...loop.slice(1, 2)]),
      ];
    case 'round':
      return inKeys(WALKS).flatMap(rotations).filter(mayOpen);
    case 'turn':
    case 'twelve':
      return [];
  }
}

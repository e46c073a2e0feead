import type { Form, Level } from '../level.ts';
import { loopOnDegrees } from './degree-chords.ts';
import { rotations, thereAndBack, type Loop } from './loops.ts';
import { parentsOf } from './rounds.ts';

/**
 * Two chords with a bass off the root (common practice), by degrees of the major scale: the third or fifth in the bass, a
 * seventh in passing, or a pedal that stays under both.
 */
const PAIRS: readonly string[] = [
  '1 5/7',
  '1 1/3',
  '1 4/1',
  '1 5/1',
  '1 2/4',
  '1/3 4',
  '1/3 2',
  '4 1/3',
  '4 5/4',
  '4 1/5',
  '5 1/5',
  '5/7 6',
  '6 5/7',
  '6 6/5',
  '6 4/6',
  '6 2/4',
  '6 3/5',
  '6/5 4',
  '2 2/1',
  '2 5/7',
  '2 1/3',
  '2 4/6',
  '2/1 5',
  '3 6/1',
  '3 6/3',
  '3 1/3',
  '3 2/4',
  '6 2/6',
  '2 6/1',
  '6/1 2',
  '3/5 6',
  '2/4 3',
  '2 3/5',
  '4 5/7',
  '5 6/1',
  '1 3/5',
  '1 6/5',
  '1 2/1',
];

/** Walks down and up by step, and chords over a pedal (common practice); a round of four different basses starts anywhere. */
const WALKS: readonly string[] = [
  '1 5/7 6 5',
  '1 5/7 6 1/5',
  '1 5/7 6 4',
  '1 1/3 4 5',
  '1 5/7 6 3/5',
  '4 1/3 2 1',
  '4 1/3 2 5/7',
  '6 5/7 1 2',
  '6 6/5 4 5',
  '6 6/5 2/4 3',
  '6 3/5 4 1/3',
  '6 3/5 2/4 3',
  '2 2/1 5/7 1',
  '2 6/1 5/7 1',
  '2 2/1 6 6/5',
  '3 2/4 5 6',
  '3 2 6/1 5/7',
];
const PEDALS: readonly string[] = [
  '4/1 1 5/1',
  '5/1 1 2/1',
  '2/6 6 3/6',
  '2/6 6 5/6',
  '6/2 2 5/2',
  '6/2 2 3/2',
  '4/6 6 2/6',
];

/** Home between two others, one of them or home off its root. */
const RETURNS: readonly string[] = [
  '1 5/7 1 4/1',
  '1 1/3 1 5/7',
  '6 2/6 6 3/5',
  '6 6/5 6 2/4',
  '2 2/1 2 5/7',
  '2 6/1 2 4/6',
  '3 6/1 3 2/4',
  '3 6/3 3 1/3',
  '1 6/1 1 2/4',
  '1 6/3 1 3/5',
  '2 1/3 2 3/5',
  '5 6/1 5 4/6',
  '4 5/7 4 6/1',
  '6 4/6 6 5/7',
  '6 1/3 6 5/7',
];

/** The chords that stand alone off their roots, and the plain ones beside them. */
const ALONE: readonly string[] = ['1', '1/3', '1/5', '2', '2/4', '3', '4', '4/6', '5', '5/7', '6', '6/1', '6/5', '6/3'];

/** Loops over basses off the root, of the major keys with the notes of a level's keys. */
export function slashLoops(level: Level, form: Form): readonly Loop[] {
  const parents = parentsOf(level);
  const inKeys = (texts: readonly string[]) =>
    parents.flatMap((key) => texts.map((degrees) => loopOnDegrees(key, degrees)));
  switch (form) {
    case 'held':
      return inKeys(ALONE);
    case 'pair':
      return inKeys(PAIRS).flatMap(rotations);
    case 'return':
      return inKeys(RETURNS);
    case 'back':
      return [
        ...inKeys(RETURNS).flatMap(thereAndBack),
        ...inKeys(PEDALS).map((loop): Loop => [...loop, ...loop.slice(1, 2)]),
      ];
    case 'round':
      return inKeys(WALKS).flatMap(rotations);
    case 'turn':
    case 'twelve':
      return [];
  }
}

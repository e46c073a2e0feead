import { diatonicChart } from '../degrees.ts';
import { itemAt } from '../items.ts';
import { keyId, parentKey, type Key } from '../keys.ts';
import type { Form, Level } from '../level.ts';
import { rotations, thereAndBack, type Loop } from './loops.ts';
import { twoChordLoops } from './two-chords.ts';

/**
 * Usual rounds of four chords by degrees of the major scale (common practice). Each is played from any of its chords: from the
 * sixth degree on it is a round of the relative minor.
 */
const USUAL_ROUNDS: readonly (readonly number[])[] = [
  [1, 5, 6, 4],
  [1, 6, 4, 5],
  [1, 6, 2, 5],
  [1, 4, 6, 5],
  [1, 3, 4, 5],
  [1, 3, 6, 4],
  [1, 4, 2, 5],
  [1, 5, 2, 6],
  [1, 5, 2, 4],
  // Lines by step: up from I, down from IV, down from vi.
  [1, 2, 3, 4],
  [4, 3, 2, 1],
  [6, 5, 4, 3],
];

/** The major keys with the notes of a level's keys, each once. */
export function parentsOf(level: Level): readonly Key[] {
  const parents = new Map(level.keys.map((key) => [keyId(parentKey(key)), parentKey(key)]));
  return [...parents.values()];
}

/** The triads of a major key on some of its degrees, counted from 1. */
function onDegrees(key: Key, degrees: readonly number[]): Loop {
  const chart = diatonicChart(key);
  return degrees.map((degree) => itemAt(chart, degree - 1).chord);
}

/** Rounds of four different triads of a key from any of them, those that come back the way they went, and what stood before. */
export function roundLoops(level: Level, form: Form): readonly Loop[] {
  const parents = parentsOf(level);
  switch (form) {
    case 'round':
      return parents.flatMap((key) => USUAL_ROUNDS.flatMap((degrees) => rotations(onDegrees(key, degrees))));
    case 'back':
      return twoChordLoops(level, 'return').flatMap(thereAndBack);
    case 'held':
    case 'pair':
    case 'return':
    case 'turn':
    case 'twelve':
      return twoChordLoops(level, form);
  }
}

import type { Policy } from '../../truth.ts';
import type { KeyId } from '../question.ts';
import { HOME_IDS } from './ask.ts';
import { FAMILIES } from './families.ts';

/** The usual owners of two chords and more are one, two or three neighbours on the circle. */
export const LONGEST_ARC = 3;

const FIFTH = 7;

/**
 * What somebody answers who has heard nothing and knows that owners are neighbours on the circle: one of the arcs of up to
 * `longest` neighbours from any of twelve places, or none. With minors each major has its relative; where the seventh may be raised
 * a minor may stand alone; under `modes` each set has each of the homes beside it.
 */
export function blindKeySets(policy: Policy, longest: number, homes: number): readonly (readonly KeyId[])[] {
  const arcs = FAMILIES.flatMap(({ family }) =>
    Array.from({ length: longest }, (_, more) =>
      Array.from({ length: more + 1 }, (_each, step) => FAMILIES[(family + step * FIFTH) % FAMILIES.length]),
    ),
  ).map((arc) => arc.flatMap((each) => each ?? []));
  const majors = [[], ...arcs.map((arc) => arc.map(({ major }) => major))];
  const pairs = [[], ...arcs.map((arc) => arc.flatMap(({ major, minor }) => [major, minor]))];
  switch (policy) {
    case 'majors':
      return majors;
    case 'relatives':
      return pairs;
    case 'raised-seventh':
      return [...pairs, ...FAMILIES.map(({ minor }) => [minor])];
    case 'modes':
      return homes === 0 ? majors : majors.flatMap((set) => HOME_IDS.slice(0, homes).map((home) => [...set, home]));
  }
}

import type { Quality } from './chords.ts';
import type { PitchClass } from './pitch.ts';
import type { Frets } from './vamps.ts';

/** Usual shapes near the nut by root's pitch class, most usual first: frets on the strings 6 to 1, `x` not played. */
export const OPEN_SHAPES: Readonly<Record<Quality, Readonly<Record<PitchClass, readonly string[]>>>> = {
  major: {
    0: ['x32010', 'x32013'],
    2: ['xx0232'],
    4: ['022100'],
    7: ['320003'],
    9: ['x02220'],
  },
  minor: { 2: ['xx0231'], 4: ['022000', '022003'], 9: ['x02210'] },
  power: { 2: ['xx023x'], 4: ['022xxx'], 7: ['3x0033'], 9: ['x022xx'] },
  'suspended-fourth': { 0: ['x33011'], 2: ['xx0233'], 4: ['022200'], 7: ['3x0013'], 9: ['x02230'] },
  'suspended-second': { 0: ['x30033'], 2: ['xx0230'], 4: ['024400'], 7: ['3x0233'], 9: ['x02200'] },
  diminished: { 2: ['xx0131'], 4: ['0120xx'], 9: ['x0121x'] },
  augmented: { 0: ['x32110'], 2: ['xx0332'], 4: ['032110'], 7: ['321003'], 9: ['x03221'] },
};

/** A shape that moves along the neck: the string that holds the root, and offsets from the root's fret on strings 6 to 1. */
export type Form = { readonly root: 6 | 5 | 4; readonly offsets: Frets };

/** Movable shapes, most usual first: E-forms, A-forms, then D-forms. Lowest note root, three frets at most, four fingers. */
export const FORMS: Readonly<Record<Quality, readonly Form[]>> = {
  major: [
    { root: 6, offsets: [0, 2, 2, 1, 0, 0] },
    { root: 5, offsets: [null, 0, 2, 2, 2, 0] },
    { root: 4, offsets: [null, null, 0, 2, 3, 2] },
  ],
  minor: [
    { root: 6, offsets: [0, 2, 2, 0, 0, 0] },
    { root: 5, offsets: [null, 0, 2, 2, 1, 0] },
    { root: 4, offsets: [null, null, 0, 2, 3, 1] },
  ],
  power: [
    { root: 6, offsets: [0, 2, 2, null, null, null] },
    { root: 5, offsets: [null, 0, 2, 2, null, null] },
    { root: 4, offsets: [null, null, 0, 2, 3, null] },
  ],
  'suspended-fourth': [
    { root: 6, offsets: [0, 2, 2, 2, 0, 0] },
    { root: 5, offsets: [null, 0, 2, 2, 3, 0] },
    { root: 4, offsets: [null, null, 0, 2, 3, 3] },
  ],
  'suspended-second': [
    { root: 5, offsets: [null, 0, 2, 2, 0, 0] },
    { root: 4, offsets: [null, null, 0, 2, 3, 0] },
  ],
  diminished: [
    { root: 6, offsets: [0, 1, 2, 0, null, null] },
    { root: 5, offsets: [null, 0, 1, 2, 1, null] },
    { root: 4, offsets: [null, null, 0, 1, 3, 1] },
  ],
  augmented: [
    { root: 6, offsets: [0, null, 2, 1, 1, null] },
    { root: 5, offsets: [null, 0, -1, -2, -2, null] },
    { root: 4, offsets: [null, null, 0, 3, 3, 2] },
  ],
};

import * as fc from 'fast-check';
import { GRIDS } from '../../../shared-theory/groove-grid.ts';
import type { Grid } from '../../../shared-theory/groove-grid.ts';
import type { BarCount, OnSlot, RhythmTruth } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { LEAST_TAPS, MOST_TAPS } from '../../../shared-theory/taps/taps.ts';
import type { Taps } from '../../../shared-theory/taps/taps.ts';

const GRID_NAMES = Object.keys(GRIDS) as readonly Grid[];

function onSlots<T>(slots: number, values: readonly T[]): fc.Arbitrary<readonly OnSlot<T>[]> {
  const one = fc
    .uniqueArray(fc.constantFrom(...values), { minLength: 1, maxLength: 2 })
    .map((several) => several as unknown as OnSlot<T>);
  return fc.array(one, { minLength: slots, maxLength: slots });
}

const COUNTS: readonly (readonly [BarCount, ...BarCount[]])[] = [[4], [4, 2], [3], [2, 6], [7], [7, 3]];

const either = <T>(...values: readonly T[]) => fc.constantFrom(null, ...values);

/** Grooves of every grid whose slots do anything, in one way or in two. */
export const rhythms: fc.Arbitrary<RhythmTruth> = fc.constantFrom(...GRID_NAMES).chain((grid) => {
  const { slots } = GRIDS[grid];
  return fc.record({
    grid: fc.constant(grid),
    counts: fc.constantFrom<RhythmTruth['counts'][]>([1], [1, 2]),
    barCounts: fc.constantFrom(...COUNTS),
    accents: onSlots(slots, [0, 1, 2, 3] as const),
    strokes: fc.option(onSlots(slots, ['down', 'up', 'silent'] as const)),
    roles: fc.option(onSlots(slots, ['kick', 'slap', 'closed', 'open', 'silent'] as const)),
    opened: fc.option(
      fc.subarray(
        Array.from({ length: slots }, (_, slot) => slot),
        { minLength: 1, maxLength: slots - 1 },
      ),
    ),
    pendulum: either('keeps', 'breaks'),
    drive: either('driving', 'relaxed'),
    swing: either('straight', 'swung'),
    halfTime: either('full-time', 'half-time'),
    threes: either('two-threes', 'three-twos'),
    changePlace: either('on-one', 'pushed'),
  });
});

/** Slots of some grid, each one of some choices. */
export function filled<T>(choices: readonly T[]): fc.Arbitrary<readonly T[]> {
  return fc
    .constantFrom(...new Set(Object.values(GRIDS).map(({ slots }) => slots)))
    .chain((slots) => fc.array(fc.constantFrom(...choices), { minLength: slots, maxLength: slots }));
}

/** Taps of a hand that may do anything, from a fifth of a second to two seconds apart. */
export const taps: fc.Arbitrary<Taps> = fc
  .array(fc.integer({ min: 2_000, max: 18_000 }), { minLength: LEAST_TAPS - 1, maxLength: MOST_TAPS - 1 })
  .map((intervals) => {
    let tenths = 0;
    return [0, ...intervals.map((interval) => (tenths += interval) / 10)];
  });

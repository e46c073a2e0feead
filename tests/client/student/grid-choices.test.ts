import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  afterTap,
  saidChoice,
  saidSlot,
  slotAfterKey,
  slotsOf,
  type GridKind,
} from '../../../client/student/pads/grid-choices.ts';
import { GRIDS, type Grid } from '../../../shared-theory/groove-grid.ts';
import { accentsAsk } from '../../../shared-theory/questions/accents/ask.ts';
import { openedAsk } from '../../../shared-theory/questions/opened/ask.ts';
import { rolesAsk } from '../../../shared-theory/questions/roles/ask.ts';
import { strokeGridAsk } from '../../../shared-theory/questions/stroke-grid/ask.ts';

const SETTINGS = { policy: 'majors', qualities: [] } as const;
const ASKS = { accents: accentsAsk, 'stroke-grid': strokeGridAsk, roles: rolesAsk, opened: openedAsk } as const;
const GRID_NAMES = Object.keys(GRIDS) as Grid[];

/** The grid after taps on slots, one by one. */
const tapped = (kind: GridKind, grid: Grid, taps: readonly number[]): readonly unknown[] | null =>
  taps.reduce<readonly unknown[] | null>((answer, slot) => afterTap(kind, slotsOf(kind, grid, answer), slot), null);

test.each([
  ['accents', ['light', 'heavy', 'silent']],
  ['stroke-grid', ['down', 'up', 'silent']],
  ['roles', ['kick', 'slap', 'closed', 'open', 'silent']],
  ['opened', ['rings open', 'cut short']],
] as const)('%s: a slot goes through its choices and back', (kind, said) => {
  const through = said.map((_, taps) => tapped(kind, 'E8', Array(taps + 1).fill(3)));
  expect(through.map((answer) => saidChoice(kind, slotsOf(kind, 'E8', answer)[3] ?? false))).toEqual(said);
  // Blank again, there is nothing to write.
  expect(through.at(-1)).toBeNull();
});

test('whatever is tapped can be read by the server, for every grid and kind', () => {
  fc.assert(
    fc.property(
      fc.constantFrom<GridKind>('accents', 'stroke-grid', 'roles', 'opened'),
      fc.constantFrom(...GRID_NAMES).chain((grid) =>
        fc.record({
          grid: fc.constant(grid),
          taps: fc.array(fc.nat(GRIDS[grid].slots - 1), { minLength: 1, maxLength: 40 }),
        }),
      ),
      (kind, { grid, taps }) => {
        const answer = tapped(kind, grid, taps);
        if (answer !== null) expect(ASKS[kind].read(answer, SETTINGS)).toEqual(answer);
      },
    ),
    { numRuns: 200 },
  );
});

// common practice: eighths are counted 1 and 2 and, sixteenths 1 e and a, six or seven eighths by their own numbers.
test.each([
  ['E8', 3, 'beat 2, and'],
  ['S16', 13, 'beat 4, e'],
  ['S16', 7, 'beat 2, a'],
  ['C6', 4, 'beat 5'],
  ['V7', 6, 'beat 7'],
  ['W6', 5, 'beat 3, and'],
  ['T12', 11, 'beat 4, a'],
  ['E16', 11, 'bar 2, beat 2, and'],
] as const)('%s: slot %i is said %s', (grid, slot, said) => {
  expect(saidSlot(grid, slot)).toBe(said);
});

test.each(GRID_NAMES)('%s: no two slots are said alike', (grid) => {
  const said = Array.from({ length: GRIDS[grid].slots }, (_, slot) => saidSlot(grid, slot));
  expect(new Set(said).size).toBe(said.length);
});

test.each([
  ['ArrowRight', 0, 1],
  ['ArrowRight', 7, 7],
  ['ArrowLeft', 4, 3],
  ['ArrowDown', 2, 6],
  ['ArrowDown', 6, 6],
  ['ArrowUp', 5, 1],
  ['Home', 5, 0],
  ['End', 1, 7],
  ['Tab', 3, 3],
])('%s leads from slot %i to slot %i', (key, from, to) => {
  expect(slotAfterKey(key, from, 8, 4)).toBe(to);
});

import { slotAnswers, slotWords } from '../../../server/protocol/words/asked/beat-grid.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { GRIDS, slotsPerBar, type Grid } from '../../../shared-theory/groove-grid.ts';
import type { GridStroke, Role, Weight } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { beatOf, countOf } from '../../../shared-theory/slot-count.ts';

export type GridKind = 'accents' | 'stroke-grid' | 'roles' | 'opened';

/** What stands on one slot of the pad; an opened slot is true. */
export type SlotChoice = Weight | GridStroke | Role | boolean;

/** What a tap goes through, from the blank on. */
const CYCLES: Readonly<Record<GridKind, readonly [SlotChoice, ...SlotChoice[]]>> = {
  accents: [0, 1, 2],
  'stroke-grid': ['silent', 'down', 'up'],
  roles: ['silent', 'kick', 'slap', 'closed', 'open'],
  opened: [false, true],
};

/** What stands on each slot of a pad: of an answer, or blank where there is none. */
export function slotsOf(kind: GridKind, grid: Grid, answer: readonly unknown[] | null): readonly SlotChoice[] {
  const [blank] = CYCLES[kind];
  return Array.from({ length: GRIDS[grid].slots }, (_, slot) => {
    if (kind === 'opened') return answer?.includes(slot) ?? false;
    return (answer?.[slot] as SlotChoice | undefined) ?? blank;
  });
}

/** The answer after a tap on a slot, which goes on to its next choice; null where the whole grid is blank again. */
export function afterTap(kind: GridKind, slots: readonly SlotChoice[], tapped: number): readonly unknown[] | null {
  const cycle = CYCLES[kind];
  const next = slots.map((choice, slot) =>
    slot === tapped ? cycle[(cycle.indexOf(choice) + 1) % cycle.length] : choice,
  );
  if (next.every((choice) => choice === cycle[0])) return null;
  return kind === 'opened' ? next.flatMap((open, slot) => (open ? [slot] : [])) : next;
}

/** A slot as it is said: `beat 2, and`, `bar 2, beat 3`. */
export function saidSlot(grid: Grid, slot: number): string {
  const { sign } = countOf(grid, slot);
  const beat = beatOf(grid, slot);
  const said = fill(slotWords.beat, { beat });
  const { parts } = slotWords;
  const inBeat = sign === beat ? said : `${said}, ${parts[sign as keyof typeof parts]}`;
  const bar = Math.floor(slot / slotsPerBar({ grid })) + 1;
  return GRIDS[grid].bars > 1 ? `${fill(slotWords.bar, { bar })}, ${inBeat}` : inBeat;
}

/** What stands on a slot, as it is said: `heavy`. */
export function saidChoice(kind: GridKind, choice: SlotChoice): string {
  switch (kind) {
    case 'accents':
      return slotAnswers.accents[choice as Weight];
    case 'stroke-grid':
      return slotAnswers['stroke-grid'][choice as GridStroke];
    case 'roles':
      return slotAnswers.roles[choice as Role];
    case 'opened':
      return slotAnswers.opened[choice ? 'open' : 'short'];
  }
}

/** The slot that an arrow key leads to from another, in rows of so many; itself where there is none. */
export function slotAfterKey(key: string, slot: number, slots: number, row: number): number {
  const steps: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -row, ArrowDown: row };
  const to = key === 'Home' ? 0 : key === 'End' ? slots - 1 : slot + (steps[key] ?? 0);
  return to >= 0 && to < slots ? to : slot;
}

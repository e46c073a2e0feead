import { GRIDS } from '../../groove-grid.ts';
import { modulo } from '../../pitch.ts';
import { allRight, alsoOnTheGrid, rightAnswers, stretched } from '../grid-choices.ts';
import type { RightSlots } from '../grid-choices.ts';
import { andSlots, numberSlots } from '../grid-places.ts';
import { firstShown, needed, notRight, RIGHT } from '../marks.ts';
import type { AskedOf, Judge } from '../question.ts';
import { openedAsk } from './ask.ts';

/**
 * Which slots ring open. Where several in a row do, the first of them is where it opened: whoever names that one and others of them is
 * right, and so is who names that one alone. Credit is the right slots picked, of all right ones and the wrong ones picked, stretched so
 * that every slot, every number or every and by rote earns nothing.
 */
export const openedJudge: Judge<'opened'> = {
  kind: 'opened',
  truth: (context) => openSlots(context),
  mark: (answer, context) => {
    const open = needed(openSlots(context), 'opened', context.target);
    const slots = slotsOf(context);
    if (answer.some((slot) => slot >= slots)) return notRight(0, null);
    if (allRight(picked(answer, slots), picks(open, slots))) return RIGHT;
    const share = (named: readonly number[]) => {
      const right = named.filter((slot) => open.includes(slot)).length;
      return right / (open.length + named.length - right);
    };
    const unheard = byRote(context).filter((named) => !allRight(picked(named, slots), picks(open, slots)));
    const credit = stretched(share(answer), Math.max(...unheard.map(share)));
    return notRight(credit, firstShown([['opens-one-slot-off', isOneOff(answer, open, slots)]]));
  },
  also: (context) => {
    const slots = slotsOf(context);
    const others = alsoOnTheGrid(picks(openSlots(context) ?? [], slots));
    return others.map((marks) => marks.flatMap((isOpen, slot) => (isOpen ? [slot] : [])));
  },
  heard: openedAsk.key,
  // Nobody answers no slot at all.
  chance: (context) => {
    const [open, slots] = [openSlots(context), slotsOf(context)];
    return open === null ? 0 : rightAnswers(picks(open, slots)) / (2 ** slots - 1);
  },
};

function openSlots({ truth: { rhythm } }: AskedOf): readonly number[] | null {
  return rhythm?.opened ?? null;
}

function slotsOf({ truth: { rhythm } }: AskedOf): number {
  return rhythm ? GRIDS[rhythm.grid].slots : 0;
}

/** Slots that are named without hearing: all of them, those of the numbers, those of the ands. */
function byRote({ truth: { rhythm } }: AskedOf): readonly (readonly number[])[] {
  if (!rhythm) return [];
  const all = Array.from({ length: GRIDS[rhythm.grid].slots }, (_, slot) => slot);
  return [all, numberSlots(rhythm.grid), andSlots(rhythm.grid)].filter((slots) => slots.length > 0);
}

/** Whether each slot is picked. */
function picked(answer: readonly number[], slots: number): readonly boolean[] {
  return Array.from({ length: slots }, (_, slot) => answer.includes(slot));
}

/** Whether each slot must, may or must not be picked: of slots in a row, round the bar line too, the first must. */
function picks(open: readonly number[], slots: number): RightSlots<boolean> {
  return picked(open, slots).map((isOpen, slot) => {
    if (!isOpen) return [false];
    return isFirst(slot, open, slots) ? [true] : [true, false];
  });
}

function isFirst(slot: number, open: readonly number[], slots: number): boolean {
  return !open.includes(modulo(slot - 1, slots));
}

/** All slots that open, or the first of each row, one slot early or late. */
function isOneOff(answer: readonly number[], open: readonly number[], slots: number): boolean {
  const firsts = open.filter((slot) => isFirst(slot, open, slots));
  return [open, firsts].some((named) =>
    [-1, 1].some((by) => {
      const moved = new Set(named.map((slot) => modulo(slot + by, slots)));
      return moved.size === answer.length && answer.every((slot) => moved.has(slot));
    }),
  );
}

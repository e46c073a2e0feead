import { beatsPerSlot, GRIDS, slotsPerBar } from '../groove-grid.ts';
import type { Grid } from '../groove-grid.ts';
import type { RhythmTruth } from '../rhythm/rhythm-truth.ts';

/** How far from whole a beat may come out by reckoning. */
const NEARLY = 1e-6;

/** Parts of a beat, 0 to below 1, at which the slots of a pattern lie. */
function partsOfBeat(grid: Grid): readonly number[] {
  const perBar = slotsPerBar({ grid });
  return Array.from({ length: GRIDS[grid].slots }, (_, slot) => {
    const beats = (slot % perBar) * beatsPerSlot({ grid });
    const part = beats - Math.floor(beats + NEARLY);
    return Math.max(0, part);
  });
}

const slotsWhere = (grid: Grid, holds: (part: number) => boolean): readonly number[] =>
  partsOfBeat(grid).flatMap((part, slot) => (holds(part) ? [slot] : []));

/** Whether a bar of the grid has whole beats: then its numbers and what lies between are told apart. Not in 7/8. */
function hasWholeBeats(grid: Grid): boolean {
  const beats = slotsPerBar({ grid }) * beatsPerSlot({ grid });
  return Math.abs(beats - Math.round(beats)) < NEARLY;
}

/** Slots on which a number is counted, from 0; none where a bar has no whole beats. */
export function numberSlots(grid: Grid): readonly number[] {
  return hasWholeBeats(grid) ? slotsWhere(grid, (part) => part < NEARLY) : [];
}

/** Slots on which an and is counted: half way between two numbers, and where a beat has three parts both inner ones. */
export function andSlots(grid: Grid): readonly number[] {
  if (!hasWholeBeats(grid)) return [];
  const halves = slotsWhere(grid, (part) => Math.abs(part - 1 / 2) < NEARLY);
  return halves.length > 0 ? halves : slotsWhere(grid, (part) => part >= NEARLY);
}

/** Where a hand that never stops is on a slot: down on the first of each bar, up on the next, and so on. */
export function pendulumAt(grid: Grid, slot: number): 'down' | 'up' {
  return (slot % slotsPerBar({ grid })) % 2 === 0 ? 'down' : 'up';
}

/** Whether what sounds on a slot is muted or stopped short, as far as the groove says. */
export function isMuted({ roles, opened, muted }: RhythmTruth, slot: number): boolean {
  if (muted?.includes(slot) === true) return true;
  const role = roles?.[slot]?.[0] ?? 'silent';
  if (role !== 'silent') return role !== 'open';
  return opened !== null && !opened.includes(slot);
}

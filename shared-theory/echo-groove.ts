import { grooveLine } from './groove-text.ts';
import { slotSounds } from './groove-grid.ts';
import type { Grid, Groove, GrooveSlot } from './groove-grid.ts';
import type { Weight } from './rhythm/rhythm-truth.ts';

/** Grids whose beats have three slots: down, up, down on each. */
const IN_THREES: readonly Grid[] = ['T12', 'C6'];

const ACCENTS = { 1: 1, 2: 3 } as const;

/**
 * A grid of weights as it is struck: full strokes on muted strings, by a hand that goes down and up all the time, on the grid, in the
 * tempo range and with the swing of the groove that it was heard in. One line of the grid language under the id `echo-N`; null where
 * no slot sounds. RangeError for another number of weights than the grid has slots.
 */
export function echoGroove(
  { grid, meter, tempo, swing, slots }: Omit<Groove, 'text'>,
  weights: readonly Weight[],
  number: number,
): string | null {
  if (weights.length !== slots.length) {
    throw new RangeError(`A grid of ${slots.length} slots takes as many weights, not ${weights.length}.`);
  }
  const struck = weights.map((weight, slot) => struckSlot(weight, isDown(grid, slot)));
  if (!struck.some(slotSounds)) return null;
  return grooveLine({ id: `echo-${number}`, name: 'Echo', grid, meter, tempo, swing, slots: struck });
}

/** Whether a hand that never stops goes down on a slot. */
function isDown(grid: Grid, slot: number): boolean {
  return (IN_THREES.includes(grid) ? slot % 3 : slot) % 2 === 0;
}

function struckSlot(weight: Weight, down: boolean): GrooveSlot {
  if (weight === 0) {
    return { stroke: down ? 'down-silent' : 'up-silent', zone: 'none', touch: 'none', accent: 0 };
  }
  return { stroke: down ? 'down' : 'up', zone: 'all', touch: 'dead', accent: ACCENTS[weight] };
}

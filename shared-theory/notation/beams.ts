import type { Meter } from '../vamps.ts';
import type { Item } from './bars.ts';
import { beamGroup } from './note-values.ts';
import { elementWith, type Element } from './xml.ts';

/** Beams of each note value that has any. */
const BEAMS: Readonly<Record<string, number>> = { eighth: 1, '16th': 2 };

function beamsOf({ notes, value }: Item): number {
  return notes.length === 0 ? 0 : (BEAMS[value.type] ?? 0);
}

/** The state of beam `level` on an item, from the beams of its neighbours in the group. */
function stateOf(level: number, before: number, after: number): string {
  if (before >= level) return after >= level ? 'continue' : 'end';
  if (after >= level) return 'begin';
  // A short value beside longer ones has a hook of its own, toward the note it belongs to.
  return after > 0 ? 'forward hook' : 'backward hook';
}

/** The beams of each item of a bar: notes of one group that stand side by side share theirs. */
export function beamElements(items: readonly Item[], meter: Meter): readonly (readonly Element[])[] {
  const joined = (one: Item | undefined, other: Item | undefined) =>
    one && other && beamGroup(meter, one.at) === beamGroup(meter, other.at) ? Math.min(1, beamsOf(one)) : 0;
  return items.map((item, index) => {
    const count = beamsOf(item);
    const before = joined(items[index - 1], item) * beamsOf(items[index - 1] ?? item);
    const after = joined(items[index + 1], item) * beamsOf(items[index + 1] ?? item);
    if (count === 0 || (before === 0 && after === 0)) return [];
    return Array.from({ length: count }, (_, level) =>
      elementWith('beam', { number: level + 1 }, stateOf(level + 1, before, after)),
    );
  });
}

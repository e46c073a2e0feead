import type { Meter } from '../vamps.ts';
import { restsAt, valueAt, type NoteValue } from './note-values.ts';
import type { StaffNote } from './staff-notes.ts';

/** What begins at one moment of a part: from the section's start and at most so long, in divisions; notes from low to high. */
export type Attack = { readonly at: number; readonly most: number; readonly notes: readonly StaffNote[] };

/** A bar of a section: where it begins and ends, in divisions from the section's start. */
export type Bar = { readonly from: number; readonly to: number };

/** A note, chord or rest of a bar; `at` in divisions from the bar's start, a rest without notes. */
export type Item = { readonly at: number; readonly value: NoteValue; readonly notes: readonly StaffNote[] };

/**
 * A bar of a part: each attack as long as it can be read up to the next one, rests between. Rests begin anew at `cuts`. Empty where
 * nothing begins and nothing is cut in it.
 */
export function barItems(
  { from, to }: Bar,
  attacks: readonly Attack[],
  cuts: readonly number[],
  meter: Meter,
): readonly Item[] {
  const inside = (at: number) => at >= from && at < to;
  const begun = new Map(attacks.filter(({ at }) => inside(at)).map((attack) => [attack.at, attack]));
  const starts = [...new Set([...begun.keys(), ...cuts.filter((at) => inside(at) && at > from)])].toSorted(
    (one, other) => one - other,
  );
  if (starts.length === 0) return [];
  if (starts[0] !== from) starts.unshift(from);
  return starts.flatMap((start, index) => {
    const length = (starts[index + 1] ?? to) - start;
    const attack = begun.get(start);
    const items: Item[] = [];
    let at = start - from;
    if (attack) {
      const value = valueAt(meter, at, Math.min(length, attack.most), false);
      items.push({ at, value, notes: attack.notes });
      at += value.length;
    }
    for (const value of restsAt(meter, at, start - from + length - at)) {
      items.push({ at, value, notes: [] });
      at += value.length;
    }
    return items;
  });
}

import type { Meter } from '../vamps.ts';
import { restsAt, valueAt, type NoteValue } from './note-values.ts';
import type { StaffNote } from './staff-notes.ts';

/** What begins at one moment of a part. Lengths in divisions. */
export type Attack = {
  /** From the section's start. */
  readonly at: number;
  /** How long it may be written at most. */
  readonly most: number;
  /** How long it rings; 0 for what is short whatever is written. */
  readonly rings: number;
  /** From low to high. */
  readonly notes: readonly StaffNote[];
};

/** A bar of a section: where it begins and ends, in divisions from the section's start. */
export type Bar = { readonly from: number; readonly to: number };

/** A note, chord or rest of a bar; `at` in divisions from the bar's start, a rest without notes. */
export type Item = {
  readonly at: number;
  readonly value: NoteValue;
  readonly notes: readonly StaffNote[];
  /** It rings longer than it is written. */
  readonly ringsOn: boolean;
};

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
      items.push({ at, value, notes: attack.notes, ringsOn: attack.rings > value.length });
      at += value.length;
    }
    for (const value of restsAt(meter, at, start - from + length - at)) {
      items.push({ at, value, notes: [], ringsOn: false });
      at += value.length;
    }
    return items;
  });
}

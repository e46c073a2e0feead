import type { Meter } from '../vamps.ts';
import { valueAt, valuesAt, type NoteValue } from './note-values.ts';
import type { StaffNote } from './staff-notes.ts';

/** What begins at one moment of a part. Lengths in divisions. */
export type Attack = {
  /** From the section's start. */
  readonly at: number;
  /** How long it may be written at most. */
  readonly most: number;
  /** How long it rings; 0 for what is short whatever is written. */
  readonly rings: number;
  /** How long it is written with ties where no value alone says so; 0 for what is never tied. */
  readonly holds: number;
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
  /** It goes on from the same heads before it, or goes on in those after it. */
  readonly tied: { readonly before: boolean; readonly after: boolean };
};

/**
 * A bar of a part: each attack as long as it can be read up to the next one, tied on as far as it holds, over the bar line too but not
 * past `end`; rests after it. Rests and ties begin anew at `cuts`. Empty where nothing begins, holds or is cut in it.
 */
export function barItems(
  { from, to }: Bar,
  attacks: readonly Attack[],
  cuts: readonly number[],
  meter: Meter,
  end: number,
): readonly Item[] {
  const inside = (at: number) => at >= from && at < to;
  const begun = new Map(attacks.filter(({ at }) => inside(at)).map((attack) => [attack.at, attack]));
  const endOf = ({ at, holds }: Attack) => {
    const next = Math.min(...attacks.filter((other) => other.at > at).map((other) => other.at));
    return Math.min(at + holds, next, end);
  };
  const heldAt = (at: number) => attacks.findLast((attack) => attack.at < at && endOf(attack) > at);
  const starts = [...new Set([...begun.keys(), ...cuts.filter((at) => inside(at) && at > from)])].toSorted(
    (one, other) => one - other,
  );
  if (starts.length === 0 && !heldAt(from)) return [];
  if (starts[0] !== from) starts.unshift(from);
  return starts.flatMap((start, index) => {
    const until = starts[index + 1] ?? to;
    const struck = begun.get(start);
    const attack = struck ?? heldAt(start);
    const items: Item[] = [];
    let at = start;
    const write = (sounding: Attack, value: NoteValue) => {
      const after = at + value.length;
      const tied = { before: at > sounding.at, after: endOf(sounding) > after };
      const ringsOn = !tied.after && sounding.at + sounding.rings > after;
      items.push({ at: at - from, value, notes: sounding.notes, ringsOn, tied });
      at = after;
    };
    if (struck) write(struck, valueAt(meter, at - from, Math.min(until - at, struck.most), false));
    if (attack) {
      const held = Math.min(until, endOf(attack));
      for (const value of valuesAt(meter, at - from, held - at, false)) write(attack, value);
    }
    for (const value of valuesAt(meter, at - from, until - at, true)) {
      items.push({ at: at - from, value, notes: [], ringsOn: false, tied: { before: false, after: false } });
      at += value.length;
    }
    return items;
  });
}

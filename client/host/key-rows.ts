import type { WireKeyRow, WireKeysReveal } from '../../server/protocol/views.ts';

/** Keys with the same chords (a major key and its relative minor) share one row of letters and have a numeral line each. */
export type Family = {
  readonly keys: readonly WireKeyRow[];
  readonly row: WireKeyRow['row'];
  readonly notes: readonly string[];
};

/** The families in the order they stand on the wall: the sharpest on top. The view lists them flat side first. */
export function familiesOf({ rows }: WireKeysReveal): readonly Family[] {
  const families = new Map<string, WireKeyRow[]>();
  for (const row of rows) {
    const chords = row.row.map(({ symbol }) => symbol).join(' ');
    families.set(chords, [...(families.get(chords) ?? []), row]);
  }
  return [...families.values()].toReversed().flatMap((keys) => {
    const [first] = keys;
    return first ? [{ keys, row: first.row, notes: first.notes }] : [];
  });
}

/** A tuning fork between two rows: the shared notes on its stem by column, the two that differ on its prongs. */
export type Fork = {
  /** One a column; null where the two keys part. */
  readonly stem: readonly (string | null)[];
  readonly upper: string;
  readonly lower: string;
  /** Column where they part. */
  readonly column: number;
};

/** The fork of two families; null where they do not differ in exactly one note. */
export function forkOf(upper: Family, lower: Family): Fork | null {
  const parted = upper.notes.flatMap((note, column) => (note === lower.notes[column] ? [] : [column]));
  const [column] = parted;
  if (parted.length !== 1 || column === undefined) return null;
  return {
    stem: upper.notes.map((note, at) => (at === column ? null : note)),
    upper: upper.notes[column] ?? '',
    lower: lower.notes[column] ?? '',
    column,
  };
}

/** Heights of the rows and forks of a page of keys, in drawing units from its top; all shrink together to fit. */
export type RowsLayout = {
  readonly scale: number;
  /** y of the rule of each family's row. */
  readonly rules: readonly number[];
  /** y of each fork's stem. */
  readonly forks: readonly number[];
};

const ABOVE_RULE = 78;
const NUMERAL_LINE = 58;
/** Between two rows: at least so much, and up to the second where the height is there. */
const FORK = 196;
const FORK_ROOMY = 245;

/** Lays the rows of the families under one another in `height`; under a capo each has a line of shapes more. */
export function layRows(families: readonly Family[], height: number, capo = 0): RowsLayout {
  const lines = (family: Family): number => family.keys.length + (capo > 0 ? 1 : 0);
  const rowHeight = (family: Family): number => ABOVE_RULE + NUMERAL_LINE * lines(family) + 16;
  const rows = families.reduce((sum, family) => sum + rowHeight(family), 0);
  const gaps = Math.max(0, families.length - 1);
  const gap = gaps === 0 ? 0 : Math.min(FORK_ROOMY, Math.max(FORK, (height - rows) / gaps));
  const natural = rows + gap * gaps;
  const scale = Math.min(1, height / natural);
  let y = Math.max(0, (height - natural * scale) / 2);
  const rules: number[] = [];
  const forks: number[] = [];
  families.forEach((family, index) => {
    rules.push(y + ABOVE_RULE * scale);
    y += rowHeight(family) * scale;
    if (index < families.length - 1) forks.push(y + (gap * scale) / 2);
    y += gap * scale;
  });
  return { scale, rules, forks };
}

import type { CribSheet } from '../../shared-theory/crib/sheet.ts';

/** What leaves the same keys alone, names in ASCII. */
export type SettlingRow = {
  readonly leaves: readonly string[];
  readonly notes: readonly string[];
  /** Two notes that do it together; empty where one does. */
  readonly notePair: readonly string[];
  readonly chords: readonly string[];
  /** Two chords that do it together; empty where a plain one does. */
  readonly chordPair: readonly string[];
};

/** Notes and chords that settle a vamp by the keys that they leave: fewest keys first, then in the order of the keys. */
export function settlingRows(sheet: CribSheet): readonly SettlingRow[] {
  const order = sheet.keys.map(({ key }) => key);
  const rows = new Map<string, SettlingRow>();
  const row = (leaves: readonly string[]): SettlingRow =>
    rows.get(leaves.join()) ?? { leaves, notes: [], notePair: [], chords: [], chordPair: [] };
  const put = (leaves: readonly string[], change: (known: SettlingRow) => SettlingRow) =>
    rows.set(leaves.join(), change(row(leaves)));
  for (const { note, leaves } of sheet.melodyNotes)
    put(leaves, (known) => ({ ...known, notes: [...known.notes, note] }));
  for (const { chord, leaves } of [...sheet.settlers, ...sheet.sevenths])
    put(leaves, (known) => ({ ...known, chords: [...known.chords, chord] }));
  for (const { leaves, notes, chordPair } of sheet.isolating)
    put(leaves, (known) => ({ ...known, notePair: notes.length > 1 ? notes : [], chordPair }));
  const place = ({ leaves }: SettlingRow) => order.indexOf(leaves[0] ?? '');
  return [...rows.values()]
    .filter(({ notes, chords, notePair, chordPair }) =>
      [notes, chords, notePair, chordPair].some((each) => each.length > 0),
    )
    .toSorted((one, other) => one.leaves.length - other.leaves.length || place(one) - place(other));
}

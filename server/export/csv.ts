import { stringify } from 'csv-stringify/sync';

/** What a cell may hold: text, a number, or nothing. */
export type Cell = string | number | null;

/**
 * A table as a file for spreadsheets, after RFC 4180: UTF-8 with a byte order mark, so that accents are read as such; lines end
 * with CR LF; text that a spreadsheet would run as a formula stands behind an apostrophe, numbers stay numbers.
 */
export function csvOf(rows: readonly (readonly Cell[])[]): string {
  return stringify(
    rows.map((row) => [...row]),
    {
      bom: true,
      escape_formulas: true,
      record_delimiter: 'windows',
      cast: { number: (value) => ({ value: String(value), escape_formulas: false }) },
    },
  );
}

import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csvOf } from '../../../server/export/csv.ts';

const BOM = '﻿';

describe('a table for spreadsheets', () => {
  test('begins with one byte order mark and ends its lines as RFC 4180 says', () => {
    expect(
      csvOf([
        ['name', 'credit'],
        ['Zoë ♭', 0.5],
      ]),
    ).toBe(`${BOM}name,credit\r\nZoë ♭,0.5\r\n`);
    expect([...Buffer.from(csvOf([['Ana']])).subarray(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
  });

  test('quotes commas, quotes and line breaks (RFC 4180, 2.5 to 2.7)', () => {
    expect(csvOf([['A "B", C\nD', 1]])).toBe(`${BOM}"A ""B"", C\nD",1\r\n`);
  });

  // The characters of the OWASP page on CSV injection, and their full-width forms.
  test.each(['=1+1', '+1', '-1', '@SUM(1)', '\t=1', '\r=1', '＝1+1', '＋1', '－1', '＠A1'])(
    '%j is no formula',
    (name) => {
      const cell = csvOf([[name]]).slice(BOM.length, -2);
      expect(cell.replace(/^"/, '').startsWith("'")).toBe(true);
    },
  );

  test('numbers stay numbers, also below nought', () => {
    expect(csvOf([[-2, 1.5, 0, null]])).toBe(`${BOM}-2,1.5,0,\r\n`);
  });

  test('every table comes back as it was, formulas behind their apostrophe', () => {
    const cell = fc.oneof(fc.string(), fc.constantFrom('"', ',', '\r\n', 'é', '=', "'"));
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1 }), (rows) => {
        const read = readCsv(csvOf(rows).slice(BOM.length));
        expect(read).toEqual(
          rows.map((row) => row.map((each) => (/^[=+\-@\t\r＝＋－＠]/.test(each) ? `'${each}` : each))),
        );
      }),
    );
  });
});

/** A plain reader of RFC 4180, written for this check. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at < text.length) {
    const quoted = text[at] === '"';
    let cell = '';
    if (quoted) {
      at += 1;
      while (!(text[at] === '"' && text[at + 1] !== '"')) {
        if (text[at] === '"') at += 1;
        cell += text[at];
        at += 1;
      }
      at += 1;
    } else {
      while (at < text.length && text[at] !== ',' && !text.startsWith('\r\n', at)) {
        cell += text[at];
        at += 1;
      }
    }
    row.push(cell);
    if (text[at] === ',') at += 1;
    else {
      at += 2;
      rows.push(row);
      row = [];
    }
  }
  return rows;
}

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { SIGNS, type Outline } from '../../../client/shared/signs/outlines.ts';
import { writeTrueType } from '../../../client/shared/signs/true-type.ts';

const FILE = join(import.meta.dirname, '../../../client/shared/signs/hearsay-signs.ttf');

test('the font file is the outlines, written out', () => {
  const bytes = writeTrueType('Hearsay Signs', SIGNS);
  // After a change of the outlines: HEARSAY_WRITE_SIGNS=1 npm test -- --project client
  if (process.env['HEARSAY_WRITE_SIGNS']) writeFileSync(FILE, bytes);
  expect(Buffer.from(bytes).equals(readFileSync(FILE))).toBe(true);
});

// Code points: Unicode 16, Miscellaneous Symbols and Musical Symbols; private use as in SMuFL 1.4.
test.each([
  ['flat', 0x266d],
  ['natural', 0x266e],
  ['sharp', 0x266f],
  ['double-sharp', 0x1d12a],
  ['double-flat', 0x1d12b],
  ['degree', 0xb0],
  ['o-slash', 0xf8],
  ['triangle', 0x25b3],
  ['head-x', 0xe0a9],
  ['slash', 0xe101],
  ['accent', 0xe4a0],
  ['down-bow', 0xe610],
  ['up-bow', 0xe612],
])('%s stands at its code point', (name, code) => {
  expect(SIGNS.find((sign) => sign.name === name)?.code).toBe(code);
});

test('codes rise, as the character map needs', () => {
  const codes = SIGNS.map(({ code }) => code);
  expect(codes).toEqual(codes.toSorted((a, b) => a - b));
});

/** Twice the area, positive where the outline runs clockwise with y upward. */
function turn(outline: Outline): number {
  return outline.reduce((sum, { x, y }, index) => {
    const next = outline[(index + 1) % outline.length] ?? { x, y };
    return sum + (next.x - x) * (next.y + y);
  }, 0);
}

test.each(['flat', 'degree', 'o-slash', 'triangle'])(
  '%s has a hole, so its second outline runs the other way',
  (name) => {
    const sign = SIGNS.find((each) => each.name === name);
    const [ink, hole] = sign?.outlines ?? [];
    expect(ink && turn(ink)).toBeGreaterThan(0);
    expect(hole && turn(hole)).toBeLessThan(0);
  },
);

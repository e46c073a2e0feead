import { describe, expect, test } from 'vitest';
import { distinctName, nameKey, readName } from '../../../server/rooms/names.ts';

const RLO = '\u202e';
const ZWJ = '\u200d';
const ZWNJ = '\u200c';
const FAMILY = ['👩', '👩', '👧'].join(ZWJ);

describe('R9 names as typed', () => {
  test.each([
    ['Ana', 'Ana'],
    ['  Ana \t Maria\n', 'Ana Maria'],
    ['Zoe\u0308', 'Zoë'],
    ['An\u200ba', 'Ana'],
    ['A\u00adna\ufeff', 'Ana'],
    [`علی${ZWNJ}رضا`, `علی${ZWNJ}رضا`],
    [FAMILY, FAMILY],
    [`${ZWJ}Ana${ZWNJ}`, 'Ana'],
    [`An${ZWJ}${ZWJ}a`, 'Ana'],
    [`An ${ZWJ} a`, 'An a'],
    ['Ana <3', 'Ana <3'],
    ['Tom & Ida', 'Tom & Ida'],
    ['שרה', 'שרה'],
    ['{"type":"b"}', '{"type":"b"}'],
    ['Scunthorpe', 'Scunthorpe'],
    ['W'.repeat(24), 'W'.repeat(24)],
    ['﷽'.repeat(24), '﷽'.repeat(24)],
    ['e' + '\u0301\u0302\u0303\u0304\u0305\u0306'.repeat(20) + 'x', 'é\u0302\u0303\u0304x'],
    ['Ａｎａ', 'Ａｎａ'],
    ['7', '7'],
    ['李小龍', '李小龍'],
  ])('%j is kept as %j', (typed, name) => {
    expect(readName(typed)).toEqual({ ok: true, name });
  });

  test.each([
    ['', 'name-empty'],
    ['   \n\t', 'name-empty'],
    ['\u200b\u200b', 'name-not-readable'],
    ['\u3164\u2800', 'name-not-readable'],
    [RLO, 'name-not-readable'],
    ['\u0301', 'name-not-readable'],
    [ZWJ + ZWNJ, 'name-not-readable'],
    ['\ud800', 'name-not-readable'],
    [`${RLO}evil 10`, 'name-not-readable'],
    ['\u2066Ana\u2069', 'name-not-readable'],
    ['Ana\u0000\u0007', 'name-not-readable'],
    ['Ana\u0085', 'name-not-readable'],
    ['<img src=x onerror=1>', 'name-not-readable'],
    ['<b>Al</b>', 'name-not-readable'],
    ['<!-- x', 'name-not-readable'],
    ['&#60;b&#62;', 'name-not-readable'],
  ])('%j is refused: %s', (typed, reason) => {
    expect(readName(typed)).toEqual({ ok: false, reason });
  });

  test.each([['a'.repeat(25)], ['a'.repeat(500)], ['👩🏽'.repeat(13)], ['x'.repeat(100_000)], [FAMILY.repeat(6)]])(
    'a long name is refused with the most that fits',
    (typed) => {
      expect(readName(typed)).toEqual({ ok: false, reason: 'name-too-long', detail: { most: 24 } });
    },
  );

  test('a name that was read is read again as itself', () => {
    for (const typed of ['Zoe\u0308 ', FAMILY, `علی${ZWNJ}رضا`, 'e\u0301\u0302\u0303\u0304\u0305']) {
      const once = readName(typed);
      expect(once.ok && readName(once.name)).toEqual(once);
    }
  });
});

describe('R11 twins', () => {
  test.each([
    ['Zoë', 'Zoe\u0308'],
    ['ＡＢＣ', 'abc'],
    ['STRASSE', 'Straße'],
    ['ΣΊΣΥΦΟΣ', 'Σίσυφος'],
    [`علی${ZWNJ}رضا`, 'علیرضا'],
  ])('%s and %s are one name', (one, other) => {
    expect(nameKey(one)).toBe(nameKey(other));
  });

  test('the first stays plain, the next are numbered', () => {
    const taken = new Map<string, number>();
    const names = ['Ana', 'ana', 'Bo', 'Ana', 'Ana (2)', 'Ana'];
    expect(names.map((name) => distinctName(name, taken))).toEqual([
      'Ana',
      'ana (2)',
      'Bo',
      'Ana (3)',
      'Ana (2) (2)',
      'Ana (4)',
    ]);
  });
});

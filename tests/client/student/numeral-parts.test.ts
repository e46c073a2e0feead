import { expect, test } from 'vitest';
import { DEGREES, FORMS, SIGNS, numeralOf, partsOf, withBar } from '../../../client/student/pads/numeral-parts.ts';
import { numeralAsk } from '../../../shared-theory/questions/numeral/ask.ts';

const ALL = (['', ...SIGNS.map(({ sign }) => sign)] as const).flatMap((sign) =>
  DEGREES.flatMap((_, degree) => FORMS.map((form) => ({ sign, degree, form }))),
);

test('whatever the pad writes is read by the room, and by the pad again', () => {
  expect(new Set(ALL.map(numeralOf)).size).toBe(ALL.length);
  for (const parts of ALL) {
    const numeral = numeralOf(parts);
    expect(numeralAsk.read([numeral], { policy: 'majors', qualities: [] })).toEqual([numeral]);
    expect(partsOf(numeral)).toEqual(parts);
  }
});

test.each([
  [{ sign: 'b', degree: 6, form: 'major' }, 'bVII'],
  [{ sign: '', degree: 6, form: 'diminished' }, 'viio'],
  [{ sign: '', degree: 2, form: 'augmented' }, 'III+'],
  [{ sign: '', degree: 1, form: 'minor' }, 'ii'],
  [{ sign: '#', degree: 3, form: 'diminished' }, '#ivo'],
] as const)('%j is %s', (parts, numeral) => {
  expect(numeralOf(parts)).toBe(numeral);
});

test.each(['', 'VIII', 'Vi', '##iv', '4', 'V7'])('%j is no numeral of this pad', (text) => {
  expect(partsOf(text)).toBeNull();
});

test.each<[readonly string[], number, string, readonly string[] | null]>([
  [[], 0, 'V', ['V']],
  [[], 2, 'V', ['', '', 'V']],
  [['vi', 'V'], 0, 'ii', ['ii', 'V']],
  [['vi', 'V'], 0, '', ['', 'V']],
  [['vi', 'V'], 1, '', ['vi']],
  [['', 'V'], 1, '', null],
  [['V'], 0, '', null],
])('%j with bar %i as %j is %j', (bars, at, numeral, next) => {
  expect(withBar(bars, at, numeral)).toEqual(next);
});

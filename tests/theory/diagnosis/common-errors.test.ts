import { describe, expect, test } from 'vitest';
import { commonErrors } from '../../../shared-theory/diagnosis/common-errors.ts';
import type { Weight } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { seededRandom } from '../../../shared-theory/random.ts';
import { neckPlaces } from '../../../shared-theory/questions/root/ask.ts';
import { heard, weights } from '../questions/given-rhythm.ts';
import { EM_D } from '../questions/given.ts';
import { question, round } from './lesson.ts';
import type { Given } from './lesson.ts';

/** On the low strings: E is the root of Em, B its fifth. */
const ROOT = { string: 6, fret: 0 } as const;
const FIFTH = { string: 5, fret: 2 } as const;

function times<T>(count: number, answer: T): T[] {
  return Array.from({ length: count }, () => answer);
}

describe('common errors', () => {
  test('how often, among how many, with interval, guessing and where', () => {
    const given: Given = [...times(3, FIFTH), ...times(6, ROOT), 'not-sure', undefined];
    const [found, ...others] = commonErrors([round(question('root-0', given))]);
    expect(others).toEqual([]);
    expect(found).toMatchObject({
      error: 'hears-the-fifth',
      times: 3,
      chances: 9,
      kinds: ['root'],
      where: { round: 1, question: 'root-0' },
    });
    // Two of the twenty-six places are B.
    expect(found?.guessing).toBeCloseTo(2 / 26, 12);
    expect(found?.interval[0]).toBeGreaterThan(0.1);
    expect(found?.interval[1]).toBeLessThan(0.66);
  });

  // A rule of thumb of the trade: three hands in ten on one question, or the same on three questions.
  test.each([
    ['three of ten on one question', [[...times(3, FIFTH), ...times(7, ROOT)]], 1],
    ['two of ten on one question', [[...times(2, FIFTH), ...times(8, ROOT)]], 0],
    ['one alone, however few were there', [[FIFTH, ROOT]], 0],
    ['one of ten on each of three', times(3, [FIFTH, ...times(9, ROOT)]), 1],
    ['one of ten on each of two', times(2, [FIFTH, ...times(9, ROOT)]), 0],
  ])('%s', (_, given, findings) => {
    const rounds = given.map((each, index) => ({ ...round(question('root-0', each)), number: index + 1 }));
    expect(commonErrors(rounds)).toHaveLength(findings);
  });

  test('only first sheets count, and no struck question', () => {
    const talked = question('root-0', times(9, ROOT), times(9, FIFTH));
    const struck = { ...question('quality-0', times(9, 'major')), struck: true };
    expect(commonErrors([round(talked, struck)])).toEqual([]);
  });

  test('answers without hearing are no finding', () => {
    const random = seededRandom(7, 'blind');
    const blind = Array.from({ length: 400 }, () => neckPlaces()[Math.floor(random() * neckPlaces().length)] ?? ROOT);
    expect(commonErrors([round(question('root-0', blind))])).toEqual([]);
  });

  test('grids that are filled by lot show no more than lots do; a class that starts the bar elsewhere is one', () => {
    const truth = heard().truth;
    const random = seededRandom(11, 'grids');
    const lots = Array.from({ length: 200 }, () => Array.from({ length: 8 }, () => Math.floor(random() * 3) as Weight));
    for (const { error, interval, guessing } of commonErrors([{ ...round(question('accents-0', lots)), truth }])) {
      expect([error, interval[0] < guessing]).toEqual([error, true]);
    }
    const late = question('accents-0', [...times(5, weights('12111211')), ...times(5, weights('21112111'))]);
    expect(commonErrors([{ ...round(late), truth }])).toMatchObject([
      { error: 'starts-the-bar-elsewhere', times: 5, chances: 10, kinds: ['accents'] },
    ]);
  });

  test('the place with most of them comes first, and the kinds are named once', () => {
    const few = { ...round(question('root-0', [...times(4, FIFTH), ...times(6, ROOT)])), number: 1 };
    const many = {
      ...round(question('root-0', [...times(8, FIFTH), ...times(2, ROOT)])),
      number: 2,
      truth: { ...EM_D, tempo: 90 },
    };
    expect(commonErrors([few, many])).toMatchObject([
      { error: 'hears-the-fifth', times: 12, chances: 20, kinds: ['root'], where: { round: 2, question: 'root-0' } },
    ]);
  });
});

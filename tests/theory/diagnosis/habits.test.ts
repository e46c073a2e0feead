import { describe, expect, test } from 'vitest';
import type { AskedRound } from '../../../shared-theory/diagnosis/asked.ts';
import { habitsByStudent } from '../../../shared-theory/diagnosis/habits.ts';
import { guitarTruth } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { question, round } from './lesson.ts';
import type { Given } from './lesson.ts';

type Asked = { readonly chords: string; readonly id: string; readonly answer: Given[number] };

/** One student's answers, one round each. */
function lesson(asked: readonly Asked[]): readonly AskedRound[] {
  return asked.map(({ chords, id, answer }, index) => ({
    ...round(question(id, [answer])),
    number: index + 1,
    truth: guitarTruth(parseVamp(chords, 4)),
  }));
}

const habits = (...asked: readonly Asked[]) => habitsByStudent(lesson(asked)).get('s1') ?? [];

function repeat(count: number, asked: Asked): Asked[] {
  return Array.from({ length: count }, () => asked);
}

describe('habits of one student', () => {
  const up = (answer: Given[number]): Asked => ({ chords: 'E A', id: 'direction-1', answer });

  test.each([
    ['six of eight the other way', [...repeat(6, up('down')), ...repeat(2, up('up'))], 6],
    ['five of eight the other way', [...repeat(5, up('down')), ...repeat(3, up('up'))], null],
    ['five of five are too few', repeat(5, up('down')), null],
    ['saying that it stays is another matter', repeat(8, up('same')), null],
    ['not sure is no answer', [...repeat(5, up('down')), ...repeat(3, up('not-sure'))], null],
  ])('up and down exchanged: %s', (_, asked, found) => {
    const wanted = found === null ? [] : [{ habit: 'swaps-up-and-down', times: found, of: asked.length }];
    expect(habits(...asked)).toEqual(wanted);
  });

  const quality = (chords: string, answer: Given[number]): Asked => ({ chords, id: 'quality-0', answer });

  test.each([
    [
      'six of eight where half are minor',
      [...repeat(4, quality('E', 'major')), ...repeat(2, quality('Em', 'major')), ...repeat(2, quality('Em', 'minor'))],
      true,
    ],
    [
      'five of eight',
      [...repeat(4, quality('E', 'major')), quality('Em', 'major'), ...repeat(3, quality('Em', 'minor'))],
      false,
    ],
    [
      'where nearly all are major there is nothing to lean to',
      [...repeat(7, quality('E', 'major')), quality('Em', 'minor')],
      false,
    ],
  ])('leaning to one quality: %s', (_, asked, found) => {
    expect(habits(...asked).map(({ habit }) => habit)).toEqual(found ? ['leans-to-one-quality'] : []);
  });

  test('the first quality carried over three times', () => {
    const carried: Asked = { chords: 'Em D', id: 'quality-1', answer: 'minor' };
    expect(habits(...repeat(3, carried))).toEqual([{ habit: 'carries-the-first-quality', times: 3, of: 3 }]);
    expect(habits(...repeat(2, carried))).toEqual([]);
    // The same quality twice is no change that could be missed.
    expect(habits(...repeat(4, { chords: 'Em Am', id: 'quality-1', answer: 'minor' }))).toEqual([]);
  });

  test('the first chord’s own key and no other, where others own it too', () => {
    expect(habits(...repeat(3, { chords: 'A Bm', id: 'keys-0', answer: ['9M'] }))).toEqual([
      { habit: 'always-the-home-key', times: 3, of: 3 },
    ]);
    expect(habits(...repeat(3, { chords: 'Em D', id: 'keys-0', answer: ['4m'] }))).toEqual([
      { habit: 'always-the-home-key', times: 3, of: 3 },
    ]);
    // Where one key alone owns the loop and it is not that of home (V to IV of G, A and D, common practice).
    const wrong: readonly (readonly [string, string])[] = [
      ['D C', '2M'],
      ['E D', '4M'],
      ['A G', '9M'],
    ];
    expect(habits(...wrong.map(([chords, key]) => ({ chords, id: 'keys-0', answer: [key] })))).toEqual([
      { habit: 'always-the-home-key', times: 3, of: 3 },
    ]);
    expect(habits(...repeat(2, { chords: 'A Bm', id: 'keys-0', answer: ['9M'] }))).toEqual([]);
    expect(habits(...repeat(3, { chords: 'A Bm', id: 'keys-0', answer: ['2M'] }))).toEqual([]);
  });

  test('counting from nought on two distances', () => {
    // E to A is up to 4, answered up to 3; C to Em up to 3, answered up to 2.
    const third: Asked = { chords: 'E A', id: 'distance-1', answer: 4 };
    const second: Asked = { chords: 'C Em', id: 'distance-1', answer: 2 };
    expect(habits(third, second)).toEqual([{ habit: 'starts-at-zero', times: 2, of: 2 }]);
    expect(habits(third, third)).toEqual([]);
    // C to F answered 3 is one short; C to D answered with the octave is not, nor is five answered as four.
    const short: Asked = { chords: 'C F', id: 'distance-1', answer: 4 };
    expect(habits(short, { chords: 'C D', id: 'distance-1', answer: 12 })).toEqual([]);
    expect(habits(short, { chords: 'C G', id: 'distance-1', answer: -7 })).toEqual([]);
  });
});

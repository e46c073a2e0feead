import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseChord } from '../../../shared-theory/chords.ts';
import { numeralJudge } from '../../../shared-theory/questions/numeral/judge.ts';
import { pointsOf } from '../../../shared-theory/questions/points.ts';
import { neckPlaces } from '../../../shared-theory/questions/root/ask.ts';
import { rootJudge } from '../../../shared-theory/questions/root/judge.ts';
import { pitchClassAt } from '../../../shared-theory/questions/root/places.ts';
import { context } from '../questions/given.ts';

/*
 * How a public examination marks harmonic dictation: AP Music Theory, scoring guidelines of the free-response questions on
 * harmonic dictation (College Board, 2006, 2019, 2021). Sixteen notes and eight numerals are worth a point each and stand alone;
 * the bass may be in any octave; a numeral is accepted in capitals or small; half a point for the right numeral with wrong
 * figures; none for a numeral with an accidental before it; fractions are rounded up, save that 23½ is 23.
 */
const DEGREES = /^([b#]?)(VII|VI|V|IV|III|II|I)([o+]?)$/i;

/** Points of one numeral; figures of inversion beside it as the guidelines take them. */
function numeralPoints(right: string, answer: string, figuresRight = true): number {
  const [, , degree = ''] = DEGREES.exec(right) ?? [];
  const [, accidental = '', answered = ''] = DEGREES.exec(answer) ?? [];
  if (accidental !== '' || degree.toUpperCase() !== answered.toUpperCase()) return 0;
  return figuresRight ? 1 : 0.5;
}

/** A bass note: right in any octave, wrong under another name. */
function bassPoints(right: string, answer: string): number {
  const name = (note: string) => note.replace(/\d+$/, '');
  return name(right) === name(answer) ? 1 : 0;
}

function total(points: number): number {
  return points === 23.5 ? 23 : Math.ceil(points);
}

describe('the published rule', () => {
  test.each([
    ['twelve notes, four numerals in full and three by half', 12 + 4 + 3 * 0.5, 18],
    ['all', 24, 24],
    ['all but half a point', 23.5, 23],
    ['half a point', 0.5, 1],
    ['nothing', 0, 0],
  ])('%s', (_case, points, rounded) => {
    expect(total(points)).toBe(rounded);
  });

  test.each([
    ['vi', 'VI', true, 1],
    ['ii', 'II', false, 0.5],
    ['V', 'bV', true, 0],
    ['IV', 'V', true, 0],
  ])('%s answered %s, figures right %s: %f', (right, answer, figures, points) => {
    expect(numeralPoints(right, answer, figures)).toBe(points);
  });

  test('the bass in any octave, by its name', () => {
    expect([bassPoints('G2', 'G3'), bassPoints('F#2', 'Gb2'), bassPoints('G2', 'D2')]).toEqual([1, 0, 0]);
  });
});

/** Two loops of four chords that C major alone owns, as one progression of eight (common practice). */
const LOOPS: readonly { readonly chords: string; readonly numerals: readonly string[] }[] = [
  { chords: 'C Am Dm G', numerals: ['I', 'vi', 'ii', 'V'] },
  { chords: 'F G Em Am', numerals: ['IV', 'V', 'iii', 'vi'] },
];
const chordsIn = (text: string) => {
  const chords = text.split(' ').map((symbol) => parseChord(symbol));
  return { roots: chords.map(({ root }) => root), qualities: chords.map(({ quality }) => quality) };
};
const GIVEN = LOOPS.map(({ chords }) => context(0, chordsIn(chords)));
const credit = (loop: number, answer: readonly string[]) => {
  const given = GIVEN[loop];
  return given ? numeralJudge.mark(answer, given).credit : -1;
};
const swapCase = (numeral: string) =>
  numeral === numeral.toUpperCase() ? numeral.toLowerCase() : numeral.toUpperCase();
const CHART = ['I', 'ii', 'iii', 'IV', 'V', 'vi', 'viio'];

describe('our marks of numerals beside it', () => {
  test('each chord stands alone: what one is worth does not depend on the others', () => {
    fc.assert(
      fc.property(
        fc.nat(1),
        fc.nat(3),
        fc.constantFrom(...CHART, ...CHART.map(swapCase).filter((each) => each !== 'VIIO'), 'bV', 'bIII'),
        fc.nat(3),
        (loop, bar, answer, otherBar) => {
          const right = LOOPS[loop]?.numerals ?? [];
          const alone = credit(loop, right.with(bar, answer)) - 0.75;
          expect(alone).toBeGreaterThanOrEqual(0);
          if (bar === otherBar) return;
          // A second bar in the wrong case costs the same beside it.
          const wrongCase = right.with(bar, answer).with(otherBar, swapCase(right[otherBar] ?? ''));
          expect(credit(loop, wrongCase)).toBeCloseTo(0.75 + alone - 0.125, 12);
        },
      ),
    );
  });

  test('where the published rule gives a whole point, we give it in the right case and half in the wrong', () => {
    LOOPS.forEach(({ numerals }, loop) => {
      numerals.forEach((right, bar) => {
        for (const answer of [...CHART, ...CHART.slice(0, 6).map(swapCase)]) {
          const ours = credit(loop, numerals.with(bar, answer)) * 4 - 3;
          const theirs = numeralPoints(right, answer);
          // The difference that we state: there capital and small count alike, here they say major and minor.
          const expected = theirs === 1 && answer !== right ? 0.5 : theirs;
          expect([right, answer, ours]).toEqual([right, answer, expected]);
        }
      });
    });
  });

  test('the wrong case is named, and is no wrong degree', () => {
    GIVEN.forEach((given, loop) => {
      const numerals = LOOPS[loop]?.numerals ?? [];
      const all = numerals.map(swapCase);
      expect(numeralJudge.mark(all, given)).toEqual({ credit: 0.5, exact: false, errors: ['numeral-case-wrong'] });
      expect(all.map((answer, bar) => numeralPoints(numerals[bar] ?? '', answer))).toEqual([1, 1, 1, 1]);
    });
  });

  test('an accidental before a numeral earns nothing in a major key', () => {
    for (const answer of ['bV', '#V', 'bI', '#iv']) {
      expect(numeralPoints('V', answer)).toBe(0);
      expect(credit(0, ['I', 'vi', 'ii', answer])).toBe(0.75);
    }
    // The difference that we state: counted in the relative minor, flats before III VI VII are how many write it.
    expect(credit(1, ['bVI', 'bVII', 'v', 'i'])).toBe(1);
  });

  test('the worked example: four in full, three by half and one wrong are five and a half of eight', () => {
    const first = credit(0, ['I', 'vi', 'ii', 'V']);
    const second = credit(1, ['iv', 'v', 'III', 'ii']);
    expect([first, second]).toEqual([1, 1.5 / 4]);
    expect(total(12 + 4 * first + 4 * second)).toBe(18);
    // Ours are not rounded: ten points a question, shared evenly by its chords.
    expect([pointsOf(first), pointsOf(second)]).toEqual([10, 3.75]);
  });

  test('there is nothing below nought, whatever is written', () => {
    fc.assert(
      fc.property(fc.nat(1), fc.array(fc.constantFrom(...CHART), { minLength: 1, maxLength: 4 }), (loop, answer) => {
        expect(credit(loop, answer)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

test('the bass is right in any octave; under which name does not matter here: a place on the neck has none', () => {
  const NAMES = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B'];
  for (const [sharp, flat] of [
    ['G', 'G'],
    ['F#', 'Gb'],
  ] as const) {
    for (const place of neckPlaces()) {
      const name = NAMES[pitchClassAt(place)] ?? '';
      const octave = place.string === 6 ? 2 : 3;
      const exact = rootJudge.mark(place, context(0, { roots: [sharp, 'D'] })).exact;
      expect(exact).toBe(bassPoints(`${sharp}2`, `${name}${octave}`) === 1);
      expect(rootJudge.mark(place, context(0, { roots: [flat, 'D'] })).exact).toBe(exact);
    }
  }
});

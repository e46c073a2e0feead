import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chordSymbol, parseChord } from '../../../shared-theory/chords.ts';
import type { ErrorKind, NoteKind } from '../../../shared-theory/questions/error-kinds.ts';
import { MOST_NUMERALS, numeralAsk } from '../../../shared-theory/questions/numeral/ask.ts';
import { numeralJudge } from '../../../shared-theory/questions/numeral/judge.ts';
import type { OwnAnswers } from '../../../shared-theory/questions/question.ts';
import { context } from './given.ts';

const asked = (text: string, slashIsNew: boolean, own: OwnAnswers = {}) => {
  const chords = text.split(' ').map((symbol) => parseChord(symbol));
  const roots = chords.map(({ root }) => root);
  const qualities = chords.map(({ quality }) => quality);
  return context(0, { roots, qualities, chords: chords.map(chordSymbol) }, { slashIsNew }, own);
};
const mark = (text: string, answer: string, slashIsNew = false, own: OwnAnswers = {}) =>
  numeralJudge.mark(answer.split(' '), asked(text, slashIsNew, own));

describe('a loop written slot by slot', () => {
  type Row = [string, string, number, ErrorKind | null, NoteKind | null];
  test.each<Row>([
    ['C/E F G7 C', 'I IV V', 1, null, null],
    ['C/E F G7 C', 'I IV V I', 1, null, null],
    ['Em D Em D', 'vi V vi V', 1, null, null],
    ['Em D Em D', 'ii I ii I', 1, null, 'right-in-another-key'],
    ['G C G', 'I IV I', 1, null, 'right-in-another-key'],
    ['C C/E', 'I I', 1, null, 'right-in-another-key'],
    // The same mistake in each of a chord's bars counts once.
    ['C/E F G7 C', 'I IV v I', 2.5 / 3, 'numeral-case-wrong', null],
    ['Em D Em D', 'VI V VI V', 0.75, 'numeral-case-wrong', null],
    // Narrowly not: a chord that comes back is said to be another.
    ['C/E F G7 C', 'I IV V vi', 0.75, null, null],
    ['C/E F G7 C', 'I IV V i', 0.75, null, null],
    // A bar too many, and a loop that has a chord in its place.
    ['C/E F G7', 'I IV V I', 0.75, null, null],
    ['C F G C', 'I IV V V', 0.75, null, null],
    // The pad has no bar for the fifth: the chords alone are asked.
    ['C F C G C', 'I IV I V', 0.5, null, null],
    ['C F C G C', 'I IV V', 1, null, null],
  ])('%s, answered %s: %f', (text, answer, credit, error, note) => {
    const { credit: earned, exact, errors, note: beside } = mark(text, answer);
    expect(earned).toBeCloseTo(credit, 12);
    expect({ exact, errors, beside: beside ?? null }).toEqual({
      exact: credit === 1,
      errors: error === null ? [] : [error],
      beside: note,
    });
  });

  test('stands among what is right as well, after the chords alone', () => {
    const given = asked('C/E F G7 C', false);
    expect(numeralJudge.truth(given)).toEqual(['I', 'IV', 'V']);
    expect(numeralJudge.also(given).map(numeralAsk.key)).toContain('I IV V I');
  });

  test('follows the student’s own answers as the chords alone do', () => {
    const own = { 'quality-0': 'minor', 'quality-1': 'minor', 'distance-1': -2 } as const;
    expect(mark('Em D Em D', 'iii ii iii ii', false, own).note).toBe('follows-own-answer');
    expect(mark('Em D Em D', 'iii ii iii II', false, own).note).toBeUndefined();
  });

  test('whatever the loop: right where its chords alone are, and only with one numeral for each', () => {
    const chord = fc.constantFrom('C', 'C/E', 'Dm', 'Em', 'F', 'G7', 'Am');
    const loops = fc.array(chord, { minLength: 2, maxLength: MOST_NUMERALS });
    fc.assert(
      fc.property(loops, fc.nat(MOST_NUMERALS - 1), (loop, changed) => {
        const numerals = { C: 'I', 'C/E': 'I', Dm: 'ii', Em: 'iii', F: 'IV', G7: 'V', Am: 'vi' } as const;
        const written = loop.map((symbol) => numerals[symbol]);
        const text = loop.join(' ');
        expect(mark(text, written.join(' ')).exact).toBe(true);
        if (new Set(written).size === written.length || changed >= written.length) return;
        const other = written.map((numeral, slot) => (slot === changed ? 'viio' : numeral));
        expect(mark(text, other.join(' ')).exact).toBe(false);
      }),
      { numRuns: 100 },
    );
  });
});

describe('where another bass is another chord', () => {
  test.each([
    ['C C/E F', 'I I IV'],
    ['C C/E F', 'I IV'],
    ['C C/E F C', 'I I IV'],
    ['C C/E F C', 'I I IV I'],
    // The first four that are counted.
    ['C C/E F G Am', 'I I IV V'],
    ['C C/E F G Am', 'I IV V vi'],
  ])('%s: %s is right', (text, answer) => {
    expect(mark(text, answer, true).exact).toBe(true);
  });

  test.each([
    ['C C/E F C', 'I I IV', false],
    ['C C/E F G Am', 'I I IV V', false],
    ['C C/E F', 'I i IV', true],
    ['C C/E F', 'I IV IV', true],
  ])('narrowly not, %s: %s', (text, answer, slashIsNew) => {
    expect(mark(text, answer, slashIsNew).exact).toBe(false);
  });
});

import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { breakdownOf } from '../../../shared-theory/diagnosis/breakdown.ts';
import { judgeOf, markAnswer } from '../../../shared-theory/questions/judges.ts';
import type { Kind } from '../../../shared-theory/questions/question.ts';
import { KINDS } from '../../../shared-theory/questions/question.ts';
import { answers, context, EM_D, SETTINGS } from '../questions/given.ts';
import { question, round } from './lesson.ts';
import type { Given } from './lesson.ts';

describe('breakdown of a lesson', () => {
  test('per question right, part, wrong, not sure and silent, with what was missed', () => {
    const keys: Given = [['7M', '2M'], ['7M'], ['7M'], ['1M'], 'not-sure', undefined, null, []];
    expect(breakdownOf([round(question('keys-0', keys))])).toEqual([
      {
        question: 'keys-0',
        round: 1,
        kind: 'keys',
        target: 0,
        truth: ['2M', '7M'],
        right: 1,
        part: 2,
        wrong: 2,
        notSure: 1,
        silent: 2,
        of: 8,
        missed: [
          { key: '7M', answer: ['7M'], count: 2, error: 'stops-at-one-key' },
          { key: 'none', answer: [], count: 1, error: 'finds-no-owner' },
          { key: '1M', answer: ['1M'], count: 1, error: null },
        ],
        again: null,
      },
    ]);
  });

  test('the first sheet is evidence; the last after talk is told apart', () => {
    const [line] = breakdownOf([
      round(
        question('quality-0', ['major', 'major', 'minor'], ['major', 'minor', 'minor'], ['minor', 'minor', 'minor']),
      ),
    ]);
    expect(line).toMatchObject({ right: 1, wrong: 2, again: { right: 3, part: 0, wrong: 0, silent: 0, of: 3 } });
    expect(line?.missed).toEqual([{ key: 'major', answer: 'major', count: 2, error: null }]);
  });

  test('rounds and questions keep their order; what was not asked, or has no right answer, has no line', () => {
    const second = {
      ...round(question('strokes-0', ['all-downs']), question('root-0', [{ string: 6, fret: 0 }])),
      number: 2,
      truth: { ...EM_D, strokes: null },
    };
    const lines = breakdownOf([round(question('direction-1', ['up']), question('quality-0')), second]);
    expect(lines.map(({ round, question }) => [round, question])).toEqual([
      [1, 'direction-1'],
      [2, 'root-0'],
    ]);
  });

  test('an opinion has no line', () => {
    const [line, ...more] = breakdownOf([round(question('home-0', [0, 1, 1]), question('direction-1', ['up']))]);
    expect(line?.question).toBe('direction-1');
    expect(more).toEqual([]);
  });

  test('at most three kinds of miss stand in a line', () => {
    const given: Given = ['major', 'power', 'augmented', 'suspended-fourth', 'power'];
    const [line] = breakdownOf([round(question('quality-0', given))]);
    expect(line?.missed.map(({ key, count }) => [key, count])).toEqual([
      ['power', 2],
      ['augmented', 1],
      ['major', 1],
    ]);
  });

  test('counting agrees with marking every answer by itself', () => {
    const target = (kind: Kind) => (kind === 'direction' || kind === 'distance' ? 1 : 0);
    // Of two chords in a row nobody asks the order, and opinions have no line.
    const judged = KINDS.filter((kind) => judgeOf(kind).truth(context(target(kind))) !== null);
    fc.assert(
      fc.property(fc.constantFrom(...judged), fc.gen(), fc.integer({ min: 0, max: 30 }), (kind, gen, students) => {
        const given = Array.from({ length: students }, () => {
          const chosen = gen(() => fc.constantFrom('answer', 'answer', 'answer', 'not-sure', null, undefined));
          return chosen === 'answer' ? gen(answers, kind, SETTINGS) : chosen;
        });
        const [line] = breakdownOf([round(question(`${kind}-${target(kind)}`, given))]);
        const asked = context(target(kind));
        const real = given.filter((answer) => answer !== null && answer !== undefined);
        const marks = real.map((answer) => markAnswer<Kind>(kind, answer, asked));
        const count = (wanted: (mark: (typeof marks)[number]) => boolean) => marks.filter(wanted).length;
        expect(line).toMatchObject({
          right: count(({ evidence }) => evidence === 'right'),
          part: count(({ evidence, credit }) => evidence === 'wrong' && credit >= 0.5),
          wrong: count(({ evidence, credit }) => evidence === 'wrong' && credit < 0.5),
          notSure: count(({ evidence }) => evidence === 'abstain'),
          silent: students - real.length,
          of: students,
        });
      }),
      // Lists of answers shrink in too many ways to wait for.
      { endOnFailure: true },
    );
  });

  test('a struck question has no line; an answer let stand is right', () => {
    const struck = { ...question('root-0', [{ string: 6, fret: 3 }]), struck: true };
    const stands = { ...question('quality-0', ['power', 'major']), letStand: new Set(['power']) };
    expect(breakdownOf([round(struck, stands)])).toMatchObject([{ question: 'quality-0', right: 1, wrong: 1 }]);
  });
});

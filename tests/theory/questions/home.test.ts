import { describe, expect, test } from 'vitest';
import { breakdownOf } from '../../../shared-theory/diagnosis/breakdown.ts';
import { commonErrors } from '../../../shared-theory/diagnosis/common-errors.ts';
import { studentReports } from '../../../shared-theory/diagnosis/reports.ts';
import { spreadOf } from '../../../shared-theory/diagnosis/spread.ts';
import { homeAsk } from '../../../shared-theory/questions/home/ask.ts';
import { askableQuestions, judges, markAnswer } from '../../../shared-theory/questions/judges.ts';
import { COLLECTED_KINDS } from '../../../shared-theory/questions/question.ts';
import { context, EM_D, played, SETTINGS } from './given.ts';

const isAsked = (text: string) => askableQuestions(played(text), SETTINGS).some(({ kind }) => kind === 'home');

describe('where a loop would stop', () => {
  test.each([
    ['C', false],
    ['C C', false],
    ['C G', true],
    ['C G Am F', true],
    // The pad shows four.
    ['C Dm Em F G', false],
  ])('is asked of %s: %s', (text, asked) => {
    expect(isAsked(text)).toBe(asked);
  });

  test('comes last', () => {
    expect(askableQuestions(EM_D, SETTINGS).at(-1)?.id).toBe('home-0');
  });

  test.each<[unknown, unknown]>([
    [0, 0],
    [3, 3],
    [-0, 0],
    [4, null],
    [-1, null],
    [0.5, null],
    ['0', null],
  ])('%j is read as %j', (value, answer) => {
    expect(homeAsk.read(value, SETTINGS)).toBe(answer);
  });

  test('is collected and never marked', () => {
    expect(COLLECTED_KINDS).toContain('home');
    const given = context(0);
    expect(judges.home.truth(given)).toBeNull();
    expect(() => judges.home.mark(0, given)).toThrow(/never marked/);
    const nothing = { credit: 0, exact: false, errors: [], evidence: 'abstain' };
    expect([markAnswer('home', 0, given), markAnswer('home', 1, given)]).toEqual([nothing, nothing]);
  });

  test('is spread by what was answered, and evidence of nothing', () => {
    const answers = new Map([
      ['Ana', { answer: 0 }],
      ['Ben', { answer: 1 }],
      ['Cem', { answer: 0 }],
    ]);
    const spread = spreadOf('home', answers, ['Ana', 'Ben', 'Cem', 'Dora']);
    expect(spread.counts.map(({ key, count }) => [key, count])).toEqual([
      ['0', 2],
      ['1', 1],
    ]);
    const question = { id: 'home-0', kind: 'home' as const, target: 0, sheets: [{ answers, seats: answers.keys() }] };
    const round = { number: 1, truth: EM_D, settings: SETTINGS, questions: [question] };
    expect(breakdownOf([round])).toEqual([]);
    expect(commonErrors([round])).toEqual([]);
    expect(studentReports([round]).size).toBe(0);
  });
});

import { expect, test } from 'vitest';
import { asks } from '../../../shared-theory/questions/asks.ts';
import { judges, markAnswer } from '../../../shared-theory/questions/judges.ts';
import { COLLECTED_KINDS } from '../../../shared-theory/questions/question.ts';
import { tapsAt } from '../../support/rhythm-answers.ts';
import { RELAXED } from './given-rhythm.ts';
import { context, SETTINGS } from './given.ts';

test('clapping together is collected and never marked', () => {
  const given = context(0, { tempo: 100, rhythm: RELAXED });
  const taps = asks.together.read(tapsAt(100), SETTINGS) ?? [];
  expect(taps).toHaveLength(12);
  expect(COLLECTED_KINDS.has('together')).toBe(true);
  expect(judges.together.truth(given)).toBeNull();
  expect(() => judges.together.mark(taps, given)).toThrow(/never marked/);
  expect(markAnswer('together', taps, given)).toEqual({ credit: 0, exact: false, errors: [], evidence: 'abstain' });
  expect(judges.together.heard(taps)).toBe('100');
});

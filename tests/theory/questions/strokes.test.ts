import { expect, test } from 'vitest';
import { strokesJudge } from '../../../shared-theory/questions/strokes/judge.ts';
import { context } from './given.ts';

test('strokes are exact or nothing, and a wrong answer names its hearing', () => {
  const downs = context(0, { strokes: 'all-downs' });
  const both = context(0, { strokes: 'down-up' });
  expect(strokesJudge.mark('all-downs', downs)).toEqual({ credit: 1, exact: true, errors: [] });
  expect(strokesJudge.mark('down-up', both)).toEqual({ credit: 1, exact: true, errors: [] });
  expect(strokesJudge.mark('down-up', downs)).toEqual({
    credit: 0,
    exact: false,
    errors: ['hears-down-up-where-all-are-down'],
  });
  expect(strokesJudge.mark('all-downs', both)).toEqual({
    credit: 0,
    exact: false,
    errors: ['hears-all-downs-where-they-alternate'],
  });
});

test('without a groove there is nothing to ask', () => {
  const none = context(0, { strokes: null });
  expect(strokesJudge.truth(none)).toBeNull();
  expect(() => strokesJudge.mark('down-up', none)).toThrow(/strokes-0 cannot be asked/);
});

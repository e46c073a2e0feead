import { expect, test } from 'vitest';
import { isWhole, momentOf, sameAnswer, type Standing } from '../../../client/student/moment.ts';

const open: Standing = {
  phase: 'open',
  written: null,
  pending: undefined,
  refused: false,
  chosen: null,
  changing: false,
  live: true,
  slow: false,
};
const closed: Standing = { ...open, phase: 'closed' };

test.each<[string, Standing, unknown]>([
  ['nothing chosen', open, { kind: 'choosing' }],
  ['chosen, not written', { ...open, chosen: 'up' }, { kind: 'choosing' }],
  ['underway', { ...open, chosen: 'up', pending: 'up' }, { kind: 'sending' }],
  ['underway without a line', { ...open, chosen: 'up', pending: 'up', live: false }, { kind: 'kept', closed: false }],
  [
    'underway, unacknowledged once',
    { ...open, chosen: 'up', pending: 'up', slow: true },
    { kind: 'kept', closed: false },
  ],
  ['acknowledged', { ...open, chosen: 'up', written: 'up' }, { kind: 'in', answer: 'up' }],
  ['another chosen after that', { ...open, chosen: 'down', written: 'up' }, { kind: 'choosing' }],
  ['wants the pad back', { ...open, chosen: 'up', written: 'up', changing: true }, { kind: 'choosing' }],
  ['not sure leaves the pad empty', { ...open, written: 'not-sure' }, { kind: 'in', answer: 'not-sure' }],
  ['taken back and acknowledged', { ...open, pending: undefined }, { kind: 'choosing' }],
  ['being taken back', { ...open, pending: null, written: 'up' }, { kind: 'sending' }],
  [
    'closed with an answer',
    { ...closed, written: 'up', chosen: 'up' },
    { kind: 'closed', answer: 'up', chosen: false },
  ],
  ['closed without', closed, { kind: 'closed', answer: null, chosen: false }],
  ['closed while choosing', { ...closed, chosen: 'up' }, { kind: 'closed', answer: null, chosen: true }],
  ['closed, kept here', { ...closed, chosen: 'up', pending: 'up', live: false }, { kind: 'kept', closed: true }],
  ['closed, came too late', { ...closed, chosen: 'up', refused: true }, { kind: 'late' }],
  ['closed, a change came too late', { ...closed, chosen: 'up', written: 'down', refused: true }, { kind: 'late' }],
  ['shown', { ...open, phase: 'shown', written: 'up', chosen: 'up' }, { kind: 'shown', answer: 'up' }],
])('%s', (_, standing, moment) => {
  expect(momentOf(standing)).toEqual(moment);
});

test('places with their parts in another order are the same answer', () => {
  expect(sameAnswer({ string: 6, fret: 3 }, { fret: 3, string: 6 })).toBe(true);
  expect(sameAnswer({ string: 6, fret: 3 }, { string: 5, fret: 3 })).toBe(false);
  expect(sameAnswer(['2M', '7M'], ['2M', '7M'])).toBe(true);
  expect(sameAnswer([], null)).toBe(false);
  expect(sameAnswer(null, undefined)).toBe(true);
});

test.each([
  [['vi', 'V'], true],
  [['', 'V'], false],
  [[], true],
  [0, true],
  ['up', true],
  [null, true],
])('%j can be written as it stands: %s', (answer, whole) => {
  expect(isWhole(answer)).toBe(whole);
});

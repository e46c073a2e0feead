import { expect, test } from 'vitest';
import { RHYTHM_KINDS } from '../../../shared-theory/questions/question.ts';
import { parseQuestionId, questionId, questionsOf } from '../../../shared-theory/questions/round-questions.ts';

const GROOVE = [...RHYTHM_KINDS].map((kind) => `${kind}-0`);
const LAST = ['numeral-0', 'one-or-several-0', 'keys-0'];
const ofFirst = ['bass-0', 'quality-0', 'seventh-0', 'root-0'];
const ofChord = (slot: number) => [`distance-${slot}`, `bass-${slot}`, `quality-${slot}`, `seventh-${slot}`];

test.each<[string, string[], boolean, number, string[]]>([
  ['one held chord', ['E'], true, 1, [...GROOVE, 'count-0', ...ofFirst, ...LAST, 'settler-0']],
  [
    'two chords, no groove',
    ['Em', 'D'],
    false,
    2,
    ['count-0', 'direction-1', ...ofFirst, ...ofChord(1), ...LAST, 'settler-0', 'settler-1', 'home-0'],
  ],
  ['one chord twice', ['E', 'E'], true, 0, [...GROOVE, 'count-0', 'direction-1', ...ofFirst, ...LAST, 'home-0']],
  [
    'a chord that comes again is no new one; the third is asked for its root too',
    ['A', 'B', 'A', 'C'],
    true,
    0,
    [
      ...GROOVE,
      'count-0',
      'order-0',
      'direction-1',
      'direction-3',
      ...ofFirst,
      ...ofChord(1),
      ...ofChord(3),
      'root-3',
      ...LAST,
      'home-0',
    ],
  ],
  [
    'four chords',
    ['C', 'G', 'Am', 'F'],
    false,
    0,
    [
      'count-0',
      'order-0',
      'direction-1',
      'direction-2',
      'direction-3',
      ...ofFirst,
      ...ofChord(1),
      ...ofChord(2),
      'root-2',
      ...ofChord(3),
      'root-3',
      ...LAST,
      'home-0',
    ],
  ],
  ['no chord', [], true, 0, []],
])('%s', (_name, chords, grooveKnown, settlers, ids) => {
  const questions = questionsOf({ chords, grooveKnown, settlers });
  expect(questions.map(({ id }) => id)).toEqual(ids);
  for (const question of questions) expect(parseQuestionId(question.id)).toEqual(question);
});

test('over another bass its root is asked from the second chord on, and the bass of a chord over each of its basses', () => {
  const questions = questionsOf({
    chords: ['C', 'C', 'G', 'C'],
    basses: [null, 'E', 'B', 'E'],
    grooveKnown: false,
    settlers: 0,
  });
  expect(questions.map(({ id }) => id)).toEqual([
    'count-0',
    'order-0',
    'direction-1',
    'direction-2',
    ...ofFirst,
    'bass-1',
    ...ofChord(2),
    'root-2',
    ...LAST,
    'home-0',
  ]);
});

test.each([
  'quality',
  'quality-',
  'quality--1',
  'quality-01',
  'quality-1 ',
  'quality-100',
  'Quality-1',
  'pace-0',
  'toString-0',
  '',
])('%j names no question', (text) => {
  expect(parseQuestionId(text)).toBeNull();
});

test('an id names kind and slot', () => {
  expect(questionId('direction', 3)).toBe('direction-3');
  expect(parseQuestionId('direction-3')).toEqual({ id: 'direction-3', kind: 'direction', target: 3 });
});

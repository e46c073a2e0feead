import { expect, test } from 'vitest';
import { parseQuestionId, questionId, questionsOf } from '../../../shared-theory/questions/round-questions.ts';

test.each<[string, string[], boolean, string[]]>([
  ['one held chord', ['E'], true, ['strokes-0', 'quality-0', 'root-0', 'keys-0']],
  ['two chords, no groove', ['Em', 'D'], false, ['direction-1', 'quality-0', 'root-0', 'quality-1', 'keys-0']],
  [
    'a chord that comes again is asked for its bass alone',
    ['A', 'B', 'A', 'C'],
    true,
    [
      'strokes-0',
      'direction-1',
      'direction-2',
      'direction-3',
      'quality-0',
      'root-0',
      'quality-1',
      'quality-3',
      'keys-0',
    ],
  ],
  ['no chord', [], true, []],
])('%s', (_name, chords, strokesKnown, ids) => {
  const questions = questionsOf({ chords, strokesKnown });
  expect(questions.map(({ id }) => id)).toEqual(ids);
  for (const question of questions) expect(parseQuestionId(question.id)).toEqual(question);
});

test.each([
  'quality',
  'quality-',
  'quality--1',
  'quality-01',
  'quality-1 ',
  'quality-100',
  'Quality-1',
  'tempo-0',
  'toString-0',
  '',
])('%j names no question', (text) => {
  expect(parseQuestionId(text)).toBeNull();
});

test('an id names kind and slot', () => {
  expect(questionId('direction', 3)).toBe('direction-3');
  expect(parseQuestionId('direction-3')).toEqual({ id: 'direction-3', kind: 'direction', target: 3 });
});

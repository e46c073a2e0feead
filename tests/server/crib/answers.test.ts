import { expect, test } from 'vitest';
import { answerText } from '../../../server/crib/answers.ts';
import { sheetNames } from '../../../server/crib/names.ts';
import type { NamedAnswer } from '../../../shared-theory/crib/answer-names.ts';
import { namedAnswer } from '../../../shared-theory/crib/answer-names.ts';
import type { Grid } from '../../../shared-theory/groove-grid.ts';
import type { Answer, Kind } from '../../../shared-theory/questions/question.ts';

const printed = (kind: Kind, answer: Answer, grid: Grid | null = 'E8') =>
  answerText(kind, namedAnswer(kind, answer, { chords: [], keys: [], grid }), sheetNames());

test.each<[Kind, Answer, string]>([
  ['accents', [1, 1, 2, 1, 1, 1, 2, 1], 'heavy on 2 and 4'],
  ['accents', [2, 0, 1, 0, 2, 0, 1, 0], 'heavy on 1 and 3; silent on the ands'],
  ['accents', [1, 1, 1, 1, 1, 1, 1, 1], 'light all the way'],
  ['stroke-grid', ['down', 'silent', 'down', 'up', 'silent', 'up', 'down', 'up'], 'D· DU ·U DU'],
  [
    'roles',
    ['kick', 'closed', 'slap', 'closed', 'kick', 'closed', 'slap', 'closed'],
    'kick on 1 and 3; slap on 2 and 4; closed on the ands',
  ],
  ['opened', [6, 7], '4 and 4-and'],
  ['bar-count', 4, 'four'],
  ['tempo', [0, 600, 1200, 1800, 2400, 3000, 3600, 4200], 'about 100 a minute'],
  ['drop-out', { taps: [0, 500, 1000, 1500, 2000, 2500, 3000, 3500], silentFrom: 4 }, 'about 120 a minute'],
])('%s: %j is printed as teachers say it', (kind, answer, text) => {
  expect(printed(kind, answer)).toBe(text);
});

test('an answer on a grid that nobody knows cannot be named', () => {
  expect(() => printed('accents', [1, 2], null)).toThrow('accents-0 cannot be asked');
});

test('what is drawn keeps its grid: six slots in two threes or in three twos', () => {
  const named = namedAnswer('opened', [3], { chords: [], keys: [], grid: 'C6' });
  expect(named).toEqual({ kind: 'opened', grid: 'C6', drawn: [3] } satisfies NamedAnswer);
  expect([printed('opened', [3], 'C6'), printed('opened', [3], 'W6')]).toEqual(['4', '2-and']);
});

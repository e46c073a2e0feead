import { describe, expect, test } from 'vitest';
import { answerText } from '../../../client/shared/answer-text.ts';
import { rightSentence } from '../../../client/shared/right-sentence.ts';

/** Taps at a tempo of beats a minute, in milliseconds from the first. */
const taps = (tempo: number) => Array.from({ length: 9 }, (_, tap) => (tap * 60_000) / tempo);
const D = 'down';
const U = 'up';
const silent = 'silent';

describe('an answer about the groove in a few words', () => {
  test.each([
    ['tempo', taps(96), undefined, 'about 96 a minute'],
    ['steadiness', taps(104), undefined, 'about 104 a minute'],
    ['together', taps(60), undefined, 'about 60 a minute'],
    ['drop-out', { taps: taps(88), silentFrom: 4 }, undefined, 'about 88 a minute'],
    ['bar-count', 3, undefined, 'three'],
    ['threes', 'two-threes', undefined, 'two threes'],
    ['half-time', 'half-time', undefined, 'half time'],
    ['swing', 'swung', undefined, 'swung'],
    ['drive', 'driving', undefined, 'driving'],
    ['accents', [2, 1, 2, 1, 2, 1, 2, 1], 'E8', 'heavy on the numbers'],
    ['accents', [1, 1, 2, 1, 1, 1, 2, 1], 'E8', 'heavy on 2 and 4'],
    // Common practice: accents on 1, the and of 2, and 4.
    ['accents', [2, 1, 1, 2, 1, 1, 2, 1], 'E8', 'heavy on 1, 2-and and 4'],
    ['accents', [0, 2, 0, 2, 0, 2, 0, 2], 'E8', 'heavy on the ands; silent on the numbers'],
    ['accents', [2, 0, 2, 1, 0, 2, 2, 1], 'E8', 'heavy on 1, 2, 3-and and 4; silent on 1-and and 3'],
    ['accents', [1, 1, 1, 1, 1, 1, 1, 1], 'E8', 'light all the way'],
    ['accents', [2, 2, 2, 2, 2, 2], 'W6', 'heavy all the way'],
    ['accents', [0, 0, 0, 0, 0, 0, 0], 'V7', 'silent all the way'],
    ['accents', [2, 1, 1, 2, 1, 1], 'C6', 'heavy on 1 and 4'],
    ['accents', [2, 1, 1, 2, 1, 1], 'W6', 'heavy on 1 and 2-and'],
    [
      'accents',
      [2, 0, 0, 2, 0, 2, 2, 0, 2, 0, 2, 0, 2, 2, 0, 2].map((weight) => weight || 1),
      'E16',
      'heavy on 1, 2-and, 3-and and 4 of bar 1, then 1, 2, 3, 3-and and 4-and of bar 2',
    ],
    ['stroke-grid', [D, silent, D, U, silent, U, D, U], 'E8', 'D· DU ·U DU'],
    ['stroke-grid', [D, U, D, U, D, D, U], 'V7', 'DU DU DDU'],
    ['stroke-grid', [D, D, U, D, D, U], 'C6', 'DDU DDU'],
    [
      'roles',
      ['kick', 'closed', 'slap', 'closed', 'kick', 'closed', 'slap', 'closed'],
      'E8',
      'kick on 1 and 3; slap on 2 and 4; closed on the ands',
    ],
    ['roles', Array(8).fill(silent), 'E8', 'silent all the way'],
    ['opened', [6, 7], 'E8', '4 and 4-and'],
    ['opened', [1, 3, 5, 7], 'E8', 'the ands'],
    ['opened', [3, 6], 'S16', '1-a and 2-and'],
    ['opened', [0, 4, 8, 12], 'E16', '1 and 3 of each bar'],
    ['opened', [0, 4, 10], 'E16', '1 and 3 of bar 1, then 2 of bar 2'],
    ['opened', [10], 'E16', '2 of bar 2'],
    ['opened', [], 'E16', ''],
  ])('%s %j', (kind, answer, grid, text) => {
    expect(answerText(kind, answer, grid)).toBe(text);
  });

  test('where nobody says which grid was drawn, the usual one of so many slots stands in', () => {
    expect(answerText('accents', [2, 1, 1, 2, 1, 1])).toBe('heavy on 1 and 4');
    expect(answerText('accents', [1, 1, 1, 1, 2, 1, 1, 1, 1, 1, 1, 1, 2, 1, 1, 1])).toBe('heavy on 2 and 4');
    expect(answerText('opened', [7])).toBe('4-and');
  });
});

describe('the right answer about the groove as a sentence', () => {
  test.each([
    ['tempo', taps(84), '84', ['168'], undefined, 'The numbers go at 84 or 168 a minute.'],
    ['tempo', taps(96), '96', [], undefined, 'The numbers go at 96 a minute.'],
    ['steadiness', taps(96), '96', [], undefined, 'Even taps count, at any tempo.'],
    [
      'drop-out',
      { taps: taps(88), silentFrom: 4 },
      '88',
      [],
      undefined,
      'Through the silence it went on at 88 a minute.',
    ],
    ['bar-count', 6, '6', ['2'], undefined, 'Count six or two to the bar.'],
    ['half-time', 'half-time', 'half-time', [], undefined, 'Half time: the backbeat falls on three.'],
    ['change-place', 'pushed', 'pushed', [], undefined, 'The new chord is pushed: it comes in before one.'],
    ['accents', [1, 1, 2, 1, 1, 1, 2, 1], '11211121', [], 'E8', 'Heavy on 2 and 4.'],
    ['stroke-grid', [D, silent, D, U, silent, U, D, U], 'D-DU-UDU', [], 'E8', 'The hand goes D· DU ·U DU.'],
    [
      'roles',
      ['kick', 'closed', 'kick', 'closed', 'kick', 'closed', 'kick', 'closed'],
      'kckckckc',
      [],
      'E8',
      'Kick on the numbers; closed on the ands.',
    ],
    ['opened', [6, 7], '6 7', [], 'E8', 'It opens on 4 and 4-and.'],
  ])('%s %j', (kind, answer, key, also, grid, sentence) => {
    expect(rightSentence(kind, { answer, key, also }, undefined, grid)).toBe(sentence);
  });
});

import { describe, expect, test } from 'vitest';
import { readyLesson } from '../../shared-theory/lessons.ts';
import { kindsOfLevel, levelOf, LEVELS_THAT_STAND } from '../../shared-theory/levels.ts';
import { KINDS } from '../../shared-theory/questions/question.ts';

describe.each(LEVELS_THAT_STAND)('the ready lesson of level %d', (level) => {
  const lesson = readyLesson(level);
  const roles = lesson.map(({ role }) => role);

  test('begins with rhythm, practises twice, steps up where it can, and closes at home', () => {
    const up = level < 12 ? ['step-up'] : [];
    expect(roles).toEqual(['warm-up', 'practice', 'practice', ...up, 'closing']);
    expect(lesson.map((round) => round.level)).toEqual([
      Math.max(1, level - 1),
      level,
      level,
      ...(level < 12 ? [level + 1] : []),
      level,
    ]);
    expect(lesson[0]?.kinds).toEqual(['strokes']);
  });

  test('each round asks something, of what its level can ask, in the order of a round', () => {
    for (const { level: own, kinds } of lesson) {
      expect(kinds.length).toBeGreaterThan(0);
      expect(kindsOfLevel(own)).toEqual(expect.arrayContaining([...kinds]));
      expect(kinds).toEqual(KINDS.filter((kind) => kinds.includes(kind)));
    }
  });

  test('practice and the step up ask all that their levels ask', () => {
    for (const { role, level: own, kinds } of lesson) {
      if (role === 'practice' || role === 'step-up') expect(kinds).toEqual(levelOf(own).questions);
    }
  });
});

// The exit questions of a class are quality, distance and rhythm, as far as its level asks them.
test.each([
  [1, ['strokes', 'count']],
  [2, ['strokes', 'direction']],
  [3, ['strokes', 'quality']],
  [4, ['strokes', 'quality']],
  [5, ['strokes', 'distance']],
  [6, ['strokes', 'quality', 'distance']],
  [7, ['strokes', 'quality', 'distance']],
  [8, ['strokes', 'quality']],
  [9, ['strokes', 'distance']],
  [10, ['strokes', 'quality']],
  [11, ['strokes', 'quality', 'distance']],
  [12, ['strokes', 'quality', 'distance']],
])('a lesson of level %d closes with %j', (level, kinds) => {
  expect(readyLesson(level).at(-1)?.kinds).toEqual(kinds);
});

// What each level asks.
test.each([
  [1, 'strokes count'],
  [2, 'strokes count direction'],
  [3, 'strokes count direction quality'],
  [4, 'strokes count direction quality root'],
  [5, 'strokes count direction root distance'],
  [6, 'strokes count direction quality root distance numeral keys'],
  [7, 'strokes count direction quality root distance numeral one-or-several keys settler'],
  [8, 'strokes count quality root keys settler'],
  [9, 'strokes count order distance numeral keys home'],
  [10, 'strokes count quality root seventh numeral keys'],
  [11, 'strokes count bass quality root distance'],
  [12, 'strokes count quality distance keys home'],
])('a round of level %d can ask %s', (level, kinds) => {
  expect(kindsOfLevel(level).join(' ')).toBe(kinds);
});

test('a level that there is not has no lesson', () => {
  expect(() => readyLesson(13)).toThrow(/no level 13.*1 to 12/);
  expect(() => kindsOfLevel(0)).toThrow(/no level 0/);
});

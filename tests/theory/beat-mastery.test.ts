import { describe, expect, test } from 'vitest';
import { BEAT_LEVELS } from '../../shared-theory/beat-levels.ts';
import { BEAT_RULES, beatStanding } from '../../shared-theory/beat-mastery.ts';
import type { Kind } from '../../shared-theory/questions/question.ts';

const answer = (kind: Kind, right: boolean, credit = right ? 1 : 0, truth = '') => ({ kind, right, credit, truth });
const times = (count: number, right: boolean, kind: Kind = 'tempo') =>
  Array.from({ length: count }, () => answer(kind, right));

test('every beat level has a rule, of kinds that it asks', () => {
  for (const { level, kinds } of BEAT_LEVELS) {
    const rule = BEAT_RULES[level];
    expect(rule?.kinds.every((kind) => kinds.includes(kind))).toBe(true);
    expect([rule?.right, rule?.outOf]).toEqual([5, 6]);
  }
  expect(() => beatStanding(9, [], false)).toThrow(/no beat level 9/);
});

describe('heard and played', () => {
  test('five of six, and a play-through', () => {
    const heard = [...times(5, true), ...times(1, false)];
    expect(beatStanding(1, heard, true)).toEqual({ right: 5, of: 6, needs: [5, 6], played: true, met: true });
    expect(beatStanding(1, heard, false).met).toBe(false);
    expect(beatStanding(1, times(5, true), true)).toMatchObject({ right: 5, of: 5, met: false });
    expect(beatStanding(1, [...times(4, true), ...times(2, false)], true).met).toBe(false);
  });

  test('only the last six of its own kinds count', () => {
    expect(beatStanding(1, [...times(9, false), ...times(6, true)], true).met).toBe(true);
    expect(beatStanding(1, [...times(6, true), ...times(9, false, 'accents')], true).met).toBe(true);
    expect(beatStanding(1, times(6, true, 'swing'), true)).toMatchObject({ right: 0, of: 0, met: false });
  });

  test('a grid with one slot astray is heard, with two it is not', () => {
    const grids = (credit: number) => Array.from({ length: 6 }, () => answer('accents', false, credit));
    expect(beatStanding(3, grids(7 / 8), true).met).toBe(true);
    expect(beatStanding(3, grids(6 / 8), true).met).toBe(false);
  });

  test('who always counts four has heard nothing', () => {
    const four = Array.from({ length: 6 }, () => answer('bar-count', true, 1, '4'));
    expect(beatStanding(2, four, true).met).toBe(false);
    expect(beatStanding(2, [...four, answer('bar-count', true, 1, '3')], true).met).toBe(true);
  });
});

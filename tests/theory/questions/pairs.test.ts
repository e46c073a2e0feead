import { describe, expect, test } from 'vitest';
import { judgeOf } from '../../../shared-theory/questions/judges.ts';
import type { Answer, Kind } from '../../../shared-theory/questions/question.ts';
import type { RhythmTruth } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { context } from './given.ts';
import { heard, markOf } from './given-rhythm.ts';

const RIGHT = { credit: 1, exact: true, errors: [] };
const wrong = (...errors: readonly string[]) => ({ credit: 0, exact: false, errors });

/** What is asked, how it was, what is answered instead and what that shows. */
const PAIRS: readonly (readonly [Kind, Partial<RhythmTruth>, Answer, Answer, string])[] = [
  ['threes', { threes: 'two-threes' }, 'two-threes', 'three-twos', 'swaps-threes-and-twos'],
  ['threes', { threes: 'three-twos' }, 'three-twos', 'two-threes', 'swaps-threes-and-twos'],
  ['half-time', { halfTime: 'full-time' }, 'full-time', 'half-time', 'swaps-full-and-half-time'],
  ['half-time', { halfTime: 'half-time' }, 'half-time', 'full-time', 'swaps-full-and-half-time'],
  ['swing', { swing: 'straight' }, 'straight', 'swung', 'swaps-straight-and-swung'],
  ['swing', { swing: 'swung' }, 'swung', 'straight', 'swaps-straight-and-swung'],
  ['drive', { drive: 'driving' }, 'driving', 'relaxed', 'swaps-driving-and-relaxed'],
  ['drive', { drive: 'relaxed' }, 'relaxed', 'driving', 'swaps-driving-and-relaxed'],
  ['pendulum', { pendulum: 'keeps' }, 'keeps', 'breaks', 'stops-the-pendulum'],
  ['pendulum', { pendulum: 'breaks' }, 'breaks', 'keeps', 'keeps-the-pendulum-where-it-breaks'],
  ['change-place', { changePlace: 'on-one' }, 'on-one', 'pushed', 'hears-a-push-where-there-is-none'],
  ['change-place', { changePlace: 'pushed' }, 'pushed', 'on-one', 'puts-the-change-on-one'],
];

describe('a question with two answers', () => {
  test.each(PAIRS)('%s of %j is exact or nothing', (kind, rhythm, right, other, error) => {
    const judge = judgeOf<Kind>(kind);
    expect(judge.truth(heard(rhythm))).toBe(right);
    expect(judge.also(heard(rhythm))).toEqual([]);
    expect(judge.chance(heard(rhythm))).toBe(1 / 2);
    expect(markOf(kind, right, rhythm)).toEqual(RIGHT);
    expect(markOf(kind, other, rhythm)).toEqual(wrong(error));
  });

  const kinds = [...new Set(PAIRS.map(([kind]) => kind))];
  const NEITHER = { threes: null, halfTime: null, swing: null, drive: null, pendulum: null, changePlace: null };
  test.each(kinds)('%s is not asked of a groove that is neither, nor where none is known', (kind) => {
    for (const given of [heard(NEITHER), context(0, { rhythm: null }), context(0)]) {
      expect(judgeOf<Kind>(kind).truth(given)).toBeNull();
      expect(() => judgeOf<Kind>(kind).mark('keeps', given)).toThrow(`${kind}-0 cannot be asked`);
    }
  });
});

describe('how many numbers a bar has', () => {
  const OTHER = { ...RIGHT, note: 'other-lawful-count' };
  /** Lawful counts are common practice: a six-eight in two or six, a bass on one and three in two, sevens by their groups. */
  test.each<[RhythmTruth['barCounts'], number, object]>([
    [[4], 4, RIGHT],
    [[4], 2, wrong('counts-half-the-bar')],
    [[4], 3, wrong('swaps-threes-and-twos')],
    [[4], 6, wrong('swaps-threes-and-twos')],
    [[4], 7, wrong()],
    [[4, 2], 2, OTHER],
    [[3], 3, RIGHT],
    [[3], 6, wrong('counts-the-bar-twice')],
    [[3], 2, wrong('swaps-threes-and-twos')],
    [[3], 4, wrong('swaps-threes-and-twos')],
    [[2, 6], 2, RIGHT],
    [[2, 6], 6, OTHER],
    [[2, 6], 3, wrong('swaps-threes-and-twos')],
    [[2, 6], 4, wrong('counts-the-bar-twice')],
    [[7, 3], 7, RIGHT],
    [[7, 3], 3, OTHER],
    [[7, 3], 6, wrong()],
    [[7, 3], 4, wrong()],
  ])('%j counted in %d', (barCounts, answer, mark) => {
    expect(markOf('bar-count', answer, { barCounts })).toEqual(mark);
  });

  test('every lawful count is as right, and blind choice finds one of five', () => {
    const judge = judgeOf('bar-count');
    const six = heard({ barCounts: [2, 6] });
    expect([judge.truth(six), judge.also(six), judge.chance(six)]).toEqual([2, [6], 2 / 5]);
    expect(judge.chance(heard())).toBe(1 / 5);
    expect(judge.truth(context(0))).toBeNull();
    expect(() => judge.mark(4, context(0))).toThrow('bar-count-0 cannot be asked');
  });
});

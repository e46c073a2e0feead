import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { strokeGridJudge } from '../../../shared-theory/questions/stroke-grid/judge.ts';
import type { RhythmTruth } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { context } from './given.ts';
import { hand, heard, markOf, roles, strokes } from './given-rhythm.ts';
import { rhythms } from './rhythms.ts';

const RIGHT = { credit: 1, exact: true, errors: [] };
const mark = (answer: string, truth: string, more: Partial<RhythmTruth> = {}) =>
  markOf('stroke-grid', hand(answer), { strokes: strokes(truth), ...more });

const ALTERNATE = 'D U D U D U D U';
const CAMPFIRE = 'D - D U - U D U';
const DOWNS = 'D D D D D D D D';

describe('strokes on the grid', () => {
  test.each([
    [ALTERNATE, 'DUDUDUDU'],
    [CAMPFIRE, 'D-DU-UDU'],
    ['D D/- D D D D D D', 'D-DDDDDD'],
    ['D D/- D D D D D D', 'DDDDDDDD'],
  ])('%s is marked %s', (truth, answer) => {
    expect(mark(answer, truth)).toEqual(RIGHT);
  });

  test('the first that sounds stands for the others, which are listed', () => {
    const given = heard({ strokes: strokes('D D/- D D D D D D') });
    expect(strokeGridJudge.truth(given)).toEqual(hand('DDDDDDDD'));
    expect(strokeGridJudge.also(given)).toEqual([hand('D-DDDDDD')]);
    expect(strokeGridJudge.chance(given)).toBeCloseTo(2 / 3 ** 8, 12);
  });

  test('is not asked where fingers pluck, where nothing is struck, nor without a groove', () => {
    for (const given of [heard({ strokes: null }), heard({ strokes: strokes('- - -') }), context(0)]) {
      expect(strokeGridJudge.truth(given)).toBeNull();
      expect(() => strokeGridJudge.mark(hand('D'), given)).toThrow('stroke-grid-0 cannot be asked');
    }
  });

  test('half of the strokes right earns nothing, three of four earn half', () => {
    expect(mark('DDDDDDDD', ALTERNATE).credit).toBe(0);
    expect(mark('UDUDUDUD', ALTERNATE).credit).toBe(0);
    expect(mark('DUDDDUDD', ALTERNATE).credit).toBe(1 / 2);
    expect(mark('DUDUDUDD', ALTERNATE).credit).toBe(3 / 4);
  });

  test('a stroke where the hand passes costs as much as a wrong one', () => {
    expect(mark('DUDUDUDU', 'D - D - D - D -').credit).toBe(0);
    expect(mark('DUDU-UDU', CAMPFIRE).credit).toBeCloseTo(1 / 2, 12);
  });

  test('down and up by turns, all downs and downs on the numbers by rote earn nothing where they are not right', () => {
    // Four of six, five of eight and four of six.
    expect(mark('DUDUDUDU', CAMPFIRE).credit).toBe(0);
    expect(mark('DDDDDDDD', 'D U D D U D D U').credit).toBe(0);
    expect(mark('D-D-D-D-', 'D - D U D - D U').credit).toBe(0);
    expect(mark('DUDDUDDD', 'D U D D U D D U').credit).toBeCloseTo(1 - 1 / 8 / (3 / 8), 12);
  });

  test.each([
    ['DUDUDUDU', DOWNS, ['hears-down-up-where-all-are-down'], 0],
    ['D-U-D-U-', 'D - D - D - D -', ['hears-down-up-where-all-are-down'], 0],
    ['DDDDDDDD', ALTERNATE, ['hears-all-downs-where-they-alternate'], 0],
    ['D-DD-DDD', CAMPFIRE, ['hears-all-downs-where-they-alternate'], 0],
    ['DDDDDDDD', 'D D U D D U D D', [], 0],
    ['DUDDDDDD', DOWNS, [], 3 / 4],
  ])('%s for %s shows %j', (answer, truth, errors, credit) => {
    const given = mark(answer, truth);
    expect(given.errors).toEqual(errors);
    expect(given.credit).toBeCloseTo(credit, 12);
  });

  test('right up to a pass of the hand and turned round behind it keeps a little more than half', () => {
    expect(mark('D-DU-DUD', CAMPFIRE)).toEqual({ credit: 0.6, exact: false, errors: ['loses-the-pendulum'] });
    expect(mark('D-UD-DUD', CAMPFIRE)).toEqual({ credit: 0.6, exact: false, errors: ['loses-the-pendulum'] });
    // Found again, or lost before anything was missed: no pendulum was lost on the way.
    expect(mark('D-UD-UDU', CAMPFIRE).errors).toEqual([]);
    expect(mark('UDUDUDUD', ALTERNATE).errors).toEqual([]);
    expect(mark('-D-D-D-D', '- U - U - U - U').errors).toEqual([]);
  });

  test('what it is worth is never less than its share', () => {
    const long = 'D - - U D - - U D - - U D - - U';
    expect(mark('D--UD--UD--UD--D', long, { grid: 'S16' })).toMatchObject({ errors: ['loses-the-pendulum'] });
    expect(mark('D--UD--UD--UD--D', long, { grid: 'S16' }).credit).toBeCloseTo(3 / 4, 12);
  });

  test('a muted stroke that is marked silent is heard as a rest', () => {
    const kit = { roles: roles('k c s c k c s c') };
    expect(mark('DUDU-UDU', ALTERNATE, kit).errors).toEqual(['mute-heard-as-rest']);
    expect(mark('DUDU-UDU', ALTERNATE).errors).toEqual([]);
  });

  test('a grid of another length earns nothing', () => {
    expect(mark('DUDU', ALTERNATE)).toEqual({ credit: 0, exact: false, errors: [] });
    expect(mark('DUDUDUDUDUDUDUDU', ALTERNATE)).toEqual({ credit: 0, exact: false, errors: [] });
  });

  const asked = rhythms.filter((rhythm) => strokeGridJudge.truth(heard(rhythm)) !== null);

  test('turned round altogether it earns nothing where each slot is one thing, and silence earns nothing', () => {
    fc.assert(
      fc.property(asked, (rhythm) => {
        const truth = strokeGridJudge.truth(heard(rhythm)) ?? [];
        const one = { ...rhythm, strokes: truth.map((each) => [each] as const) };
        const turn = { down: 'up', up: 'down', silent: 'silent' } as const;
        const given = strokeGridJudge.mark(
          truth.map((each) => turn[each]),
          heard(one),
        );
        expect(given.credit).toBe(0);
        const silence = strokeGridJudge.mark(
          truth.map(() => 'silent' as const),
          heard(one),
        );
        expect(silence).toMatchObject({ credit: 0, exact: false });
      }),
    );
  });
});

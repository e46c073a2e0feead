import { describe, expect, test } from 'vitest';
import { rolesJudge } from '../../../shared-theory/questions/roles/judge.ts';
import type { RhythmTruth } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { context } from './given.ts';
import { heard, kit, markOf, roles, strokes } from './given-rhythm.ts';

const mark = (answer: string, truth: string, more: Partial<RhythmTruth> = {}) =>
  markOf('roles', kit(answer), { roles: roles(truth), ...more });

/** A foot, a slap and a hat as solo players imitate a kit: common practice. */
const FULL = 'k c s c k c s c';
const OPEN = 'k o k o k o k o';

describe('which piece of a kit each stroke stands for', () => {
  test.each([
    [FULL, 'kcsckcsc'],
    [OPEN, 'kokokoko'],
    ['k c/- s c k c s c', 'k-sckcsc'],
  ])('%s is marked %s', (truth, answer) => {
    expect(mark(answer, truth)).toEqual({ credit: 1, exact: true, errors: [] });
  });

  test('chance is that of five on every slot', () => {
    const given = heard({ roles: roles(FULL) });
    expect(rolesJudge.truth(given)).toEqual(kit('kcsckcsc'));
    expect(rolesJudge.chance(given)).toBeCloseTo(1 / 5 ** 8, 15);
  });

  test('is asked where two pieces are to be told apart', () => {
    for (const given of [heard({ roles: null }), heard({ roles: roles('k - k - k - k -') }), context(0)]) {
      expect(rolesJudge.truth(given)).toBeNull();
      expect(() => rolesJudge.mark(kit('k'), given)).toThrow('roles-0 cannot be asked');
    }
  });

  test.each([
    // By rote the foot on each number and a hat on each and have six of eight right: that earns nothing.
    ['kcscksck', FULL, [], 0],
    ['kckckckc', FULL, [], 0],
    ['kckckckc', OPEN, ['open-hat-missed'], 0],
    ['ckskcksk', FULL, ['foot-and-hat-swapped'], 0],
    ['ckckckck', OPEN, ['foot-and-hat-swapped'], 0],
    ['kckckokc', OPEN, ['open-hat-missed'], 1 / 4],
    ['kokokokc', OPEN, ['open-hat-missed'], 3 / 4],
    ['-csckcsc', FULL, ['mute-heard-as-rest'], 1 / 2],
    ['k-k-k-k-', OPEN, [], 0],
    ['kkkkkkkk', FULL, [], 0],
    // Each piece weighs a third: a hat of four less than a foot of two.
    ['kosckcsc', FULL, [], 3 / 4],
    // A slap on three: by rote the one foot is right, and four of six hats.
    ['kcccscck', 'k c c c s c c c', [], 1 - 1 / 18 / (1 / 3 + 2 / 18)],
    // One open hat of four: who misses it has heard nothing, who has it and not one foot has half.
    ['kckckckc', 'k c k c k c k o', ['open-hat-missed'], 0],
    ['kccckcko', 'k c k c k c k o', [], 1 / 2],
    ['-ckckckc', FULL, [], 0],
  ])('%s for %s shows %j', (answer, truth, errors, credit) => {
    const given = mark(answer, truth);
    expect(given.errors).toEqual(errors);
    expect(given.credit).toBeCloseTo(credit, 12);
    expect(given.exact).toBe(false);
  });

  test('an open hat that is marked closed is half right on an up alone', () => {
    const downs = { strokes: strokes('D D D D D D D D') };
    // By rote, with the slap on 2 and 4, five are right and no more.
    const truth = 'k c c o s c c o';
    expect(mark('kcccscco', truth).credit).toBeCloseTo((15 / 16 - 1 / 2) / (1 / 2), 12);
    expect(mark('kcccscco', truth, downs)).toMatchObject({ exact: false, errors: ['open-hat-missed'] });
    expect(mark('kcccscco', truth, downs).credit).toBeLessThan(mark('kcccscco', truth).credit);
  });

  test('a piece where nothing sounds costs as much as a wrong one', () => {
    expect(mark('kkcc', 'k - c -').credit).toBe(0);
    expect(mark('kkc-', 'k - c -').credit).toBe(1 / 2);
  });

  test('a grid of another length earns nothing', () => {
    expect(mark('kcsc', FULL)).toEqual({ credit: 0, exact: false, errors: [] });
  });
});

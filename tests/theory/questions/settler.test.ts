import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { besideShown } from '../../../shared-theory/questions/beside.ts';
import type { ErrorKind } from '../../../shared-theory/questions/error-kinds.ts';
import { KEY_IDS } from '../../../shared-theory/questions/keys/ask.ts';
import { keysJudge } from '../../../shared-theory/questions/keys/judge.ts';
import { settlerJudge } from '../../../shared-theory/questions/settler/judge.ts';
import { seededRandom } from '../../../shared-theory/random.ts';
import type { Policy, Truth } from '../../../shared-theory/truth.ts';
import { guitarTruth } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { context, owners } from './given.ts';

/** The round of a loop with the chords that leave one key, the flat side's first. */
const truthOf = (text: string): Partial<Truth> => {
  const truth = guitarTruth(parseVamp(text, 4));
  const place = ({ keys }: Truth['settlers'][number]) => truth.keys.majors.indexOf(keys.majors[0] ?? '');
  const alone = truth.settlers.filter(({ chord, keys }) => chord !== null && keys.majors.length === 1);
  return { ...truth, settlers: alone.toSorted((one, other) => place(one) - place(other)) };
};
const EM_D = truthOf('Em D');
const F_DM = truthOf('F Dm');

const [C, D, F, G, A, BB] = ['0M', '2M', '5M', '7M', '9M', '10M'] as const;
const [Am, Bm, Em, Gm, Dm] = ['9m', '11m', '4m', '7m', '2m'] as const;

describe('the keys that a settler leaves', () => {
  // Em D: G and D, C F#m … settle it; F Dm: Bb, F and C. Common practice.
  test.each<[string, Partial<Truth>, number, Policy, readonly string[]]>([
    ['Em D, then C', EM_D, 0, 'majors', [G]],
    ['Em D, then A', EM_D, 1, 'majors', [D]],
    ['Em D, then C', EM_D, 0, 'relatives', [G, Em]],
    ['F Dm, then Cm', F_DM, 0, 'majors', [BB]],
    ['F Dm, then G', F_DM, 1, 'relatives', [C, Am]],
  ])('%s: %#', (_case, truth, target, policy, left) => {
    expect(settlerJudge.truth(context(target, truth, { policy }))).toEqual(left);
  });

  test('there is nothing to mark where there is no settler', () => {
    expect(settlerJudge.truth(context(2, EM_D))).toBeNull();
    expect(settlerJudge.truth(context(0, truthOf('C D')))).toBeNull();
    expect(() => settlerJudge.mark([G], context(2, EM_D))).toThrow(/settler-2 cannot be asked/);
  });
});

describe('the mark of the keys left', () => {
  type Row = [string, Partial<Truth>, number, Policy, readonly string[], number, ErrorKind | null];
  test.each<Row>([
    ['the one that is left', EM_D, 0, 'majors', [G], 1, null],
    ['the other side', EM_D, 1, 'majors', [D], 1, null],
    ['both that owned it before', EM_D, 0, 'majors', [G, D], 0.5, 'ignores-the-settler'],
    ['all three that owned it before', F_DM, 1, 'majors', [BB, F, C], 1 / 3, 'ignores-the-settler'],
    ['the same by their minors', EM_D, 0, 'majors', [Em, Bm], 0.375, 'ignores-the-settler'],
    ['both pairs from before', EM_D, 0, 'relatives', [G, Em, D, Bm], 0.5, 'ignores-the-settler'],
    // Narrowly not: one is out, or another is in.
    ['one of three thrown out', F_DM, 1, 'majors', [F, C], 0.5, null],
    ['those before, and one more', EM_D, 0, 'majors', [G, D, A], 1 / 3, null],
    ['the one that is left, and one that never owned it', EM_D, 0, 'majors', [G, F], 0.5, null],
    // The keys’ own errors that fit.
    ['the one that is out', EM_D, 0, 'majors', [D], 0, 'one-step-round-the-circle'],
    ['one step beyond', EM_D, 0, 'majors', [C], 0, 'one-step-round-the-circle'],
    ['two steps off', F_DM, 1, 'majors', [BB], 0, null],
    ['none is left', EM_D, 0, 'majors', [], 0, 'finds-no-owner'],
    ['its relative minor', EM_D, 0, 'majors', [Em], 0.75, 'relative-minors-for-majors'],
    ['both of the pair where majors were asked', EM_D, 0, 'majors', [G, Em], 0.75, 'relative-minors-for-majors'],
    ['the relative minor of the other', EM_D, 0, 'majors', [Bm], 0, 'one-step-round-the-circle'],
    ['both of the pair', EM_D, 0, 'relatives', [G, Em], 1, null],
    ['one of the pair', EM_D, 0, 'relatives', [Em], 0.75, 'names-one-of-the-pair'],
    ['one of the pair, and a wrong pair', F_DM, 0, 'relatives', [Gm, F, Dm], 0.375, null],
  ])('%s: %#', (_case, truth, target, policy, answer, credit, error) => {
    const mark = settlerJudge.mark(answer, context(target, truth, { policy }));
    expect(mark.credit).toBeCloseTo(credit, 12);
    expect(mark.exact).toBe(credit === 1);
    expect(mark.errors).toEqual(error === null ? [] : [error]);
  });

  test('a settler that throws none out is not ignored by those who say so', () => {
    const left = context(0, { ...EM_D, settlers: [{ chord: 'G', note: null, keys: EM_D.keys ?? owners([], []) }] });
    expect(settlerJudge.mark([G, D], left).exact).toBe(true);
    expect(settlerJudge.mark([Em, Bm], left).errors).toEqual(['relative-minors-for-majors']);
  });

  test('until the keys before may be told nobody is said to have kept them', () => {
    const given = context(0, EM_D);
    const shown = { ...given, beside: besideShown(given.truth, [{ kind: 'settler', target: 0 }]) };
    expect(settlerJudge.mark([G, D], given).errors).toEqual(['ignores-the-settler']);
    expect(settlerJudge.mark([G, D], shown)).toEqual({ credit: 0.5, exact: false, errors: [] });
  });

  const answers = fc.subarray([...KEY_IDS]);
  const policies = fc.constantFrom<Policy>('majors', 'relatives');

  test('is the mark of those keys in a loop that they alone own', () => {
    fc.assert(
      fc.property(fc.constantFrom(EM_D, F_DM), fc.nat(1), policies, answers, (truth, target, policy, answer) => {
        const given = context(target, truth, { policy });
        const keys = given.truth.settlers[target]?.keys ?? owners([], []);
        const alone = keysJudge.mark(answer, context(0, { ...truth, keys }, { policy }));
        const mark = settlerJudge.mark(answer, given);
        expect([mark.credit, mark.exact]).toEqual([alone.credit, alone.exact]);
      }),
    );
  });

  test('no order of marking and no spelling changes it', () => {
    const sharp = truthOf('F# B');
    const flat = truthOf('Gb Cb');
    fc.assert(
      fc.property(policies, answers, fc.nat(1), (policy, answer, target) => {
        const mark = settlerJudge.mark(answer, context(target, sharp, { policy }));
        expect(settlerJudge.mark(answer.toReversed(), context(target, sharp, { policy }))).toEqual(mark);
        expect(settlerJudge.mark(answer, context(target, flat, { policy }))).toEqual(mark);
      }),
    );
  });

  test.each<[string, Partial<Truth>, readonly string[]]>([
    ['two', EM_D, [G, D]],
    ['three', F_DM, [BB, F, C]],
  ])('dice on the %s keys from before agree with chance', (_case, truth, before) => {
    const given = context(0, truth);
    const random = seededRandom(5);
    const draws = 20_000;
    let exact = 0;
    for (let draw = 0; draw < draws; draw += 1) {
      const answer = before[Math.floor(random() * before.length)] ?? '';
      if (settlerJudge.mark([answer], given).exact) exact += 1;
    }
    const chance = settlerJudge.chance(given);
    expect(Math.abs(exact / draws - chance)).toBeLessThan(4 * Math.sqrt((chance * (1 - chance)) / draws));
  });
});

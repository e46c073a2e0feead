import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { accentsJudge } from '../../../shared-theory/questions/accents/judge.ts';
import type { RhythmTruth, Weight } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { context } from './given.ts';
import { accents, heard, markOf, roles, weights } from './given-rhythm.ts';
import { rhythms } from './rhythms.ts';

const RIGHT = { credit: 1, exact: true, errors: [] };
const mark = (answer: string, truth: string, more: Partial<RhythmTruth> = {}) =>
  markOf('accents', weights(answer), { accents: accents(truth), ...more });

describe('accents', () => {
  test.each([
    ['3 1 2 1 3 1 2 1', '21112111'],
    ['3 1 2 1 3 1 2 1', '21212121'],
    ['3 1 2 1 3 1 2 1', '21112121'],
    ['2 1 3 1 2 1 3 1', '11211121'],
    ['0 3 0 3 0 3 0 3', '02020202'],
    ['3 0 3 1', '2021'],
    ['3 1/0 3 1', '2121'],
    ['3 1/0 3 1', '2021'],
  ])('%s is marked %s: a medium one may be heavy or light, a bar that differs is right too', (truth, answer) => {
    expect(mark(answer, truth)).toEqual(RIGHT);
  });

  test('what stands for the rest leaves medium ones light, and every other way is listed', () => {
    const given = heard();
    expect(accentsJudge.truth(given)).toEqual(weights('21112111'));
    expect(accentsJudge.also(given).map((answer) => accentsJudge.heard(answer))).toEqual([
      '21212111',
      '21112121',
      '21212121',
    ]);
    expect(accentsJudge.chance(given)).toBeCloseTo(4 / 3 ** 8, 12);
  });

  test.each([
    ['1 2 1 2', 'nothing is heavy'],
    ['3 2 3 2', 'nothing is surely not heavy'],
    ['3 3 3 3', 'all is heavy'],
    ['2 0 2 0', 'nothing is heavier than a medium one'],
    ['3 2/0 3 2', 'nothing is surely not heavy in every bar'],
  ])('%s is not asked: %s', (truth) => {
    expect(accentsJudge.truth(heard({ accents: accents(truth) }))).toBeNull();
  });

  test('without a groove there is nothing to ask', () => {
    expect(accentsJudge.truth(context(0))).toBeNull();
    expect(() => accentsJudge.mark(weights('21112111'), context(0))).toThrow('accents-0 cannot be asked');
  });

  test('all light or all heavy, whichever earns more, earns nothing; half way to right earns half', () => {
    // Six of eight light ones are right and each heavy one is a third so: 5 of 6 parts, and a slot counts for one eighth.
    expect(mark('11111111', '3 1 2 1 3 1 2 1')).toEqual({ credit: 0, exact: false, errors: ['all-alike'] });
    expect(mark('22222222', '3 1 2 1 3 1 2 1')).toEqual({ credit: 0, exact: false, errors: ['all-alike'] });
    expect(mark('21111111', '3 1 2 1 3 1 2 1').credit).toBeCloseTo(1 / 2, 12);
    expect(mark('00000000', '3 1 2 1 3 1 2 1')).toMatchObject({ credit: 0, errors: ['all-alike'] });
  });

  test('a mark where nothing sounds is lost; silence there earns nothing', () => {
    const quarters = '3 0 2 0 3 0 2 0';
    const [rests, filled] = ['20102010', '21112111'].map((answer) => mark(answer, quarters));
    expect(rests).toEqual(RIGHT);
    expect(filled?.exact).toBe(false);
    expect(filled?.credit).toBeLessThan(0.6);
    expect(mark('22222222', quarters).credit).toBe(0);
    expect(mark('11111111', quarters).credit).toBe(0);
    expect(mark('00000000', quarters).credit).toBe(0);
  });

  test('the right shape on another one earns half, where it is not right as it stands', () => {
    expect(mark('12111211', '3 1 2 1 3 1 2 1')).toEqual({
      credit: 1 / 2,
      exact: false,
      errors: ['starts-the-bar-elsewhere'],
    });
    // Three, three and two, begun on the second of them.
    expect(mark('21121211', '3 1 1 3 1 1 3 1')).toMatchObject({ credit: 1 / 2, errors: ['starts-the-bar-elsewhere'] });
    // Half a bar later it is the same.
    expect(mark('21112111', '3 1 1 1 3 1 1 1')).toEqual(RIGHT);
  });

  test.each([
    ['21212121', '2 1 3 1 2 1 3 1', []],
    ['21112110', '2 1 3 1 2 1 3 1', ['one-and-three-for-two-and-four']],
    // Half right for the shape, and called by what every teacher calls it.
    ['21112111', '2 1 3 1 2 1 3 1', ['one-and-three-for-two-and-four']],
    ['11211121', '3 1 2 1 3 1 2 1', ['starts-the-bar-elsewhere']],
    // Chops on the ands, heard on 2 and 4: not all alike.
    ['10210121', '3 0 0 3 0 3 0 3', []],
    ['10010101', '3 0 0 3 0 3 0 3', ['all-alike']],
    ['12121211', '3 1 3 1 3 1 3 1', ['ands-heavier-than-numbers']],
    ['12121212', '3 1 3 1 3 1 3 1', ['starts-the-bar-elsewhere']],
    ['12122121', '3 1 3 1 3 1 3 1', []],
    ['20111111', '3 1 2 1 3 1 2 1', []],
  ])('%s for %s shows %j', (answer, truth, errors) => {
    expect(mark(answer, truth).errors).toEqual(errors);
  });

  test('a muted stroke that is marked silent is heard as a rest, where the groove says which are muted', () => {
    const kit = { roles: roles('k c s c k c s o') };
    expect(mark('20212021', '3 1 3 1 3 1 3 1', kit).errors).toEqual(['mute-heard-as-rest']);
    expect(mark('20212021', '3 1 3 1 3 1 3 1').errors).toEqual([]);
    expect(mark('21212120', '3 1 3 1 3 1 3 1', kit).errors).toEqual([]);
    expect(mark('20212121', '3 1 3 1 3 1 3 1', { opened: [7] }).errors).toEqual(['mute-heard-as-rest']);
  });

  test('a backbeat is told by numbers alone, in sixteenths and in twelve eighths too', () => {
    expect(mark('2111111121111110', '2 1 1 1 3 1 1 1 2 1 1 1 3 1 1 1', { grid: 'S16' }).errors).toEqual([
      'one-and-three-for-two-and-four',
    ]);
    expect(mark('211111211110', '2 1 1 3 1 1 2 1 1 3 1 1', { grid: 'T12' }).errors).toEqual([
      'one-and-three-for-two-and-four',
    ]);
    // A waltz has no backbeat, and sevens no numbers that all beats fall on.
    expect(mark('211110', '1 1 3 1 3 1', { grid: 'W6' }).errors).toEqual([]);
    expect(mark('1212120', '3 1 2 1 2 1 1', { grid: 'V7' }).errors).toEqual([]);
  });

  test('a grid of another length earns nothing', () => {
    expect(mark('2111', '3 1 2 1 3 1 2 1')).toEqual({ credit: 0, exact: false, errors: [] });
    expect(mark('2111211121112111', '3 1 2 1 3 1 2 1').credit).toBe(0);
  });

  const asked = rhythms.filter((rhythm) => accentsJudge.truth(heard(rhythm)) !== null);

  test('one weight on every slot earns nothing, whatever the groove', () => {
    fc.assert(
      fc.property(asked, fc.constantFrom<Weight>(0, 1, 2), (rhythm, weight) => {
        const alike = rhythm.accents.map(() => weight);
        const { credit, exact, errors } = accentsJudge.mark(alike, heard(rhythm));
        expect({ credit, exact, errors }).toEqual({ credit: 0, exact: false, errors: ['all-alike'] });
      }),
    );
  });

  test('to silence a slot on which nothing sounds never loses, and never makes up for anything else', () => {
    fc.assert(
      fc.property(asked, fc.gen(), (rhythm, gen) => {
        const answer = rhythm.accents.map(() => gen(fc.constantFrom<Weight[]>, 0, 1, 2));
        const silent = rhythm.accents.findIndex(([...each]) => each.every((accent) => accent === 0));
        fc.pre(silent >= 0);
        const [quiet, loud] = ([0, 2] as const).map((weight) => {
          const given = answer.map((each, slot) => (slot === silent ? weight : each));
          return accentsJudge.mark(given, heard(rhythm));
        });
        const rotated = loud?.errors[0] === 'starts-the-bar-elsewhere';
        if (!rotated) expect(quiet?.credit).toBeGreaterThanOrEqual(loud?.credit ?? 1);
        expect(loud?.exact).toBe(false);
      }),
    );
  });

  test('every shift of a right answer that is not right itself is half right at least', () => {
    fc.assert(
      fc.property(asked, fc.nat(20), (rhythm, by) => {
        const right = accentsJudge.truth(heard(rhythm)) ?? [];
        const shifted = right.map((_, slot) => right[(slot + by) % right.length] ?? 0);
        const { credit, exact, errors } = accentsJudge.mark(shifted, heard(rhythm));
        if (exact) return;
        expect(credit).toBeGreaterThanOrEqual(1 / 2);
        expect(credit).toBeLessThan(1);
        // One that puts the backbeat on one and three has a name of its own.
        expect(errors).toHaveLength(1);
        expect(['starts-the-bar-elsewhere', 'one-and-three-for-two-and-four']).toContain(errors[0]);
      }),
    );
  });
});

import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ErrorKind } from '../../../shared-theory/questions/error-kinds.ts';
import { KEY_IDS, keysAsk } from '../../../shared-theory/questions/keys/ask.ts';
import { keysJudge } from '../../../shared-theory/questions/keys/judge.ts';
import { oneOrSeveralJudge } from '../../../shared-theory/questions/one-or-several/judge.ts';
import { settlerJudge } from '../../../shared-theory/questions/settler/judge.ts';
import type { KeyId } from '../../../shared-theory/questions/question.ts';
import { POLICIES, type Policy } from '../../../shared-theory/truth.ts';
import { context, owners, played, SETTINGS } from './given.ts';

const asked = (text: string, policy: Policy) => context(0, played(text), { policy });
const ids = (text: string) => (text === '' ? [] : text.split(' '));
const sorted = (answers: readonly (readonly KeyId[] | null)[]) => answers.map((each) => each?.join(' '));

describe('the right keys under each policy', () => {
  // Am E: i V of A minor. G F: C major alone, with G or F at home. Common practice.
  test.each<[string, Policy, string[]]>([
    // The raised seventh is never held against a student: the minor that has it is right beside “no key”.
    ['Am E', 'majors', ['', '9m']],
    ['Am E', 'relatives', ['', '9m']],
    ['Am G F E', 'relatives', ['', '9m']],
    // By sound it is of three minors: each, or all.
    ['Caug', 'majors', ['', '1m', '5m', '9m', '1m 5m 9m']],
    ['Am E', 'raised-seventh', ['9m']],
    // A home where no scale owns all says no more than that.
    ['Am E', 'modes', ['', 'h0', 'h1', 'h2', 'h3']],
    ['G F', 'majors', ['0M']],
    ['G F', 'relatives', ['0M 9m']],
    ['G F', 'modes', ['0M h0', '0M h1']],
    ['Am D', 'modes', ['7M h0', '7M h1']],
    ['C Bdim', 'modes', ['0M h0']],
    ['Bdim', 'modes', ['0M']],
    ['C Dm Em F G', 'modes', ['0M h0', '0M h1', '0M h2', '0M h3']],
  ])('%s under %s: %j', (text, policy, right) => {
    const given = asked(text, policy);
    expect(sorted([keysJudge.truth(given), ...keysJudge.also(given)])).toEqual(right);
    for (const answer of right) expect(keysJudge.mark(ids(answer), given)).toMatchObject({ credit: 1, exact: true });
  });

  test('each home that is asked for is read, one at most, and under no other policy', () => {
    const modes = { ...SETTINGS, policy: 'modes' as const };
    expect(keysAsk.read(['h1', '7M'], modes)).toEqual(['7M', 'h1']);
    expect(keysAsk.read(['h1'], modes)).toEqual(['h1']);
    expect(keysAsk.key(['h1', '7M'])).toBe('7M h1');
    for (const value of [
      ['7M', 'h0', 'h1'],
      ['7M', 'h4'],
      ['h1', 'h1'],
    ])
      expect(keysAsk.read(value, modes)).toBeNull();
    for (const policy of ['majors', 'relatives', 'raised-seventh'] as const)
      expect(keysAsk.read(['7M', 'h1'], { ...SETTINGS, policy })).toBeNull();
  });
});

describe('the mark of keys under each policy', () => {
  type Row = [string, Policy, string, number, ErrorKind | null];
  test.each<Row>([
    ['Am E', 'raised-seventh', '9m', 1, null],
    ['Am E', 'raised-seventh', '9m 0M', 0.5, 'roots-fit-qualities-do-not'],
    ['Am E', 'raised-seventh', '0M', 0, 'roots-fit-qualities-do-not'],
    ['Am E', 'raised-seventh', '4m', 0, 'one-step-round-the-circle'],
    ['Am E', 'raised-seventh', '', 0, 'finds-no-owner'],
    ['Em D', 'raised-seventh', '7M 2M', 0.75, 'names-one-of-the-pair'],
    ['Em D', 'raised-seventh', '7M 4m', 0.5, 'stops-at-one-key'],
    // Half for the parents, half for the home.
    ['G F', 'modes', '0M h0', 1, null],
    ['G F', 'modes', '0M', 0.5, null],
    ['G F', 'modes', '0M h2', 0.5, null],
    ['G F', 'modes', 'h0', 0.5, 'finds-no-owner'],
    ['G F', 'modes', '7M h0', 0.5, 'one-step-round-the-circle'],
    ['G F', 'modes', '9m h0', 0.875, 'relative-minors-for-majors'],
    ['Em D', 'modes', '7M h1', 0.75, 'stops-at-one-key'],
    ['Em D', 'modes', '7M', 0.25, 'stops-at-one-key'],
    ['C Bdim', 'modes', '0M h1', 0.5, null],
    ['Am E', 'modes', 'h0', 1, null],
    ['Am E', 'modes', '0M h0', 0, 'roots-fit-qualities-do-not'],
  ])('%s under %s, answered %s: %f', (text, policy, answer, credit, error) => {
    const mark = keysJudge.mark(ids(answer), asked(text, policy));
    expect(mark.credit).toBeCloseTo(credit, 12);
    expect([mark.exact, mark.errors]).toEqual([credit === 1, error === null ? [] : [error]]);
  });

  test('no set but a right one earns all, and one error at most is shown', () => {
    const answer = fc.tuple(fc.subarray([...KEY_IDS], { maxLength: 5 }), fc.constantFrom([], ['h0'], ['h1'], ['h2']));
    const loop = fc.constantFrom('Am E', 'G F', 'Em D', 'C', 'E7 Am', 'Bdim C', 'C Fm');
    fc.assert(
      fc.property(answer, loop, fc.constantFrom(...POLICIES), ([keys, home], text, policy) => {
        const given = asked(text, policy);
        const all = policy === 'modes' ? [...keys, ...home] : keys;
        const { credit, exact, errors } = keysJudge.mark(all, given);
        const right = sorted([keysJudge.truth(given), ...keysJudge.also(given)]);
        expect(credit).toBeGreaterThanOrEqual(0);
        expect(credit === 1).toBe(exact);
        if (right.includes(all.join(' '))) expect(exact).toBe(true);
        expect(errors.length).toBeLessThanOrEqual(exact ? 0 : 1);
      }),
    );
  });
});

test.each<[string, Policy, string | null]>([
  ['Am E', 'majors', null],
  ['Am E', 'relatives', null],
  ['Am E', 'raised-seventh', 'one'],
  ['Am E', 'modes', null],
  ['G F', 'majors', 'one'],
  ['G F', 'relatives', 'one'],
  ['G F', 'modes', 'one'],
  ['Em D', 'raised-seventh', 'several'],
  ['Em D', 'modes', 'several'],
  ['C Fm', 'raised-seventh', 'one'],
])('one key or several of %s under %s: %s', (text, policy, right) => {
  expect(oneOrSeveralJudge.truth(asked(text, policy))).toBe(right);
});

describe('what is left once a chord or a note has sounded', () => {
  const keys = owners(['G major'], ['G major', 'E minor'], { modes: ['E aeolian', 'D mixolydian'] });
  test.each<[string | null, string | null]>([
    ['C', null],
    [null, 'C'],
  ])('by chord %s, by note %s', (chord, note) => {
    const given = (policy: Policy) => context(0, { settlers: [{ chord, note, keys }] }, { policy });
    expect(settlerJudge.truth(given('majors'))).toEqual(['7M']);
    expect(settlerJudge.truth(given('relatives'))).toEqual(['7M', '4m']);
    // Parents alone: which is home was asked before.
    expect(settlerJudge.truth(given('modes'))).toEqual(['7M']);
    expect(settlerJudge.mark(['7M', '2M'], given('modes')).errors).toEqual(['ignores-the-settler']);
    expect(settlerJudge.chance(given('modes'))).toBe(1 / 2);
  });

  test('a minor that its raised seventh alone leaves is right without its relative', () => {
    const left = owners([], [], { 'raised-seventh': ['A minor'] });
    const given = context(
      0,
      { ...played('Am F'), settlers: [{ chord: 'E', note: null, keys: left }] },
      {
        policy: 'raised-seventh',
      },
    );
    expect(settlerJudge.truth(given)).toEqual(['9m']);
    expect(settlerJudge.mark(['9m'], given).exact).toBe(true);
    expect(settlerJudge.mark(['9m', '0M'], given).credit).toBe(0.5);
  });
});

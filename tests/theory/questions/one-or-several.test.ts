import { describe, expect, test } from 'vitest';
import { oneOrSeveralJudge } from '../../../shared-theory/questions/one-or-several/judge.ts';
import type { OneOrSeveral, OwnAnswers } from '../../../shared-theory/questions/question.ts';
import { questionsOf } from '../../../shared-theory/questions/round-questions.ts';
import { besideShown } from '../../../shared-theory/questions/beside.ts';
import type { Policy, Truth } from '../../../shared-theory/truth.ts';
import { context, EM_D, owners } from './given.ts';

const keys = (majors: readonly string[], minors: readonly string[]): Partial<Truth> => ({
  keys: owners(majors, [...majors, ...minors]),
});
const ONE = keys(['G major'], ['E minor']);
const TWO = keys(['G major', 'D major'], ['E minor', 'B minor']);
const THREE = keys(['F major', 'C major', 'G major'], ['D minor', 'A minor', 'E minor']);
const NONE = keys([], []);

describe('one key or several', () => {
  test.each<[string, Partial<Truth>, OneOrSeveral | null]>([
    ['one', ONE, 'one'],
    ['two', TWO, 'several'],
    ['three', THREE, 'several'],
    ['none: it cannot be asked', NONE, null],
  ])('%s, and a relative pair is one', (_case, truth, right) => {
    for (const policy of ['majors', 'relatives'] as const) {
      expect(oneOrSeveralJudge.truth(context(0, truth, { policy }))).toBe(right);
    }
  });

  test('where no key owns all there is nothing to mark', () => {
    expect(() => oneOrSeveralJudge.mark('one', context(0, NONE))).toThrow(/one-or-several-0 cannot be asked/);
  });

  type Row = [string, Partial<Truth>, OneOrSeveral, OwnAnswers, number, boolean];
  test.each<Row>([
    ['several where two own it', TWO, 'several', {}, 1, false],
    ['one where one owns it', ONE, 'one', {}, 1, false],
    ['several where one owns it', ONE, 'several', {}, 0, false],
    ['several where one owns it, which was named', ONE, 'several', { 'keys-0': ['7M'] }, 0, false],
    ['one where two own it', TWO, 'one', {}, 0, true],
    ['one, and an owner named', TWO, 'one', { 'keys-0': ['7M'] }, 0.5, true],
    ['one of three, and an owner named', THREE, 'one', { 'keys-0': ['5M'] }, 0.5, true],
    ['one, and an owner named by its minor', TWO, 'one', { 'keys-0': ['11m'] }, 0.5, true],
    ['one, and a pair named', TWO, 'one', { 'keys-0': ['7M', '4m'] }, 0.5, true],
    ['one, and both owners named', TWO, 'one', { 'keys-0': ['7M', '2M'] }, 0, true],
    ['one, and a key that is no owner named', TWO, 'one', { 'keys-0': ['0M'] }, 0, true],
    ['one, and none named', TWO, 'one', { 'keys-0': [] }, 0, true],
  ])('%s', (_case, truth, answer, own, credit, early) => {
    for (const policy of ['majors', 'relatives'] as const) {
      expect(oneOrSeveralJudge.mark(answer, context(0, truth, { policy }, own))).toEqual({
        credit,
        exact: credit === 1,
        errors: early ? ['settles-too-early'] : [],
      });
    }
  });

  test('until the owners may be told nothing is earned by naming one', () => {
    const given = context(0, EM_D, {}, { 'keys-0': ['7M'] });
    const shown = { ...given, beside: besideShown(given.truth, [{ kind: 'one-or-several', target: 0 }]) };
    expect(oneOrSeveralJudge.mark('one', given).credit).toBe(0.5);
    expect(oneOrSeveralJudge.mark('one', shown).credit).toBe(0);
  });

  test('it reads the keys of the round, and no other answer', () => {
    const questions = questionsOf({ chords: ['a', 'b'], grooveKnown: true, settlers: 2 });
    expect(oneOrSeveralJudge.leansOn?.(0, questions)).toEqual(['keys-0']);
  });

  test('a coin is right every other time, says what it says, and has no other right answer', () => {
    for (const policy of ['majors', 'relatives'] satisfies Policy[]) {
      const given = context(0, TWO, { policy });
      const right = (['one', 'several'] as const).filter((answer) => oneOrSeveralJudge.mark(answer, given).exact);
      expect(oneOrSeveralJudge.chance(given)).toBe(right.length / 2);
      expect(oneOrSeveralJudge.also(given)).toEqual([]);
      expect(oneOrSeveralJudge.heard('one')).not.toBe(oneOrSeveralJudge.heard('several'));
    }
  });
});

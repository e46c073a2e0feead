import { describe, expect, test } from 'vitest';
import { besideShown } from '../../../shared-theory/questions/beside.ts';
import { countJudge } from '../../../shared-theory/questions/count/judge.ts';
import type { ErrorKind } from '../../../shared-theory/questions/error-kinds.ts';
import type { Direction, Truth } from '../../../shared-theory/truth.ts';
import { guitarTruth } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { context, played } from './given.ts';

const mark = (answer: number, truth: Truth) => countJudge.mark(answer, context(0, truth));

describe('the right count', () => {
  // A chord that comes back counts once, in any spelling and over any bass: common practice.
  test.each<[string, number]>([
    ['E', 1],
    ['E E', 1],
    ['Em D', 2],
    ['A B A C', 3],
    ['F# Gb B', 2],
    ['C Cm C5 Csus4', 4],
    ['C G Am Em F', 5],
    ['C G Am F C G Am F', 4],
  ])('%s: %i', (chords, right) => {
    expect(countJudge.truth(context(0, played(chords)))).toBe(right);
    expect(mark(right, played(chords))).toEqual({ credit: 1, exact: true, errors: [] });
  });

  test('more chords than the pad counts are not asked', () => {
    const many = played('C Dm Em F G Am');
    expect(countJudge.truth(context(0, many))).toBeNull();
    expect(() => mark(5, many)).toThrow(/count-0 cannot be asked/);
  });
});

describe('mark of a count that is not right', () => {
  // Credits and rules: common practice in ear-training classes.
  test.each<[string, string, Direction[] | null, number, number, ErrorKind | null]>([
    ['every change', 'A E A D', null, 4, 0.3, 'counts-the-changes'],
    ['every change, far off', 'A E A E', null, 4, 0, 'counts-the-changes'],
    ['neither every change nor one near', 'A E A E', null, 5, 0, null],
    ['C and Am share two notes', 'C F G Am', null, 3, 0.5, 'merges-close-chords'],
    ['C and Em share two notes', 'C Em', null, 1, 0.5, 'merges-close-chords'],
    ['C and Csus4 share two notes', 'C Csus4', null, 1, 0.5, 'merges-close-chords'],
    ['A and B share none, A and E one', 'A B E', null, 2, 0.3, null],
    ['two short, though two are close', 'C F G Am', null, 2, 0, null],
    ['the same A in two octaves', 'E A E A', ['up', 'same', 'down'], 3, 0.5, 'splits-one-chord'],
    ['every A in one place', 'E A E A', ['up', 'same', 'up'], 3, 0.3, null],
    ['two over, though one is in two octaves', 'E A E A E', ['up', 'same', 'down', 'same'], 4, 0, null],
    ['one chord for two far ones', 'E D', null, 1, 0.3, 'hears-no-change'],
    ['one chord for three', 'E D A', null, 1, 0, 'hears-no-change'],
    ['two for one held chord', 'E', null, 2, 0.3, null],
  ])('%s', (_case, chords, directions, answer, credit, error) => {
    const errors = error === null ? [] : [error];
    expect(mark(answer, played(chords, directions))).toEqual({ credit, exact: false, errors });
  });

  test('a groove whose bass goes to and fro makes one chord sound as two', () => {
    const held = (groove: string) => guitarTruth(parseVamp('C', 4), { groove });
    expect(mark(2, held('boom-chick')).errors).toEqual(['splits-one-chord']);
    expect(mark(2, held('campfire-strum')).errors).toEqual([]);
  });

  test('another note on top makes one chord sound as two', () => {
    const truth = { ...played('E D E A'), top: [64, 66, 68, 64] };
    expect(mark(4, truth).errors).toEqual(['counts-the-changes']);
    const longer = { ...played('E D E A E D E A'), top: [64, 66, 68, 64, 64, 66, 64, 64] };
    expect(mark(4, longer)).toEqual({ credit: 0.5, exact: false, errors: ['splits-one-chord'] });
    expect(mark(4, { ...longer, top: longer.top.with(2, 64) }).errors).toEqual([]);
  });
});

describe('precedence', () => {
  test('every change before one chord for two', () => {
    const truth = played('E A E', ['up', 'down']);
    expect(truth.bass[2]).not.toBe(truth.bass[0]);
    expect(mark(3, truth)).toEqual({ credit: 0.3, exact: false, errors: ['counts-the-changes'] });
  });

  test('two close chords before no change', () => {
    expect(mark(1, played('C Am')).errors).toEqual(['merges-close-chords']);
    expect(mark(1, played('E D')).errors).toEqual(['hears-no-change']);
  });
});

test('until the chords are shown, a student learns no more than that it was one off, or that it changed', () => {
  const truth = played('C F G Am');
  const given = context(0, truth);
  const told = { ...given, beside: besideShown(truth, [{ kind: 'count', target: 0 }]) };
  expect(countJudge.mark(3, told)).toEqual({ credit: 0.3, exact: false, errors: [] });
  expect(countJudge.mark(1, told).errors).toEqual(['hears-no-change']);
  const shown = { ...given, beside: besideShown(truth, [{ kind: 'keys', target: 0 }]) };
  expect(countJudge.mark(3, shown)).toEqual(countJudge.mark(3, given));
  // How often a chord comes is shown by nothing.
  const often = context(0, played('A E A D'));
  const all = besideShown(often.truth, [{ kind: 'keys', target: 0 }]);
  expect(countJudge.mark(4, often).errors).toEqual(['counts-the-changes']);
  expect(countJudge.mark(4, { ...often, beside: all }).errors).toEqual([]);
});

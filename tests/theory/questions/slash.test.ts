import { describe, expect, test } from 'vitest';
import { besideShown } from '../../../shared-theory/questions/beside.ts';
import { countJudge } from '../../../shared-theory/questions/count/judge.ts';
import { directionJudge } from '../../../shared-theory/questions/direction/judge.ts';
import type { ErrorKind } from '../../../shared-theory/questions/error-kinds.ts';
import type { Direction } from '../../../shared-theory/truth.ts';
import { context, played } from './given.ts';

describe('how many chords where basses change', () => {
  test.each<[string, boolean, number]>([
    ['C C/E', false, 1],
    ['C C/E', true, 2],
    ['C C/E F C', false, 2],
    ['C C/E F C', true, 3],
    ['C C7 F', false, 3],
    ['C Dm/C C', true, 2],
  ])('%s, another bass another chord: %s, %i', (text, slashIsNew, count) => {
    expect(countJudge.truth(context(0, played(text), { slashIsNew }))).toBe(count);
  });

  test.each<[string, boolean, number, number, ErrorKind | null]>([
    ['C C/E F', false, 3, 0, 'counts-the-changes'],
    ['C C/E F C', false, 3, 0.5, 'splits-one-chord'],
    ['C C/E F C', true, 2, 0.5, 'merges-close-chords'],
    ['C C/E', true, 1, 0.5, 'merges-close-chords'],
    // Narrowly not: no bass changes.
    ['C F C F', false, 3, 0.3, null],
  ])('%s, another bass another chord: %s, answered %i', (text, slashIsNew, answer, credit, error) => {
    const mark = countJudge.mark(answer, context(0, { ...played(text), top: [] }, { slashIsNew }));
    expect(mark.errors).toEqual(error === null ? [] : [error]);
    if (error !== 'counts-the-changes') expect(mark.credit).toBe(credit);
  });
});

describe('the bass goes, stays, or moves by a semitone', () => {
  test.each<[string, Direction, Direction, number, ErrorKind]>([
    ['C F/C', 'same', 'up', 0, 'says-moves'],
    ['C F/C', 'same', 'down', 0, 'says-moves'],
    ['C G/B', 'down', 'same', 0.5, 'says-stays'],
    ['E F', 'up', 'same', 0.5, 'says-stays'],
    ['C F', 'up', 'same', 0, 'says-stays'],
    // The roots lie a semitone apart, the basses do not.
    ['E F/C', 'up', 'same', 0, 'says-stays'],
  ])('%s goes %s, answered %s: %f', (text, direction, answer, credit, error) => {
    const given = context(1, played(text, [direction]));
    expect(directionJudge.truth(given)).toBe(direction);
    expect(directionJudge.mark(answer, given)).toEqual({ credit, exact: false, errors: [error] });
  });

  test('both basses once told say how far it went', () => {
    const given = context(1, played('C G/B', ['down']));
    const credit = (shown: Parameters<typeof besideShown>[1]) =>
      directionJudge.mark('same', { ...given, beside: besideShown(given.truth, shown) }).credit;
    expect(credit([{ kind: 'direction', target: 1 }])).toBe(0);
    expect(credit([0, 1].map((target) => ({ kind: 'bass', target })))).toBe(0.5);
  });
});

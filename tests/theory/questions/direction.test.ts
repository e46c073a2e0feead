import { describe, expect, test } from 'vitest';
import { directionJudge } from '../../../shared-theory/questions/direction/judge.ts';
import type { ErrorKind } from '../../../shared-theory/questions/error-kinds.ts';
import type { Direction } from '../../../shared-theory/truth.ts';
import { context } from './given.ts';

describe('mark of the bass direction', () => {
  // Credits and precedence of errors: common practice in ear-training classes.
  test.each<[string, number[], number[], Direction, Direction, number, ErrorKind | null]>([
    ['up is up', [40, 50], [64, 66], 'up', 'up', 1, null],
    ['stays is stays', [45, 45], [64, 69], 'same', 'same', 1, null],
    ['the top goes down while the bass goes up', [40, 45], [67, 64], 'up', 'down', 0, 'follows-the-top-note'],
    ['the top stays while the bass goes down', [50, 45], [64, 64], 'down', 'same', 0, 'follows-the-top-note'],
    ['stays, and the top moved', [40, 50], [64, 66], 'up', 'same', 0, 'says-stays'],
    ['stays for a semitone up', [40, 41], [64, 65], 'up', 'same', 0.5, 'says-stays'],
    ['stays for a semitone down', [41, 40], [65, 64], 'down', 'same', 0.5, 'says-stays'],
    ['stays for a semitone under a held top', [40, 41], [64, 64], 'up', 'same', 0.5, 'follows-the-top-note'],
    ['the wrong way over a semitone earns nothing', [40, 41], [64, 65], 'up', 'down', 0, null],
    ['stays for a whole tone earns nothing', [40, 42], [64, 66], 'up', 'same', 0, 'says-stays'],
    ['moves over a held bass', [45, 45], [64, 64], 'same', 'up', 0, 'says-moves'],
    ['moves with the top over a held bass', [45, 45], [64, 69], 'same', 'up', 0, 'follows-the-top-note'],
    ['up for down, and the top went down too', [50, 43], [66, 64], 'down', 'up', 0, null],
  ])('%s', (_case, bass, top, truth, answer, credit, error) => {
    const mark = directionJudge.mark(answer, context(1, { bass, top, directions: [truth] }));
    expect(mark).toEqual({ credit, exact: credit === 1, errors: error === null ? [] : [error] });
  });

  test('each target is measured from the first chord', () => {
    const truth = { directions: ['up', 'down'] as const, bass: [45, 50, 40], top: [64, 66, 64] };
    expect(directionJudge.truth(context(1, truth))).toBe('up');
    expect(directionJudge.truth(context(2, truth))).toBe('down');
    expect(directionJudge.mark('up', context(2, truth)).exact).toBe(false);
  });

  test('where the top note is not known, nobody follows it', () => {
    expect(directionJudge.mark('same', context(1, { top: [] })).errors).toEqual(['says-stays']);
    expect(directionJudge.mark('down', context(1, { top: [] })).errors).toEqual([]);
  });

  test('a slot that has no direction cannot be asked', () => {
    expect(directionJudge.truth(context(0))).toBeNull();
    expect(directionJudge.truth(context(2))).toBeNull();
    expect(() => directionJudge.mark('up', context(2))).toThrow(/direction-2 cannot be asked/);
  });
});

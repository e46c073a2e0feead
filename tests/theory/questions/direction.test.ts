import { describe, expect, test } from 'vitest';
import { besideShown } from '../../../shared-theory/questions/beside.ts';
import { directionJudge } from '../../../shared-theory/questions/direction/judge.ts';
import type { ErrorKind } from '../../../shared-theory/questions/error-kinds.ts';
import type { Direction, Truth } from '../../../shared-theory/truth.ts';
import { context, played } from './given.ts';

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

describe('beside the student’s own distance', () => {
  const far = { bass: [40, 45], top: [], roots: ['E', 'A'], directions: ['up'] as const };
  const mark = (answer: Direction, distance: number, truth: Partial<Truth> = far) =>
    directionJudge.mark(answer, context(1, truth, {}, { 'distance-1': distance }));

  test('the right number shows that the note was heard, in another octave', () => {
    expect(mark('down', 5)).toEqual({ credit: 0, exact: false, errors: ['right-note-other-octave'] });
    expect(mark('down', -7).errors).toEqual(['right-note-other-octave']);
    expect(mark('same', 5).errors).toEqual(['right-note-other-octave']);
    expect(mark('down', 7).errors).toEqual([]);
    expect(mark('up', 5)).toEqual({ credit: 1, exact: true, errors: [] });
  });

  test('not where the bass moves less than a fourth', () => {
    const third = { ...far, bass: [40, 44], roots: ['E', 'G#'] };
    expect(mark('down', 4, third).errors).toEqual([]);
    const octave = { ...far, bass: [40, 56], roots: ['E', 'G#'] };
    expect(mark('down', 4, octave).errors).toEqual(['right-note-other-octave']);
  });

  test('the top note and the way back stand on either side of it', () => {
    expect(mark('down', 5, { ...far, top: [66, 64] }).errors).toEqual(['follows-the-top-note']);
    const returned = context(1, far, {}, { 'distance-1': 5 });
    const beside = { ...returned.beside, returned: true };
    expect(directionJudge.mark('down', { ...returned, beside }).errors).toEqual(['right-note-other-octave']);
    expect(directionJudge.mark('down', { ...returned, beside, own: {} }).errors).toEqual(['answers-the-way-back']);
  });

  test('a student is told once the distance has been shown, and has half for a semitone then', () => {
    const told = (answer: Direction, truth: Partial<Truth>, distances: number[]) => {
      const given = context(1, truth, {}, { 'distance-1': 5 });
      const shown = distances.map((target) => ({ kind: 'distance', target }) as const);
      return directionJudge.mark(answer, { ...given, beside: besideShown(given.truth, shown) });
    };
    expect(told('down', far, []).errors).toEqual([]);
    expect(told('down', far, [1]).errors).toEqual(['right-note-other-octave']);
    const semitone = { ...far, bass: [40, 41], roots: ['E', 'F'] };
    expect(told('same', semitone, []).credit).toBe(0);
    expect(told('same', semitone, [1]).credit).toBe(0.5);
  });

  test('marks lean on the distance of the same chord', () => {
    expect(directionJudge.leansOn?.(3, [])).toEqual(['distance-3']);
  });
});

describe('the way back', () => {
  const mark = (answer: Direction, chords: string, returned: boolean | null) => {
    const given = context(
      1,
      played(
        chords,
        chords
          .split(' ')
          .slice(1)
          .map(() => 'up' as const),
      ),
    );
    const beside = { ...given.beside, returned };
    return directionJudge.mark(answer, { ...given, beside }).errors;
  };

  test('fits an opposite answer in a loop of two that had come home', () => {
    expect(mark('down', 'Em D', true)).toEqual(['answers-the-way-back']);
    expect(mark('down', 'Em D', false)).toEqual([]);
    expect(mark('down', 'Em D', null)).toEqual([]);
    expect(mark('same', 'Em D', true)).toEqual(['says-stays']);
    expect(mark('down', 'Em D C', true)).toEqual([]);
  });
});

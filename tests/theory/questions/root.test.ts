import { describe, expect, test } from 'vitest';
import { QUALITIES } from '../../../shared-theory/chords.ts';
import type { Quality } from '../../../shared-theory/chords.ts';
import { besideShown } from '../../../shared-theory/questions/beside.ts';
import type { ErrorKind } from '../../../shared-theory/questions/error-kinds.ts';
import type { NeckPlace } from '../../../shared-theory/questions/question.ts';
import { rootJudge } from '../../../shared-theory/questions/root/judge.ts';
import { context } from './given.ts';

const place = (string: 5 | 6, fret: number): NeckPlace => ({ string, fret });

describe('the neck', () => {
  // Standard tuning, E2 and A2: common practice.
  test.each<[string, NeckPlace, NeckPlace[]]>([
    ['E', place(6, 0), [place(5, 7), place(6, 12)]],
    ['F', place(6, 1), [place(5, 8)]],
    ['G', place(6, 3), [place(5, 10)]],
    ['A', place(5, 0), [place(6, 5), place(5, 12)]],
    ['Bb', place(5, 1), [place(6, 6)]],
    ['A#', place(5, 1), [place(6, 6)]],
    ['B', place(5, 2), [place(6, 7)]],
    ['Cb', place(5, 2), [place(6, 7)]],
    ['C', place(5, 3), [place(6, 8)]],
    ['D', place(5, 5), [place(6, 10)]],
    ['F#', place(6, 2), [place(5, 9)]],
    ['Gb', place(6, 2), [place(5, 9)]],
  ])('%s stands first at %j and also at %j', (root, first, also) => {
    const asked = context(0, { roots: [root, 'D'] });
    expect(rootJudge.truth(asked)).toEqual(first);
    expect(rootJudge.also(asked)).toEqual(also);
    for (const right of [first, ...also]) {
      expect(rootJudge.mark(right, asked)).toEqual({ credit: 1, exact: true, errors: [] });
    }
    expect(rootJudge.chance(asked)).toBeCloseTo((1 + also.length) / 26);
  });

  test('places of one pitch class say the same', () => {
    expect(rootJudge.heard(place(6, 5))).toBe(rootJudge.heard(place(5, 12)));
    expect(rootJudge.heard(place(6, 5))).not.toBe(rootJudge.heard(place(5, 5)));
  });
});

describe('mark of a root that is not right', () => {
  // Chord on A: frets of the fifth string are semitones above the root. Credits: common practice.
  test.each<[string, Quality, number, number, number, ErrorKind | null]>([
    ['fifth of a major', 'major', 7, 64, 0.4, 'hears-the-fifth'],
    ['fifth of a minor', 'minor', 7, 64, 0.4, 'hears-the-fifth'],
    ['fourth above', 'major', 5, 64, 0.4, 'hears-the-fourth-above'],
    ['third of a major', 'major', 4, 64, 0.25, 'hears-the-third'],
    ['third of a minor', 'minor', 3, 64, 0.25, 'hears-the-third'],
    ['third of a diminished', 'diminished', 3, 64, 0.25, 'hears-the-third'],
    ['third of an augmented', 'augmented', 4, 64, 0.25, 'hears-the-third'],
    ['minor third over a major', 'major', 3, 64, 0, null],
    ['major third over a minor', 'minor', 4, 64, 0, null],
    ['a power chord has no third', 'power', 4, 64, 0, null],
    ['a suspended chord has no third', 'suspended-fourth', 3, 64, 0, null],
    ['one fret high', 'major', 1, 64, 0.25, 'one-fret-off'],
    ['one fret low', 'major', 11, 64, 0.25, 'one-fret-off'],
    ['a whole tone high', 'major', 2, 64, 0, null],
    ['the top note, a sixth above', 'major', 9, 66, 0, 'names-the-top-note'],
    ['the top note that is the fifth', 'major', 7, 64, 0.4, 'hears-the-fifth'],
    ['the sunk fifth of a diminished', 'diminished', 6, 64, 0.4, 'hears-the-fifth'],
    ['a perfect fifth over a diminished', 'diminished', 7, 65, 0, null],
    ['a perfect fifth over an augmented', 'augmented', 7, 65, 0, null],
    ['the raised fifth of an augmented', 'augmented', 8, 64, 0.4, 'hears-the-fifth'],
  ])('%s', (_case, quality, semitones, top, credit, error) => {
    const asked = context(0, { roots: ['A', 'D'], qualities: [quality, 'major'], top: [top, 66] });
    const mark = rootJudge.mark(place(5, semitones), asked);
    expect(mark).toEqual({ credit, exact: false, errors: error === null ? [] : [error] });
  });

  test.each<[string, 3 | 4 | 5 | 6 | 7 | 9, number, ErrorKind | null]>([
    ['a minor third', 3, 0, null],
    ['a major third', 4, 0, null],
    ['a fourth', 5, 0.4, 'hears-the-fourth-above'],
    ['a sunk fifth', 6, 0, null],
    ['a perfect fifth', 7, 0.4, 'hears-the-fifth'],
    ['the top note', 9, 0, null],
  ])('until the quality is shown, %s is marked alike for every quality', (_case, semitones, credit, error) => {
    for (const quality of QUALITIES) {
      const asked = context(0, { roots: ['A', 'D'], qualities: [quality, 'major'], top: [66, 66] });
      const beside = besideShown(asked.truth, [{ kind: 'root', target: 0 }]);
      expect(rootJudge.mark(place(5, semitones), { ...asked, beside })).toEqual({
        credit,
        exact: false,
        errors: error === null ? [] : [error],
      });
    }
    const asked = context(0, { roots: ['A', 'D'], qualities: ['major', 'major'] });
    const beside = besideShown(asked.truth, [{ kind: 'quality', target: 0 }]);
    expect(rootJudge.mark(place(5, 4), { ...asked, beside }).errors).toEqual(['hears-the-third']);
  });

  test('where the top note is not known, nobody names it', () => {
    expect(rootJudge.mark(place(5, 9), context(0, { roots: ['A', 'D'], top: [] })).errors).toEqual([]);
  });

  test('a chord that is not in the loop cannot be asked', () => {
    expect(rootJudge.truth(context(2))).toBeNull();
    expect(rootJudge.also(context(2))).toEqual([]);
    expect(() => rootJudge.mark(place(6, 0), context(2))).toThrow(/root-2 cannot be asked/);
  });
});

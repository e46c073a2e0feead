import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distanceNumber, lineDigit } from '../../../shared-theory/distance-line.ts';
import { intervalUp, invertInterval } from '../../../shared-theory/pitch.ts';
import { besideShown } from '../../../shared-theory/questions/beside.ts';
import { distanceJudge } from '../../../shared-theory/questions/distance/judge.ts';
import type { ErrorKind } from '../../../shared-theory/questions/error-kinds.ts';
import type { OwnAnswers } from '../../../shared-theory/questions/question.ts';
import type { Direction } from '../../../shared-theory/truth.ts';
import { context, played } from './given.ts';

/** The next chord's question, the bass going as said. */
const asked = (chords: string, direction: Direction, own: OwnAnswers = {}) =>
  context(1, played(chords, [direction]), {}, own);

describe('where the line has a chord', () => {
  test.each<[string, Direction, number | null]>([
    ['C F', 'up', 5],
    ['C F', 'down', -7],
    ['C G', 'down', -5],
    ['Em D', 'up', 10],
    ['Em D', 'down', -2],
    ['C Cm', 'same', 0],
    ['C Cm', 'up', 12],
    ['C Cm', 'down', -12],
    ['F# B', 'up', 5],
    ['Gb Cb', 'up', 5],
  ])('%s, %s: %i', (chords, direction, place) => {
    expect(distanceJudge.truth(asked(chords, direction))).toBe(place);
  });

  test('a slot that has no distance cannot be asked', () => {
    expect(distanceJudge.truth(context(0))).toBeNull();
    expect(distanceJudge.truth(context(2))).toBeNull();
    // No octave keeps the bass where it is while the root changes.
    expect(distanceJudge.truth(context(1, { directions: ['same'] }))).toBeNull();
    expect(() => distanceJudge.mark(5, context(2))).toThrow(/distance-2 cannot be asked/);
  });

  test('up to a note and down to it make an octave, and have one number', () => {
    // An interval and its inversion are twelve semitones, their counts nine: common practice, in every harmony textbook.
    for (const root of ['Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B']) {
      const [up, down] = (['up', 'down'] as const).map(
        (way) => distanceJudge.truth(asked(`C ${root}`, way)) ?? Number.NaN,
      );
      const interval = intervalUp('C', root);
      expect([up, -(down ?? 0)]).toEqual([interval.semitones, invertInterval(interval).semitones]);
      expect((up ?? 0) - (down ?? 0)).toBe(12);
      expect(distanceNumber(up ?? 0)).toBe(distanceNumber(down ?? 0));
      expect(lineDigit(up ?? 0) + (invertInterval(interval).steps + 1)).toBe(9);
    }
  });
});

describe('credit', () => {
  // What earns part: common practice in ear-training classes; of several reasons the best counts.
  test.each<[string, string, Direction, number, number]>([
    ['exact', 'C F', 'up', 5, 1],
    ['right number, other way', 'C F', 'up', -7, 0.6],
    ['right number, other way, from below', 'C F', 'down', 5, 0.6],
    ['the same note for its octave', 'C Cm', 'up', 0, 0.6],
    ['the lower octave for the upper', 'C Cm', 'up', -12, 0.6],
    ['as far, the other way', 'C D', 'up', -2, 0.6],
    ['as far, the other way, a fourth', 'C F', 'up', -5, 0.6],
    ['as far, but the same way', 'C D', 'up', 10, 0.15],
    ['digit right, flat missing', 'Em D', 'up', 11, 0.5],
    ['digit right, flat missing, below', 'Em D', 'down', -1, 0.5],
    ['digit right, sharp too many', 'C F', 'up', 6, 0.5],
    ['digit right, flat too many', 'C A', 'down', -4, 0.5],
    ['digit right, flat missing, the other way', 'Em D', 'up', -1, 0],
    ['one scale step high', 'C F', 'up', 7, 0.3],
    ['one scale step low', 'C E', 'up', 2, 0.3],
    ['one scale step off, below', 'C G', 'down', -3, 0.3],
    ['one scale step short of the octave', 'C Cm', 'up', 11, 0.3],
    ['neighbouring digits, further than a step', 'C B', 'up', 8, 0.15],
    ['one scale step off, the other way', 'C E', 'up', -10, 0],
    ['home for the second', 'C D', 'up', 0, 0],
    ['four for five', 'C G', 'up', 5, 0.3],
    ['four for five, below', 'C G', 'down', -7, 0.3],
    ['four for five, the other way', 'C G', 'down', 5, 0.6],
    ['up, and no more', 'C A', 'up', 2, 0.15],
    ['down, and no more', 'C Bb', 'down', -9, 0.15],
    ['nothing', 'C A', 'up', -1, 0],
    ['up, where it stays', 'C Cm', 'same', 4, 0],
  ])('%s', (_case, chords, direction, answer, credit) => {
    expect(distanceJudge.mark(answer, asked(chords, direction)).credit).toBe(credit);
  });

  test('the right way never earns less than nothing more, the wrong way never a number of its own', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 12 }), (place, answer) => {
        const roots = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B', 'C'];
        const up = context(1, { roots: ['C', roots[place] ?? 'C'], directions: ['up'] });
        expect(distanceJudge.mark(answer, up).credit).toBeGreaterThanOrEqual(0.15);
        expect([0, 0.6]).toContain(distanceJudge.mark(-answer, up).credit);
      }),
    );
  });
});

describe('what a wrong distance shows', () => {
  test.each<[string, string, Direction, number, ErrorKind | null]>([
    ['the right number below', 'C F', 'up', -7, 'right-note-other-octave'],
    ['home for its octave', 'C Cm', 'up', 0, 'right-note-other-octave'],
    ['the octave for home', 'C Cm', 'same', 12, 'right-note-other-octave'],

    ['from bass to bass: E to F', 'C/E F', 'up', 1, 'measures-between-the-basses'],
    ['from bass to bass, an octave off', 'C/E F', 'up', -11, 'measures-between-the-basses'],
    ['to the bass of the second chord', 'C F/A', 'up', 9, 'measures-between-the-basses'],
    ['a bass that stays', 'C F/C', 'same', 0, 'measures-between-the-basses'],
    ['a fret beside the bass', 'C/E F', 'up', 2, null],
    ['between basses that are the roots', 'C F', 'up', 1, null],

    // In the key of F, C is five and G minor two; home is no one of any owner but that.
    ['C Gm in F: two', 'C Gm', 'up', 2, 'measures-from-the-key'],
    ['C Gm in F: two, below', 'C Gm', 'up', -10, 'measures-from-the-key'],
    ['C Gm: three is no degree', 'C Gm', 'up', 4, null],
    ['Em D in G: five', 'Em D', 'down', -5, 'measures-from-the-key'],
    ['Em D in D: one', 'Em D', 'down', 0, 'measures-from-the-key'],
    ['Em D: six is no degree', 'Em D', 'down', -3, 'forgets-the-half-steps'],
    ['C F in C: the degree is the number', 'C F', 'up', 2, null],
    ['no key owns them', 'C Fm', 'up', 9, 'counts-frets-as-steps'],

    ['four for five', 'C G', 'up', 5, 'swaps-four-and-five'],
    ['five for four', 'C F', 'up', 7, 'swaps-four-and-five'],
    ['five for four, the other way', 'C F', 'up', -5, 'swaps-four-and-five'],
    ['sharp four for five', 'C G', 'up', 6, 'forgets-the-half-steps'],

    ['three for flat three of a minor home', 'Am C', 'up', 4, 'lays-the-minor-scale'],
    ['six for flat six', 'Am F', 'up', 9, 'lays-the-minor-scale'],
    ['six for flat six, below', 'Am F', 'down', -3, 'lays-the-minor-scale'],
    ['seven for flat seven', 'Am G', 'down', -1, 'lays-the-minor-scale'],
    ['of a major home', 'A G', 'down', -1, 'forgets-the-half-steps'],
    ['two for flat two is no step of the minor scale', 'Am Bb', 'up', 2, null],
    ['flat three for three is the other error', 'Am C#', 'up', 3, 'forgets-the-half-steps'],

    ['down two frets for up two', 'C D', 'up', -2, 'measures-the-other-way'],
    ['flat seven above for two above', 'C D', 'up', 10, 'measures-the-other-way'],
    ['one fret beside the mirror', 'C D', 'up', -1, null],

    ['five frets: five and a step', 'C F', 'up', 9, 'counts-frets-as-steps'],
    ['five frets: one more', 'C F', 'up', 11, null],
    ['three frets down: three', 'C A', 'down', -8, 'counts-frets-as-steps'],
    ['three frets down: four', 'C A', 'down', -7, 'counts-frets-as-steps'],
    ['three frets down: flat three is no step', 'C A', 'down', -9, 'measures-the-other-way'],
    ['five frets down: six', 'C G', 'down', -3, 'counts-frets-as-steps'],
    ['seven frets: the octave', 'C G', 'up', 12, 'counts-frets-as-steps'],
    ['two frets are too few to tell', 'C D', 'up', 4, null],
    ['two frets down are too few to tell', 'C Bb', 'down', -8, null],

    ['a fret high from three on', 'C E', 'up', 3, 'forgets-the-half-steps'],
    ['a fret low', 'C A', 'up', 8, 'forgets-the-half-steps'],
    ['a fret low, on the other side', 'C A', 'up', -4, 'forgets-the-half-steps'],
    ['the octave for seven', 'C B', 'up', 12, 'forgets-the-half-steps'],
    ['seven for the octave', 'C Cm', 'up', 11, 'forgets-the-half-steps'],
    ['home for the seven under it', 'C B', 'down', 0, 'forgets-the-half-steps'],
    ['a fret for none', 'C Cm', 'same', 1, null],
    ['flat three is under it', 'C Eb', 'up', 2, null],
    ['two frets off', 'C A', 'up', 11, null],
  ])('%s', (_case, chords, direction, answer, error) => {
    expect(distanceJudge.mark(answer, asked(chords, direction)).errors).toEqual(error === null ? [] : [error]);
  });

  test('basses count only once both may be told', () => {
    const given = asked('C/E F', 'up');
    const errors = (shown: Parameters<typeof besideShown>[1]) =>
      distanceJudge.mark(1, { ...given, beside: besideShown(given.truth, shown) }).errors;
    expect(errors([{ kind: 'bass', target: 0 }])).not.toContain('measures-between-the-basses');
    expect(errors([0, 1].map((target) => ({ kind: 'bass', target })))).toEqual(['measures-between-the-basses']);
  });

  test('a key counts only where it owns the loop and may be told', () => {
    const given = asked('Em D', 'down');
    const mark = (shown: Parameters<typeof besideShown>[1]) =>
      distanceJudge.mark(-5, { ...given, beside: besideShown(given.truth, shown) }).errors;
    expect(mark([{ kind: 'distance', target: 1 }])).toEqual([]);
    expect(mark([{ kind: 'keys', target: 0 }])).toEqual(['measures-from-the-key']);
  });

  test('a minor home counts only once its quality may be told', () => {
    const given = asked('Am C', 'up');
    const mark = (shown: Parameters<typeof besideShown>[1]) =>
      distanceJudge.mark(4, { ...given, beside: besideShown(given.truth, shown) }).errors;
    expect(mark([{ kind: 'distance', target: 1 }])).toEqual(['counts-frets-as-steps']);
    expect(mark([{ kind: 'quality', target: 0 }])).toEqual(['lays-the-minor-scale']);
  });
});

describe('counting from nought', () => {
  const truth = played('C E G A', ['up', 'up', 'up']);
  const mark = (target: number, answer: number, own: OwnAnswers) =>
    distanceJudge.mark(answer, context(target, truth, {}, own)).errors;

  test('shows on two distances, not on one', () => {
    expect(mark(1, 2, {})).toEqual([]);
    expect(mark(1, 2, { 'distance-3': 9 })).toEqual([]);
    expect(mark(1, 2, { 'distance-3': 7 })).toEqual(['starts-at-zero']);
    expect(mark(3, 7, { 'distance-1': 2 })).toEqual(['starts-at-zero']);
    expect(mark(3, 7, { 'distance-1': 3 })).toEqual([]);
  });

  test('five as four may be the two exchanged, and is no second case', () => {
    expect(mark(1, 2, { 'distance-2': 5 })).toEqual([]);
    expect(mark(2, 5, { 'distance-1': 2 })).toEqual(['swaps-four-and-five']);
    expect(mark(1, 2, { 'distance-2': 6 })).toEqual(['starts-at-zero']);
  });

  test('one distance twice is one distance', () => {
    const twice = played('C E Em', ['up', 'up']);
    expect(distanceJudge.mark(2, context(1, twice, {}, { 'distance-2': 2 })).errors).toEqual([]);
  });

  test('a student is told only where both were shown', () => {
    const given = context(1, truth, {}, { 'distance-3': 7 });
    const told = (...targets: number[]) => {
      const beside = besideShown(
        truth,
        targets.map((target) => ({ kind: 'distance', target })),
      );
      return distanceJudge.mark(2, { ...given, beside }).errors;
    };
    expect(told(1)).toEqual([]);
    expect(told(1, 3)).toEqual(['starts-at-zero']);
  });
});

describe('an answer that follows from the own direction', () => {
  const follows = { credit: 1, exact: false, errors: [], note: 'follows-own-answer' };

  test.each<[string, string, Direction, number]>([
    ['right number, the way that was said', 'C F', 'up', -7],
    ['as far, the way that was said', 'C F', 'up', -5],
    ['right number, said up', 'C F', 'down', 5],
    ['the same note, said to stay', 'C Cm', 'up', 0],
  ])('%s', (_case, chords, direction, answer) => {
    const said = answer === 0 ? 'same' : answer > 0 ? 'up' : 'down';
    expect(distanceJudge.mark(answer, asked(chords, direction, { 'direction-1': said }))).toEqual(follows);
  });

  test('only where that was wrong, and the number is not', () => {
    const right = asked('C F', 'up', { 'direction-1': 'up' });
    expect(distanceJudge.mark(-7, right)).toMatchObject({ credit: 0.6, errors: ['right-note-other-octave'] });
    const wrong = asked('C F', 'up', { 'direction-1': 'down' });
    expect(distanceJudge.mark(-8, wrong)).toMatchObject({ credit: 0, errors: ['forgets-the-half-steps'] });
    expect(distanceJudge.mark(5, wrong)).toEqual({ credit: 1, exact: true, errors: [] });
    const elsewhere = asked('C F', 'up', { 'direction-2': 'down' });
    expect(distanceJudge.mark(-7, elsewhere).credit).toBe(0.6);
  });
});

test('marks lean on the direction of the same chord and on the other distances', () => {
  const questions = [
    { id: 'direction-1', kind: 'direction', target: 1 },
    { id: 'direction-2', kind: 'direction', target: 2 },
    { id: 'distance-1', kind: 'distance', target: 1 },
    { id: 'distance-2', kind: 'distance', target: 2 },
  ] as const;
  expect(distanceJudge.leansOn?.(1, questions)).toEqual(['direction-1', 'distance-2']);
});

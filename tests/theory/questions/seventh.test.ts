import { describe, expect, test } from 'vitest';
import { QUALITIES } from '../../../shared-theory/chords.ts';
import type { ErrorKind } from '../../../shared-theory/questions/error-kinds.ts';
import { qualityJudge } from '../../../shared-theory/questions/quality/judge.ts';
import type { AskedSeventh } from '../../../shared-theory/questions/question.ts';
import { seventhAsk } from '../../../shared-theory/questions/seventh/ask.ts';
import { seventhJudge } from '../../../shared-theory/questions/seventh/judge.ts';
import { context, played } from './given.ts';

const asked = (text: string) => context(0, played(text));

describe('the right seventh', () => {
  // Common practice: a sixth or an added ninth is no seventh, nor is what is suspended.
  test.each<[string, readonly AskedSeventh[]]>([
    ['C', ['none']],
    ['C7', ['seventh']],
    ['Cmaj7', ['major-seventh']],
    ['Am7', ['seventh']],
    ['Am(maj7)', ['major-seventh']],
    ['Bm7b5', ['seventh']],
    ['C6', ['none']],
    ['Am6', ['none']],
    ['Cadd9', ['none']],
    ['Dsus4', ['none']],
    ['E5', ['none']],
    ['C/E', ['none']],
    // The bass makes the seventh: A minor over G sounds as A minor seventh does.
    ['Am/G', ['none', 'seventh']],
    ['Am/F', ['none', 'major-seventh']],
  ])('of %s: %j', (text, right) => {
    const given = asked(text);
    expect([seventhJudge.truth(given), ...seventhJudge.also(given)]).toEqual(right);
    for (const answer of right)
      expect(seventhJudge.mark(answer, given)).toEqual({ credit: 1, exact: true, errors: [] });
  });

  test('the pad has no name for a diminished one', () => {
    expect(seventhJudge.truth(asked('Bdim7'))).toBeNull();
    expect(() => seventhJudge.mark('none', asked('Bdim7'))).toThrow(/seventh-0 cannot be asked/);
    expect(seventhAsk.read('diminished-seventh', { policy: 'majors', qualities: QUALITIES })).toBeNull();
  });
});

describe('the mark of a seventh', () => {
  test.each<[string, AskedSeventh, number, ErrorKind]>([
    ['C7', 'none', 0.4, 'seventh-swallowed'],
    ['Cmaj7', 'none', 0.4, 'seventh-swallowed'],
    ['Am7', 'none', 0.4, 'seventh-swallowed'],
    ['C7', 'major-seventh', 0.2, 'sevenths-swapped'],
    ['Cmaj7', 'seventh', 0.2, 'sevenths-swapped'],
    ['C', 'seventh', 0.4, 'hears-a-seventh-too-many'],
    ['C6', 'major-seventh', 0.4, 'hears-a-seventh-too-many'],
  ])('%s, answered %s: %f', (text, answer, credit, error) => {
    expect(seventhJudge.mark(answer, asked(text))).toEqual({ credit, exact: false, errors: [error] });
  });

  // Points as teachers give them for both at once, of one: triad right and seventh missed 0.7, sevenths exchanged 0.6. Common practice.
  test.each<[string, AskedSeventh, number]>([
    ['C7', 'none', 0.7],
    ['Cmaj7', 'seventh', 0.6],
    ['C7', 'seventh', 1],
  ])('%s heard as a major chord, seventh %s: %f of the two', (text, seventh, whole) => {
    const given = asked(text);
    const earned = qualityJudge.mark('major', given).credit + seventhJudge.mark(seventh, given).credit;
    expect(earned / 2).toBeCloseTo(whole, 12);
  });
});

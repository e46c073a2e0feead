import { describe, expect, test } from 'vitest';
import type { Quality } from '../../../shared-theory/chords.ts';
import { QUALITIES } from '../../../shared-theory/chords.ts';
import type { ErrorKind } from '../../../shared-theory/questions/error-kinds.ts';
import { qualityJudge } from '../../../shared-theory/questions/quality/judge.ts';
import type { Truth } from '../../../shared-theory/truth.ts';
import { context } from './given.ts';

/** A chord of middle register and tempo, so that neither low nor slow nor bright explains a mistake. */
const PLAIN: Partial<Truth> = { bass: [48, 48], top: [64, 64], tempo: 100 };

describe('credit for a quality', () => {
  // Common practice; rows not named here earn nothing.
  const PART: Record<string, number> = {
    'diminished as minor': 0.5,
    'suspended-fourth as suspended-second': 0.7,
    'suspended-second as suspended-fourth': 0.7,
    'suspended-fourth as major': 0.3,
    'suspended-second as major': 0.3,
  };
  const pairs = QUALITIES.flatMap((truth) => QUALITIES.map((answer): [Quality, Quality] => [truth, answer]));

  test.each(pairs)('%s as %s', (truth, answer) => {
    const mark = qualityJudge.mark(answer, context(0, { ...PLAIN, qualities: [truth, truth] }));
    const credit = truth === answer ? 1 : (PART[`${truth} as ${answer}`] ?? 0);
    expect(mark.credit).toBe(credit);
    expect(mark.exact).toBe(truth === answer);
  });
});

describe('what a wrong quality shows', () => {
  test.each<[string, Quality, Quality, Partial<Truth>, ErrorKind | null]>([
    ['slow major', 'major', 'minor', { tempo: 79 }, 'slow-or-low-is-minor'],
    ['major at 80', 'major', 'minor', { tempo: 80 }, null],
    ['low major', 'major', 'minor', { bass: [44, 48] }, 'slow-or-low-is-minor'],
    ['major on A2', 'major', 'minor', { bass: [45, 48] }, null],
    ['major without a tempo', 'major', 'minor', { tempo: null }, null],
    ['fast minor', 'minor', 'major', { tempo: 121 }, 'fast-or-bright-is-major'],
    ['minor at 120', 'minor', 'major', { tempo: 120 }, null],
    ['bright minor', 'minor', 'major', { top: [69, 64] }, 'fast-or-bright-is-major'],
    ['slow minor as major', 'minor', 'major', { tempo: 60 }, null],
    ['power as major', 'power', 'major', {}, 'gives-a-mood-to-a-power-chord'],
    ['power as minor', 'power', 'minor', {}, 'gives-a-mood-to-a-power-chord'],
    ['power as suspended', 'power', 'suspended-fourth', {}, null],
    ['suspended as major', 'suspended-fourth', 'major', {}, 'gives-a-mood-to-a-suspended-chord'],
    ['suspended as minor', 'suspended-second', 'minor', {}, 'gives-a-mood-to-a-suspended-chord'],
    ['diminished as minor', 'diminished', 'minor', {}, 'hears-diminished-as-minor'],
    ['diminished as augmented', 'diminished', 'augmented', {}, 'lumps-diminished-and-augmented'],
    ['augmented as diminished', 'augmented', 'diminished', {}, 'lumps-diminished-and-augmented'],
    ['augmented as major', 'augmented', 'major', {}, null],
  ])('%s', (_case, truth, answer, heard, error) => {
    const mark = qualityJudge.mark(answer, context(0, { ...PLAIN, qualities: [truth, truth], ...heard }));
    expect(mark.errors).toEqual(error === null ? [] : [error]);
  });

  test('the first chord’s quality is carried over only where nothing nearer explains it', () => {
    const carried = context(1, { ...PLAIN, qualities: ['minor', 'major'] });
    expect(qualityJudge.mark('minor', carried).errors).toEqual(['carries-the-first-quality']);
    const slow = context(1, { ...PLAIN, tempo: 60, qualities: ['minor', 'major'] });
    expect(qualityJudge.mark('minor', slow).errors).toEqual(['slow-or-low-is-minor']);
    expect(qualityJudge.mark('power', carried).errors).toEqual([]);
  });

  test('low and bright are those of the chord asked about', () => {
    const low = { ...PLAIN, bass: [48, 40], qualities: ['major', 'major'] as const };
    expect(qualityJudge.mark('minor', context(0, low)).errors).toEqual([]);
    expect(qualityJudge.mark('minor', context(1, low)).errors).toEqual(['slow-or-low-is-minor']);
  });
});

describe('a quality that is not on the pad is right at its nearest', () => {
  test.each<[Quality, Quality[], Quality | null]>([
    ['suspended-second', ['major', 'minor', 'suspended-fourth'], 'suspended-fourth'],
    ['suspended-second', ['major', 'minor', 'power'], 'power'],
    ['suspended-second', ['major', 'minor', 'power', 'suspended-fourth'], 'suspended-fourth'],
    ['suspended-second', ['major', 'minor', 'suspended-second', 'suspended-fourth'], 'suspended-second'],
    ['suspended-fourth', ['major', 'minor', 'suspended-second'], 'suspended-second'],
    ['suspended-fourth', ['major', 'minor'], null],
    ['diminished', ['major', 'minor'], 'minor'],
    ['augmented', ['major', 'minor'], 'major'],
    ['power', ['major', 'minor'], null],
    ['major', ['minor', 'power'], null],
  ])('%s on %j is %s', (sounded, qualities, right) => {
    const asked = context(0, { ...PLAIN, qualities: [sounded, 'major'] }, { qualities });
    expect(qualityJudge.truth(asked)).toBe(right);
    if (right === null) expect(() => qualityJudge.mark('minor', asked)).toThrow(/quality-0 cannot be asked/);
    else expect(qualityJudge.mark(right, asked)).toEqual({ credit: 1, exact: true, errors: [] });
  });

  test('others keep the credit of what sounded', () => {
    const asked = context(
      0,
      { ...PLAIN, qualities: ['suspended-second', 'major'] },
      { qualities: ['major', 'suspended-fourth'] },
    );
    expect(qualityJudge.mark('major', asked).credit).toBe(0.3);
  });
});

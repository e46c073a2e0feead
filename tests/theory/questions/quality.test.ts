import { describe, expect, test } from 'vitest';
import type { Quality } from '../../../shared-theory/chords.ts';
import { QUALITIES } from '../../../shared-theory/chords.ts';
import { besideAll, besideShown } from '../../../shared-theory/questions/beside.ts';
import type { ErrorKind } from '../../../shared-theory/questions/error-kinds.ts';
import { qualityJudge } from '../../../shared-theory/questions/quality/judge.ts';
import type { OwnAnswers } from '../../../shared-theory/questions/question.ts';
import type { Truth } from '../../../shared-theory/truth.ts';
import { context, played } from './given.ts';

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

test.each<[string, Quality, Quality, number]>([
  // Pairs and scores of the triad level: mir_eval (MIT), tests/test_chord.py.
  ['C:maj, C:maj', 'major', 'major', 1],
  ['C:maj, C:aug', 'major', 'augmented', 0],
  ['C:min, C:dim', 'minor', 'diminished', 0],
  ['C:maj, C:sus2', 'major', 'suspended-second', 0],
  ['C:maj, C:sus4', 'major', 'suspended-fourth', 0],
])('triads compare as in mir_eval: %s', (_pair, truth, answer, score) => {
  const mark = qualityJudge.mark(answer, context(0, { ...PLAIN, qualities: [truth, 'major'] }));
  expect(mark.exact).toBe(score === 1);
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

describe('a quality that the pad cannot name is not asked', () => {
  test.each<[Quality, Quality[]]>([
    ['diminished', ['major', 'minor']],
    ['augmented', ['major', 'minor']],
    ['power', ['major', 'minor']],
    ['suspended-fourth', ['major', 'minor']],
    ['suspended-fourth', ['major', 'minor', 'suspended-second']],
    ['suspended-second', ['major', 'minor', 'power']],
    ['major', ['minor', 'power']],
  ])('%s on %j', (sounded, qualities) => {
    const asked = context(0, { ...PLAIN, qualities: [sounded, 'major'] }, { qualities });
    expect(qualityJudge.truth(asked)).toBeNull();
    expect(qualityJudge.also(asked)).toEqual([]);
    expect(() => qualityJudge.mark('minor', asked)).toThrow(/quality-0 cannot be asked/);
  });

  test('a suspended second is right by the name of the only suspended chord on the pad, and told by its own', () => {
    const pad = { qualities: ['major', 'minor', 'suspended-fourth'] as const };
    const asked = context(0, { ...PLAIN, qualities: ['suspended-second', 'major'] }, pad);
    expect(qualityJudge.truth(asked)).toBe('suspended-second');
    expect(qualityJudge.also(asked)).toEqual(['suspended-fourth']);
    expect(qualityJudge.mark('suspended-fourth', asked)).toEqual({ credit: 1, exact: true, errors: [] });
    expect(qualityJudge.mark('major', asked).credit).toBe(0.3);
  });

  test('where both suspended chords are on the pad, only what sounded is right', () => {
    const asked = context(0, { ...PLAIN, qualities: ['suspended-second', 'major'] });
    expect(qualityJudge.also(asked)).toEqual([]);
    expect(qualityJudge.mark('suspended-fourth', asked)).toMatchObject({ credit: 0.7, exact: false });
  });
});

describe('what a student may be told', () => {
  const told = (shown: Parameters<typeof besideShown>[1], target = 1, truth: Partial<Truth> = {}) => {
    const given = context(target, { ...PLAIN, qualities: ['minor', 'major'], ...truth });
    return { ...given, beside: besideShown(given.truth, shown) };
  };
  const [first, next, keys] = [
    { kind: 'quality', target: 0 },
    { kind: 'quality', target: 1 },
    { kind: 'keys', target: 0 },
  ] as const;

  test.each([
    ['the first quality is not shown', [next], []],
    ['the first quality is shown', [first, next], ['carries-the-first-quality']],
    ['the keys are shown with their chords', [next, keys], ['carries-the-first-quality']],
  ])('carrying the first quality over: %s', (_case, shown, errors) => {
    expect(qualityJudge.mark('minor', told(shown)).errors).toEqual(errors);
  });

  test('no question shows tempo or register', () => {
    const slow = { tempo: 60, bass: [40, 40], qualities: ['major', 'major'] as const };
    expect(qualityJudge.mark('minor', context(1, slow)).errors).toEqual(['slow-or-low-is-minor']);
    expect(qualityJudge.mark('minor', told([first, next, keys], 1, slow)).errors).toEqual([]);
  });

  test('a changed tempo is blamed for nothing, the register still is', () => {
    const unsteady = (truth: Partial<Truth>) => {
      const given = context(0, { ...PLAIN, ...truth });
      return { ...given, beside: besideAll(given.truth, { steady: false }) };
    };
    const slow = { tempo: 60, qualities: ['major', 'major'] as const };
    expect(qualityJudge.mark('minor', unsteady(slow)).errors).toEqual([]);
    expect(qualityJudge.mark('minor', unsteady({ ...slow, bass: [40, 40] })).errors).toEqual(['slow-or-low-is-minor']);
  });
});

describe('chords with more than a triad, or over another bass', () => {
  const at = (text: string, own: OwnAnswers = {}, more: Partial<Truth> = {}) =>
    context(0, { ...played(text), bass: [48], tempo: 100, ...more }, {}, own);

  // A seventh, a sixth and a ninth change nothing of the triad: common practice.
  test.each<[string, Quality]>([
    ['C7', 'major'],
    ['Cmaj7', 'major'],
    ['C6', 'major'],
    ['Cadd9', 'major'],
    ['C/E', 'major'],
    ['Am7', 'minor'],
    ['Am6', 'minor'],
    ['Am(maj7)', 'minor'],
    ['Bm7b5', 'diminished'],
    ['Bdim7', 'diminished'],
  ])('%s is %s', (text, quality) => {
    const right = QUALITIES.filter((answer) => qualityJudge.mark(answer, at(text)).exact);
    expect(right).toEqual([quality]);
    expect(qualityJudge.chance(at(text))).toBe(1 / QUALITIES.length);
  });

  test.each<[string, string, Quality, OwnAnswers, number, ErrorKind | null]>([
    ['a major chord on its third', 'C/E', 'minor', {}, 0, 'hears-the-inversion-as-minor'],
    ['narrowly not: on its fifth', 'C/G', 'minor', {}, 0, null],
    ['narrowly not: on its root', 'C', 'minor', {}, 0, null],
    ['the major on top', 'Am7', 'major', {}, 0, 'hears-the-major-on-top'],
    ['on its own root', 'Am7', 'major', { 'root-0': { string: 5, fret: 0 } }, 0, 'hears-the-major-on-top'],
    ['on the root of the major', 'Am7', 'major', { 'root-0': { string: 5, fret: 3 } }, 0, 'hears-the-major-on-top'],
    ['narrowly not: on another root', 'Am7', 'major', { 'root-0': { string: 6, fret: 3 } }, 0, null],
    ['narrowly not: no seventh', 'Am', 'major', {}, 0, null],
    ['narrowly not: a major seventh', 'Am(maj7)', 'major', {}, 0, null],
    ['diminished with a seventh', 'Bm7b5', 'minor', {}, 0.5, 'hears-diminished-as-minor'],
    ['augmented for diminished with a seventh', 'Bdim7', 'augmented', {}, 0, 'lumps-diminished-and-augmented'],
  ])('%s: %s as %s', (_case, text, answer, own, credit, error) => {
    const { credit: earned, errors } = qualityJudge.mark(answer, at(text, own));
    expect([earned, errors]).toEqual([credit, error === null ? [] : [error]]);
  });

  test('slow goes before the inversion, fast before the major on top', () => {
    expect(qualityJudge.mark('minor', at('C/E', {}, { tempo: 60 })).errors).toEqual(['slow-or-low-is-minor']);
    expect(qualityJudge.mark('major', at('Am7', {}, { tempo: 150 })).errors).toEqual(['fast-or-bright-is-major']);
  });

  test('nothing of bass or seventh before they may be told', () => {
    for (const [text, answer] of [
      ['C/E', 'minor'],
      ['Am7', 'major'],
    ] as const) {
      const given = at(text);
      const shown = { ...given, beside: besideShown(given.truth, [{ kind: 'quality', target: 0 }]) };
      expect(qualityJudge.mark(answer, shown).errors).toEqual([]);
    }
  });
});

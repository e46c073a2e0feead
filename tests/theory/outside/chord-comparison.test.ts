import { describe, expect, test } from 'vitest';
import type { Quality } from '../../../shared-theory/chords.ts';
import { chordPitchClasses, QUALITIES } from '../../../shared-theory/chords.ts';
import { candidateKeys } from '../../../shared-theory/candidates.ts';
import { diatonicChart } from '../../../shared-theory/degrees.ts';
import { usualKey } from '../../../shared-theory/keys.ts';
import { pitchClass } from '../../../shared-theory/pitch.ts';
import { numeralJudge } from '../../../shared-theory/questions/numeral/judge.ts';
import { qualityJudge } from '../../../shared-theory/questions/quality/judge.ts';
import { neckPlaces } from '../../../shared-theory/questions/root/ask.ts';
import { rootJudge } from '../../../shared-theory/questions/root/judge.ts';
import { pitchClassAt } from '../../../shared-theory/questions/root/places.ts';
import { context } from '../questions/given.ts';

/*
 * Levels at which two chords are held to be the same, as the public evaluations of chord finding compare them (mir_eval: Raffel
 * et al., ISMIR 2014, chord comparisons; pairs below are those of its own tests): by root; by root and third, where a chord
 * without a minor third counts as one with a major third; by root and all notes up to the fifth; by root and all notes; and, by
 * MIREX, three notes in common at least.
 */
type Label = { readonly root: number; readonly notes: readonly number[] };

/** Semitones above the root, as the published shorthands have them. */
const SHORTHAND: Readonly<Record<string, readonly number[]>> = {
  maj: [0, 4, 7],
  min: [0, 3, 7],
  dim: [0, 3, 6],
  aug: [0, 4, 8],
  '5': [0, 7],
  sus4: [0, 5, 7],
  sus2: [0, 2, 7],
  '7': [0, 4, 7, 10],
  maj7: [0, 4, 7, 11],
  min7: [0, 3, 7, 10],
  minmaj7: [0, 3, 7, 11],
  maj6: [0, 4, 7, 9],
  min6: [0, 3, 7, 9],
  hdim7: [0, 3, 6, 10],
};
const labelled = (label: string): Label => {
  const [root = '', shorthand = ''] = label.split(':');
  return { root: pitchClass(root), notes: SHORTHAND[shorthand] ?? [] };
};

const LEVELS = {
  root: (one: Label, other: Label) => one.root === other.root,
  thirds: (one: Label, other: Label) => one.root === other.root && one.notes.includes(3) === other.notes.includes(3),
  triads: (one: Label, other: Label) => {
    const upToFifth = ({ notes }: Label) => notes.filter((note) => note < 8).join();
    return one.root === other.root && upToFifth(one) === upToFifth(other);
  },
  tetrads: (one: Label, other: Label) => one.root === other.root && one.notes.join() === other.notes.join(),
  mirex: (one: Label, other: Label) => {
    const sounds = ({ root, notes }: Label) => notes.map((note) => (root + note) % 12);
    return sounds(one).filter((sound) => sounds(other).includes(sound)).length >= 3;
  },
};

describe('the published levels', () => {
  test.each<[keyof typeof LEVELS, string, string, boolean]>([
    ['thirds', 'C:maj', 'C:aug', true],
    ['thirds', 'C:maj', 'C:dim', false],
    ['thirds', 'C:min', 'C:dim', true],
    ['thirds', 'C:maj', 'C:sus4', true],
    ['thirds', 'G:min', 'G:sus2', false],
    ['thirds', 'C:maj', 'G:maj', false],
    ['thirds', 'C:min', 'C:hdim7', true],
    ['thirds', 'C:min', 'C:min7', true],
    ['thirds', 'C:maj', 'C:maj6', true],
    ['thirds', 'F:maj', 'F:min6', false],
    ['thirds', 'C:maj', 'C:minmaj7', false],
    ['thirds', 'A:maj', 'A:7', true],
    ['triads', 'C:min', 'C:min7', true],
    ['triads', 'C:maj', 'C:7', true],
    ['triads', 'C:maj', 'C:aug', false],
    ['triads', 'C:min', 'C:dim', false],
    ['triads', 'C:maj', 'C:sus2', false],
    ['triads', 'C:maj', 'C:sus4', false],
    ['triads', 'G:min', 'G:minmaj7', true],
    ['triads', 'C:maj', 'G:maj', false],
    ['triads', 'C:min', 'C:hdim7', false],
    ['triads', 'C:min', 'C:min6', true],
    ['tetrads', 'C:min', 'C:min7', false],
    ['tetrads', 'C:maj', 'C:maj6', false],
    ['tetrads', 'G:min', 'G:sus2', false],
    ['tetrads', 'C:maj', 'G:maj', false],
    ['tetrads', 'C:min', 'C:hdim7', false],
    ['tetrads', 'C:min', 'C:minmaj7', false],
    ['mirex', 'C:maj', 'C:aug', false],
    ['mirex', 'C:maj', 'C:dim', false],
    ['mirex', 'C:min', 'C:dim', false],
    ['mirex', 'C:maj', 'C:5', false],
    ['mirex', 'C:maj', 'C:sus4', false],
    ['mirex', 'C:min', 'C:min7', true],
    ['mirex', 'C:maj', 'C:maj6', true],
    ['mirex', 'F:maj', 'F:min6', false],
    ['mirex', 'C:maj7', 'C:minmaj7', true],
    ['mirex', 'A:maj', 'A:7', true],
  ])('%s: %s and %s, %s', (level, reference, estimate, same) => {
    expect(LEVELS[level](labelled(reference), labelled(estimate))).toBe(same);
  });

  test('our chords have the notes of the published shorthands', () => {
    const shorthand: Readonly<Record<Quality, string>> = {
      major: 'maj',
      minor: 'min',
      diminished: 'dim',
      augmented: 'aug',
      power: '5',
      'suspended-fourth': 'sus4',
      'suspended-second': 'sus2',
    };
    for (const quality of QUALITIES) {
      expect(chordPitchClasses({ root: 'C', quality })).toEqual(SHORTHAND[shorthand[quality]]);
    }
  });
});

const labelOf = (root: string, quality: Quality): Label => ({
  root: pitchClass(root),
  notes: chordPitchClasses({ root: 'C', quality }),
});

describe('our mark of a quality, on the published levels', () => {
  const pairs = QUALITIES.flatMap((sounded) => QUALITIES.map((answer) => ({ sounded, answer })));
  const credit = (sounded: Quality, answer: Quality) =>
    qualityJudge.mark(answer, context(0, { qualities: [sounded, 'major'] })).credit;

  test('full where the triads are equal, and there alone', () => {
    for (const { sounded, answer } of pairs) {
      const same = LEVELS.triads(labelOf('E', sounded), labelOf('E', answer));
      expect([sounded, answer, credit(sounded, answer) === 1]).toEqual([sounded, answer, same]);
      expect(LEVELS.tetrads(labelOf('E', sounded), labelOf('E', answer))).toBe(same);
    }
  });

  test('nothing where the thirds differ: part credit only for chords whose thirds are equal', () => {
    for (const { sounded, answer } of pairs) {
      if (LEVELS.thirds(labelOf('E', sounded), labelOf('E', answer))) continue;
      expect([sounded, answer, credit(sounded, answer)]).toEqual([sounded, answer, 0]);
    }
  });

  test('A:min and A:dim, equal by thirds: diminished heard as minor earns half, and is named', () => {
    expect(LEVELS.thirds(labelled('A:min'), labelled('A:dim'))).toBe(true);
    const mark = qualityJudge.mark('minor', context(0, { roots: ['A', 'D'], qualities: ['diminished', 'major'] }));
    expect(mark).toEqual({ credit: 0.5, exact: false, errors: ['hears-diminished-as-minor'] });
  });

  // Where the thirds are equal and the triads are not, the published level says the same; we tell these apart.
  test('what earns part credit among equal thirds', () => {
    const part = pairs
      .filter(({ sounded, answer }) => LEVELS.thirds(labelOf('E', sounded), labelOf('E', answer)) && sounded !== answer)
      .map(({ sounded, answer }) => [sounded, answer, credit(sounded, answer)] as const)
      .filter(([, , earned]) => earned > 0);
    expect(part).toEqual([
      ['suspended-fourth', 'major', 0.3],
      ['suspended-fourth', 'suspended-second', 0.7],
      ['diminished', 'minor', 0.5],
      ['suspended-second', 'major', 0.3],
      ['suspended-second', 'suspended-fourth', 0.7],
    ]);
  });
});

test('a root is right where the roots are equal on the published level, on any string, in any octave and spelling', () => {
  for (const root of [
    'C',
    'B#',
    'C#',
    'Db',
    'D',
    'Eb',
    'D#',
    'E',
    'Fb',
    'F',
    'F#',
    'Gb',
    'G',
    'Ab',
    'A',
    'Bb',
    'B',
    'Cb',
  ]) {
    for (const place of neckPlaces()) {
      const same = LEVELS.root(labelOf(root, 'minor'), { root: pitchClassAt(place), notes: [] });
      expect(rootJudge.mark(place, context(0, { roots: [root, 'D'] })).exact).toBe(same);
    }
  }
});

describe('our mark of a numeral, on the published levels', () => {
  /** The chord of a numeral of G major: the published comparison is of chords, in the one key that owns C and D. */
  const chart = diatonicChart(usualKey('7M'));
  const NUMERALS = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'].flatMap((degree, step) =>
    [
      [degree, 'maj'],
      [degree.toLowerCase(), 'min'],
      [`${degree.toLowerCase()}o`, 'dim'],
      [`${degree}+`, 'aug'],
    ].map(([text = '', shorthand = '']) => ({
      text,
      label: { root: pitchClass(chart[step]?.chord.root ?? ''), notes: SHORTHAND[shorthand] ?? [] },
    })),
  );
  const [four, five] = [chart[3], chart[4]].map((place) => place?.chord);
  const truth = { roots: [four?.root ?? '', five?.root ?? ''], qualities: ['major', 'major'] as const };

  test('full where the triads are equal, half where the roots alone are, nothing else', () => {
    expect(
      candidateKeys(
        [four, five].flatMap((chord) => chord ?? []),
        'majors',
      ).map(({ name }) => name),
    ).toEqual(['G major']);
    for (const { text, label } of NUMERALS) {
      const sounded = labelOf(truth.roots[0] ?? '', 'major');
      // The second chord is answered right, so that the reading in G is the nearest.
      const { credit } = numeralJudge.mark([text, 'V'], context(0, truth));
      const own = credit * 2 - 1;
      expect([text, own]).toEqual([text, LEVELS.triads(sounded, label) ? 1 : LEVELS.root(sounded, label) ? 0.5 : 0]);
    }
  });
});

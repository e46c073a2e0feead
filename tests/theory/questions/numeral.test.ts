import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Quality } from '../../../shared-theory/chords.ts';
import { chordSymbol, parseChord, QUALITIES } from '../../../shared-theory/chords.ts';
import { candidateKeys } from '../../../shared-theory/candidates.ts';
import { diatonicChart } from '../../../shared-theory/degrees.ts';
import { usualKey } from '../../../shared-theory/keys.ts';
import { pitchClass } from '../../../shared-theory/pitch.ts';
import type { ErrorKind, NoteKind } from '../../../shared-theory/questions/error-kinds.ts';
import { numeralAsk } from '../../../shared-theory/questions/numeral/ask.ts';
import { numeralJudge } from '../../../shared-theory/questions/numeral/judge.ts';
import { readNumeral, writeNumeral } from '../../../shared-theory/questions/numeral/numerals.ts';
import type { OwnAnswers } from '../../../shared-theory/questions/question.ts';
import { questionsOf } from '../../../shared-theory/questions/round-questions.ts';
import { seededRandom } from '../../../shared-theory/random.ts';
import { POLICIES } from '../../../shared-theory/truth.ts';
import { anyVamp } from '../../support/theory-arbitraries.ts';
import { context, SETTINGS } from './given.ts';

const loop = (text: string) => {
  const chords = text.split(' ').map((symbol) => parseChord(symbol));
  return {
    roots: chords.map(({ root }) => root),
    qualities: chords.map(({ quality }) => quality),
    chords: chords.map(chordSymbol),
  };
};
const asked = (text: string, own: OwnAnswers = {}) => context(0, loop(text), {}, own);
const said = (answer: string) => (answer === '' ? [] : answer.split(' '));
const mark = (text: string, answer: string, own: OwnAnswers = {}) => numeralJudge.mark(said(answer), asked(text, own));
const right = (text: string) => [numeralJudge.truth(asked(text)), ...numeralJudge.also(asked(text))];

/** Every numeral that the pad can write. */
const NUMERALS = ['', 'b', '#'].flatMap((sign) =>
  ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'].flatMap((degree) =>
    [degree, degree.toLowerCase()].flatMap((cased) => ['', 'o', '+'].map((suffix) => sign + cased + suffix)),
  ),
);

describe('right numerals', () => {
  // In the key that stands first on the flat side, then in the others, then counted in their relative minors, without and with
  // flats, then from the first chord in its mode, and from another home that makes them dorian or mixolydian: common practice.
  test.each([
    ['Em D', 'vi V, ii I, i VII, i bVII, iv III, iv bIII'],
    ['C D', 'IV V, VI VII, bVI bVII, I II, bVII I'],
    ['G F', 'V IV, VII VI, bVII bVI, I bVII'],
    ['Am7 D7', 'ii V, iv VII, iv bVII, i IV, v I'],
    // Another name for what sounds: Am over F is F major seventh.
    ['Am/F G', 'vi V, IV V, i VII, VI VII, i bVII, bVI bVII, ii I, bVII I'],
    ['Am F C G', 'vi IV I V, i VI III VII, i bVI bIII bVII, ii bVII IV I'],
    ['Bdim C', 'viio I, iio III, iio bIII'],
    ['F# B', 'V I, I IV, VII III, bVII bIII, III VI, bIII bVI'],
    // Where no third sounds either case is right: the case of the key's own triad stands first.
    [
      'E5 D',
      'vi V, VI V, ii I, II I, V IV, v IV, i VII, I VII, i bVII, I bVII, iv III, IV III, iv bIII, IV bIII, VII VI, vii VI, bVII bVI, bvii bVI',
    ],
  ])('%s: %s', (text, expected) => {
    expect(
      right(text)
        .map((answer) => answer?.join(' '))
        .join(', '),
    ).toBe(expected);
  });

  test('one for each different chord in order of first sounding, the first four', () => {
    expect(right('Am F Am G')[0]).toEqual(['vi', 'IV', 'V']);
    expect(right('Am A#5 Am Bb5').filter((answer) => answer?.length === 2)).toEqual([
      ['iii', 'IV'],
      ['iii', 'iv'],
      ['v', 'VI'],
      ['v', 'vi'],
      ['v', 'bVI'],
      ['v', 'bvi'],
      ['i', 'bII'],
      ['i', 'bii'],
    ]);
    // B flat visits C major.
    expect(right('C Dm Em F Bb')[0]).toEqual(['I', 'ii', 'iii', 'IV']);
    // All five chords decide the key, four are written.
    expect(right('C Dm Em G F')[0]).toEqual(['I', 'ii', 'iii', 'V']);
    expect(right('C Dm C Dm C F').slice(0, 2)).toEqual([
      ['V', 'vi', 'I'],
      ['I', 'ii', 'IV'],
    ]);
  });

  // What no key owns as it stands: its raised seventh, its visitor, its blues. Common practice.
  test.each([
    ['Am E', 'i V, iv I, vi III'],
    ['C Fm', 'I iv, V i, III vi'],
    ['B C', 'V VI, V bVI, VII I'],
    ['C E', 'I III, III V, bIII V, bVI I'],
    ['D F G', 'I bIII IV, V bVII I'],
    ['Am E7', 'i V, vi III'],
    ['Am G#dim7', 'i viio'],
    ['A7 D7 E7', 'I IV V'],
  ])('%s, which no key owns: %s', (text, expected) => {
    expect(
      right(text)
        .map((answer) => answer?.join(' '))
        .join(', '),
    ).toBe(expected);
  });

  test.each(['C F#', 'Caug F#dim'])('%s cannot be asked: no key has it', (text) => {
    expect(numeralJudge.truth(asked(text))).toBeNull();
    expect(numeralJudge.also(asked(text))).toEqual([]);
    expect(() => mark(text, 'I V')).toThrow(/numeral-0 cannot be asked/);
  });

  test('the same under both policies, and every one is an answer of the pad', () => {
    fc.assert(
      fc.property(anyVamp, (chords) => {
        const truth = { roots: chords.map(({ root }) => root), qualities: chords.map(({ quality }) => quality) };
        const [majors, relatives] = POLICIES.map((policy) => {
          const given = context(0, truth, { policy });
          return [numeralJudge.truth(given), ...numeralJudge.also(given)];
        });
        expect(majors).toEqual(relatives);
        const keys = (majors ?? []).flatMap((answer) => (answer ? [numeralAsk.key(answer)] : []));
        expect(new Set(keys).size).toBe(keys.length);
        for (const answer of majors ?? []) {
          if (answer) expect(numeralAsk.read(answer, SETTINGS)).toEqual(answer);
        }
      }),
    );
  });

  test('a loop of any two triads of any key reads as that key’s chart has them', () => {
    for (const key of Array.from({ length: 24 }, (_, id) => usualKey(`${id % 12}${id < 12 ? 'M' : 'm'}`))) {
      const chart = diatonicChart(key);
      for (const one of chart) {
        for (const other of chart) {
          if (one === other) continue;
          const chords = [one.chord, other.chord];
          const truth = { roots: chords.map(({ root }) => root), qualities: chords.map(({ quality }) => quality) };
          expect(numeralJudge.mark([one.numeral, other.numeral], context(0, truth)).exact).toBe(true);
        }
      }
    }
  });
});

describe('the mark of numerals', () => {
  type Row = [string, string, number, ErrorKind | null, NoteKind | null];
  test.each<Row>([
    ['Em D', 'vi V', 1, null, null],
    ['Em D', 'ii I', 1, null, 'right-in-another-key'],
    ['Em D', 'i VII', 1, null, 'other-minor-frame'],
    ['Em D', 'iv bIII', 1, null, 'other-minor-frame'],
    ['C Am', 'I vi', 1, null, 'right-in-another-key'],
    // Degrees of two keys: one of them fits.
    ['Em D', 'vi I', 0.5, null, null],
    ['Em D', 'iii II', 0, null, null],
    // The right degree in the wrong case, and narrowly not: the degree is wrong as well.
    ['Em D', 'VI V', 0.75, 'numeral-case-wrong', null],
    ['Em D', 'vi v', 0.75, 'numeral-case-wrong', null],
    ['Em D', 'VI v', 0.5, 'numeral-case-wrong', null],
    ['Em D', 'I bVII', 0.75, 'numeral-case-wrong', null],
    ['Em D', 'VI IV', 0.25, null, null],
    // The case is right, the sign after it is not.
    ['Bdim C', 'vii I', 0.75, null, null],
    ['Bdim C', 'VII I', 0.75, 'numeral-case-wrong', null],
    ['Bdim C', 'VIIo I', 0.75, 'numeral-case-wrong', null],
    ['Em D', 'vio V', 0.75, null, null],
    // A flat before one numeral, and none before the other.
    ['F G', 'VI bVII', 0.75, 'flat-sign-missing', null],
    ['F G', 'bVI VII', 0.75, 'flat-sign-missing', null],
    ['Am F G', 'i bVI VII', 2.5 / 3, 'flat-sign-missing', null],
    // Narrowly not: no flat anywhere, a flat too many, another degree.
    ['F G', 'VI VII', 1, null, 'other-minor-frame'],
    ['F G', 'IV bV', 0.5, null, null],
    ['F G', 'bVI VI', 0.5, null, null],
    // Counted from the first chord, which is the one of no owner and of no relative.
    ['Bdim C', 'io bII', 0, 'takes-home-for-one', null],
    ['F Bdim', 'I bvo', 0.5, 'takes-home-for-one', null],
    // In the mode that the first chord makes of the scale.
    ['C D', 'I II', 1, null, 'counted-from-a-modal-home'],
    ['Em F', 'i bII', 1, null, 'counted-from-a-modal-home'],
    ['Em F', 'i II', 0.75, 'flat-sign-missing', null],
    ['F Bdim', 'I #ivo', 1, null, 'counted-from-a-modal-home'],
    // Narrowly not: the first chord is the one of an owner, or of its relative; or a numeral is another.
    ['C G', 'I V', 1, null, null],
    ['C G', 'IV I', 1, null, 'right-in-another-key'],
    ['Em D', 'i VII', 1, null, 'other-minor-frame'],
    ['C D', 'I III', 0.5, null, null],
    // Counted from a home that makes them mixolydian or dorian, and narrowly not.
    ['D C', 'I bVII', 1, null, 'counted-from-a-modal-home'],
    ['Am D', 'i IV', 1, null, 'counted-from-a-modal-home'],
    ['Dm Em', 'i ii', 1, null, 'counted-from-a-modal-home'],
    ['Dm F G', 'i III IV', 1, null, 'counted-from-a-modal-home'],
    ['Dm F G', 'i bIII IV', 1, null, 'counted-from-a-modal-home'],
    ['D C', 'I bvii', 0.75, 'numeral-case-wrong', null],
    ['D C', 'I VII', 0.75, 'flat-sign-missing', null],
    // Counted from the first chord without its flat: one fret too high.
    ['Bdim C', 'io II', 0, 'flat-sign-missing', null],
    // Narrowly not: the missing sign is a sharp.
    ['F Bdim', 'I ivo', 0.5, null, null],
    // Too few bars, too many.
    ['Em D', 'vi', 0.5, null, null],
    ['Em D', 'VI', 0.25, null, null],
    ['Em D', 'vi V I', 2 / 3, null, null],
    ['Em D', 'VI V I', 0.5, null, null],
    ['C', 'I', 1, null, 'right-in-another-key'],
    ['C', 'i', 0.5, 'numeral-case-wrong', null],
  ])('%s, answered %s: %f', (text, answer, credit, error, note) => {
    const { credit: earned, exact, errors, note: beside } = mark(text, answer);
    expect(earned).toBeCloseTo(credit, 12);
    expect({ exact, errors, beside: beside ?? null }).toEqual({
      exact: credit === 1,
      errors: error === null ? [] : [error],
      beside: note,
    });
  });

  test.each<[string, string, ErrorKind]>([
    // The case before the flat. Home for one goes before both, yet no answer shows it with either: where a degree is right
    // counted from the first chord, that chord is the one of an owner.
    ['F G Am', 'bVI VII I', 'numeral-case-wrong'],
    ['F G Am', 'bVI VII i', 'flat-sign-missing'],
  ])('%s, answered %s: %s goes before', (text, answer, error) => {
    expect(mark(text, answer).errors).toEqual([error]);
  });

  test('home for one and a wrong case or flat in some key are never shown by one answer', () => {
    const plain = NUMERALS.filter((numeral) => !/[o+]$/.test(numeral));
    const loops = ['Bdim C', 'C D', 'D C', 'Em F', 'Am D', 'Dm Em', 'C Bm', 'Em Dm', 'C Gm', 'D5 C5'];
    for (const text of loops) {
      const degrees = right(text).map((answer) => (answer ?? []).map((each) => readNumeral(each).degree).join(' '));
      const given = asked(text);
      for (const one of plain) {
        for (const other of plain) {
          const { errors } = numeralJudge.mark([one, other], given);
          if (!errors.includes('takes-home-for-one')) continue;
          expect(degrees).not.toContain(`${readNumeral(one).degree} ${readNumeral(other).degree}`);
        }
      }
    }
  });

  test('every error and note of the question is shown by some answer of two numerals', () => {
    const shown = new Set<string>();
    for (const text of ['F G', 'D C', 'Em D', 'Bdim C']) {
      const given = asked(text, { 'quality-0': 'minor', 'quality-1': 'minor' });
      for (const one of NUMERALS) {
        for (const other of NUMERALS) {
          const { errors, note } = numeralJudge.mark([one, other], given);
          for (const each of [...errors, ...(note ? [note] : [])]) shown.add(each);
        }
      }
    }
    expect([...shown].toSorted()).toEqual([
      'counted-from-a-modal-home',
      'flat-sign-missing',
      'follows-own-answer',
      'numeral-case-wrong',
      'other-minor-frame',
      'right-in-another-key',
      'takes-home-for-one',
    ]);
  });
});

describe('beside the student’s own answers', () => {
  const FOLLOWS = { credit: 1, exact: false, errors: [], note: 'follows-own-answer' };

  test.each<[string, string, OwnAnswers]>([
    ['the case of the own wrong quality', 'vi v', { 'quality-1': 'minor' }],
    ['of both', 'VI v', { 'quality-0': 'major', 'quality-1': 'minor' }],
    ['in another key that owns the loop', 'ii i', { 'quality-1': 'minor' }],
    ['with its sign', 'vi vo', { 'quality-1': 'diminished' }],
    ['either case of a chord heard without a third', 'VI V', { 'quality-0': 'power' }],
    // Em Dm: iii ii of C major, v iv of A minor.
    ['the numerals of the own chords', 'iii ii', { 'quality-0': 'minor', 'quality-1': 'minor', 'distance-1': -2 }],
    ['the relative minor of the own chords', 'v iv', { 'quality-0': 'minor', 'quality-1': 'minor', 'distance-1': 10 }],
    // Em A: ii V of D major.
    ['at the own distance', 'ii V', { 'quality-0': 'minor', 'quality-1': 'major', 'distance-1': 5 }],
  ])('%s follows', (_case, answer, own) => {
    expect(mark('Em D', answer, own)).toEqual(FOLLOWS);
    expect(mark('Em D', answer).exact).toBe(false);
  });

  test.each<[string, string, OwnAnswers, number, ErrorKind | null]>([
    ['the own quality was right', 'vi v', { 'quality-1': 'major' }, 0.75, 'numeral-case-wrong'],
    ['the case is neither', 'VI v', { 'quality-1': 'minor' }, 0.75, 'numeral-case-wrong'],
    ['the degree is wrong', 'vi iv', { 'quality-1': 'minor' }, 0.5, null],
    ['the other is wrong', 'iii v', { 'quality-1': 'minor' }, 0.5, null],
    ['one of the own answers is missing', 'iii ii', { 'quality-0': 'minor', 'quality-1': 'minor' }, 0, null],
    [
      'it is not what the own chords give',
      'iii II',
      { 'quality-0': 'minor', 'quality-1': 'minor', 'distance-1': -2 },
      0,
      null,
    ],
  ])('not where %s', (_case, answer, own, credit, error) => {
    const { credit: earned, exact, errors, note } = mark('Em D', answer, own);
    expect(earned).toBeCloseTo(credit, 12);
    expect({ exact, errors, note }).toEqual({ exact: false, errors: error ? [error] : [], note: undefined });
  });

  test('the right answer is exact whatever the student answered before', () => {
    const own = { 'quality-0': 'major', 'quality-1': 'minor', 'distance-1': 5 } as const;
    expect(mark('Em D', 'vi V', own)).toEqual({ credit: 1, exact: true, errors: [] });
  });

  test('a chord that comes back takes the answer to its first sounding', () => {
    expect(mark('Em D Em C', 'vi v IV', { 'quality-1': 'minor' }).note).toBe('follows-own-answer');
    expect(mark('Em C D C', 'vi IV v', { 'quality-2': 'minor' }).note).toBe('follows-own-answer');
    expect(mark('Em C D C', 'vi IV v', { 'quality-3': 'minor' }).note).toBeUndefined();
  });

  test('it reads the qualities, sevenths and distances of the round, and no other answer', () => {
    const questions = questionsOf({ chords: ['a', 'b'], grooveKnown: true, settlers: 2 });
    const read = ['quality-0', 'seventh-0', 'distance-1', 'quality-1', 'seventh-1'];
    expect(numeralJudge.leansOn?.(0, questions).filter((id) => !id.startsWith('root'))).toEqual(read);
  });
});

describe('numerals in general', () => {
  const answers = fc.array(fc.constantFrom(...NUMERALS), { minLength: 1, maxLength: 4 });
  const owned = anyVamp.filter((chords) => candidateKeys(chords, 'majors').length > 0);

  test('read back as written', () => {
    for (const numeral of NUMERALS) {
      expect(numeralAsk.read([numeral], context(0).settings)).toEqual([numeral]);
      expect(writeNumeral(readNumeral(numeral))).toBe(numeral);
    }
    for (const text of ['', 'VIII', 'Iv', 'bbVII', 'vii°', 'I5', 'iv+o'])
      expect(() => readNumeral(text)).toThrow(RangeError);
  });

  test('the spelling of the chords changes no mark', () => {
    for (const [sharp, flat] of [
      ['F# B', 'Gb Cb'],
      ['C# G#m', 'Db Abm'],
      ['D#m F#', 'Ebm Gb'],
    ] as const) {
      fc.assert(
        fc.property(answers, (answer) => {
          expect(numeralJudge.mark(answer, asked(sharp))).toEqual(numeralJudge.mark(answer, asked(flat)));
        }),
      );
    }
  });

  test('credit lies within 0 and 1, is exact only where it is 1; moving all chords by the same step changes nothing', () => {
    fc.assert(
      fc.property(owned, answers, fc.nat(11), (chords, answer, step) => {
        const qualities: readonly Quality[] = chords.map(({ quality }) => quality);
        const truth = { roots: chords.map(({ root }) => root), qualities };
        const marked = numeralJudge.mark(answer, context(0, truth));
        expect(marked.credit).toBeGreaterThanOrEqual(0);
        expect(marked.credit).toBeLessThanOrEqual(1);
        expect(marked.exact).toBe(marked.credit === 1);
        expect(marked.errors.length).toBeLessThanOrEqual(marked.exact ? 0 : 1);
        const roots = truth.roots.map((root) => usualKey(`${(pitchClass(root) + step) % 12}M`).tonic);
        const { note: _note, ...elsewhere } = numeralJudge.mark(answer, context(0, { roots, qualities }));
        const { note: _other, ...here } = marked;
        expect(elsewhere).toEqual(here);
      }),
      { numRuns: 300 },
    );
  });

  test.each([
    ['C D', 1 / 49],
    ['Em D', 2 / 49],
    ['C Am', 3 / 49],
    ['C', 3 / 7],
    ['Am F C G', 1 / 7 ** 4],
    ['C C5', 3 / 49],
  ])('%s: dice on the chart of a major key are right with a chance of %f', (text, chance) => {
    const given = asked(text);
    expect(numeralJudge.chance(given)).toBeCloseTo(chance, 9);
    const chart = ['I', 'ii', 'iii', 'IV', 'V', 'vi', 'viio'];
    const bars = numeralJudge.truth(given)?.length ?? 0;
    const random = seededRandom(23);
    const draws = 10_000;
    let exact = 0;
    for (let draw = 0; draw < draws; draw += 1) {
      const answer = Array.from({ length: bars }, () => chart[Math.floor(random() * 7)] ?? '');
      if (numeralJudge.mark(answer, given).exact) exact += 1;
    }
    expect(Math.abs(exact / draws - chance)).toBeLessThan(4 * Math.sqrt((chance * (1 - chance)) / draws) + 1e-9);
  });

  test('what more the chord has may stand behind a numeral, and changes nothing', () => {
    const read = (text: string) => numeralAsk.read(said(text), SETTINGS);
    expect(read('V7 Imaj7 iiadd9 viadd6')).toEqual(['V', 'I', 'ii', 'vi']);
    expect(read('viio7 viim7b5 III+7 Vsus4')).toEqual(['viio', 'viio', 'III+', 'V']);
    for (const text of ['V9', 'VIIm7b5', 'V77', 'V7maj7', '7']) expect(read(text)).toBeNull();
    expect(mark('Dm7 G7', 'ii V').exact).toBe(true);
  });

  test('under modes from the first home first, and every home is right', () => {
    const given = context(0, loop('C D'), { policy: 'modes' });
    expect(numeralJudge.truth(given)).toEqual(['I', 'II']);
    for (const answer of ['I II', 'bVII I', 'IV V']) expect(numeralJudge.mark(said(answer), given).exact).toBe(true);
  });

  test('the pad’s qualities do not matter', () => {
    expect(numeralJudge.truth(context(0, loop('Em D'), { qualities: QUALITIES.slice(0, 2) }))).toEqual(['vi', 'V']);
  });
});

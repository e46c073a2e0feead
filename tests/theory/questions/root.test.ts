import { describe, expect, test } from 'vitest';
import { QUALITIES } from '../../../shared-theory/chords.ts';
import type { Quality } from '../../../shared-theory/chords.ts';
import { besideShown } from '../../../shared-theory/questions/beside.ts';
import type { ErrorKind } from '../../../shared-theory/questions/error-kinds.ts';
import type { NeckPlace, OwnAnswers } from '../../../shared-theory/questions/question.ts';
import { bassAsk } from '../../../shared-theory/questions/bass/ask.ts';
import { neckPlaces, rootAsk } from '../../../shared-theory/questions/root/ask.ts';
import { rootJudge } from '../../../shared-theory/questions/root/judge.ts';
import { questionsOf } from '../../../shared-theory/questions/round-questions.ts';
import { context, played } from './given.ts';

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
    // Every note of an augmented chord is a root, and of a suspended one another note as well.
    for (const quality of QUALITIES.filter((each) => each !== 'augmented' && !each.startsWith('suspended'))) {
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

describe('a constant shift', () => {
  const truth = played('A B A C');
  /** Fret of the fifth string so many above the root of A, B or C. */
  const high = (target: number, semitones: number) => place(5, { 0: 0, 1: 2, 3: 3 }[target as 0 | 1 | 3] + semitones);
  const mark = (target: number, semitones: number, own: OwnAnswers) =>
    rootJudge.mark(high(target, semitones), context(target, truth, {}, own));

  test('costs half at the first root, and nothing at those whose steps from it are right', () => {
    expect(mark(0, 2, { 'root-1': high(1, 2), 'root-3': high(3, 2) })).toEqual({
      credit: 0.5,
      exact: false,
      errors: ['constant-shift'],
    });
    for (const target of [1, 3]) {
      expect(mark(target, 2, { 'root-0': high(0, 2) })).toEqual({
        credit: 1,
        exact: false,
        errors: [],
        note: 'follows-own-answer',
      });
    }
    expect(mark(1, 2, { 'root-3': high(3, 2) }).errors).toEqual(['constant-shift']);
  });

  test('is one by the sound, on whatever string', () => {
    expect(mark(0, 7, { 'root-3': place(6, 3) }).errors).toEqual(['constant-shift']);
  });

  test('goes before the fifth, the relative chord and one fret', () => {
    expect(mark(0, 7, {}).errors).toEqual(['hears-the-fifth']);
    expect(mark(0, 7, { 'root-3': high(3, 7) }).errors).toEqual(['constant-shift']);
    expect(mark(0, 1, { 'root-3': high(3, 1) })).toMatchObject({ credit: 0.5, errors: ['constant-shift'] });
    const relative = { 'quality-0': 'minor', 'root-3': high(3, 9) } as const;
    expect(mark(0, 9, relative).errors).toEqual(['constant-shift']);
  });

  test('is none where one root is right, or lies elsewhere, or there is no other', () => {
    expect(mark(0, 2, {}).errors).toEqual([]);
    expect(mark(0, 2, { 'root-1': high(1, 2), 'root-3': high(3, 0) }).errors).toEqual([]);
    expect(mark(0, 2, { 'root-1': high(1, 2), 'root-3': high(3, 1) }).errors).toEqual([]);
    expect(mark(0, 0, { 'root-3': high(3, 2) })).toEqual({ credit: 1, exact: true, errors: [] });
  });

  test('takes two different roots', () => {
    const one = context(0, played('A D Am'), {}, { 'root-2': place(5, 2) });
    expect(rootJudge.mark(place(5, 2), one).errors).toEqual([]);
  });

  test('a student is told once both roots were shown', () => {
    const given = context(0, truth, {}, { 'root-3': high(3, 2) });
    const told = (...targets: number[]) => {
      const beside = besideShown(
        truth,
        targets.map((target) => ({ kind: 'root', target })),
      );
      return rootJudge.mark(high(0, 2), { ...given, beside }).errors;
    };
    expect(told(0)).toEqual([]);
    expect(told(0, 3)).toEqual(['constant-shift']);
  });
});

describe('the relative chord', () => {
  test.each<[string, Quality, number, Quality | null, number, ErrorKind | null]>([
    ['a major a third below, as minor', 'major', 9, 'minor', 0, 'swaps-relatives'],
    ['a major a third below, as major', 'major', 9, 'major', 0, null],
    ['a major a third below, quality not answered', 'major', 9, null, 0, null],
    ['a major a third above, as minor', 'major', 3, 'minor', 0, null],
    ['a minor a third above, as major', 'minor', 3, 'major', 0.25, 'swaps-relatives'],
    ['a minor a third above, as minor', 'minor', 3, 'minor', 0.25, 'hears-the-third'],
    ['a minor a sixth above, as major', 'minor', 9, 'major', 0, null],
    ['a diminished a third above, as major', 'diminished', 3, 'major', 0.25, 'hears-the-third'],
  ])('%s', (_case, quality, semitones, said, credit, error) => {
    const own = said === null ? {} : { 'quality-0': said };
    const asked = context(0, { roots: ['A', 'D'], qualities: [quality, 'major'], top: [] }, {}, own);
    const errors = error === null ? [] : [error];
    expect(rootJudge.mark(place(5, semitones), asked)).toEqual({ credit, exact: false, errors });
  });

  test('goes before the top note', () => {
    const truth = { roots: ['A', 'D'], qualities: ['major', 'major'], top: [66, 66] } as const;
    const mark = (own: OwnAnswers) => rootJudge.mark(place(5, 9), context(0, truth, {}, own)).errors;
    expect(mark({})).toEqual(['names-the-top-note']);
    expect(mark({ 'quality-0': 'minor' })).toEqual(['swaps-relatives']);
  });
});

test('marks lean on the quality of the same chord and on the other roots', () => {
  const questions = questionsOf({ chords: ['A', 'B', 'A', 'C'], grooveKnown: true, settlers: 0 });
  expect(rootJudge.leansOn?.(3, questions)).toEqual(['quality-3', 'root-0']);
});

describe('roots compare as at the root level of mir_eval', () => {
  // Pitch classes and chord pairs: mir_eval (MIT), mir_eval/chord.py and tests/test_chord.py. Qualities play no part there.
  test.each([
    ['Gbb', 5],
    ['G', 7],
    ['G#', 8],
    ['Cb', 11],
    ['B#', 0],
  ])('%s is pitch class %i', (root, sound) => {
    for (const each of neckPlaces()) {
      const { exact } = rootJudge.mark(each, context(0, { roots: [root, 'D'] }));
      expect(exact).toBe(((each.string === 6 ? 4 : 9) + each.fret) % 12 === sound);
    }
  });

  test.each<[string, string, number]>([
    ['C', 'C', 1],
    ['G', 'C', 0],
    ['C#', 'Db', 1],
    ['F#', 'Gb', 1],
    ['B', 'Cb', 1],
    ['A', 'Ab', 0],
  ])('%s answered as %s: %i, whatever the qualities', (root, answered, score) => {
    // G as C is the fourth above: the other root of a suspended fourth.
    for (const quality of QUALITIES.filter((each) => each !== 'suspended-fourth')) {
      const asked = context(0, { roots: [root, 'D'], qualities: [quality, 'major'] }, {}, { 'quality-0': 'minor' });
      const given = rootJudge.truth(context(0, { roots: [answered, 'D'] }));
      expect(given).not.toBeNull();
      if (given) expect(rootJudge.mark(given, asked).exact).toBe(score === 1);
    }
  });
});

describe('slash chords, a capo, and chords that are even', () => {
  const at = (text: string, capo = 0, own: OwnAnswers = {}, target = 0) => context(target, played(text), { capo }, own);
  const C = place(5, 3);
  const D = place(5, 5);
  const E = place(6, 0);

  test.each<[string, number, NeckPlace, number, ErrorKind | null]>([
    ['C/E', 0, C, 1, null],
    ['C/E', 0, E, 0.6, 'gives-the-bass'],
    // Narrowly not: the third of a chord on its root.
    ['C', 0, E, 0.25, 'hears-the-third'],
    // Two frets up: what sounds as E is held as D. Common practice.
    ['E', 2, D, 0.5, 'names-the-shape'],
    ['E', 3, D, 0, null],
    ['E', 0, D, 0, null],
    // Over a capo at the fifth fret the shape is a fifth higher by name: the capo says more.
    ['G', 5, D, 0.5, 'names-the-shape'],
    ['G', 0, D, 0.4, 'hears-the-fifth'],
  ])('%s with the capo at %i: %#', (text, capo, answer, credit, error) => {
    expect(rootJudge.mark(answer, at(text, capo))).toEqual({
      credit,
      exact: credit === 1,
      errors: error === null ? [] : [error],
    });
  });

  test('the shape goes before the shift that it makes, and the other roots follow', () => {
    const own = { 'root-0': D, 'root-1': place(6, 3) };
    expect(rootJudge.mark(D, at('E A', 2, own)).errors).toEqual(['names-the-shape']);
    expect(rootJudge.mark(place(6, 3), at('E A', 2, own, 1)).note).toBe('follows-own-answer');
    expect(rootJudge.mark(D, at('E A', 0, own)).errors).toEqual(['constant-shift']);
  });

  test('of an even chord every note is a root', () => {
    for (const [text, roots] of [
      ['Caug', 3],
      ['Bdim7', 4],
      ['Bdim', 1],
      ['Bm7b5', 1],
    ] as const) {
      const sounds = neckPlaces()
        .filter((each) => rootJudge.mark(each, at(text)).exact)
        .map((each) => rootJudge.heard(each));
      expect(new Set(sounds).size).toBe(roots);
    }
  });

  test('until the bass may be told it is not named', () => {
    const given = at('C/E');
    const shown = { ...given, beside: besideShown(given.truth, [{ kind: 'root', target: 0 }]) };
    expect(rootJudge.mark(E, shown)).toMatchObject({ errors: [] });
  });
});

describe('under a capo', () => {
  const CAPOS = Array.from({ length: 10 }, (_, fret) => fret);

  test.each(CAPOS)('on fret %i every note stands somewhere on the pad, and none behind it', (capo) => {
    for (const root of ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B']) {
      const asked = context(0, { roots: [root, 'D'] }, { capo });
      const right = [rootJudge.truth(asked), ...rootJudge.also(asked)];
      expect(right.length).toBeGreaterThan(0);
      for (const each of right) {
        expect(each?.fret).toBeGreaterThanOrEqual(capo);
        expect(rootAsk.read(each, asked.settings)).toEqual(each);
        expect(rootJudge.mark(each ?? place(6, 0), asked).exact).toBe(true);
      }
      expect(rootJudge.chance(asked)).toBeCloseTo(right.length / neckPlaces(capo).length);
    }
  });

  test('a place behind it is no answer, and the pad is told of it', () => {
    const settings = { policy: 'majors', qualities: [], capo: 3 } as const;
    expect(rootAsk.read(place(6, 2), settings)).toBeNull();
    expect(rootAsk.read(place(6, 3), settings)).toEqual(place(6, 3));
    expect(rootAsk.ask(1, settings, {})).toEqual({ kind: 'root', target: 1, capo: 3 });
    expect(bassAsk.ask(1, settings, {})).toEqual({ kind: 'bass', target: 1, capo: 3 });
    expect(rootAsk.ask(1, { ...settings, capo: 0 }, {})).toEqual({ kind: 'root', target: 1 });
  });

  // Common practice: a capo on the third fret makes the open sixth string sound G.
  test('its open sixth string on the third fret is G', () => {
    const asked = context(0, { roots: ['G', 'D'] }, { capo: 3 });
    expect(rootJudge.truth(asked)).toEqual(place(6, 3));
  });
});

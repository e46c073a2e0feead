import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Quality } from '../../../shared-theory/chords.ts';
import type { ErrorKind } from '../../../shared-theory/questions/error-kinds.ts';
import { keysJudge } from '../../../shared-theory/questions/keys/judge.ts';
import type { NeckPlace, OwnAnswers } from '../../../shared-theory/questions/question.ts';
import { questionsOf } from '../../../shared-theory/questions/round-questions.ts';
import type { Policy, Truth } from '../../../shared-theory/truth.ts';
import { context, owners } from './given.ts';

const loop = (
  chords: readonly (readonly [string, Quality])[],
  majors: readonly string[],
  relatives: readonly string[] = [],
): Partial<Truth> => ({
  roots: chords.map(([root]) => root),
  qualities: chords.map(([, quality]) => quality),
  keys: owners(majors, [...majors, ...relatives]),
});

// Owners of each loop by the table of diatonic chords: common practice.
const EM_D = loop(
  [
    ['E', 'minor'],
    ['D', 'major'],
  ],
  ['G major', 'D major'],
  ['E minor', 'B minor'],
);
const C_D = loop(
  [
    ['C', 'major'],
    ['D', 'major'],
  ],
  ['G major'],
  ['E minor'],
);
const C_AM = loop(
  [
    ['C', 'major'],
    ['A', 'minor'],
  ],
  ['C major', 'F major', 'G major'],
  ['A minor', 'D minor', 'E minor'],
);
const AM_E = loop(
  [
    ['A', 'minor'],
    ['E', 'major'],
  ],
  [],
  [],
);
const GB = loop(
  [
    ['Gb', 'major'],
    ['Cb', 'major'],
  ],
  ['Gb major', 'Cb major'],
  ['Eb minor', 'Ab minor'],
);

const [C, DB, D, E, F, GFLAT, G, A, B] = ['0M', '1M', '2M', '4M', '5M', '6M', '7M', '9M', '11M'];
const [Am, Bm, Cm, Em, Dm, Fsm] = ['9m', '11m', '0m', '4m', '2m', '6m'];

describe('the right keys', () => {
  test.each<[string, Partial<Truth>, Policy, (string | undefined)[]]>([
    ['Em D', EM_D, 'majors', [D, G]],
    ['Em D', EM_D, 'relatives', [D, G, Em, Bm]],
    ['C D', C_D, 'majors', [G]],
    ['Am E', AM_E, 'majors', []],
    ['Gb Cb', GB, 'majors', [GFLAT, B]],
  ])('%s under %s', (_name, truth, policy, ids) => {
    expect(keysJudge.truth(context(0, truth, { policy }))).toEqual(ids);
  });

  test('one name per sound: F# and Gb, C# and Db, B and Cb are one key each', () => {
    for (const [sharp, flat] of [
      ['F#', 'Gb'],
      ['C#', 'Db'],
      ['B', 'Cb'],
    ] as const) {
      const by = (tonic: string) => keysJudge.truth(context(0, loop([[tonic, 'major']], [`${tonic} major`])));
      expect(by(sharp)).toEqual(by(flat));
    }
  });

  test('a name that is no key’s is refused', () => {
    expect(() => keysJudge.truth(context(0, loop([], ['G locrian'])))).toThrow(/G locrian/);
    expect(() => keysJudge.mark(['12M'], context(0, EM_D))).toThrow(/12M is no key/);
  });
});

describe('mark of a set of keys', () => {
  type Row = [string, Partial<Truth>, Policy, (string | undefined)[], number, ErrorKind | null];
  // Set score: right ones marked over all right ones and wrong ones marked. Common practice.
  test.each<Row>([
    ['both owners', EM_D, 'majors', [G, D], 1, null],
    ['one of two', EM_D, 'majors', [G], 1 / 2, 'stops-at-one-key'],
    ['one of three', C_AM, 'majors', [C], 1 / 3, 'stops-at-one-key'],
    ['two of three', C_AM, 'majors', [C, G], 2 / 3, 'leaves-an-owner-out'],
    ['both and a wrong one', EM_D, 'majors', [G, D, A], 2 / 3, 'roots-fit-qualities-do-not'],
    ['one right, one wrong', EM_D, 'majors', [G, F], 1 / 3, 'roots-fit-qualities-do-not'],
    ['none right, and no chord owned', EM_D, 'majors', [E], 0, null],
    ['right ones and one that owns no chord', EM_D, 'majors', [G, E], 1 / 3, null],
    ['nothing to do with it', EM_D, 'majors', [DB], 0, null],
    ['shifted a fifth up', EM_D, 'majors', [D, A], 1 / 3, 'one-step-round-the-circle'],
    ['shifted a fifth down', EM_D, 'majors', [C, G], 1 / 3, 'one-step-round-the-circle'],
    ['a single owner shifted', C_D, 'majors', [D], 0, 'one-step-round-the-circle'],
    ['owns C only', C_D, 'majors', [F], 0, 'roots-fit-qualities-do-not'],
    ['owns D only', C_D, 'majors', [A], 0, 'either-chord-not-both'],
    ['says that none owns them', EM_D, 'majors', [], 0, 'finds-no-owner'],
    ['no key owns all', AM_E, 'majors', [], 1, null],
    ['a key where none owns all', AM_E, 'majors', [C], 0, 'roots-fit-qualities-do-not'],
    ['a key that owns one, none owns all', AM_E, 'majors', [E], 0, 'roots-fit-qualities-do-not'],
    ['all by their relative minors', EM_D, 'majors', [Em, Bm], 0.75, 'relative-minors-for-majors'],
    ['one by its relative minor', EM_D, 'majors', [G, Bm], 0.75, 'relative-minors-for-majors'],
    ['owners and a relative beside', EM_D, 'majors', [G, D, Em], 0.75, 'relative-minors-for-majors'],
    ['half, by the minor', EM_D, 'majors', [Em], 0.375, 'stops-at-one-key'],
    ['a wrong minor beside both owners', EM_D, 'majors', [G, D, Fsm], 2 / 3, 'roots-fit-qualities-do-not'],
    ['both pairs', EM_D, 'relatives', [G, Em, D, Bm], 1, null],
    ['one of each pair', EM_D, 'relatives', [G, D], 0.75, 'names-one-of-the-pair'],
    ['one of each pair, mixed', EM_D, 'relatives', [G, Bm], 0.75, 'names-one-of-the-pair'],
    ['one pair whole, one half', EM_D, 'relatives', [G, Em, D], 0.875, 'names-one-of-the-pair'],
    ['one pair of two', EM_D, 'relatives', [G, Em], 0.5, 'stops-at-one-key'],
    ['half a pair of two', EM_D, 'relatives', [Em], 0.375, 'stops-at-one-key'],
    ['two families of three', C_AM, 'relatives', [C, Am, G], 1.75 / 3, 'leaves-an-owner-out'],
    ['both pairs and a wrong one', EM_D, 'relatives', [G, Em, D, Bm, Cm], 2 / 3, null],
    ['no key owns all', AM_E, 'relatives', [], 1, null],
    ['a pair of wrong keys is one family', C_D, 'relatives', [G, Em, F, Dm], 1 / 2, 'roots-fit-qualities-do-not'],
    ['Gb by its sharps', GB, 'majors', [GFLAT, B], 1, null],
  ])('%s: %#', (_case, truth, policy, answer, credit, error) => {
    const ids = answer.filter((id) => id !== undefined);
    const mark = keysJudge.mark(ids, context(0, truth, { policy }));
    expect(mark.credit).toBeCloseTo(credit, 12);
    expect(mark.exact).toBe(credit === 1);
    expect(mark.errors).toEqual(error === null ? [] : [error]);
  });

  test('set score of majors: right over right and wrong', () => {
    const majors = Array.from({ length: 12 }, (_, tonic) => `${tonic}M`);
    fc.assert(
      fc.property(fc.constantFrom(EM_D, C_D, C_AM), fc.subarray(majors), (truth, answer) => {
        const asked = context(0, truth);
        const right = keysJudge.truth(asked) ?? [];
        const hits = answer.filter((id) => right.includes(id)).length;
        const expected = hits / (right.length + answer.length - hits);
        expect(keysJudge.mark(answer, asked).credit).toBeCloseTo(expected, 12);
      }),
    );
  });

  test('the order of marking does not matter', () => {
    expect(keysJudge.mark(['7M', '2M'], context(0, EM_D))).toEqual(keysJudge.mark(['2M', '7M'], context(0, EM_D)));
  });
});

describe('beside the student’s own answers', () => {
  const several: OwnAnswers = { 'one-or-several-0': 'several' };
  const one: OwnAnswers = { 'one-or-several-0': 'one' };

  type Row = [string, Partial<Truth>, Policy, (string | undefined)[], OwnAnswers, number, ErrorKind | null];
  test.each<Row>([
    ['one of two, knowing of others', EM_D, 'majors', [G], several, 0.7, 'stops-at-one-key'],
    ['one of three, knowing of others', C_AM, 'majors', [C], several, 0.7, 'stops-at-one-key'],
    ['one pair of two, knowing of others', EM_D, 'relatives', [G, Em], several, 0.7, 'stops-at-one-key'],
    ['half a pair of three, knowing of others', C_AM, 'relatives', [Am], several, 0.7, 'stops-at-one-key'],
    ['one of two, sure of it', EM_D, 'majors', [G], one, 1 / 2, 'stops-at-one-key'],
    ['two of three', C_AM, 'majors', [C, G], several, 2 / 3, 'leaves-an-owner-out'],
    ['one right, one wrong', EM_D, 'majors', [G, F], several, 1 / 3, 'roots-fit-qualities-do-not'],
    ['a wrong one', EM_D, 'majors', [A], several, 0, 'roots-fit-qualities-do-not'],
    ['by its relative minor', EM_D, 'majors', [Em], several, 0.375, 'stops-at-one-key'],
    ['the only one by its relative minor', C_D, 'majors', [Em], several, 0.75, 'relative-minors-for-majors'],
    ['a single owner missed', C_D, 'majors', [D], several, 0, 'one-step-round-the-circle'],
  ])('%s', (_case, truth, policy, answer, own, credit, error) => {
    const ids = answer.filter((id) => id !== undefined);
    const mark = keysJudge.mark(ids, context(0, truth, { policy }, own));
    expect(mark.credit).toBeCloseTo(credit, 12);
    expect([mark.exact, mark.errors, mark.note]).toEqual([false, error === null ? [] : [error], undefined]);
  });

  const place = (string: 5 | 6, fret: number): NeckPlace => ({ string, fret });
  const heard = (root: NeckPlace, first: Quality, distance: number, next: Quality): OwnAnswers => ({
    'root-0': root,
    'quality-0': first,
    'distance-1': distance,
    'quality-1': next,
  });
  const FOLLOWS = { credit: 1, exact: false, errors: [], note: 'follows-own-answer' };

  test.each<[string, Policy, (string | undefined)[], OwnAnswers]>([
    // A D from E: one owner of Em A is D; of E A both E and A; of Em Dm C.
    ['Em A for Em D', 'majors', [D], heard(place(6, 0), 'minor', 5, 'major')],
    ['E D for Em D', 'majors', [A], heard(place(6, 0), 'major', -2, 'major')],
    ['E A for Em D', 'majors', [E, A], heard(place(6, 0), 'major', -7, 'major')],
    ['Em Dm for Em D', 'relatives', [C, Am], heard(place(6, 12), 'minor', 10, 'minor')],
    ['Bm A for Em D: every root a fifth too high', 'majors', [D, A], heard(place(5, 2), 'minor', -2, 'major')],
    ['Em Eb for Em D: no key owns both', 'majors', [], heard(place(5, 7), 'minor', -1, 'major')],
  ])('%s: the keys of the own chords', (_case, policy, answer, own) => {
    const ids = answer.filter((id) => id !== undefined);
    expect(keysJudge.mark(ids, context(0, EM_D, { policy }, own))).toEqual(FOLLOWS);
    const alone = keysJudge.mark(ids, context(0, EM_D, { policy }));
    expect(alone.credit).toBeLessThan(1);
  });

  test.each<[string, (string | undefined)[], OwnAnswers, ErrorKind | null]>([
    [
      'an own answer is missing',
      [D],
      { 'root-0': place(6, 0), 'quality-0': 'minor', 'distance-1': 5 },
      'stops-at-one-key',
    ],
    [
      'no root was marked',
      [A],
      { 'quality-0': 'major', 'distance-1': -2, 'quality-1': 'major' },
      'roots-fit-qualities-do-not',
    ],
    [
      'a key beside those of the own chords',
      [D, A],
      heard(place(6, 0), 'minor', 5, 'major'),
      'one-step-round-the-circle',
    ],
    ['one of two keys of the own chords', [E], heard(place(6, 0), 'major', -7, 'major'), null],
    ['the own chords are those that sounded', [G], heard(place(5, 7), 'minor', 10, 'major'), 'stops-at-one-key'],
  ])('not where %s', (_case, answer, own, error) => {
    const ids = answer.filter((id) => id !== undefined);
    const given = context(0, EM_D, {}, own);
    expect(keysJudge.mark(ids, given)).toEqual(keysJudge.mark(ids, context(0, EM_D)));
    expect(keysJudge.mark(ids, given).errors).toEqual(error === null ? [] : [error]);
  });

  test('the right keys are exact, whatever the own chords would give', () => {
    const own = heard(place(6, 0), 'minor', 5, 'major');
    expect(keysJudge.mark(['7M', '2M'], context(0, EM_D, {}, own))).toEqual({ credit: 1, exact: true, errors: [] });
  });

  test('chords that own no key together were heard as two that do', () => {
    const own = heard(place(5, 0), 'minor', 7, 'minor');
    const given = context(0, AM_E, {}, own);
    expect(keysJudge.mark(['7M', '0M'], given)).toEqual(FOLLOWS);
    expect(keysJudge.mark([], given)).toEqual({ credit: 1, exact: true, errors: [] });
  });

  test('a chord that comes back is asked once', () => {
    const truth = { ...EM_D, roots: ['E', 'D', 'E', 'D'], qualities: ['minor', 'major', 'minor', 'major'] as const };
    expect(keysJudge.mark(['9M'], context(0, truth, {}, heard(place(6, 0), 'major', -2, 'major')))).toEqual(FOLLOWS);
  });

  test('it reads roots, qualities, sevenths, distances and one or several of the round, and no other answer', () => {
    const questions = questionsOf({ chords: ['a', 'b'], grooveKnown: true, settlers: 2 });
    const kinds = new Set(keysJudge.leansOn?.(0, questions).map((id) => id.replace(/-\d+$/, '')));
    expect(kinds).toEqual(new Set(['quality', 'seventh', 'root', 'distance', 'one-or-several']));
  });
});

describe('which error goes before which', () => {
  const majors = Array.from({ length: 12 }, (_, tonic) => `${tonic}M`);
  const minors = Array.from({ length: 12 }, (_, tonic) => `${tonic}m`);
  const shownBy = (truth: Partial<Truth>, policy: Policy, answer: readonly string[]) =>
    keysJudge.mark(answer, context(0, truth, { policy })).errors[0] ?? null;

  test.each<[string, (string | undefined)[], ErrorKind]>([
    // G D moved to D A, and A holds both roots: the step is said, not the quality.
    ['one step before roots that fit', [D, A], 'one-step-round-the-circle'],
    ['roots that fit before one chord alone', [G, D, A, F], 'roots-fit-qualities-do-not'],
    ['one step before one chord alone', [C, G], 'one-step-round-the-circle'],
  ])('%s', (_case, answer, error) => {
    expect(
      shownBy(
        EM_D,
        'majors',
        answer.filter((id) => id !== undefined),
      ),
    ).toBe(error);
  });

  test('every error of the question is shown by some answer, and by none of another kind of mistake', () => {
    const shown = new Set<ErrorKind | null>();
    for (const truth of [EM_D, C_D, C_AM, AM_E]) {
      for (const policy of ['majors', 'relatives'] as const) {
        shown.add(shownBy(truth, policy, []));
        for (const one of [...majors, ...minors]) {
          for (const other of [...majors, ...minors]) shown.add(shownBy(truth, policy, [...new Set([one, other])]));
        }
      }
    }
    shown.delete(null);
    expect([...shown].map(String).toSorted()).toEqual([
      'either-chord-not-both',
      'finds-no-owner',
      'leaves-an-owner-out',
      'names-one-of-the-pair',
      'one-step-round-the-circle',
      'relative-minors-for-majors',
      'roots-fit-qualities-do-not',
      'stops-at-one-key',
    ]);
  });

  test('stopping and leaving out name owners alone; the others name a key that is none', () => {
    fc.assert(
      fc.property(fc.constantFrom(EM_D, C_D, C_AM), fc.subarray(majors, { minLength: 1 }), (truth, answer) => {
        const right = keysJudge.truth(context(0, truth)) ?? [];
        const error = shownBy(truth, 'majors', answer);
        const within = answer.every((id) => right.includes(id));
        const narrow = error === 'stops-at-one-key' || error === 'leaves-an-owner-out';
        expect(narrow).toBe(within && answer.length < right.length);
        if (error === 'stops-at-one-key') expect(answer).toHaveLength(1);
      }),
    );
  });
});

import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { topWrong, markedTallies } from '../../../shared-theory/diagnosis/spread.ts';
import { asks } from '../../../shared-theory/questions/asks.ts';
import { askableQuestions, judges, markAnswer } from '../../../shared-theory/questions/judges.ts';
import type { RhythmTruth } from '../../../shared-theory/rhythm/rhythm-truth.ts';
import { seeds, tapAlong } from '../../support/tappers.ts';
import { tapsAt } from '../../support/rhythm-answers.ts';
import { RELAXED } from './given-rhythm.ts';
import { context, EM_D, SETTINGS } from './given.ts';

/** A groove at 100 beats a minute. */
function heard(changes: Partial<RhythmTruth> = {}, tempo: number | null = 100) {
  return context(0, { tempo, rhythm: { ...RELAXED, ...changes } });
}

const markAt = (tempo: number, changes: Partial<RhythmTruth> = {}) =>
  judges.tempo.mark(tapsAt(tempo, 16), heard(changes));

describe('the right answer', () => {
  test('is nine taps exactly on the beat, which a phone could have sent and which is right', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 30, max: 300 }),
        fc.constantFrom<RhythmTruth['counts'][]>([1], [1, 2], [1, 0.5], [1, 2 / 3]),
        (tempo, counts) => {
          const given = heard({ counts }, tempo);
          const right = judges.tempo.truth(given);
          expect(right).toHaveLength(9);
          expect(asks.tempo.read(right, SETTINGS)).toEqual(right);
          expect(asks.tempo.key(right ?? [])).toBe(String(tempo));
          for (const answer of [right ?? [], ...judges.tempo.also(given)]) {
            expect(markAnswer('tempo', answer, given)).toMatchObject({ credit: 1, exact: true, errors: [] });
          }
        },
      ),
    );
  });

  test('there is none where no groove was named, none is known of an old round, or nobody knows the tempo', () => {
    for (const given of [context(0, { rhythm: null }), context(0), heard({}, null)]) {
      expect(judges.tempo.truth(given)).toBeNull();
      expect(judges.tempo.also(given)).toEqual([]);
      expect(() => judges.tempo.mark(tapsAt(100), given)).toThrow(RangeError);
    }
  });

  test('taps are asked for wherever a groove has a tempo', () => {
    const tapped = (truth: typeof EM_D) =>
      askableQuestions(truth, SETTINGS).filter(({ kind }) =>
        ['tempo', 'steadiness', 'drop-out', 'together'].includes(kind),
      );
    expect(tapped({ ...EM_D, rhythm: RELAXED }).map(({ id }) => id)).toEqual([
      'tempo-0',
      'steadiness-0',
      'drop-out-0',
      'together-0',
    ]);
    expect(tapped(EM_D)).toEqual([]);
    expect(tapped({ ...EM_D, rhythm: RELAXED, tempo: null })).toEqual([]);
  });
});

describe('marks', () => {
  // Full within 4 percent, part within 8: common practice, as in tempo estimation (Accuracy1; mir_eval's tolerance).
  test.each([
    [100, 1, true, []],
    [104, 1, true, []],
    [96, 1, true, []],
    [105, 0.6, false, []],
    [92.1, 0.6, false, []],
    [109, 0, false, []],
    [200, 0.7, false, ['taps-twice-as-fast']],
    [207, 0.7, false, ['taps-twice-as-fast']],
    [211, 0.42, false, ['taps-twice-as-fast']],
    [50, 0.7, false, ['taps-half-as-fast']],
    [47.2, 0.42, false, ['taps-half-as-fast']],
    [150, 0, false, ['taps-three-against-two']],
    [66.7, 0, false, ['taps-three-against-two']],
    [300, 0, false, ['taps-three-against-two']],
    [33.3, 0, false, ['taps-three-against-two']],
    [125, 0, false, []],
  ])('%d beats a minute against 100 earn %d', (tempo, credit, exact, errors) => {
    expect(markAt(tempo)).toEqual({ credit: expect.closeTo(credit, 9) as number, exact, errors });
  });

  test('another lawful count is as right, and says so', () => {
    const lawful = { credit: 1, exact: true, errors: [], note: 'other-lawful-count' };
    expect(markAt(200, { counts: [1, 2] })).toEqual(lawful);
    expect(markAt(50, { counts: [1, 0.5] })).toEqual(lawful);
    expect(markAt(300, { counts: [1, 3] })).toEqual(lawful);
    expect(markAt(66.7, { counts: [1, 2 / 3] })).toEqual(lawful);
    expect(markAt(214, { counts: [1, 2] })).toEqual({
      credit: 0.6,
      exact: false,
      errors: [],
      note: 'other-lawful-count',
    });
    expect(markAt(50, { counts: [1, 2] })).toMatchObject({ errors: ['taps-half-as-fast'] });
  });

  test('neither uneven nor running taps are held against the tempo, only where it is', () => {
    const uneven = tapAlong({ tempo: 100, beats: 16, jitter: 60 }, 2);
    const runs = tapAlong({ tempo: 100, beats: 16, jitter: 5, drift: 5 }, 2);
    for (const taps of [uneven, runs])
      expect(judges.tempo.mark(taps, heard())).toMatchObject({ exact: true, errors: [] });
  });

  test('taps without a beat earn nothing and show nothing', () => {
    const scattered = [0, 90, 1310, 1400, 1990, 3900, 4020, 4700, 6900, 7060];
    expect(judges.tempo.mark(scattered, heard())).toEqual({ credit: 0, exact: false, errors: [] });
    expect(judges.tempo.heard(scattered)).toBe('unreadable');
  });

  test('the tempo that counts is the one that is handed over', () => {
    expect(judges.tempo.mark(tapsAt(130), heard({}, 130)).exact).toBe(true);
    expect(judges.tempo.mark(tapsAt(130), heard({}, 100)).exact).toBe(false);
  });
});

test('who tap twice as fast are told together, whatever their tempo is exactly', () => {
  const given = heard();
  const students = [196, 198, 200, 203, 205].map((tempo, index) => {
    const answer = tapsAt(tempo);
    return { student: `s${index}`, answer, mark: markAnswer('tempo', answer, given) };
  });
  const top = topWrong<'tempo'>(markedTallies('tempo', students), judges.tempo, 5);
  expect(top).toMatchObject({ count: 5, error: 'taps-twice-as-fast', manyTheSame: true });
});

test('who taps at 120 whatever sounds has the chance that is named where tempi keep off 120 half the time', () => {
  // Half of the tempi lie outside of 112 to 128; the rest anywhere from 60 to 180.
  const tempi = seeds(120).map((seed) => 60 + seed);
  const off = tempi.filter((tempo) => tempo < 112 || tempo > 128);
  const right = (tempo: number) => judges.tempo.mark(tapsAt(120), heard({}, tempo)).exact;
  const share = (of: readonly number[]) => of.filter(right).length / of.length;
  expect((share(off) + share(tempi)) / 2).toBeLessThan(0.05);
  expect(judges.tempo.chance(heard())).toBeCloseTo(0.03, 9);
});

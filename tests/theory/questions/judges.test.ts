import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readSymbol } from '../../../shared-theory/chords.ts';
import { generate } from '../../../shared-theory/generate.ts';
import { LEVELS_THAT_STAND } from '../../../shared-theory/levels.ts';
import { WEIGHTS } from '../../../shared-theory/questions/accents/ask.ts';
import { BAR_COUNTS } from '../../../shared-theory/questions/bar-count/ask.ts';
import { GRID_STROKES } from '../../../shared-theory/questions/stroke-grid/ask.ts';
import { seededRandom } from '../../../shared-theory/random.ts';
import { besideAll, besideShown } from '../../../shared-theory/questions/beside.ts';
import { ERROR_KINDS } from '../../../shared-theory/questions/error-kinds.ts';
import { askableQuestions, judgeOf, judges, markAnswer } from '../../../shared-theory/questions/judges.ts';
import { KEY_IDS } from '../../../shared-theory/questions/keys/ask.ts';
import type { Answer, Kind, MarkingContext, NeckPlace } from '../../../shared-theory/questions/question.ts';
import { COLLECTED_KINDS, KINDS } from '../../../shared-theory/questions/question.ts';
import { ORDERS } from '../../../shared-theory/questions/order/ask.ts';
import { ASKED_SEVENTHS } from '../../../shared-theory/questions/seventh/ask.ts';
import { neckPlaces } from '../../../shared-theory/questions/root/ask.ts';
import { namesOfSound } from '../../../shared-theory/questions/same-sound.ts';
import { answers, context, EM_D, played, settings, SETTINGS, truths, owners } from './given.ts';
import { accents, heard, strokes } from './given-rhythm.ts';
import { padAnswers } from './search.ts';

/** A question of some round that has a right answer. */
const asked = fc
  .tuple(fc.constantFrom(...KINDS), truths, settings, fc.nat(2))
  .map(([kind, truth, given, target]): [Kind, MarkingContext] => [
    kind,
    { truth, settings: given, target, beside: besideAll(truth), own: {} },
  ])
  .filter(([kind, given]) => judges[kind].truth(given) !== null);

describe('properties of every mark', () => {
  test('the right answer, and every answer as right, is exact and earns 1', () => {
    fc.assert(
      fc.property(asked, ([kind, given]) => {
        const judge = judgeOf<Kind>(kind);
        const right = judge.truth(given);
        expect(right).not.toBeNull();
        for (const answer of [right as Answer, ...judge.also(given)]) {
          expect(markAnswer<Kind>(kind, answer, given)).toMatchObject({
            credit: 1,
            exact: true,
            errors: [],
            evidence: 'right',
          });
        }
      }),
    );
  });

  test('by itself, credit lies within 0 and 1, is 1 only where exact, and shows one error at most', () => {
    fc.assert(
      fc.property(asked, fc.gen(), ([kind, given], gen) => {
        const mark = markAnswer<Kind>(kind, gen(answers, kind, given.settings), given);
        expect(mark.credit).toBeGreaterThanOrEqual(0);
        expect(mark.credit).toBeLessThanOrEqual(1);
        expect(mark.exact).toBe(mark.credit === 1);
        expect(mark.evidence).toBe(mark.exact ? 'right' : 'wrong');
        expect(mark.errors.length).toBeLessThanOrEqual(mark.exact ? 0 : 1);
        for (const error of mark.errors) expect(ERROR_KINDS).toContain(error);
      }),
    );
  });

  test('beside the student’s own answers a wrong one earns 1 only where it follows from them, and is wrong still', () => {
    fc.assert(
      fc.property(asked, fc.gen(), ([kind, given], gen) => {
        const questions = KINDS.flatMap((other) =>
          [0, 1].map((slot) => ({ id: `${other}-${slot}`, kind: other, target: slot })),
        );
        const leaning = judgeOf<Kind>(kind).leansOn?.(given.target, questions) ?? [];
        const own = Object.fromEntries(
          questions
            .filter(({ id }) => leaning.includes(id))
            .map(({ id, kind: other }) => [id, gen(answers, other, given.settings)]),
        );
        const answer = gen(answers, kind, given.settings);
        const [alone, beside] = [given, { ...given, own }].map((each) => markAnswer<Kind>(kind, answer, each));
        // Beside another root that the student wrote it may be another name for what sounds: Dsus2 where Asus4 is written.
        if (beside?.exact === true && alone?.exact === false) {
          expect(kind).toBe('quality');
          expect(own).toHaveProperty(`root-${given.target}`);
          const names = namesOfSound(readSymbol(given.truth.chords[given.target] ?? ''));
          expect(names.slice(1).map(({ quality }) => quality)).toContain(answer);
        } else expect(beside?.exact).toBe(alone?.exact);
        expect(beside?.credit).toBeGreaterThanOrEqual(0);
        expect(beside?.credit).toBeLessThanOrEqual(1);
        expect(beside?.errors.length).toBeLessThanOrEqual(1);
        if (beside?.credit === 1 && !beside.exact) {
          expect(beside).toMatchObject({ note: 'follows-own-answer', errors: [], evidence: 'wrong' });
        }
      }),
    );
  });

  test('not sure earns nothing, shows nothing and is never wrong', () => {
    fc.assert(
      fc.property(asked, ([kind, given]) => {
        expect(markAnswer(kind, 'not-sure', given)).toEqual({
          credit: 0,
          exact: false,
          errors: [],
          evidence: 'abstain',
        });
      }),
    );
  });

  test('what has been shown beside an answer never makes it right or wrong', () => {
    fc.assert(
      fc.property(asked, fc.gen(), ([kind, given], gen) => {
        const answer = gen(answers, kind, given.settings);
        const all = KINDS.flatMap((other) => [0, 1, 2].map((slot) => ({ kind: other, target: slot })));
        const some = gen(fc.subarray, all);
        const shown = markAnswer<Kind>(kind, answer, { ...given, beside: besideShown(given.truth, some) });
        expect(shown.exact).toBe(markAnswer<Kind>(kind, answer, given).exact);
      }),
    );
  });

  test('the spelling of the chords and of their keys changes no mark', () => {
    const sharp = context(0, { roots: ['F#', 'B'], keys: owners(['F# major', 'B major'], []) });
    const flat = context(0, { roots: ['Gb', 'Cb'], keys: owners(['Gb major', 'Cb major'], []) });
    for (const place of neckPlaces()) expect(judges.root.mark(place, sharp)).toEqual(judges.root.mark(place, flat));
    for (const id of KEY_IDS) expect(judges.keys.mark([id], sharp)).toEqual(judges.keys.mark([id], flat));
  });

  test('a loop written with sharps and the same with flats are marked alike, whatever is asked and answered', () => {
    const [sharp, flat] = ['F# C# F# B', 'Gb Db Gb Cb'].map((chords) => played(chords, ['up', 'same', 'up']));
    if (!sharp || !flat) throw new Error('both were played');
    const questions = askableQuestions(sharp, SETTINGS);
    expect(askableQuestions(flat, SETTINGS)).toEqual(questions);
    for (const { kind, target } of questions) {
      const [one, other] = [sharp, flat].map((truth) => context(target, truth));
      if (!one || !other) throw new Error('both are asked');
      for (const answer of padAnswers(kind, one)) {
        expect(judgeOf<Kind>(kind).mark(answer, other)).toEqual(judgeOf<Kind>(kind).mark(answer, one));
      }
    }
  });
});

/** The questions of a round that are marked. */
function marked(...given: Parameters<typeof askableQuestions>) {
  return askableQuestions(...given).filter(({ kind }) => !COLLECTED_KINDS.has(kind));
}

test('every question of a generated vamp is answered right by what sounded', () => {
  fc.assert(
    fc.property(fc.constantFrom(...LEVELS_THAT_STAND), fc.nat(), settings, (level, seed, given) => {
      const { truth } = generate({ level, seed });
      for (const { kind, target } of marked(truth, given)) {
        const asked = { truth, settings: given, target, beside: besideAll(truth), own: {} };
        const right = judgeOf<Kind>(kind).truth(asked);
        expect(right).not.toBeNull();
        expect(markAnswer<Kind>(kind, right as Answer, asked).exact).toBe(true);
      }
      const { bass, chords } = truth;
      const { exact } = judges.bass.mark(placeOf(bass[0] ?? 0), context(0, truth));
      expect([chords[0], exact]).toEqual([chords[0], true]);
    }),
    { numRuns: 60 },
  );
});

/** A place on the low strings that sounds a bass note, or its octave below. */
function placeOf(midi: number): NeckPlace {
  const fret = (midi - 40) % 12;
  return { string: 6, fret };
}

describe('chance of blind guessing', () => {
  // The guesser of the keys knows that owners are neighbours: one of the arcs of one to three, or none.
  const arcs = [
    [],
    ...Array.from({ length: 12 }, (_, start) =>
      [1, 2, 3].map((length) => Array.from({ length }, (_, step) => (start * 7 + step * 7) % 12)),
    ).flat(),
  ];
  const pairs = arcs.map((arc) => arc.flatMap((tonic) => [`${tonic}M`, `${(tonic + 9) % 12}m`]));
  const raised = [...pairs, ...Array.from({ length: 12 }, (_, tonic) => [`${tonic}m`])];
  const modal = arcs.flatMap((arc) => ['h0', 'h1'].map((home) => [...arc.map((tonic) => `${tonic}M`), home]));
  /** Every filling of seven slots, and every set of some. */
  const threes = (choices: readonly (number | string)[]) =>
    Array.from({ length: 3 ** 7 }, (_, lot) =>
      Array.from({ length: 7 }, (_slot, slot) => choices[Math.floor(lot / 3 ** slot) % 3] ?? 0),
    ) as unknown as readonly Answer[];
  const sets = (slots: number) =>
    Array.from({ length: 2 ** slots - 1 }, (_, set) =>
      Array.from({ length: slots }, (_slot, slot) => slot).filter(
        (slot) => Math.floor((set + 1) / 2 ** slot) % 2 === 1,
      ),
    );
  const pads: readonly [string, Kind, readonly Answer[], MarkingContext][] = [
    ['count', 'count', [1, 2, 3, 4, 5], context(0)],
    ['direction', 'direction', ['up', 'down', 'same'], context(1)],
    ['distance', 'distance', Array.from({ length: 25 }, (_, index) => index - 12), context(1)],
    ['one or several', 'one-or-several', ['one', 'several'], context(0)],
    ['settler', 'settler', [['7M'], ['2M']], context(1)],
    ['quality', 'quality', SETTINGS.qualities, context(0)],
    ['quality of two', 'quality', ['major', 'minor'], context(0, {}, { qualities: ['major', 'minor'] })],
    [
      'quality, suspended by the other name',
      'quality',
      ['major', 'suspended-fourth'],
      context(0, { qualities: ['suspended-second', 'major'] }, { qualities: ['major', 'suspended-fourth'] }),
    ],
    ['root on three places', 'root', neckPlaces(), context(0)],
    ['root on two places', 'root', neckPlaces(), context(1)],
    ['keys', 'keys', arcs.map((arc) => arc.map((tonic) => `${tonic}M`)), context(0)],
    ['keys, none', 'keys', arcs.map((arc) => arc.map((tonic) => `${tonic}M`)), context(0, { keys: owners([], []) })],
    ['keys with relatives', 'keys', pairs, context(0, {}, { policy: 'relatives' })],
    ['strokes', 'strokes', ['all-downs', 'down-up'], context(0)],
    ['count of the bar', 'bar-count', BAR_COUNTS, heard()],
    ['two counts of the bar', 'bar-count', BAR_COUNTS, heard({ barCounts: [2, 6] })],
    ['a pair', 'drive', ['driving', 'relaxed'], heard()],
    ['accents', 'accents', threes(WEIGHTS), heard({ grid: 'V7', accents: accents('3 1 2 1 2 1 2/0') })],
    [
      'strokes on the grid',
      'stroke-grid',
      threes(GRID_STROKES),
      heard({ grid: 'V7', strokes: strokes('D U D U D D/- U') }),
    ],
    ['what opens', 'opened', sets(7), heard({ grid: 'V7', opened: [2, 3, 4, 6] })],
    ['order', 'order', ORDERS, context(0, played('A B A C'))],
    ['bass', 'bass', neckPlaces(), context(1, played('C C/E'))],
    ['seventh', 'seventh', ASKED_SEVENTHS, context(0, played('Am7 D'))],
    ['seventh of a chord with two names', 'seventh', ASKED_SEVENTHS, context(0, played('Am/G D'))],
    [
      'distance either way round',
      'distance',
      Array.from({ length: 25 }, (_, index) => index - 12),
      context(1, played('C G/B')),
    ],
    ['keys with a raised seventh', 'keys', raised, context(0, played('Am E'), { policy: 'raised-seventh' })],
    ['parents and homes', 'keys', modal, context(0, {}, { policy: 'modes' })],
  ];

  test.each(pads)('%s: a thousand dice agree', (_name, kind, options, given) => {
    const draws = 20_000;
    const random = seededRandom(17);
    const judge = judgeOf<Kind>(kind);
    let right = 0;
    for (let draw = 0; draw < draws; draw += 1) {
      const answer = options[Math.floor(random() * options.length)];
      if (answer !== undefined && judge.mark(answer, given).exact) right += 1;
    }
    const chance = judge.chance(given);
    const error = Math.sqrt((chance * (1 - chance)) / draws);
    expect(Math.abs(right / draws - chance)).toBeLessThan(4 * error);
  });
});

describe('the questions of a round', () => {
  const ids = (...given: Parameters<typeof askableQuestions>) => askableQuestions(...given).map(({ id }) => id);

  test('stand in the usual order', () => {
    expect(ids(EM_D, SETTINGS)).toEqual([
      'strokes-0',
      'count-0',
      'direction-1',
      'bass-0',
      'quality-0',
      'seventh-0',
      'root-0',
      'distance-1',
      'bass-1',
      'quality-1',
      'seventh-1',
      'numeral-0',
      'one-or-several-0',
      'keys-0',
      'settler-0',
      'settler-1',
      'home-0',
    ]);
    expect(ids({ ...EM_D, strokes: null }, SETTINGS)[0]).toBe('count-0');
  });

  test('leave out a quality that the pad cannot name, and a chord heard before in any spelling', () => {
    const chords = ['F#5', 'Gb5'];
    const truth = { ...EM_D, chords, roots: ['F#', 'Gb'], qualities: ['power', 'power'] as const };
    const heard = ids(truth, SETTINGS);
    expect(heard).toEqual(expect.arrayContaining(['direction-1', 'quality-0', 'root-0', 'keys-0']));
    expect(heard).not.toContain('quality-1');
    expect(heard).not.toContain('distance-1');
    expect(ids(truth, { ...SETTINGS, qualities: ['major', 'minor'] })).not.toContain('quality-0');
  });

  test('leave out what has no right answer: one key or several where none owns all, a distance that no octave gives', () => {
    expect(ids(played('C Fm'), SETTINGS)).not.toContain('one-or-several-0');
    expect(ids(played('C Fm'), SETTINGS)).toContain('keys-0');
    expect(ids({ ...EM_D, directions: ['same'] }, SETTINGS)).not.toContain('distance-1');
    expect(ids({ ...EM_D, settlers: [] }, SETTINGS)).not.toContain('settler-0');
    expect(ids({ ...EM_D, count: 6 }, SETTINGS)).not.toContain('count-0');
  });

  test('ask the roots of chords from the third different one on', () => {
    const asked = ids(played('A B A C'), SETTINGS);
    expect(asked.filter((id) => id.startsWith('root'))).toEqual(['root-0', 'root-3']);
    expect(asked.indexOf('root-3')).toBe(asked.indexOf('seventh-3') + 1);
  });

  test('each has a right answer', () => {
    fc.assert(
      fc.property(truths, settings, (truth, given) => {
        for (const { kind, target } of marked(truth, given)) {
          expect(judges[kind].truth({ truth, settings: given, target })).not.toBeNull();
        }
      }),
    );
  });
});

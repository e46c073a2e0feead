import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { kindsOfLevel, levelOf, LEVELS_THAT_STAND } from '../../shared-theory/levels.ts';
import { mastery, type MasteryEvidence } from '../../shared-theory/mastery.ts';
import { MASTERY_RULES, type Condition } from '../../shared-theory/mastery-rules.ts';
import { COLLECTED_KINDS, type Kind } from '../../shared-theory/questions/question.ts';

const right: MasteryEvidence = {
  kind: 'count',
  target: 0,
  vamp: 'v',
  day: 'monday',
  right: true,
  credit: 1,
  truth: '2',
  error: null,
  traits: [],
};
const wrong = { right: false, credit: 0 } as const;
const answers = (count: number, some: Partial<MasteryEvidence>): MasteryEvidence[] =>
  Array.from({ length: count }, (_, index) => ({ ...right, vamp: `v${index}`, ...some }));

/** Successes of so many tries or more, by luck. */
function tail(least: number, tries: number, chance: number): number {
  const choose = (taken: number): number =>
    Array.from({ length: taken }, (_, index) => (tries - index) / (index + 1)).reduce((one, other) => one * other, 1);
  return Array.from({ length: tries - least + 1 }, (_, more) => least + more)
    .map((hits) => choose(hits) * chance ** hits * (1 - chance) ** (tries - hits))
    .reduce((sum, each) => sum + each, 0);
}

/** Chance of one answer by kind (arithmetic): sides of a choice, twelve notes, arcs of keys; of a set or a row far less. */
const CHANCE: Readonly<Partial<Record<Kind, number>>> = {
  count: 1 / 4,
  direction: 1 / 3,
  quality: 1 / 2,
  root: 1 / 12,
  bass: 1 / 12,
  seventh: 1 / 3,
  distance: 1 / 7,
  keys: 1 / 13,
  // One side, the other, or all.
  settler: 1 / 3,
  order: 1 / 3,
  numeral: 1 / 40,
};

describe('the rules', () => {
  test('nine of ten and the like: what comes by luck (binomial tails, arithmetic)', () => {
    expect(tail(8, 10, 1 / 2)).toBeCloseTo(0.055, 3);
    expect(tail(9, 10, 1 / 2)).toBeCloseTo(0.011, 3);
    expect(tail(8, 10, 1 / 3)).toBeCloseTo(0.0034, 4);
    expect(tail(4, 5, 1 / 12)).toBeLessThan(0.001);
    expect(tail(7, 10, 1 / 3)).toBeCloseTo(0.0197, 4);
    expect(tail(5, 6, 1 / 2)).toBeCloseTo(0.109, 3);
  });

  test.each(LEVELS_THAT_STAND)('level %d has rules, of what its rounds ask', (level) => {
    const rules = MASTERY_RULES[level] ?? [];
    expect(rules.length).toBeGreaterThan(0);
    for (const { kinds, outOf, needs, cases, sides } of rules) {
      for (const kind of kinds) {
        expect(kindsOfLevel(level)).toContain(kind);
        expect(COLLECTED_KINDS.has(kind)).toBe(false);
      }
      if ('right' in needs) expect(needs.right).toBeLessThanOrEqual(outOf);
      if (cases) expect(cases.least).toBeLessThanOrEqual(outOf);
      if (sides) expect(sides.answers.length * sides.least).toBeLessThanOrEqual(outOf);
    }
  });

  test.each(LEVELS_THAT_STAND)(
    'level %d is not mastered by luck: all its conditions together in 5 % of cases at most',
    (level) => {
      const luck = (MASTERY_RULES[level] ?? []).map(({ kinds, outOf, needs, days = 1 }: Condition) => {
        const chance = kinds.map((kind) => CHANCE[kind] ?? 1).reduce((one, other) => one * other, 1);
        return tail('right' in needs ? needs.right : 7, outOf, chance) ** days;
      });
      expect(luck.reduce((one, other) => one * other, 1)).toBeLessThan(0.05);
    },
  );
});

describe('mastery', () => {
  test('level 1: nine of the last ten', () => {
    expect(mastery(1, answers(9, {}))).toEqual({
      met: false,
      missing: [{ kinds: ['count'], what: 'trials', have: 9, need: 10 }],
    });
    expect(mastery(1, [...answers(9, {}), ...answers(1, wrong)])).toEqual({ met: true, missing: [] });
    expect(mastery(1, [...answers(8, {}), ...answers(2, wrong)]).missing).toEqual([
      { kinds: ['count'], what: 'right', have: 8, need: 9, outOf: 10 },
    ]);
    // Old mistakes hold nobody; new ones count.
    expect(mastery(1, [...answers(20, wrong), ...answers(10, {})]).met).toBe(true);
    expect(mastery(1, [...answers(20, {}), ...answers(2, wrong)]).met).toBe(false);
    // Other kinds are no evidence.
    expect(mastery(1, answers(10, { kind: 'strokes' })).met).toBe(false);
  });

  test('level 2: the top note goes against the bass in four', () => {
    const against = answers(4, { kind: 'direction', traits: ['top-against-bass'] });
    expect(mastery(2, [...answers(6, { kind: 'direction' }), ...against]).met).toBe(true);
    expect(mastery(2, [...answers(7, { kind: 'direction' }), ...against.slice(1)]).missing).toEqual([
      { kinds: ['direction'], what: 'cases', trait: 'top-against-bass', have: 3, need: 4 },
    ]);
  });

  test('level 3: of pairs, both qualities asked, no bias', () => {
    const quality = { kind: 'quality', traits: ['two-chords'] } as const;
    const major = answers(5, { ...quality, truth: 'major' });
    const minor = answers(5, { ...quality, truth: 'minor' });
    expect(mastery(3, [...major, ...minor]).met).toBe(true);
    expect(mastery(3, [...major, ...major]).missing).toEqual([
      { kinds: ['quality'], what: 'side', answer: 'minor', have: 0, need: 3 },
    ]);
    const missed = minor.map((answer, index) => (index < 2 ? { ...answer, ...wrong } : answer));
    expect(mastery(3, [...major, ...missed]).missing).toEqual([
      { kinds: ['quality'], what: 'right', have: 8, need: 9, outOf: 10 },
      { kinds: ['quality'], what: 'biased', answer: 'minor', have: 2, most: 1 },
    ]);
    // One chord alone is none of the pairs.
    expect(mastery(3, [...major, ...answers(5, { kind: 'quality', truth: 'minor' })]).met).toBe(false);
  });

  test('level 4: on two days, and no fifth for the root', () => {
    const on = (day: string, some: Partial<MasteryEvidence> = {}) => answers(5, { kind: 'root', day, ...some });
    expect(mastery(4, [...on('monday'), ...on('thursday')]).met).toBe(true);
    expect(mastery(4, [...on('monday'), ...on('monday')]).missing).toEqual([
      { kinds: ['root'], what: 'days', have: 1, need: 2 },
    ]);
    const fifth = { ...right, kind: 'root', day: 'thursday', ...wrong, error: 'hears-the-fifth' } as const;
    expect(mastery(4, [...on('monday'), ...on('thursday').slice(1), fifth]).missing).toEqual([
      { kinds: ['root'], what: 'errors', errors: ['hears-the-fifth', 'hears-the-fourth-above'], have: 1, most: 0 },
    ]);
  });

  test('level 6: everything right in five vamps of six', () => {
    const kinds = ['direction', 'quality', 'root', 'distance', 'numeral'] as const;
    const vamp = (name: string, some: Partial<MasteryEvidence> = {}) =>
      kinds.map((kind): MasteryEvidence => ({ ...right, kind, vamp: name, ...(kind === 'root' ? some : {}) }));
    const five = ['a', 'b', 'c', 'd', 'e'].flatMap((name) => vamp(name));
    expect(mastery(6, [...five, ...vamp('f', wrong)]).met).toBe(true);
    expect(mastery(6, [...five.slice(5), ...vamp('f', wrong), ...vamp('g', wrong)]).missing).toEqual([
      { kinds, what: 'right', have: 4, need: 5, outOf: 6 },
    ]);
    // A vamp of which a part was not asked is none of the six.
    expect(mastery(6, [...five, ...vamp('f').slice(1)]).missing).toEqual([{ kinds, what: 'trials', have: 5, need: 6 }]);
    const small = { ...right, kind: 'numeral', vamp: 'f', ...wrong, error: 'numeral-case-wrong' } as const;
    expect(mastery(6, [...five, ...vamp('f').slice(0, 4), small]).missing).toEqual([
      { kinds, what: 'errors', errors: ['numeral-case-wrong'], have: 1, most: 0 },
    ]);
  });

  test('level 7: 0.85 on average, with three loops of a single key, so that "always two" fails', () => {
    const keys = (count: number, credit: number, single = false) =>
      answers(count, { kind: 'keys', credit, right: credit === 1, traits: single ? ['one-key'] : [] });
    expect(mastery(7, [...keys(3, 1, true), ...keys(3, 1), ...keys(2, 0.5)]).met).toBe(true);
    expect(mastery(7, [...keys(2, 1, true), ...keys(6, 1)]).missing).toEqual([
      { kinds: ['keys'], what: 'cases', trait: 'one-key', have: 2, need: 3 },
    ]);
    const { missing } = mastery(7, [...keys(3, 0.5, true), ...keys(5, 1)]);
    expect(missing).toEqual([{ kinds: ['keys'], what: 'mean-credit', have: 0.8125, need: 0.85, outOf: 8 }]);
  });

  test('level 8: two settlers that settle nothing among those that are right', () => {
    const open = answers(2, { kind: 'settler', traits: ['settles-nothing'] });
    const closed = answers(4, { kind: 'settler' });
    expect(mastery(8, [...open, ...closed]).met).toBe(true);
    const missed = open.map((answer, index) => (index === 0 ? { ...answer, ...wrong } : answer));
    expect(mastery(8, [...missed, ...closed]).missing).toEqual([
      { kinds: ['settler'], what: 'cases', trait: 'settles-nothing', have: 1, need: 2 },
    ]);
  });

  test('level 9: three chords of four in five rounds of six, and their order', () => {
    const rounds = answers(6, { kind: 'numeral', right: false, credit: 0.75, traits: ['four-slots'] });
    expect(mastery(9, [...rounds, ...answers(6, { kind: 'order' })]).met).toBe(true);
    const half = answers(6, { kind: 'numeral', right: false, credit: 0.5, traits: ['four-slots'] });
    expect(mastery(9, [...half, ...answers(6, { kind: 'order' })]).missing).toEqual([
      { kinds: ['numeral'], what: 'right', have: 0, need: 5, outOf: 6 },
    ]);
  });

  test('level 10: the triad nine of ten, the seventh seven of ten', () => {
    const triads = answers(10, { kind: 'quality' });
    const sevenths = [
      'none',
      'none',
      'none',
      'seventh',
      'seventh',
      'seventh',
      'seventh',
      'major-seventh',
      'major-seventh',
      'major-seventh',
    ];
    const named = sevenths.map((truth, index): MasteryEvidence => ({
      ...right,
      kind: 'seventh',
      truth,
      vamp: `s${index}`,
    }));
    expect(mastery(10, [...triads, ...named]).met).toBe(true);
    const swallowed = named.map((answer) => (answer.truth === 'major-seventh' ? { ...answer, ...wrong } : answer));
    expect(mastery(10, [...triads, ...swallowed]).missing).toEqual([
      { kinds: ['seventh'], what: 'biased', answer: 'major-seventh', have: 3, most: 2 },
    ]);
  });

  test('level 11: bass and root of the same chord', () => {
    const both = (name: string, bass: boolean, root: boolean): MasteryEvidence[] =>
      (['bass', 'root'] as const).map((kind) => {
        const good = kind === 'bass' ? bass : root;
        return { ...right, kind, vamp: name, target: 1, traits: ['off-root'], right: good, credit: Number(good) };
      });
    const four = ['a', 'b', 'c', 'd'].flatMap((name) => both(name, true, true));
    expect(mastery(11, [...four, ...both('e', true, false)]).met).toBe(true);
    expect(mastery(11, [...four.slice(2), ...both('e', true, false), ...both('f', false, true)]).missing).toEqual([
      { kinds: ['bass', 'root'], what: 'right', have: 3, need: 4, outOf: 5 },
    ]);
  });

  test('level 12: the keys where there are any and where there are none, and the visitor named', () => {
    const keys = [...answers(4, { kind: 'keys' }), ...answers(2, { kind: 'keys', traits: ['no-key'] })];
    const visitors = answers(6, { traits: ['visitor'], target: 1 }).flatMap((answer): MasteryEvidence[] => [
      { ...answer, kind: 'distance' },
      { ...answer, kind: 'quality' },
    ]);
    expect(mastery(12, [...keys, ...visitors]).met).toBe(true);
    expect(mastery(12, [...keys.slice(0, 4), ...keys.slice(0, 2), ...visitors]).missing).toEqual([
      { kinds: ['keys'], what: 'cases', trait: 'no-key', have: 0, need: 2 },
    ]);
  });

  test('another right answer at the end never takes a level without further conditions away', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 10, maxLength: 30 }), (list) => {
        const evidence = list.map((good, index) => ({
          ...right,
          vamp: `v${index}`,
          right: good,
          credit: Number(good),
        }));
        if (mastery(1, evidence).met) expect(mastery(1, [...evidence, right]).met).toBe(true);
        expect(mastery(1, evidence).met).toBe(list.slice(-10).filter(Boolean).length >= 9);
      }),
    );
  });

  test('a level that there is not', () => {
    expect(() => mastery(13, [])).toThrow(/no level 13/);
    expect(levelOf(12).level).toBe(12);
  });
});

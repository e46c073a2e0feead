import { beforeAll, describe, expect, test } from 'vitest';
import { kindsOfLevel, LEVELS, type Level } from '../../shared-theory/levels.ts';
import { pitchClass } from '../../shared-theory/pitch.ts';
import { FORMS } from '../../shared-theory/level.ts';
import { poolOf } from '../../shared-theory/pools.ts';
import { COLLECTED_KINDS, type Kind } from '../../shared-theory/questions/question.ts';
import { constants, evening, expectAtMost, rateOf, type Evening, type Strategy } from './asked-vamps.ts';

/** The most that a constant answer may earn, by kind: the chance of a fair answer, or the published cap. */
function caps(level: Level): Partial<Record<Kind, number>> {
  const pool = FORMS.flatMap((form) => poolOf(level, form));
  const homes = new Set(pool.map((loop) => pitchClass(loop[0]?.root ?? ''))).size;
  return {
    strokes: 0.5,
    count: 0.4,
    // Three orders: A B C D, A B A C, A B C B.
    order: 0.45,
    quality: 0.5,
    root: Math.max(0.15, 1.3 / homes),
    // The root's place as well where the bass is another note.
    bass: 0.15,
    // None, the leaning one and the soft one, and a few that nobody can be asked about.
    seventh: 0.4,
    distance: 0.25,
    numeral: 0.085,
    // No major key owns a twelve-bar or a loop with a visitor: "none" is right as often as those are drawn.
    keys: level.level === 12 ? 0.5 : 0.15,
  };
}

const runs = LEVELS.filter(({ leadsOn }) => leadsOn).flatMap((level) =>
  [...new Set([level.questions.includes('count'), true])].map((counting) => [level.level, counting, level] as const),
);

/** Milliseconds that thousands of vamps may take on a busy machine. */
const PATIENCE = 240_000;

describe.each(runs)('level %d, chords counted: %s', (number, counting, level) => {
  let heard: Evening = [];
  beforeAll(() => {
    heard = evening(level, counting);
  }, PATIENCE);
  const kinds = kindsOfLevel(number).filter((kind) => (kind !== 'count' || counting) && !COLLECTED_KINDS.has(kind));
  const most = caps(level);

  test('every kind is asked, and often enough to tell', () => {
    for (const kind of kindsOfLevel(number).filter((each) => each !== 'count' || counting)) {
      const asked = heard.flatMap((each) => each.asked).filter((one) => one.kind === kind).length;
      expect([kind, asked >= 4000]).toEqual([kind, true]);
    }
  });

  test.each(kinds)('no answer to %s earns more than its share by being said always', (kind) => {
    for (const [name, rate] of constants(heard, kind)) expectAtMost(`${kind} ${name}`, rate, most[kind] ?? 0);
  });

  test.each(kinds)('what was right to %s the last time is right no oftener', (kind) => {
    const last = (at: number) => heard[at]?.asked.find((asked) => asked.kind === kind);
    let right = 0;
    let count = 0;
    for (let index = 1; index < heard.length; index += 1) {
      const [before, now] = [last(index - 1), last(index)];
      const [first] = before?.right ?? [];
      if (first === undefined || !now) continue;
      count += 1;
      if (now.right.has(first)) right += 1;
    }
    expectAtMost(`${kind} as before`, { rate: right / count, count }, most[kind] ?? 0);
  });

  test('strokes: turn and turn about earns half', () => {
    const turns: Strategy = (_, __, index) => (index % 2 === 0 ? 'all-downs' : 'down-up');
    expectAtMost('strokes', rateOf(heard, 'strokes', turns), 0.5);
  });

  test('quality: the first chord’s tells little of the next', () => {
    if (!kinds.includes('quality')) return;
    const same: Strategy = ({ target }, { made }) => (target > 0 ? (made.truth.qualities[0] ?? null) : null);
    const other: Strategy = ({ target }, { made }) =>
      target === 0 ? null : made.truth.qualities[0] === 'major' ? 'minor' : 'major';
    for (const strategy of [same, other]) expectAtMost('quality', rateOf(heard, 'quality', strategy), 0.6);
  });

  test('bass: neither always the root nor home’s bass again', () => {
    if (!kinds.includes('bass')) return;
    let roots = 0;
    let count = 0;
    for (const { made, asked } of heard)
      for (const { kind, target } of asked) {
        if (kind !== 'bass') continue;
        count += 1;
        if ((made.truth.bass[target] ?? 0) % 12 === pitchClass(made.truth.roots[target] ?? '')) roots += 1;
      }
    expectAtMost('the root', { rate: roots / count, count }, 0.55);
    expect(roots / count).toBeGreaterThan(0.35);
  });
});

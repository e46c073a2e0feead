import { render } from 'preact';
import { act } from 'preact/test-utils';
import { describe, expect, test } from 'vitest';
import { Spread } from '../../../client/shared/spreads/spread.tsx';
import type { WireSpread, WireTaps, WireTruth } from '../../../server/protocol/views.ts';
import { GRIDS, type Grid } from '../../../shared-theory/groove-grid.ts';
import { roomTaps } from '../../../shared-theory/taps/analysis.ts';
import { seededRandom } from '../../../shared-theory/random.ts';
import { accentsAsk } from '../../../shared-theory/questions/accents/ask.ts';
import { openedAsk } from '../../../shared-theory/questions/opened/ask.ts';
import { rolesAsk } from '../../../shared-theory/questions/roles/ask.ts';
import { strokeGridAsk } from '../../../shared-theory/questions/stroke-grid/ask.ts';

const root = document.createElement('div');
const WALL = { width: 1696, height: 560, scale: 1, bleed: 112 };
const DESK = { width: 350, height: 270, scale: 0.45 };

function draw(
  spread: WireSpread,
  truth?: WireTruth | null,
  size: typeof WALL | typeof DESK = WALL,
  hands = true,
): HTMLElement {
  void act(() =>
    render(<Spread label="how it fell" spread={spread} truth={truth ?? null} hands={hands} size={size} />, root),
  );
  return root;
}

const beads = (): number => root.querySelectorAll('circle.fill-ink').length;
const brass = (): number => root.querySelectorAll('[class*=brass], .lens-body').length;
const numbers = (): readonly number[] =>
  [...root.querySelectorAll('.spread-count')].map((each) => Number(each.textContent));

/** Everything drawn has places that are numbers. */
function expectWhole(): void {
  const fault = /[\w-]+="[^"]*(?:NaN|undefined|Infinity)[^"]*"/.exec(root.innerHTML);
  expect(fault?.[0]).toBeUndefined();
}

type Given = { readonly answer: unknown; readonly key: string };

function spreadOf(
  kind: string,
  given: readonly Given[],
  rest: Partial<WireSpread> & { readonly grid?: Grid } = {},
): WireSpread {
  const { grid, ...more } = rest;
  const counts = new Map<string, { answer: unknown; key: string; count: number }>();
  for (const { answer, key } of given) counts.set(key, { answer, key, count: (counts.get(key)?.count ?? 0) + 1 });
  return {
    ask: 'a1',
    kind,
    target: 0,
    asking: { kind, target: 0, ...(grid === undefined ? {} : { grid }) },
    counts: [...counts.values()],
    notSure: 1,
    silent: 0,
    of: given.length + 1,
    ...more,
  };
}

/** Taps of so many hands along with a groove of 100 a minute, each with its own scatter. */
function tapped(hands: number, kind: 'tempo' | 'steadiness' | 'drop-out' | 'together'): WireTaps {
  if (hands > 100) {
    // A large room is a small one many times over: reading a thousand hands is tested elsewhere.
    const few = tapped(20, kind);
    const often = (values: readonly number[]) =>
      values.flatMap((value) => Array.from({ length: hands / 20 }, () => value));
    const [tempi, unevenness] = [often(few.tempi), often(few.unevenness)];
    return { ...few, read: tempi.length, of: hands, tempi, unevenness };
  }
  const random = seededRandom(3, kind);
  const answers = Array.from({ length: hands }, (_, hand) => {
    const period = 600 * (hand % 5 === 4 ? 2 : 1) * (1 + 0.01 * (random() - 0.5));
    const taps = Array.from({ length: 24 }, (__, tap) => (tap === 0 ? 0 : tap * period + 20 * (random() - 0.5)));
    return { taps, silentFrom: 12 };
  });
  const given = kind === 'drop-out' ? answers : answers.map(({ taps }) => taps);
  return roomTaps(given, { kind, tempo: 100, beatsPerBar: 4 });
}

const HANDS = [0, 1, 24, 1000] as const;

describe.each(['tempo', 'steadiness', 'drop-out', 'together'] as const)('%s', (kind) => {
  const truth = kind === 'together' ? null : { answer: [0, 600], key: '100', also: ['200'] };
  test.each(HANDS)('%i hands: whole on wall and desk, with the truth and without it', (hands) => {
    const taps = tapped(hands, kind);
    const spread = spreadOf(
      kind,
      Array.from({ length: hands }, () => ({ answer: [0, 600], key: '100' })),
      { taps },
    );
    for (const size of [WALL, DESK]) {
      for (const shown of [null, truth]) {
        draw(spread, shown, size);
        expectWhole();
        if (shown === null) expect(brass()).toBe(0);
        else expect(brass()).toBeGreaterThan(0);
      }
    }
    draw(spread, truth, WALL, false);
    expectWhole();
    expect(beads()).toBe(0);
  });
});

test.each(['tempo', 'steadiness'] as const)(
  '%s: a bead a hand that could be read, and numbers where there are too many',
  (kind) => {
    for (const hands of [1, 24]) {
      const taps = tapped(hands, kind);
      draw(spreadOf(kind, [], { taps }));
      expect(beads()).toBe(taps.read);
    }
    const taps = tapped(1000, kind);
    draw(spreadOf(kind, [], { taps }));
    expect(numbers().reduce((sum, count) => sum + count, 0)).toBe(taps.read);
    expect(beads()).toBeLessThan(60);
  },
);

test('tempo: what was counted otherwise is said in words, and only once the truth is shown', () => {
  const spread = spreadOf('tempo', [], { taps: tapped(24, 'tempo') });
  expect(draw(spread).textContent).not.toMatch(/numbers|twice|half/);
  expect(draw(spread, { answer: [0], key: '100' }).textContent).toMatch(/the numbers.*twice as fast.*half as fast/);
  const lawful = draw(spread, { answer: [0], key: '100', also: ['200'] }).textContent;
  expect(lawful).toContain('right too');
  expect(lawful).not.toContain('twice as fast');
  // Half of 72 stands at the ruler's end: its words stay in the drawing.
  const words = [...draw(spread, { answer: [0], key: '72' }, DESK).querySelectorAll('text')];
  const half = words.find(({ textContent }) => textContent === 'half as fast');
  // Half the width of the words, at half a height a letter.
  const reach = (12 * Number(half?.getAttribute('font-size'))) / 4;
  expect(Number(half?.getAttribute('x'))).toBeGreaterThanOrEqual(reach);
  // Twice 160 is nothing that anybody taps.
  expect(draw(spread, { answer: [0], key: '160' }).textContent).not.toContain('twice');
});

test('drop-out: one curve for all, its silence marked by rests; nobody stands by himself', () => {
  const curve = Array.from({ length: 9 }, (_, index) => ({
    beat: index + 1,
    middle: index,
    low: index - 4,
    high: index + 4,
  }));
  const taps = { ...tapped(24, 'drop-out'), curve };
  draw(spreadOf('drop-out', [], { taps }));
  expect(root.textContent).toContain('back');
  expect(beads()).toBe(curve.length);
  expectWhole();
  // Far outside the picture the curve keeps to its edge.
  draw(
    spreadOf('drop-out', [], { taps: { ...taps, curve: curve.map((each) => ({ ...each, high: 1e6, low: -1e6 })) } }),
  );
  expectWhole();
});

test('together: how wide and which way, in words; no bead stands for a hand', () => {
  const taps = { ...tapped(24, 'together'), spread: 31.4, drift: { percent: -1.52, error: 0.3 } };
  const text = draw(spreadOf('together', [], { taps })).textContent;
  expect(text).toContain('within 31 ms');
  expect(text).toContain('slower: 1.5 %');
  expect(beads()).toBe(0);
  const held = draw(spreadOf('together', [], { taps: { ...taps, drift: { percent: 0.4, error: 0.3 } } })).textContent;
  expect(held).toContain('holds its tempo');
  expect(draw(spreadOf('together', [], { taps: { ...taps, drift: null } })).textContent).toContain('too few beats');
});

test('where taps can be read and nobody tapped before the silence, that is said', () => {
  const drawn = draw(spreadOf('drop-out', [], { taps: { ...tapped(4, 'drop-out'), curve: null } })).textContent;
  expect(drawn).toContain('Nobody tapped from before the silence.');
  expect(drawn).not.toContain('could be read');
});

test('where nobody’s taps could be read, that is said', () => {
  for (const kind of ['tempo', 'steadiness', 'drop-out', 'together'] as const) {
    const taps = { ...tapped(0, kind), of: 3 };
    expect(draw(spreadOf(kind, [], { taps })).textContent).toContain('No taps could be read.');
  }
});

const CHOICES = {
  'bar-count': [2, 3, 4, 6, 7],
  threes: ['two-threes', 'three-twos'],
  'half-time': ['full-time', 'half-time'],
  swing: ['straight', 'swung'],
  drive: ['driving', 'relaxed'],
  pendulum: ['keeps', 'breaks'],
  'change-place': ['on-one', 'pushed'],
} as const;

describe.each(Object.entries(CHOICES))('%s', (kind, choices) => {
  test.each(HANDS)('%i hands: a number and a tally beside each choice; brass with the truth alone', (hands) => {
    const given = Array.from({ length: hands }, (_, hand) => choices[hand % choices.length] ?? choices[0]).map(
      (answer) => ({ answer, key: String(answer) }),
    );
    const spread = spreadOf(kind, given);
    for (const size of [WALL, DESK]) {
      draw(spread, null, size);
      expectWhole();
      expect(brass()).toBe(0);
      expect(numbers()).toHaveLength(choices.length);
      expect(numbers().reduce((sum, count) => sum + count, 0)).toBe(hands);
      draw(spread, { answer: choices[0], key: String(choices[0]) }, size);
      expectWhole();
      expect(brass()).toBeGreaterThan(0);
    }
  });
});

const FILLED = {
  accents: { values: [0, 1, 2], key: accentsAsk.key as (answer: never) => string },
  'stroke-grid': { values: ['down', 'up', 'silent'], key: strokeGridAsk.key as (answer: never) => string },
  roles: { values: ['kick', 'slap', 'closed', 'open', 'silent'], key: rolesAsk.key as (answer: never) => string },
} as const;

describe.each(Object.entries(FILLED))('%s', (kind, { values, key }) => {
  test.each(['E8', 'E16', 'S16', 'V7'] as const)('whole on %s with no hands and many, on wall and desk', (grid) => {
    const { slots } = GRIDS[grid];
    const answers = Array.from({ length: 7 }, (_, hand) =>
      Array.from({ length: slots }, (__, slot) => values[(hand * slot + hand) % values.length]),
    );
    const right = answers[1] ?? [];
    const truth = { answer: right, key: key(right as never) };
    const meanGrid = Array.from({ length: slots }, (_, slot) => (slot % 5) / 2);
    for (const hands of HANDS) {
      const given = Array.from({ length: hands }, (_, hand) => answers[hand % answers.length] ?? right).map(
        (answer) => ({ answer, key: key(answer as never) }),
      );
      const spread = spreadOf(kind, given, {
        grid,
        ...(kind === 'accents' ? { meanGrid: hands > 0 ? meanGrid : null } : {}),
      });
      for (const size of [WALL, DESK]) {
        draw(spread, null, size);
        expectWhole();
        expect(brass()).toBe(0);
        // Every hand has put one sign on each slot.
        if (kind !== 'accents') expect(numbers().reduce((sum, count) => sum + count, 0)).toBe(hands * slots);
        draw(spread, truth, size);
        expectWhole();
        expect(brass()).toBeGreaterThan(0);
      }
    }
  });
});

test('accents: the higher the class’s mean, the higher the slash; where it is silent a rule lies', () => {
  const mean = [2, 1, 0, 0.5, 1.5, 1, 0, 2];
  draw(spreadOf('accents', [{ answer: mean, key: '21001102' }], { grid: 'E8', meanGrid: mean }));
  const heights = [...root.querySelectorAll('path.fill-ink')].map((each) =>
    Number(/l[\d.]+ -([\d.]+)/.exec(each.getAttribute('d') ?? '')?.[1]),
  );
  expect(heights).toHaveLength(mean.filter((weight) => weight > 0).length);
  const expected = mean.filter((weight) => weight > 0);
  for (const [one, height] of heights.entries())
    for (const [other, less] of heights.entries())
      if ((expected[one] ?? 0) > (expected[other] ?? 0)) expect(height).toBeGreaterThan(less);
});

test('stroke-grid: of bars that differ every right stroke has its brass', () => {
  const strokes = ['down', 'silent', 'down', 'up', 'silent', 'up', 'down', 'up'];
  const truth = { answer: strokes, key: 'D-DU-UDU', also: ['D-DU-UDD'] };
  draw(spreadOf('stroke-grid', [], { grid: 'E8' }), truth);
  expect(brass()).toBe(9);
});

describe('opened', () => {
  test.each(['E16', 'T12', 'C6'] as const)('%s: a bead for each slot that a hand marked', (grid) => {
    const { slots } = GRIDS[grid];
    const answers = [[slots - 1], [0, slots - 1], [1]];
    const marked = (hands: number): number =>
      Array.from({ length: hands }, (_, hand) => answers[hand % 3]?.length ?? 0).reduce((sum, each) => sum + each, 0);
    for (const hands of HANDS) {
      const given = Array.from({ length: hands }, (_, hand) => answers[hand % 3] ?? []).map((answer) => ({
        answer,
        key: openedAsk.key(answer),
      }));
      for (const size of [WALL, DESK]) {
        draw(spreadOf('opened', given, { grid }), null, size);
        expectWhole();
        expect(brass()).toBe(0);
        if (hands <= 1) expect(beads()).toBe(marked(hands));
        draw(spreadOf('opened', given, { grid }), { answer: [slots - 1], key: String(slots - 1) }, size);
        expectWhole();
        expect(brass()).toBeGreaterThan(0);
      }
    }
  });
});

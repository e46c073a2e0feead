import * as fc from 'fast-check';
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { expect, test } from 'vitest';
import { handsOnKeys, KeysSpread } from '../../../client/shared/spreads/keys-spread.tsx';
import { handsOnBars } from '../../../client/shared/spreads/order-spread.tsx';
import { numeralLines } from '../../../client/shared/spreads/numeral-spread.tsx';
import { Spread } from '../../../client/shared/spreads/spread.tsx';
import type { WireSpread, WireTruth } from '../../../server/protocol/views.ts';
import { spreadOf } from '../host/fixtures.ts';

const root = document.createElement('div');
const size = { width: 1696, height: 560, scale: 1, bleed: 112 };

function draw(spread: WireSpread, truth?: WireTruth, hands = true): HTMLElement {
  const shown = truth ? { truth } : {};
  void act(() => render(<Spread label="x" spread={spread} {...shown} hands={hands} size={size} />, root));
  return root;
}

/** Beads are circles of ink without a ring or a halo's colour. */
const beads = (): number => root.querySelectorAll('circle.fill-ink').length;
const drawnWithNobody = (kind: string): number => {
  draw(spreadOf(kind, 1, {}));
  return beads();
};

test.each([
  ['direction', ['up', 'down', 'same']],
  ['root', ['6.0', '6.3', '5.2', '5.12']],
  ['count', ['1', '2', '4', '5']],
  ['distance', ['-12', '-5', '0', '5', '12']],
  ['one-or-several', ['one', 'several']],
  ['bass', ['6.0', '6.3', '5.2', '5.12']],
  ['seventh', ['none', 'seventh', 'major-seventh']],
])('%s: one bead a hand', (kind, keys) => {
  const bare = drawnWithNobody(kind);
  fc.assert(
    fc.property(fc.tuple(...keys.map(() => fc.nat({ max: 9 }))), (hands) => {
      draw(spreadOf(kind, 1, Object.fromEntries(keys.map((key, index) => [key, hands[index] ?? 0]))));
      expect(beads() - bare).toBe(hands.reduce((sum, count) => sum + count, 0));
    }),
    { numRuns: 20 },
  );
});

test('root: under a capo the neck has its bar with its number, says which names are meant, and takes hands up to its last fret', () => {
  const spread = spreadOf('root', 1, { '6.9': 3, '5.15': 2 });
  draw({ ...spread, asking: { ...spread.asking, capo: 9 } });
  expect(root.textContent).toContain('capo 9');
  expect(root.textContent).toContain('sounding names');
  expect(beads()).toBe(5);
  draw(spreadOf('root', 1, { '6.9': 3 }));
  expect(root.textContent).not.toContain('capo');
  expect(root.textContent).not.toContain('sounding');
});

test('keys: an answer of two keys is a hand on each; no key is counted in the middle', () => {
  const spread = spreadOf('keys', 0, { '2M 7M': 3, '7M': 2, none: 4 });
  expect(Object.fromEntries(handsOnKeys(spread))).toEqual({ '2M': 3, '7M': 5, none: 4 });
  draw(spread);
  expect(root.querySelector('.no-key')?.textContent).toContain('4');
});

test.each([
  ['quality', { major: 3, minor: 14 }],
  ['strokes', { 'all-downs': 3, 'down-up': 14 }],
  ['numeral', { 'vi V': 14, 'ii I': 3 }],
])('%s: the hands of each answer as a number beside its tally', (kind, hands) => {
  draw(spreadOf(kind, 0, hands));
  const numbers = [...root.querySelectorAll('.spread-count')].map((each) => each.textContent);
  for (const count of Object.values(hands)) expect(numbers).toContain(String(count));
});

const brass = (): number => root.querySelectorAll('[class*=brass], .lens-body').length;

test.each([
  ['direction', { answer: 'up', key: 'up' }],
  ['quality', { answer: 'minor', key: 'minor' }],
  ['root', { answer: { string: 6, fret: 3 }, key: '6.3', also: ['5.10'] }],
  ['keys', { answer: ['7M'], key: '7M' }],
  ['strokes', { answer: 'down-up', key: 'down-up' }],
  ['count', { answer: 2, key: '2' }],
  ['distance', { answer: -5, key: '-5' }],
  ['distance', { answer: 0, key: '0' }],
  ['numeral', { answer: ['vi', 'V'], key: 'vi V', also: ['ii I'] }],
  ['one-or-several', { answer: 'several', key: 'several' }],
  ['settler', { answer: ['7M'], key: '7M' }],
  ['settler', { answer: [], key: 'none' }],
  ['bass', { answer: { string: 6, fret: 3 }, key: '6.3', also: ['5.10'] }],
  ['seventh', { answer: 'seventh', key: 'seventh' }],
  ['order', { answer: [0, 1, 0, 2], key: '0 1 0 2' }],
] as const)('%s: no brass before the truth is given, brass with it', (kind, truth) => {
  draw(spreadOf(kind, 0, { [truth.key]: 5 }));
  expect(brass()).toBe(0);
  draw(spreadOf(kind, 0, { [truth.key]: 5 }), truth);
  expect(brass()).toBeGreaterThan(0);
});

test('a letter comes as it is spelled: F sharp and B flat are drawn', () => {
  for (const letter of ['F#', 'Bb']) {
    draw(spreadOf('quality', 0, { minor: 5 }, { letter }));
    expect(root.textContent).toContain(letter === 'F#' ? 'F♯m' : 'B♭m');
  }
});

test('hundreds of hands are numbers, not a thicket of beads', () => {
  draw(spreadOf('direction', 1, { up: 300, down: 120, same: 7 }));
  expect(root.querySelectorAll('circle.fill-ink').length).toBeLessThan(10);
  expect(root.textContent).toContain('300');
});

test.each([
  ['strokes', 'down-up'],
  ['count', '2'],
  ['direction', 'up'],
  ['quality', 'minor'],
  ['root', '6.3'],
  ['distance', '5'],
  ['numeral', 'vi V'],
  ['one-or-several', 'one'],
  ['keys', '7M'],
  ['settler', '7M'],
  ['bass', '6.3'],
  ['seventh', 'none'],
  ['order', '0 1 2 0'],
])('%s: without hands the right answer stands alone', (kind, key) => {
  const truth = { answer: key, key };
  const options = kind === 'quality' ? ['major', 'minor'] : ['majors'];
  draw(spreadOf(kind, 1, {}, { options }), truth, false);
  const bare = [beads(), root.querySelectorAll('.spread-count').length];
  draw(spreadOf(kind, 1, { [key]: 7 }, { options }), truth, false);
  expect([beads(), root.querySelectorAll('.spread-count').length]).toEqual(bare);
  expect(brass()).toBeGreaterThan(0);
});

test('numerals: six readings at most have a line, the hands of all others stand together', () => {
  const given = { 'vi V': 9, 'ii V': 5, 'i VII': 4, 'ii I': 3, 'VI V': 2, 'vi IV': 2, 'vi iv': 1, 'i bVII': 1 };
  const spread = spreadOf('numeral', 0, given);
  expect(numeralLines(spread)).toEqual({
    lines: Object.entries(given)
      .slice(0, 6)
      .map(([key, hands]) => ({ key, hands })),
    others: 2,
  });
  draw(spread);
  expect(root.textContent).toContain('others');
  expect(root.textContent).not.toContain('♭');
});

test.each([
  ['given by few', 'i bVII', 1],
  ['given by nobody', 'IV III', 0],
])('numerals: the right one, %s, has its line once shown', (_, key, hands) => {
  const given = { 'vi V': 9, 'ii V': 5, 'i VII': 4, 'ii I': 3, 'VI V': 2, 'vi IV': 2, 'vi iv': 1, 'i bVII': 1 };
  const { lines, others } = numeralLines(spreadOf('numeral', 0, given), { answer: key.split(' '), key });
  expect(lines).toHaveLength(6);
  expect(lines[5]).toEqual({ key, hands });
  expect(lines.reduce((sum, line) => sum + line.hands, others)).toBe(27);
});

test('settler: keys that did not own the loop step back', () => {
  draw(spreadOf('settler', 0, { '7M': 3, none: 2 }, { options: ['majors', '7M', '2M'] }));
  expect(root.querySelectorAll('text.fill-string')).toHaveLength(10);
  expect(root.querySelector('.no-key')?.textContent).toBe('no keyis left2');
});

test('distance: on a desk the halves lie one above the other, and every hand is counted once', () => {
  const spread = spreadOf('distance', 1, { '0': 3, '5': 2, '-5': 1 });
  const small = { width: 350, height: 270, scale: 0.45 };
  void act(() => render(<Spread label="x" spread={spread} size={small} />, root));
  expect(root.textContent).toContain('up from home');
  expect(root.textContent).toContain('down from home');
  // A pile too low for a bead a hand is one bead with its number: home stands on both halves, its hands on one.
  const numbers = [...root.querySelectorAll('.spread-count')].map((each) => Number(each.textContent));
  expect(numbers.toSorted((a, b) => a - b)).toEqual([1, 2, 3]);
  expect(beads()).toBe(3);
});

test('order: hands by bar and letter', () => {
  const spread = spreadOf('order', 0, { '0 1 0 2': 5, '0 1 0 1': 3 });
  expect(handsOnBars(spread)).toEqual([
    [8, 0, 0],
    [0, 8, 0],
    [8, 0, 0],
    [0, 3, 5],
  ]);
  draw(spread);
  // The first bar is A for everybody.
  expect([...root.querySelectorAll('.digit')].map((each) => each.textContent).join('')).toBe('AABCABCABC');
});

test('home: both crowds in one ink, whatever is given as truth', () => {
  const spread = spreadOf('home', 0, { '0': 9, '1': 4 });
  draw(spread, { answer: 0, key: '0' });
  expect(brass()).toBe(0);
  expect(root.textContent).toBe('first chordnext chord');
  const fermatas = 2;
  expect(beads()).toBe(13 + fermatas);
});

test('scales: the homes stand beside the circle, the right ones in brass', () => {
  const counts = { '7M h0': 5, '7M h1': 3, '2M 7M': 2 };
  const spread = spreadOf('keys', 0, counts, { options: ['modes'] });
  draw(spread);
  expect([...root.querySelectorAll('.spread-count')].map((each) => each.textContent)).toEqual(['5', '3']);
  const before = brass();
  draw(spread, { answer: ['7M', 'h0'], key: '7M h0', also: ['7M h1'] });
  expect([before, root.querySelectorAll('.no-key .line-brass').length]).toEqual([0, 0]);
  expect(brass()).toBeGreaterThan(2);
});

test.each([350, 1700])('scales: the homes never stand on each other, %i wide', (width) => {
  const two = spreadOf('keys', 0, { '7M h0': 5, '7M h3': 3 }, { options: ['modes'] });
  const spread = { ...two, asking: { ...two.asking, loop: 'more' } };
  const scale = width < 1000 ? 0.45 : 1;
  render(
    <svg>
      <KeysSpread spread={spread} size={{ width, height: width < 1000 ? 340 : 580, scale }} />
    </svg>,
    root,
  );
  const places = [...root.querySelectorAll('.spread-count')].map((each) => Number(each.getAttribute('x')));
  expect(places).toHaveLength(4);
  const steps = places.slice(1).map((x, index) => x - (places[index] ?? 0));
  expect(Math.min(...steps)).toBeGreaterThan(60 * scale);
  expect(Math.max(...places)).toBeLessThan(width);
});

test('sevenths are written over the triad that was shown', () => {
  draw(spreadOf('seventh', 0, { seventh: 5 }, { letter: 'Bbm' }));
  expect(root.textContent).toContain('B♭m7');
  draw(spreadOf('seventh', 0, { seventh: 5 }));
  expect(root.textContent).toContain('maj7');
});

import * as fc from 'fast-check';
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { expect, test } from 'vitest';
import { handsOnKeys } from '../../../client/shared/spreads/keys-spread.tsx';
import { Spread } from '../../../client/shared/spreads/spread.tsx';
import type { WireSpread, WireTruth } from '../../../server/protocol/views.ts';
import { spreadOf } from '../host/fixtures.ts';

const root = document.createElement('div');
const size = { width: 1696, height: 560, scale: 1, bleed: 112 };

function draw(spread: WireSpread, truth?: WireTruth): HTMLElement {
  void act(() => render(<Spread label="x" spread={spread} {...(truth ? { truth } : {})} size={size} />, root));
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

test('keys: an answer of two keys is a hand on each; no key is counted in the middle', () => {
  const spread = spreadOf('keys', 0, { '2M 7M': 3, '7M': 2, none: 4 });
  expect(Object.fromEntries(handsOnKeys(spread))).toEqual({ '2M': 3, '7M': 5, none: 4 });
  draw(spread);
  expect(root.querySelector('.no-key')?.textContent).toContain('4');
});

test.each([
  ['quality', { major: 3, minor: 14 }],
  ['strokes', { 'all-downs': 3, 'down-up': 14 }],
])('%s: the hands of each answer as a number beside its tally', (kind, hands) => {
  draw(spreadOf(kind, 0, hands));
  const numbers = [...root.querySelectorAll('.spread-count')].map((each) => each.textContent);
  for (const count of Object.values(hands)) expect(numbers).toContain(String(count));
});

test.each([
  ['direction', { answer: 'up', key: 'up' }],
  ['quality', { answer: 'minor', key: 'minor' }],
  ['root', { answer: { string: 6, fret: 3 }, key: '6.3', also: ['5.10'] }],
  ['keys', { answer: ['7M'], key: '7M' }],
  ['strokes', { answer: 'down-up', key: 'down-up' }],
] as const)('%s: no brass before the truth is given, brass with it', (kind, truth) => {
  const brass = (): number => root.querySelectorAll('[class*=brass], .lens-body').length;
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

import * as fc from 'fast-check';
import { render } from 'preact';
import { useState } from 'preact/hooks';
import { act } from 'preact/test-utils';
import { expect, test } from 'vitest';
import { inOrder, tapped, type WrittenOrder } from '../../../client/shared/drawings/order-letters.ts';
import { PAIR_BARS } from '../../../client/shared/drawings/pair-marks-layout.ts';
import { loadPad } from '../../../client/student/pads/pads.ts';
import type { WireAsking, WireTruth } from '../../../server/protocol/views.ts';
import { readAnswer } from '../../../shared-theory/questions/asks.ts';
import { distanceAsk } from '../../../shared-theory/questions/distance/ask.ts';
import { numeralAsk } from '../../../shared-theory/questions/numeral/ask.ts';
import { ORDERS, orderAsk } from '../../../shared-theory/questions/order/ask.ts';
import { neckFrets } from '../../../shared-theory/questions/root/ask.ts';
import { KINDS, type Kind } from '../../../shared-theory/questions/question.ts';

const SETTINGS = { policy: 'majors', qualities: [] } as const;

type More = Partial<WireAsking> & { readonly truth?: WireTruth; readonly closed?: boolean; readonly first?: unknown };

/** A pad on a page that holds what is chosen, as a question does. */
async function open(kind: string, { truth, closed = false, first = null, ...asking }: More = {}) {
  const pad = await loadPad(kind);
  if (!pad) throw new Error(`no pad for ${kind}`);
  const place = document.body.appendChild(document.createElement('div'));
  let held: unknown = first;
  function Held({ truth }: { readonly truth: WireTruth | undefined }) {
    const [chosen, choose] = useState(held);
    held = chosen;
    return pad ? (
      <pad.Pad
        asking={{ kind, target: 0, ...asking }}
        chosen={chosen}
        closed={closed}
        dashed={false}
        truth={truth}
        leftHanded={false}
        droppedOut={false}
        onChoose={choose}
        onWrite={choose}
      />
    ) : null;
  }
  const draw = (truth: WireTruth | undefined) => act(() => render(<Held truth={truth} />, place));
  await draw(truth);
  const choices = () =>
    [...place.querySelectorAll('button')].filter((each) => each.getAttribute('aria-hidden') !== 'true');
  const labels = () => choices().map((each) => each.getAttribute('aria-label') ?? '');
  const pressed = () =>
    choices().flatMap((each) =>
      each.getAttribute('aria-pressed') === 'true' ? [each.getAttribute('aria-label')] : [],
    );
  const tap = (label: string) =>
    act(() => {
      const found = choices().find((each) => each.getAttribute('aria-label') === label);
      if (!found) throw new Error(`no target ${label} among ${labels().join(', ')}`);
      found.click();
    });
  const brass = () => place.querySelectorAll('.lens-body, [class*=brass]').length;
  return { place, draw, choices, labels, pressed, tap, brass, chosen: () => held };
}

test.each([...KINDS])('%s: every target is a button with a spoken label, in the order of tabs', async (kind) => {
  const pad = await open(kind, { options: kind === 'quality' ? ['major', 'minor'] : ['majors'] });
  expect(pad.choices().length).toBeGreaterThan(1);
  for (const each of pad.choices()) {
    expect(each.getAttribute('aria-label')).toMatch(/[a-z]/);
    expect(each.type).toBe('button');
    expect(each.tabIndex).toBe(0);
  }
});

test.each([...KINDS])('%s: closed, nothing can be tapped', async (kind) => {
  const pad = await open(kind, { options: kind === 'quality' ? ['major', 'minor'] : ['majors'], closed: true });
  expect(
    [...pad.place.querySelectorAll<HTMLButtonElement>('button:not(.page-link)')].every((each) => each.disabled),
  ).toBe(true);
});

test('count: one to five, taken back by the same tap', async () => {
  const pad = await open('count');
  expect(pad.labels()).toEqual(['one', 'two', 'three', 'four', 'five']);
  await pad.tap('three');
  expect([pad.chosen(), pad.pressed()]).toEqual([3, ['three']]);
  await pad.tap('two');
  expect(pad.chosen()).toBe(2);
  await pad.tap('two');
  expect([pad.chosen(), pad.pressed()]).toEqual([null, []]);
});

test('distance: every place of the line from an octave below home to one above, home once', async () => {
  const pad = await open('distance');
  expect(pad.labels()).toHaveLength(25);
  const chosen: unknown[] = [];
  for (const label of pad.labels()) {
    await pad.tap(label);
    expect(pad.pressed()).toEqual([label]);
    chosen.push(pad.chosen());
  }
  expect(chosen.map(Number).toSorted((a, b) => a - b)).toEqual(Array.from({ length: 25 }, (_, index) => index - 12));
  for (const answer of chosen) expect(distanceAsk.read(answer, { policy: 'majors', qualities: [] })).toBe(answer);
});

// common practice: from home, a fourth up is five semitones, a fourth down reaches the fifth, a whole step down the flat seventh.
test.each([
  ['distance four, up', 5],
  ['distance five, down', -5],
  ['distance flat seven, down', -2],
  ['distance eight, up', 12],
  ['distance one, down', -12],
  ['home, the same note', 0],
] as const)('%s is %i semitones', async (label, semitones) => {
  const pad = await open('distance');
  await pad.tap(label);
  expect(pad.chosen()).toBe(semitones);
  await pad.tap(label);
  expect(pad.chosen()).toBeNull();
});

test('distance: the block of home is a target on both halves, for thumbs alone', async () => {
  const pad = await open('distance');
  const twins = [...pad.place.querySelectorAll<HTMLButtonElement>('[aria-hidden=true]')].filter(
    (each) => each.tagName === 'BUTTON',
  );
  expect(twins).toHaveLength(3);
  for (const twin of twins) {
    expect(twin.tabIndex).toBe(-1);
    await act(() => twin.click());
    expect(pad.chosen()).toBe(0);
    await act(() => twin.click());
    expect(pad.chosen()).toBeNull();
  }
});

test('numerals: a bar, its degree, its form; an empty bar in front leaves the answer unfinished', async () => {
  const pad = await open('numeral', { loop: 'two' });
  expect(pad.labels().slice(0, 2)).toEqual(['first chord: empty', 'next chord: empty']);
  await pad.tap('next chord: empty');
  await pad.tap('five');
  expect(pad.chosen()).toEqual(['', 'V']);
  await pad.tap('first chord: empty');
  await pad.tap('six');
  await pad.tap('minor');
  expect(pad.chosen()).toEqual(['vi', 'V']);
  expect(pad.labels().slice(0, 2)).toEqual(['first chord: six minor', 'next chord: five']);
  await pad.tap('diminished');
  expect(pad.chosen()).toEqual(['vio', 'V']);
  await pad.tap('augmented');
  await pad.tap('flat');
  expect(pad.chosen()).toEqual(['bVI+', 'V']);
  await pad.tap('flat');
  await pad.tap('major');
  expect(pad.chosen()).toEqual(['VI', 'V']);
  // The same degree again empties the bar.
  await pad.tap('six');
  expect(pad.chosen()).toEqual(['', 'V']);
  await pad.tap('next chord: five');
  await pad.tap('five');
  expect(pad.chosen()).toBeNull();
});

test.each([
  ['one', 1],
  ['two', 2],
  ['more', 4],
  [undefined, 4],
] as const)('numerals: in a loop of %s as far as everyone knows, %i bars', async (loop, bars) => {
  const pad = await open('numeral', loop ? { loop } : {});
  expect(pad.labels().filter((label) => label.includes('chord:'))).toHaveLength(bars);
});

test('numerals: one degree after another steps on to the next empty bar; a tap on a bar edits it', async () => {
  const pad = await open('numeral', { loop: 'more' });
  for (const degree of ['one', 'four', 'two']) await pad.tap(degree);
  await pad.tap('minor');
  expect(pad.chosen()).toEqual(['I', 'IV', 'ii']);
  await pad.tap('next chord: four');
  await pad.tap('five');
  expect(pad.chosen()).toEqual(['I', 'V', 'ii']);
  await pad.tap('six');
  expect(pad.chosen()).toEqual(['I', 'V', 'ii', 'VI']);
  // All bars are full: it is written where the last one was.
  await pad.tap('four');
  expect(pad.chosen()).toEqual(['I', 'V', 'ii', 'IV']);
});

test('numerals: bars after the last filled one may stay empty', async () => {
  const pad = await open('numeral');
  await pad.tap('one');
  await pad.tap('next chord: empty');
  await pad.tap('four');
  expect(pad.chosen()).toEqual(['I', 'IV']);
  expect(numeralAsk.read(pad.chosen(), { policy: 'majors', qualities: [] })).toEqual(['I', 'IV']);
});

test('one or several: two targets', async () => {
  const pad = await open('one-or-several', { options: ['majors'] });
  expect(pad.labels()).toEqual(['one key', 'several keys']);
  await pad.tap('several keys');
  expect(pad.chosen()).toBe('several');
});

test('settler: once the owners are known, only they can be marked; no key left is always there', async () => {
  const known = await open('settler', { options: ['majors', '7M', '2M'] });
  expect(known.labels()).toEqual(['G major', 'D major', 'no key is left']);
  await known.tap('G major');
  expect(known.chosen()).toEqual(['7M']);
  await known.tap('no key is left');
  expect(known.chosen()).toEqual([]);
  const unknown = await open('settler', { options: ['majors'] });
  expect(unknown.labels()).toHaveLength(13);
});

test.each<[string, unknown, WireTruth, WireTruth]>([
  ['count', 3, { answer: 2, key: '2' }, { answer: 3, key: '3' }],
  ['distance', 7, { answer: 5, key: '5' }, { answer: 7, key: '7' }],
  ['numeral', ['vi', 'V'], { answer: ['ii', 'V'], key: 'ii V' }, { answer: ['vi', 'V'], key: 'vi V' }],
  ['one-or-several', 'one', { answer: 'several', key: 'several' }, { answer: 'one', key: 'one' }],
  ['settler', ['7M'], { answer: ['2M'], key: '2M' }, { answer: ['7M'], key: '7M' }],
])('%s: no brass before the reveal; a truth that changes after it is drawn anew', async (kind, first, wrong, right) => {
  const pad = await open(kind, { first, closed: true, options: ['majors'], loop: 'two' });
  expect(pad.brass()).toBe(0);
  await pad.draw(wrong);
  const before = pad.place.innerHTML;
  expect(pad.brass()).toBeGreaterThan(0);
  await pad.draw(right);
  expect(pad.brass()).toBeGreaterThan(0);
  expect(pad.place.innerHTML).not.toBe(before);
  // One's own answer stays as it was.
  expect(pad.chosen()).toEqual(first);
});

test('numerals: counted from the relative minor one’s own rings, and the readings in major keys stand below', async () => {
  const truth = { answer: ['vi', 'V'], key: 'vi V', also: ['ii I', 'i VII', 'iv III'] };
  const pad = await open('numeral', { first: ['i', 'VII'], closed: true, loop: 'two', truth });
  const drawn = [...pad.place.querySelectorAll('text')].map((each) => each.textContent);
  expect(drawn.join(' ')).toBe('i VII vi V ii I');
  expect(pad.brass()).toBe(12);
});

test('numerals: every right reading stands below one’s own, save the one that is one’s own', async () => {
  const truth = { answer: ['vi', 'V'], key: 'vi V', also: ['ii I', 'IV iii'] };
  const pad = await open('numeral', { first: ['ii', 'I'], closed: true, loop: 'two', truth });
  expect([...pad.place.querySelectorAll('text')].map((each) => each.textContent)).toEqual([
    'ii',
    'I',
    'vi',
    'V',
    'IV',
    'iii',
  ]);
  expect(pad.place.querySelectorAll('.lens-body')).toHaveLength(6);
});

test('order: a tap writes the next letter, a new one is always the next unused; the first bar stays A', async () => {
  const pad = await open('order');
  expect(pad.labels()).toEqual(['first place: A', 'next place: empty', 'third place: empty', 'fourth place: empty']);
  expect(pad.choices().map((each) => each.disabled)).toEqual([true, false, false, false]);
  await pad.tap('next place: empty');
  expect(pad.chosen()).toEqual([0, 0, '', '']);
  await pad.tap('next place: A');
  expect(pad.chosen()).toEqual([0, 1, '', '']);
  await pad.tap('fourth place: empty');
  await pad.tap('fourth place: A');
  await pad.tap('fourth place: B');
  await pad.tap('third place: empty');
  expect(pad.chosen()).toEqual([0, 1, 0, 2]);
  expect(orderAsk.read(pad.chosen(), SETTINGS)).toEqual([0, 1, 0, 2]);
  // The third bar a new chord: it is C, and the fourth becomes D.
  await pad.tap('third place: A');
  await pad.tap('third place: B');
  expect(pad.chosen()).toEqual([0, 1, 2, 2]);
  await pad.tap('third place: C');
  expect(pad.chosen()).toEqual([0, 1, 2, 3]);
});

test('order: whatever is tapped, the letters stand in order, and every order can be written', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 3 }), { maxLength: 40 }), (taps) => {
      let order: WrittenOrder = [0, '', '', ''];
      for (const bar of taps) {
        order = tapped(order, bar) ?? [0, '', '', ''];
        expect(inOrder(order)).toEqual(order);
        expect(order[0]).toBe(0);
      }
      if (!order.includes('')) expect(orderAsk.read(order, SETTINGS)).toEqual(order);
    }),
  );
  const reached = new Set<string>();
  const walk = (order: WrittenOrder): void => {
    if (reached.has(order.join())) return;
    reached.add(order.join());
    for (const bar of [1, 2, 3]) walk(tapped(order, bar) ?? [0, '', '', '']);
  };
  walk([0, '', '', '']);
  expect(ORDERS.filter((order) => !reached.has(order.join()))).toEqual([]);
});

test('order: once shown the right one stands below one’s own and rings', async () => {
  const truth = { answer: [0, 1, 0, 2], key: '0 1 0 2' };
  const wrong = await open('order', { first: [0, 1, 2, 3], closed: true, truth });
  expect([...wrong.place.querySelectorAll('text')].map((each) => each.textContent)).toEqual('ABCDABAC'.split(''));
  const right = await open('order', { first: [0, 1, 0, 2], closed: true, truth });
  expect([...right.place.querySelectorAll('text')].map((each) => each.textContent)).toEqual('ABAC'.split(''));
  expect(right.brass()).toBeGreaterThan(0);
});

test('seventh: three signs; a chord once its triad has been shown', async () => {
  const pad = await open('seventh');
  expect(pad.labels()).toEqual(['no seventh', 'seventh: it leans', 'major seventh: it is soft']);
  expect(pad.place.textContent).toBe('no seventh7leansmaj7soft');
  const shown = await open('seventh', { letter: 'F#m' });
  expect(shown.place.textContent).toContain('F♯m(maj7)');
  await pad.tap('seventh: it leans');
  expect(pad.chosen()).toBe('seventh');
});

test.each([
  ['two', 2],
  ['more', 4],
  [undefined, 4],
] as const)('home: in a loop of %s as far as everyone knows, %i chords, and no brass for any', async (loop, count) => {
  const pad = await open('home', loop ? { loop } : {});
  expect(pad.labels()).toEqual(['first chord', 'next chord', 'third chord', 'fourth chord'].slice(0, count));
  await pad.tap('next chord');
  expect([pad.chosen(), pad.pressed()]).toEqual([1, ['next chord']]);
  expect(pad.brass()).toBe(0);
  await pad.tap('next chord');
  expect(pad.chosen()).toBeNull();
});

test('home: where the count has been shown, so many chords and no more', async () => {
  const three = ['first chord', 'next chord', 'third chord'];
  expect((await open('home', { loop: 'more', chords: 3 })).labels()).toEqual(three);
  const keys = await open('keys', { options: ['modes'], loop: 'more', chords: 3 });
  expect(keys.labels().filter((label) => label.startsWith('home'))).toHaveLength(3);
});

test.each([
  ['majors', 13],
  ['relatives', 25],
  ['raised-seventh', 25],
  ['modes', 15],
])('keys under %s: %i targets in a loop of two', async (policy, count) => {
  const pad = await open('keys', { options: [policy], loop: 'two' });
  expect(pad.labels()).toHaveLength(count);
});

test('keys: of homes one at most stands beside the scales', async () => {
  const pad = await open('keys', { options: ['modes'] });
  await pad.tap('home: 2nd chord');
  await pad.tap('G major');
  expect(pad.chosen()).toEqual(['7M', 'h1']);
  await pad.tap('home: 4th chord');
  expect(pad.chosen()).toEqual(['7M', 'h3']);
  await pad.tap('home: 4th chord');
  expect(pad.chosen()).toEqual(['7M']);
  const shown = { answer: ['7M', 'h0'], key: '7M h0', also: ['7M h1'] };
  const right = await open('keys', {
    options: ['modes'],
    first: ['7M', 'h1'],
    closed: true,
    truth: shown,
    loop: 'two',
  });
  expect(right.brass()).toBeGreaterThan(2);
});

test('numerals: a sharp and a flat take each other’s place', async () => {
  const pad = await open('numeral', { loop: 'one' });
  await pad.tap('four');
  await pad.tap('diminished');
  await pad.tap('sharp');
  expect(pad.chosen()).toEqual(['#ivo']);
  await pad.tap('flat');
  expect(pad.chosen()).toEqual(['bivo']);
  await pad.tap('flat');
  expect(pad.chosen()).toEqual(['ivo']);
});

test('root: without a capo the open strings and twelve frets, and no word of a capo', async () => {
  const pad = await open('root');
  expect(pad.place.textContent).not.toMatch(/capo|sounding/);
  expect(pad.labels().filter((label) => label.includes('open'))).toEqual(['string 6, open', 'string 5, open']);
});

test.each([1, 2, 3, 7, 9])(
  'root: with a capo on fret %i nothing behind it can be marked, and its own fret is open',
  async (capo) => {
    const pad = await open('root', { capo });
    expect(pad.place.textContent).toContain(`capo ${capo}`);
    expect(pad.place.textContent).toContain('sounding names');
    const pages = [...pad.place.querySelectorAll<HTMLButtonElement>('.page-link')];
    const frets = new Set<string>();
    for (const page of pages.length > 0 ? pages : [null]) {
      await act(() => page?.click());
      for (const each of pad.place.querySelectorAll('.choice')) frets.add(each.getAttribute('aria-label') ?? '');
    }
    const [low, high] = neckFrets(capo);
    const expected = [6, 5].flatMap((string) => [
      `string ${string}, open`,
      ...Array.from({ length: high - low }, (_, index) => `string ${string}, fret ${low + 1 + index}`),
    ]);
    expect([...frets].toSorted()).toEqual(expected.toSorted());
    await act(() => pages[0]?.click());
    await pad.tap('string 5, open');
    expect(pad.chosen()).toEqual({ string: 5, fret: capo });
  },
);

test('accents: nothing to write until a slot is touched; then all are said, and the truth beside them', async () => {
  const pad = await open('accents', { grid: 'E8' });
  expect(pad.labels()).toHaveLength(8);
  expect(pad.labels()[3]).toBe('beat 2, and: nothing yet');
  await pad.tap('beat 2, and: nothing yet');
  expect(pad.chosen()).toEqual([0, 0, 0, 1, 0, 0, 0, 0]);
  await pad.tap('beat 2, and: light');
  await pad.tap('beat 1: silent');
  expect(pad.chosen()).toEqual([1, 0, 0, 2, 0, 0, 0, 0]);
  expect(pad.labels().slice(0, 4)).toEqual([
    'beat 1: light',
    'beat 1, and: silent',
    'beat 2: silent',
    'beat 2, and: heavy',
  ]);
  expect(pad.brass()).toBe(0);
  await pad.draw({ answer: [2, 0, 1, 2, 1, 0, 2, 1], key: '20121021' });
  // Each slot that sounded rings: the line and its body.
  expect(pad.brass()).toBe(12);
  expect(pad.labels()[0]).toBe('beat 1: you wrote light, it was heavy');
  expect(pad.labels()[1]).toBe('beat 1, and: you wrote silent, it was silent');
});

test.each([
  ['E8', 8],
  ['E16', 16],
  ['S16', 16],
  ['T12', 12],
  ['C6', 6],
  ['W6', 6],
  ['V7', 7],
])(
  'accents on %s: %i targets of one size, none over another, none under 44 pixels on a small phone',
  async (grid, slots) => {
    const pad = await open('accents', { grid });
    expect(pad.choices()).toHaveLength(slots);
    const boxes = pad.choices().map(({ style }) => ({
      x: parseFloat(style.left),
      y: parseFloat(style.top),
      width: parseFloat(style.width),
      height: parseFloat(style.height),
    }));
    expect(new Set(boxes.map(({ x, y }) => `${x} ${y}`)).size).toBe(slots);
    for (const { x, width, height } of boxes) {
      expect(Math.min(width, height)).toBeGreaterThanOrEqual(44);
      expect(x + width).toBeLessThanOrEqual(328);
    }
    const overlaps = boxes.flatMap((one, index) =>
      boxes.slice(index + 1).filter((other) => {
        const [dx, dy] = [Math.abs(one.x - other.x), Math.abs(one.y - other.y)];
        return dx < one.width - 0.01 && dy < one.height - 0.01;
      }),
    );
    expect(overlaps).toEqual([]);
  },
);

test('the beat grid by keys: arrows go from slot to slot and from row to row', async () => {
  const pad = await open('stroke-grid', { grid: 'E8' });
  const [first] = pad.choices();
  first?.focus();
  const press = (key: string) =>
    act(() => {
      document.activeElement?.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    });
  const at = () => pad.choices().indexOf(document.activeElement as HTMLButtonElement);
  for (const [key, slot] of [
    ['ArrowRight', 1],
    ['ArrowDown', 5],
    ['ArrowLeft', 4],
    ['ArrowUp', 0],
    ['ArrowUp', 0],
    ['End', 7],
    ['Home', 0],
  ] as const) {
    await press(key);
    expect(at()).toBe(slot);
  }
});

test('strokes, pieces of a kit and open slots: what was said in ink, what sounded in brass', async () => {
  const strokes = await open('stroke-grid', { grid: 'C6', first: ['down', 'up', 'silent', 'down', 'up', 'silent'] });
  await strokes.draw({ answer: ['down', 'up', 'down', 'up', 'down', 'up'], key: 'DUDUDU' });
  // Each down-bow is a path and a bar, each up-bow a path.
  expect(strokes.brass()).toBe(9);
  const roles = await open('roles', { grid: 'E8' });
  await roles.tap('beat 1: nothing yet');
  expect(roles.chosen()).toEqual(['kick', ...Array<string>(7).fill('silent')]);
  expect(roles.place.textContent).toContain('kick');
  await roles.draw({ answer: ['kick', 'closed', 'slap', 'closed', 'kick', 'closed', 'slap', 'open'], key: '' });
  expect(roles.brass()).toBe(8);
  const opened = await open('opened', { grid: 'E8' });
  expect(opened.labels()[7]).toBe('beat 4, and: cut short');
  await opened.tap('beat 4, and: cut short');
  await opened.tap('beat 2, and: cut short');
  expect(opened.chosen()).toEqual([3, 7]);
  await opened.draw({ answer: [3], key: '3' });
  expect(opened.brass()).toBe(2);
});

test.each(Object.entries(PAIR_BARS))('%s: its two bars differ, and the one that sounded rings', async (kind, bars) => {
  const choices = Object.keys(bars);
  const pad = await open(kind);
  expect(pad.labels()).toHaveLength(2);
  const drawn = [...pad.place.querySelectorAll('svg')].map(
    (svg) => svg.querySelectorAll('path').length + svg.innerHTML.replace(/<text.*/s, ''),
  );
  expect(new Set(drawn).size).toBe(2);
  for (const [index, label] of pad.labels().entries()) {
    await pad.tap(label);
    expect([pad.chosen(), pad.pressed()]).toEqual([choices[index], [label]]);
    expect(readAnswer(kind as Kind, pad.chosen(), SETTINGS)).toBe(choices[index]);
  }
  await pad.tap(pad.labels()[1] ?? '');
  expect(pad.chosen()).toBeNull();
  await pad.draw({ answer: choices[0], key: choices[0] ?? '' });
  expect(pad.brass()).toBe(2);
});

test('counts of a bar: two, three, four, six or seven', async () => {
  const pad = await open('bar-count');
  expect(pad.labels()).toEqual(['two', 'three', 'four', 'six', 'seven']);
  await pad.tap('six');
  expect([pad.chosen(), pad.pressed()]).toEqual([6, ['six']]);
  await pad.tap('six');
  expect(pad.chosen()).toBeNull();
});

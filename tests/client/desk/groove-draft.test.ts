import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  draftLine,
  draftOf,
  DRAWN_LANES,
  emptyDraft,
  freeId,
  grooveOfDraft,
  onGrid,
  pressed,
  slotsOf,
  typedOn,
  withOwnOpening,
  withPush,
  type Cell,
  type GrooveDraft,
} from '../../../client/desk/groove-draft.ts';
import { saidCount } from '../../../client/desk/groove-layout.ts';
import { rowsOf } from '../../../client/shared/drawings/beat-grid-layout.ts';
import { countOf } from '../../../shared-theory/slot-count.ts';
import { faultyCell, readGroove } from '../../../client/desk/read-groove.ts';
import { GRIDS, slotSounds, type Grid, type GrooveSlot } from '../../../shared-theory/groove-grid.ts';
import { GrooveError, parseGroove } from '../../../shared-theory/groove-text.ts';
import { GROOVES } from '../../../shared-theory/grooves.ts';

const GRID_NAMES = Object.keys(GRIDS) as Grid[];
const NONE: ReadonlySet<string> = new Set();
const at = (lane: Cell['lane'], slot: number): Cell => ({ side: 'pattern', lane, slot });
const slot = (draft: GrooveDraft, place: number): GrooveSlot | undefined => slotsOf(draft.grid, draft.pattern)[place];

test('every groove of the catalogue can be drawn on, and its line reads back as the same groove', () => {
  for (const groove of GROOVES) {
    const drawn = grooveOfDraft(draftOf(groove, groove.id), NONE);
    expect({ ...drawn, text: groove.text }).toEqual(groove);
    const { text: _, ...back } = parseGroove(draftLine(draftOf(groove, groove.id), NONE));
    expect(back).toEqual(drawn);
  }
});

test('presses on an accent go from silent over light and medium to heavy and back, the hand going on', () => {
  let draft = emptyDraft('Ours');
  const seen = Array.from({ length: 5 }, () => {
    const { accent, stroke, zone } = slot(draft, 1) ?? {};
    draft = pressed(draft, at('acc', 1));
    return [accent, stroke, zone];
  });
  expect(seen).toEqual([
    [0, 'up-silent', 'none'],
    [1, 'up', 'high'],
    [2, 'up', 'high'],
    [3, 'up', 'high'],
    [0, 'up-silent', 'none'],
  ]);
});

test('a slot that falls silent keeps what it sounded for when it sounds again', () => {
  const busy = typedOn(typedOn(emptyDraft('Ours'), at('acc', 0), '3') ?? emptyDraft(''), at('tch', 0), 'p');
  const low = busy && typedOn(busy, at('zone', 0), 'L');
  if (!low) throw new Error('not drawn');
  const silent = pressed(low, at('acc', 0));
  expect(slot(silent, 0)).toEqual({ stroke: 'down-silent', zone: 'none', touch: 'none', accent: 0 });
  expect(slot(pressed(silent, at('acc', 0)), 0)).toEqual({ stroke: 'down', zone: 'low', touch: 'palm', accent: 1 });
});

test('strokes, strings and touches come by turns', () => {
  const turn = (lane: Cell['lane'], of: (slot: GrooveSlot) => unknown, presses: number) => {
    let draft = pressed(emptyDraft('Ours'), at('acc', 0));
    return Array.from({ length: presses }, () => {
      draft = pressed(draft, at(lane, 0));
      const now = slot(draft, 0);
      return now && of(now);
    });
  };
  expect(turn('strk', ({ stroke }) => stroke, 8)).toEqual([
    'up',
    'down-silent',
    'up-silent',
    'thumb',
    'fingers',
    'pinch',
    'none',
    'down',
  ]);
  expect(turn('zone', ({ zone }) => zone, 6)).toEqual(['root', 'other-bass', 'low', 'middle', 'high', 'all']);
  expect(turn('tch', ({ touch }) => touch, 6)).toEqual(['ring', 'half', 'palm', 'dead', 'choke', 'open']);
});

test('a pinch takes several strings: a bass string turns into all, and presses pass it over', () => {
  const bass = typedOn(pressed(emptyDraft('Ours'), at('acc', 0)), at('zone', 0), 'B');
  const pinch = bass && typedOn(bass, at('strk', 0), 'P');
  if (!pinch) throw new Error('not drawn');
  expect(slot(pinch, 0)).toMatchObject({ stroke: 'pinch', zone: 'all' });
  expect(slot(pressed(pinch, at('zone', 0)), 0)?.zone).toBe('low');
  expect(slot(typedOn(pinch, at('zone', 0), 'b') ?? pinch, 0)?.zone).toBe('all');
});

test('what is silent has neither strings nor touch to press, and a foreign sign is not taken', () => {
  const draft = emptyDraft('Ours');
  expect(pressed(draft, at('zone', 0))).toEqual(draft);
  expect(pressed(draft, at('tch', 0))).toEqual(draft);
  expect(typedOn(draft, at('acc', 0), 'D')).toBeNull();
  expect(typedOn(draft, at('zone', 0), '.')).toBeNull();
  expect(typedOn(draft, at('strk', 0), 'Tab')).toBeNull();
  expect(typedOn(draft, at('strk', 0), 'constructor')).toBeNull();
});

test('whatever is pressed, once something sounds the line can be read and says what is drawn', () => {
  const press = fc.record({
    side: fc.constantFrom('pattern' as const, 'opening' as const),
    lane: fc.constantFrom(...DRAWN_LANES),
    slot: fc.nat({ max: 15 }),
  });
  const step = fc.oneof(
    { weight: 12, arbitrary: press.map((cell) => (draft: GrooveDraft) => pressed(draft, cell)) },
    fc.constantFrom(...GRID_NAMES).map((grid) => (draft: GrooveDraft) => onGrid(draft, grid)),
    fc.tuple(fc.nat({ max: 1 }), fc.boolean()).map(
      ([bar, push]) =>
        (draft: GrooveDraft) =>
          bar < draft.pattern.pushes.length ? withPush(draft, 'pattern', bar, push) : draft,
    ),
    fc.constant(withOwnOpening),
  );
  fc.assert(
    fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
      const draft = steps.reduce((drawn, change) => change(drawn), pressed(emptyDraft('Ours'), at('acc', 0)));
      const drawn = grooveOfDraft(draft, NONE);
      fc.pre(drawn.slots.some(slotSounds));
      const { text: _, ...back } = parseGroove(draftLine(draft, NONE));
      expect(back).toEqual(drawn);
    }),
    { numRuns: 150 },
  );
});

test('a push is on the last stroke of its bar, wherever that comes to be', () => {
  const pushed = withPush(pressed(emptyDraft('Ours'), at('acc', 3)), 'pattern', 0, true);
  expect(slotsOf('E8', pushed.pattern).findIndex(({ pushes }) => pushes)).toBe(3);
  const later = pressed(pushed, at('acc', 7));
  expect(slotsOf('E8', later.pattern).findIndex(({ pushes }) => pushes)).toBe(7);
  expect(draftLine(later, NONE)).toContain('chg .......>');
  // It is the whole chord, and rings over the bar line.
  expect(slot(later, 7)).toMatchObject({ zone: 'all', touch: 'open' });
  expect(pressed(later, at('zone', 7))).toEqual(later);
  const ringing = pressed(later, at('tch', 7));
  expect([slot(ringing, 7)?.touch, slot(pressed(ringing, at('tch', 7)), 7)?.touch]).toEqual(['ring', 'open']);
});

test('another grid keeps the slots it has, and swing and a first bar only where it can have them', () => {
  const swung = { ...withOwnOpening(pressed(emptyDraft('Ours'), at('acc', 2))), swingTo: '1.5' };
  const sixths = onGrid(swung, 'C6');
  expect(slotsOf('C6', sixths.pattern)).toHaveLength(6);
  expect(slot(sixths, 2)?.accent).toBe(1);
  expect([sixths.swingTo, sixths.opening]).toEqual(['1', null]);
  const two = onGrid(swung, 'E16');
  expect(two.opening?.slots).toHaveLength(8);
  expect(two.pattern.pushes).toEqual([false, false]);
});

test.each([
  ['Our groove', [], 'our-groove'],
  ['Our groove', ['our-groove'], 'our-groove-2'],
  ['Our groove', ['our-groove', 'our-groove-2'], 'our-groove-3'],
  ['Mjúkt & létt', [], 'mjukt-lett'],
  ['2nd try', [], 'nd-try'],
  ['…', [], 'own-groove'],
])('the id of %j beside %j is %s', (name, taken, id) => {
  expect(freeId(name, new Set(taken))).toBe(id);
  expect(parseGroove(draftLine({ ...pressed(emptyDraft(name), at('acc', 0)) }, new Set(taken))).id).toBe(id);
});

test.each(['/ Straight', 'Straight /', '/ Straight / '])(
  'a slash at the end of the name %j is left out of the line',
  (name) => {
    expect(parseGroove(draftLine(pressed(emptyDraft(name), at('acc', 0)), NONE)).name).toBe('Straight');
  },
);

test('an id is no longer than a command may name, and a name holds nothing that parts a line', () => {
  expect(freeId('a very long name '.repeat(5), NONE).length).toBeLessThanOrEqual(40);
  const odd = pressed(emptyDraft('One | two / three\nfour'), at('acc', 0));
  expect(parseGroove(draftLine(odd, NONE)).name).toBe('One two three four');
});

test.each([
  ['E8', '1 & 2 & 3 & 4 &', [4, 4]],
  ['S16', '1 e & a 2 e & a 3 e & a 4 e & a', [4, 4, 4, 4]],
  ['E16', '1 & 2 & 3 & 4 & 1 & 2 & 3 & 4 &', [4, 4, 4, 4]],
  ['W6', '1 & 2 & 3 &', [4, 2]],
  ['C6', '1 2 3 4 5 6', [3, 3]],
  ['T12', '1 & a 2 & a 3 & a 4 & a', [3, 3, 3, 3]],
  ['V7', '1 2 3 4 5 6 7', [4, 3]],
] as const)('%s is counted %s', (grid, counts, rows) => {
  const { slots } = GRIDS[grid];
  expect(Array.from({ length: slots }, (_, place) => countOf(grid, place).sign).join(' ')).toBe(counts);
  expect(rowsOf(grid, slots).map(({ count }) => count)).toEqual(rows);
});

test('counts are said in full', () => {
  expect([saidCount('E8', 3), saidCount('S16', 5), saidCount('C6', 4), saidCount('E16', 10)]).toEqual([
    '2 and',
    '2 e',
    '5',
    'bar 2, 2',
  ]);
});

test('the cell of a fault is found on its side of the grid', () => {
  const line = draftLine(withOwnOpening(pressed(emptyDraft('Ours'), at('acc', 0))), NONE);
  const faultOf = (text: string) => {
    const fault = readGroove(text);
    return fault instanceof GrooveError ? faultyCell(fault) : 'no fault';
  };
  expect(faultOf(line)).toBe('no fault');
  expect(faultOf(line.replace('/ zone A', '/ zone Q'))).toEqual({ side: 'pattern', lane: 'zone', slot: 0 });
  expect(faultOf(line.replace('open-strk Du', 'open-strk D9'))).toEqual({ side: 'opening', lane: 'strk', slot: 1 });
  expect(faultOf(line.replace('4/4', '3/4'))).toBeNull();
});

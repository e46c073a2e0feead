import { describe, expect, test } from 'vitest';
import {
  allDowns,
  beatsPerSlot,
  grooveById,
  GrooveError,
  GROOVES,
  parseGroove,
  slotsPerBar,
  swingCap,
  withRootBass,
} from '../../shared-theory/grooves.ts';

const SIGNS = { down: 'D', up: 'U', 'down-silent': 'd', 'up-silent': 'u', none: '-' };
const ZONES = { root: 'B', 'other-bass': 'b', low: 'L', middle: 'M', high: 'H', all: 'A', none: '.' };
const TOUCHES = { open: 'o', palm: 'p', dead: 'x', choke: 'c', none: '.' };

const lanes = (slots: (typeof GROOVES)[number]['slots']) => [
  slots.map((slot) => SIGNS[slot.stroke]).join(''),
  slots.map((slot) => ZONES[slot.zone]).join(''),
  slots.map((slot) => TOUCHES[slot.touch]).join(''),
  slots.map((slot) => slot.accent).join(''),
];

describe('the groove catalogue', () => {
  // Common practice: one usual form of each pattern.
  test.each([
    ['quarter-downs', '4/4', [60, 116], [1, 1], ['DuDuDuDu', 'A.A.A.A.', 'o.o.o.o.', '30202020']],
    ['relaxed-alternate', '4/4', [66, 120], [1, 1.3], ['DUDUDUDU', 'AHAHAHAH', 'oooooooo', '31213121']],
    ['driving-eighths', '4/4', [120, 184], [1, 1], ['DDDDDDDD', 'LLLLLLLL', 'pppppppp', '31213121']],
    ['foot-and-closed-hat', '4/4', [92, 132], [1, 1], ['DDDDDDDD', 'BHBHBHBH', 'pcpcpcpc', '31313131']],
    ['foot-and-open-hat', '4/4', [104, 132], [1, 1], ['DUDUDUDU', 'BHBHBHBH', 'popopopo', '32323232']],
    ['campfire-strum', '4/4', [76, 132], [1, 1.5], ['DuDUdUDU', 'A.AH.HAH', 'o.oo.ooo', '30210221']],
    ['boom-chick', '4/4', [90, 168], [1, 1], ['DuDuDuDu', 'B.H.b.H.', 'o.c.o.c.', '20302030']],
    ['boom-chicka', '4/4', [88, 144], [1, 1.5], ['DuDUDuDU', 'B.HHb.HH', 'o.cco.cc', '20312031']],
    ['low-string-shuffle', '4/4', [84, 152], [1.5, 2.3], ['DUDUDUDU', 'LLLLLLLL', 'pppppppp', '21312131']],
    ['six-eight-ballad', '6/8', [40, 66], [1, 1], ['DDUDDU', 'BHHAHH', 'oooooo', '311211']],
    ['waltz', '3/4', [84, 180], [1, 1], ['DuDuDu', 'B.H.H.', 'o.c.c.', '301010']],
  ] as const)('%s', (id, meter, tempo, swing, expected) => {
    const groove = grooveById(id);
    expect({ meter: groove.meter, tempo: groove.tempo, swing: groove.swing }).toEqual({ meter, tempo, swing });
    expect(lanes(groove.slots)).toEqual(expected);
  });

  test('holds these eleven and no two of one id', () => {
    expect(GROOVES.map((groove) => groove.id)).toHaveLength(11);
    expect(new Set(GROOVES.map((groove) => groove.id)).size).toBe(11);
  });

  test('an opening bar keeps the way the hand goes: downs stay downs', () => {
    for (const groove of GROOVES) {
      if (!groove.opening) continue;
      const { opening, ...rest } = groove;
      expect(allDowns({ ...rest, slots: opening })).toBe(allDowns(rest));
      // Where the bass stands alone on the one it stays so, and the first chord after it rings.
      const first = groove.slots[0]?.zone === 'root' && groove.slots[0].touch === 'open' ? groove.slots[0] : null;
      expect(opening[0]).toEqual(first ?? { stroke: 'down', zone: 'all', touch: 'open', accent: 3 });
      expect(opening.some((cell) => cell.touch === 'open' && cell.zone !== 'root')).toBe(true);
    }
    expect(GROOVES.filter(allDowns).map((groove) => groove.id)).toEqual([
      'quarter-downs',
      'driving-eighths',
      'foot-and-closed-hat',
      'boom-chick',
      'waltz',
    ]);
  });

  test('with the root in the place of the other bass only that changes', () => {
    for (const { text } of GROOVES) {
      const groove = parseGroove(text);
      const rooted = parseGroove(withRootBass(text));
      const root = (slots: typeof groove.slots) =>
        slots.map((slot) => (slot.zone === 'other-bass' ? { ...slot, zone: 'root' } : slot));
      expect(lanes(rooted.slots)).toEqual(lanes(root(groove.slots) as typeof groove.slots));
      expect(rooted.opening ?? []).toEqual(root(groove.opening ?? []));
      expect({ ...rooted, slots: [], opening: [], text: '' }).toEqual({ ...groove, slots: [], opening: [], text: '' });
    }
    const alternate = GROOVES.filter(({ slots }) => slots.some(({ zone }) => zone === 'other-bass'));
    expect(alternate.map(({ id }) => id)).toEqual(['boom-chick', 'boom-chicka']);
  });

  test('the highest swing keeps the short note at 100 ms (Friberg and Sundström, “Preferred swing ratio in jazz as a function of tempo”, 1997)', () => {
    expect([140, 180, 200, 240].map((tempo) => Number(swingCap(tempo).toFixed(1)))).toEqual([3.3, 2.3, 2, 1.5]);
  });

  test('every swing of the catalogue is lawful at every tempo of its groove', () => {
    for (const groove of GROOVES) expect(groove.swing[1] <= Math.max(1, swingCap(groove.tempo[1]))).toBe(true);
  });

  test('an unknown id is refused with those there are', () => {
    expect(() => grooveById('polka')).toThrow(/polka.*quarter-downs.*waltz/);
  });
});

const GOOD = [
  'my-groove, My groove | E8 | 4/4 | 60-116 | r=1..1.5 | a note',
  'strk D u D U D u D U',
  'zone A . b H A . b H',
  'tch  o . p x c . o o',
  'acc  3 0 2 1 3 0 2 1',
];
const changed = (line: number, text: string) => GOOD.with(line - 1, text).join('\n');

describe('the grid language', () => {
  test('reads header and lanes', () => {
    const groove = parseGroove(GOOD.join('\n'));
    expect(groove).toMatchObject({ id: 'my-groove', name: 'My groove', grid: 'E8', tempo: [60, 116], swing: [1, 1.5] });
    expect(groove.slots[2]).toEqual({ stroke: 'down', zone: 'other-bass', touch: 'palm', accent: 2 });
    expect(groove.opening).toBeUndefined();
    expect(parseGroove(groove.text)).toEqual(groove);
  });

  test('carriage returns, a single tempo, no note and lanes in any order are read', () => {
    const [header, ...rest] = changed(1, 'my-groove, My groove | E8 | 4/4 | 100 | r=1').split('\n');
    const groove = parseGroove([header, ...rest.toReversed()].join('\r\n'));
    expect(groove.tempo).toEqual([100, 100]);
  });

  test.each([
    ['S16', '4/4', 16, 16, 0.25],
    ['T12', '12/8', 12, 12, 1 / 3],
    ['C6', '6/8', 6, 6, 1 / 3],
    ['W6', '3/4', 6, 6, 0.5],
    ['E16', '4/4', 16, 8, 0.5],
    ['V7', '7/8', 7, 7, 0.5],
  ])('grid %s in %s', (grid, meter, slots, perBar, beats) => {
    const lane = (name: string, token: string) => `${name} ${Array.from({ length: slots }, () => token).join(' ')}`;
    const header = `other-groove, Other | ${grid} | ${meter} | 60-70 | r=1`;
    const groove = parseGroove(
      [header, lane('strk', 'D'), lane('zone', 'A'), lane('tch', 'o'), lane('acc', '2')].join('\n'),
    );
    expect(groove.slots).toHaveLength(slots);
    expect(slotsPerBar(groove)).toBe(perBar);
    expect(beatsPerSlot(groove)).toBeCloseTo(beats, 12);
  });

  test.each([
    ['an unknown stroke', 2, 'strk D u D X D u D U', 2, 4, /"X" is no strk.*D U d u -/],
    ['a lane too short', 3, 'zone A . b H A . b', 3, 8, /7 slots, not 8/],
    ['a lane too long', 5, 'acc 3 0 2 1 3 0 2 1 1', 5, 9, /9 slots, not 8/],
    ['a sound without zone', 3, 'zone A . . H A . b H', 3, 3, /stroke D sounds.*zone/],
    ['a silent slot with touch', 4, 'tch o o p x c . o o', 4, 2, /stroke u is silent.*tch/],
    ['a sound without accent', 5, 'acc 3 0 2 1 3 0 2 0', 5, 8, /stroke U sounds.*acc/],
    ['an unknown lane', 3, 'zones A . b H A . b H', 3, null, /no lane/],
    ['a lane twice', 3, 'strk D u D U D u D U', 3, null, /twice/],
    ['half a header', 1, 'my-groove, My groove | E8', 1, null, /header/],
    ['an id in capitals', 1, 'My-Groove, My | E8 | 4/4 | 60-116 | r=1', 1, null, /kebab/],
    ['an unknown grid', 1, 'my-groove, My | E9 | 4/4 | 60-116 | r=1', 1, null, /no grid/],
    ['a meter that is not the grid’s', 1, 'my-groove, My | E8 | 3/4 | 60-116 | r=1', 1, null, /in 4\/4/],
    ['a tempo range upside down', 1, 'my-groove, My | E8 | 4/4 | 116-60 | r=1', 1, null, /low first/],
    ['a tempo out of reach', 1, 'my-groove, My | E8 | 4/4 | 10-60 | r=1', 1, null, /30 and 300/],
    ['a swing below straight', 1, 'my-groove, My | E8 | 4/4 | 60-116 | r=0.5', 1, null, /from 1/],
    ['a swing too wide for its tempo', 1, 'my-groove, My | E8 | 4/4 | 200-240 | r=2', 1, null, /100 ms/],
    ['no swing sign', 1, 'my-groove, My | E8 | 4/4 | 60-116 | 1.5', 1, null, /swing/],
  ] as const)('refuses %s, naming line and slot', (_, line, text, atLine, atSlot, sentence) => {
    let fault: unknown;
    try {
      parseGroove(changed(line, text));
    } catch (error) {
      fault = error;
    }
    expect(fault).toBeInstanceOf(GrooveError);
    expect(fault).toMatchObject({ line: atLine, slot: atSlot, message: expect.stringMatching(sentence) });
  });

  test('refuses a missing lane, half an opening and a straight grid that swings', () => {
    expect(() => parseGroove(GOOD.slice(0, 4).join('\n'))).toThrow(/lane acc is missing/);
    expect(() => parseGroove([...GOOD, 'open-strk D u D U D u D U'].join('\n'))).toThrow(/open-zone is missing/);
    expect(() => parseGroove('x, X | T12 | 12/8 | 60-70 | r=1..2')).toThrow(/straight/);
    expect(() => parseGroove('')).toThrow(GrooveError);
  });
});

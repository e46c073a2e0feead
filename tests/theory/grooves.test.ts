import { describe, expect, test } from 'vitest';
import {
  allDowns,
  beatsPerSlot,
  grooveById,
  grooveLine,
  GROOVES,
  isFingered,
  parseGroove,
  readGroove,
  swingCap,
  swingRatio,
  withOpening,
  withRootBass,
} from '../../shared-theory/grooves.ts';

const SIGNS = {
  down: 'D',
  up: 'U',
  pinch: 'P',
  thumb: 'T',
  fingers: 'F',
  'down-silent': 'd',
  'up-silent': 'u',
  none: '-',
};
const ZONES = { root: 'B', 'other-bass': 'b', low: 'L', middle: 'M', high: 'H', all: 'A', none: '.' };
const TOUCHES = { open: 'o', ring: 'r', half: 'h', palm: 'p', dead: 'x', choke: 'c', none: '.' };

const lanes = (slots: (typeof GROOVES)[number]['slots']) => [
  slots.map((slot) => SIGNS[slot.stroke]).join(''),
  slots.map((slot) => ZONES[slot.zone]).join(''),
  slots.map((slot) => TOUCHES[slot.touch]).join(''),
  slots.map((slot) => slot.accent).join(''),
];

// Common practice: one usual form of each pattern, in the order they are taught.
const PATTERNS = [
  ['quarter-downs', 'Quarter downs', 'E8', '4/4', [60, 116], [1, 1], ['DuDuDuDu', 'A.A.A.A.', 'o.o.o.o.', '30202020']],
  [
    'relaxed-alternate',
    'Relaxed alternate',
    'E8',
    '4/4',
    [66, 120],
    [1, 1.3],
    ['DUDUDUDU', 'AHAHAHAH', 'oooooooo', '31213121'],
  ],
  [
    'driving-eighths',
    'Driving eighths',
    'E8',
    '4/4',
    [120, 184],
    [1, 1],
    ['DDDDDDDD', 'LLLLLLLL', 'pppppppp', '31213121'],
  ],
  [
    'foot-and-closed-hat',
    'Foot and closed hat',
    'E8',
    '4/4',
    [92, 132],
    [1, 1],
    ['DDDDDDDD', 'BHBHBHBH', 'pcpcpcpc', '31313131'],
  ],
  [
    'foot-and-open-hat',
    'Foot and open hat',
    'E8',
    '4/4',
    [104, 132],
    [1, 1],
    ['DUDUDUDU', 'BHBHBHBH', 'popopopo', '32323232'],
  ],
  [
    'foot-slap-hat',
    'Foot, slap, hat',
    'E8',
    '4/4',
    [76, 120],
    [1, 1],
    ['DUDUDUDU', 'BHAHBHAH', 'pcxcpcxc', '31312131'],
  ],
  [
    'campfire-strum',
    'Campfire strum',
    'E8',
    '4/4',
    [76, 132],
    [1, 1.5],
    ['DuDUdUDU', 'A.AH.HAH', 'o.oo.ooo', '30210221'],
  ],
  ['boom-chick', 'Boom-chick', 'E8', '4/4', [90, 168], [1, 1], ['DuDuDuDu', 'B.H.b.H.', 'o.c.o.c.', '20302030']],
  ['boom-chicka', 'Boom-chicka', 'E8', '4/4', [88, 144], [1, 1.5], ['DuDUDuDU', 'B.HHb.HH', 'o.cco.cc', '20312031']],
  [
    'train-beat',
    'Train beat',
    'S16',
    '4/4',
    [84, 126],
    [1, 1],
    ['DuDUDuDUDuDUDuDU', 'B.HHb.HHB.HHb.HH', 'p.ccp.ccp.ccp.cc', '2031203120312031'],
  ],
  ['offbeat-skank', 'Offbeat skank', 'E8', '4/4', [66, 92], [1, 1.4], ['uDuDuDuD', '.H.H.H.H', '.c.c.c.c', '03030303']],
  ['quick-up-chop', 'Quick up-chop', 'E8', '4/4', [120, 176], [1, 1], ['dUdUdUdU', '.H.H.H.H', '.c.c.c.c', '03030303']],
  [
    'low-string-shuffle',
    'Low-string shuffle',
    'E8',
    '4/4',
    [84, 152],
    [1.5, 2.3],
    ['DUDUDUDU', 'LLLLLLLL', 'pppppppp', '21312131'],
  ],
  [
    'slow-twelve-eight',
    'Slow twelve-eight',
    'T12',
    '12/8',
    [44, 76],
    [1, 1],
    ['DDDDDDDDDDDD', 'BHHAHHBHHAHH', 'oooooooooooo', '211311211311'],
  ],
  ['six-eight-ballad', 'Six-eight ballad', 'C6', '6/8', [40, 66], [1, 1], ['DDUDDU', 'BHHAHH', 'oooooo', '311211']],
  ['waltz', 'Waltz', 'W6', '3/4', [84, 180], [1, 1], ['DuDuDu', 'B.H.H.', 'o.c.c.', '301010']],
  [
    'bossa-like',
    'Bossa-like',
    'E16',
    '4/4',
    [104, 152],
    [1, 1],
    ['P--FT-F-T-F-TF--', 'A..Hb.H.B.H.bH..', 'o..co.c.o.c.oc..', '2002202020202200'],
  ],
  [
    'funk-sixteenths',
    'Funk sixteenths',
    'S16',
    '4/4',
    [88, 116],
    [1, 1.2],
    ['DUDUDUDUDUDUDUDU', 'HHHHHHHHHHHHHHHH', 'cxxcxxcxxcxxcxxx', '3112112112113111'],
  ],
  ['half-time', 'Half-time', 'E8', '4/4', [120, 168], [1, 1], ['DuduDudU', 'A...A..H', 'o...x..o', '30003001']],
  ['pushed-change', 'Pushed change', 'E8', '4/4', [88, 132], [1, 1], ['DuDUdUdU', 'A.AH.H.A', 'o.oo.o.o', '30210203']],
  ['mute-and-open', 'Mute-and-open', 'E8', '4/4', [104, 152], [1, 1], ['DDDDDDDD', 'LLLLLLAA', 'ppppppoo', '21212132']],
  [
    'eighth-downs-backbeat',
    'Eighth downs, backbeat',
    'E8',
    '4/4',
    [132, 176],
    [1, 1],
    ['DDDDDDDD', 'LLALLLAL', 'ppcpppcp', '21312131'],
  ],
  [
    'sixteenth-ballad',
    'Sixteenth ballad',
    'S16',
    '4/4',
    [58, 84],
    [1, 1],
    ['DuduDuDUdUDUDuDU', 'A...A.HH.HAHA.HH', 'o...o.oo.oooo.oo', '3000201101212011'],
  ],
  [
    'gallop',
    'Gallop',
    'S16',
    '4/4',
    [92, 148],
    [1, 1],
    ['DuDUDuDUDuDUDuDU', 'L.LLL.LLL.LLL.LL', 'p.ppp.ppp.ppp.pp', '3011201130112011'],
  ],
  [
    'four-to-the-bar-chop',
    'Four-to-the-bar chop',
    'E8',
    '4/4',
    [112, 208],
    [1, 1],
    ['DuDuDuDu', 'M.M.M.M.', 'c.c.c.c.', '20302030'],
  ],
  [
    'three-three-two',
    'Three-three-two',
    'E8',
    '4/4',
    [92, 138],
    [1, 1],
    ['DUDUDUDU', 'AHHAHHAH', 'oooooooo', '31131131'],
  ],
  [
    'seven-in-two-two-three',
    'Seven in 2+2+3',
    'V7',
    '7/8',
    [100, 150],
    [1, 1],
    ['DUDUDDU', 'AHAHAAH', 'ooooooo', '3121211'],
  ],
] as const;

describe('the groove catalogue', () => {
  test.each(PATTERNS)('%s', (id, name, grid, meter, tempo, swing, expected) => {
    const groove = grooveById(id);
    expect({ ...groove, slots: lanes(groove.slots), opening: null, text: null }).toEqual({
      id,
      name,
      grid,
      meter,
      tempo,
      swing,
      slots: expected,
      opening: null,
      text: null,
    });
  });

  test('holds these twenty-seven in this order, and pushes in one place alone', () => {
    expect(GROOVES.map(({ id }) => id)).toEqual(PATTERNS.map(([id]) => id));
    const pushes = GROOVES.flatMap(({ id, slots }) =>
      slots.flatMap((slot, place) => (slot.pushes ? [[id, place]] : [])),
    );
    expect(pushes).toEqual([['pushed-change', 7]]);
    expect(GROOVES.filter(isFingered).map(({ id }) => id)).toEqual(['bossa-like']);
  });

  test('an opening bar keeps the way the hand goes: downs stay downs', () => {
    for (const groove of GROOVES) {
      if (!groove.opening) continue;
      const { opening, ...rest } = groove;
      // Chops that go up alone open with a down.
      expect(allDowns({ ...rest, slots: opening })).toBe(allDowns(rest));
      // Where the bass stands alone on the one it stays so, and the first chord after it rings; a pinch takes both.
      const first = groove.slots[0];
      const stays = first?.touch === 'open' && (first.zone === 'root' || first.stroke === 'pinch');
      expect(opening[0]).toEqual(stays ? first : { stroke: 'down', zone: 'all', touch: 'open', accent: 3 });
      expect(opening.some((cell) => cell.touch === 'open' && cell.zone !== 'root')).toBe(true);
    }
    expect(GROOVES.filter(allDowns).map((groove) => groove.id)).toEqual([
      'quarter-downs',
      'driving-eighths',
      'foot-and-closed-hat',
      'boom-chick',
      'offbeat-skank',
      'slow-twelve-eight',
      'waltz',
      'mute-and-open',
      'eighth-downs-backbeat',
      'four-to-the-bar-chop',
    ]);
  });

  test('an opening bar changes nothing but what it opens: from its first stroke that is the pattern’s on, all are', () => {
    for (const { id, opening, slots } of GROOVES) {
      if (!opening) continue;
      const same = opening.map((cell, place) => JSON.stringify(cell) === JSON.stringify(slots[place]));
      // Boom-chick and the waltz let one choked chord ring, with its up; the others begin anew after one stroke.
      const changed = opening.filter((_, place) => !same[place]);
      expect([id, same.lastIndexOf(false) < opening.length / 2]).toEqual([id, true]);
      for (const cell of changed) expect([id, cell.touch === 'open' || cell.touch === 'none']).toEqual([id, true]);
    }
  });

  test('with the root in the place of the other bass only that changes, in either form', () => {
    for (const groove of GROOVES) {
      const root = (slots: typeof groove.slots) =>
        slots.map((slot) => (slot.zone === 'other-bass' ? { ...slot, zone: 'root' as const } : slot));
      for (const text of [groove.text, grooveLine(groove)]) {
        const rooted = parseGroove(withRootBass(text));
        expect(rooted.slots).toEqual(root(groove.slots));
        expect(rooted.opening ?? []).toEqual(root(groove.opening ?? []));
        expect({ ...rooted, slots: [], opening: [], text: '' }).toEqual({
          ...groove,
          slots: [],
          opening: [],
          text: '',
        });
      }
    }
    const alternate = GROOVES.filter(({ slots }) => slots.some(({ zone }) => zone === 'other-bass'));
    expect(alternate.map(({ id }) => id)).toEqual(['boom-chick', 'boom-chicka', 'train-beat', 'bossa-like']);
  });

  test('the highest swing keeps the short note at 100 ms (Friberg and Sundström, “Preferred swing ratio in jazz as a function of tempo”, 1997)', () => {
    expect([140, 180, 200, 240].map((tempo) => Number(swingCap(tempo).toFixed(1)))).toEqual([3.3, 2.3, 2, 1.5]);
  });

  test('a groove is straight where it may be, else a triplet’s two to one as far as its range and its tempo let it', () => {
    const played = (swing: readonly [number, number], tempo: number) => swingRatio({ grid: 'E8', swing }, tempo);
    expect(played([1, 1.5], 80)).toBe(1);
    expect(played([1.5, 2.3], 118)).toBe(2);
    expect(played([1.5, 1.8], 118)).toBe(1.8);
    expect(played([2.2, 2.3], 118)).toBe(2.2);
    expect(played([1.5, 1.5], 118)).toBe(1.5);
    // At 240 the short note would be under 100 ms.
    expect(played([1.2, 2.3], 240)).toBeCloseTo(1.5, 9);
  });

  test('every swing of the catalogue is lawful at every tempo of its groove', () => {
    for (const groove of GROOVES) {
      const pairs = 1 / (2 * beatsPerSlot(groove));
      expect(groove.swing[1] <= Math.max(1, swingCap(groove.tempo[1] * pairs))).toBe(true);
    }
  });

  test('an unknown id is refused with those there are, a class’s own among them', () => {
    expect(() => grooveById('polka')).toThrow(/polka.*quarter-downs.*seven-in-two-two-three/);
    const own = { ...grooveById('waltz'), id: 'our-waltz' };
    expect(grooveById('our-waltz', [own])).toBe(own);
    expect(() => grooveById('polka', [own])).toThrow(/waltz.*our-waltz/);
  });

  test('a groove is found by its id, read from its text in either form, or taken as it is', () => {
    const waltz = grooveById('waltz');
    expect(readGroove('waltz')).toBe(waltz);
    expect(readGroove(waltz)).toBe(waltz);
    expect(readGroove(waltz.text)).toEqual(waltz);
    expect(readGroove(grooveLine(waltz)).opening).toEqual(waltz.opening);
    expect(() => readGroove('waltz |')).toThrow(/header/);
  });
});

describe('an opening bar of its own', () => {
  const bare = (groove: (typeof GROOVES)[number]) => {
    const { opening: _, ...rest } = groove;
    return rest;
  };

  test('no groove of the catalogue needs another', () => {
    for (const groove of GROOVES) expect(withOpening(groove)).toBe(groove);
  });

  test('without its own each groove that has one gets one, and no other', () => {
    for (const groove of GROOVES) {
      const opened = withOpening(bare(groove));
      expect([groove.id, opened.opening !== undefined]).toEqual([groove.id, groove.opening !== undefined]);
      expect(opened.slots).toEqual(groove.slots);
      expect(parseGroove(opened.text)).toEqual(opened.opening ? opened : groove);
    }
    expect(lanes(withOpening(bare(grooveById('gallop'))).opening ?? [])).toEqual([
      'DuduDuDUDuDUDuDU',
      'A...L.LLL.LLL.LL',
      'o...p.ppp.ppp.pp',
      '3000201130112011',
    ]);
  });

  test('one that opens too short a stroke gets a longer one', () => {
    const text = 'short-one, Short one | S16 | 4/4 | 100-120 | r=1';
    const mute = ['strk DUDUDUDUDUDUDUDU', 'zone LLLLLLLLLLLLLLLL', 'tch pppppppppppppppp', 'acc 3111311131113111'];
    const short = ['open-strk D-DUDUDUDUDUDUDU', 'open-zone A.LLLLLLLLLLLLLL', 'open-tch o.pppppppppppppp'];
    const opened = withOpening(parseGroove([text, ...mute, ...short, 'open-acc 3011311131113111'].join('\n')));
    expect(lanes(opened.opening ?? [])[0]).toBe('DudUDUDUDUDUDUDU');
    expect(lanes(opened.opening ?? [])[2]).toBe('o..ppppppppppppp');
  });
});

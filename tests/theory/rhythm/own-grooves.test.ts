import { describe, expect, test } from 'vitest';
import { parseGroove } from '../../../shared-theory/grooves.ts';
import { perform } from '../../../shared-theory/perform.ts';
import { rhythmOf } from '../../../shared-theory/rhythm/rhythm-of.ts';
import { guitarTruth } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { usualShape } from '../../../shared-theory/neck.ts';

const BEATS = { E8: 4, S16: 4, W6: 3, C6: 2, T12: 4, E16: 4, V7: 3.5 } as const;
const METERS = { E8: '4/4', S16: '4/4', W6: '3/4', C6: '6/8', T12: '12/8', E16: '4/4', V7: '7/8' } as const;

type Lanes = readonly [strk: string, zone: string, tch: string, acc: string, chg?: string];

/** A groove of one's own over chords, as it sounds at a tempo; half a bar or several bars to a chord. */
function heard(
  grid: keyof typeof BEATS,
  [strk, zone, tch, acc, chg]: Lanes,
  { chords = 'Em D', bars = 1, tempo = 100, swing = '1', human = false } = {},
) {
  const pushes = chg === undefined ? '' : ` / chg ${chg}`;
  const header = `our-own, Our own | ${grid} | ${METERS[grid]} | 40-240 | r=${swing}`;
  const text = `${header} / strk ${strk} / zone ${zone} / tch ${tch} / acc ${acc}${pushes}`;
  const slots = parseVamp(chords, BEATS[grid]).map((slot) => ({
    ...slot,
    beats: slot.beats * bars,
    frets: usualShape(slot.chord),
  }));
  const vamp = { slots, meter: METERS[grid], grooveText: parseGroove(text).text, tempo, seed: 5 };
  return rhythmOf(vamp, perform(vamp, { human }));
}

const OPEN = 'oooooooo';

// Common practice throughout: what decides is how it is played, not what it is called.
describe('a groove of one’s own', () => {
  test('chops on the ands are counted twice as fast as well, while anybody would', () => {
    const chops: Lanes = ['dUdUdUdU', '.H.H.H.H', '.c.c.c.c', '03030303'];
    expect(heard('E8', chops, { tempo: 80 })?.counts).toEqual([1, 2]);
    expect(heard('E8', chops, { tempo: 130 })?.counts).toEqual([1]);
  });

  test('bass on 1 and 3 with chords against it is counted in two', () => {
    const steps: Lanes = ['DuDUDuDU', 'B.HHB.HH', 'o.cco.cc', '20312031'];
    expect(heard('E8', steps, { tempo: 120 })).toMatchObject({ counts: [1, 0.5], barCounts: [4, 2] });
    const fourBasses: Lanes = ['DUDUDUDU', 'BHBHBHBH', 'ococococ', '31212121'];
    expect(heard('E8', fourBasses, { tempo: 120 })).toMatchObject({ counts: [1], barCounts: [4] });
  });

  test('a bar whose halves are struck alike may be two of two, and twelve eighths two of six', () => {
    const bars = (acc: string) => heard('E8', ['DUDUDUDU', 'AHAHAHAH', OPEN, acc], { tempo: 100 })?.barCounts;
    expect(bars('31213121')).toEqual([4, 2]);
    expect(bars('31212121')).toEqual([4]);
    const twelve = (acc: string) =>
      heard('T12', ['DDDDDDDDDDDD', 'AHHAHHAHHAHH', 'oooooooooooo', acc], { tempo: 60 })?.barCounts;
    expect(twelve('311211311211')).toEqual([4, 2, 6]);
    expect(twelve('311211211211')).toEqual([4]);
  });

  test('downs on heavy ands alone are a hand that never stops where they are counted twice as fast: it is not asked', () => {
    const chops: Lanes = ['uDuDuDuD', '.H.H.H.H', '.c.c.c.c', '03030303'];
    expect(heard('E8', chops, { tempo: 80 })?.pendulum).toBeNull();
    expect(heard('E8', ['DDDDDDDD', 'AHAHAHAH', OPEN, '33131313'], { tempo: 80 })?.pendulum).toBeNull();
    expect(heard('E8', ['DDDDDDDD', 'AHAHAHAH', OPEN, '31313131'], { tempo: 80 })?.pendulum).toBe('breaks');
  });

  test('a slap on 3 alone is half time, on 2 and 4 full time, elsewhere neither', () => {
    const slap = (zone: string, tch: string): Lanes => ['DUDUDUDU', zone, tch, '31213121'];
    expect(heard('E8', slap('BHHHAHHH', 'pcccxccc'))).toMatchObject({ halfTime: 'half-time', counts: [1, 0.5] });
    expect(heard('E8', slap('BHAHBHAH', 'pcxcpcxc'))?.halfTime).toBe('full-time');
    expect(heard('E8', slap('AHBHBHBH', 'xcpcpcpc'))?.halfTime).toBeNull();
  });

  test('six equal slots are grouped by what is heavy, whatever they are written in', () => {
    const six = (acc: string): Lanes => ['DUDUDU', 'AHHAHH', 'oooooo', acc];
    expect(heard('C6', six('311311'), { tempo: 60 })).toMatchObject({ threes: 'two-threes', barCounts: [2, 6] });
    expect(heard('W6', six('312121'))).toMatchObject({ threes: 'three-twos', barCounts: [3] });
    expect(heard('W6', six('311311'))).toMatchObject({ threes: 'two-threes', barCounts: [2, 6] });
    expect(heard('W6', six('222222'))?.threes).toBeNull();
  });

  test('downs alone drive only where they come fast, on the numbers and between', () => {
    const downs: Lanes = ['DDDDDDDD', 'LLLLLLLL', 'pppppppp', '31213121'];
    expect(heard('E8', downs, { tempo: 120 })).toMatchObject({ drive: 'driving', pendulum: 'breaks' });
    expect(heard('E8', downs, { tempo: 60 })?.drive).toBeNull();
    expect(heard('E8', ['DuDuDuDu', 'L.L.L.L.', 'p.p.p.p.', '30203020'], { tempo: 160 })?.drive).toBeNull();
    expect(heard('E8', ['DDDDDDDD', 'AAAAAAAA', OPEN, '31213121'], { tempo: 120 })?.drive).toBeNull();
  });

  test.each([
    ['1', 'straight'],
    ['1.2', null],
    ['1.3', 'swung'],
    ['1.5', 'swung'],
  ])('long to short %s is %s', (swing, expected) => {
    expect(heard('E8', ['DUDUDUDU', 'AHAHAHAH', OPEN, '31213121'], { swing })?.swing).toBe(expected);
  });

  test('a push over the bar line is pushed; in one bar of two it is neither', () => {
    const push: Lanes = ['DUDUDUDU', 'AHAHAHAA', OPEN, '31213123', '.......>'];
    expect(heard('E8', push)).toMatchObject({ changePlace: 'pushed' });
    expect(heard('E8', push)?.accents[0]).toEqual([0]);
    expect(heard('E8', push, { chords: 'G' })?.changePlace).toBeNull();
    expect(heard('E8', ['DUDUDUDU', 'AHAHAHAH', OPEN, '31213121'], { chords: '| Em . D . |' })?.changePlace).toBeNull();
  });

  test('two bars of a pattern are told slot by slot, one bar of chords hears the first of them', () => {
    const two: Lanes = ['DUDUDUDUDuDuDuDu', 'AHAHAHAHA.A.A.A.', 'ooooooooo.o.o.o.', '3121312130203020'];
    const rhythm = heard('E16', two);
    expect(rhythm?.accents.map(([usual]) => usual).join('')).toBe('3121312130203020');
    expect(
      heard('E16', two, { chords: 'G' })
        ?.accents.map(([usual]) => usual)
        .join(''),
    ).toBe('3121312131213121');
  });

  test('a chord that comes in the middle of a bar opens there too', () => {
    const mute: Lanes = ['DUDUDUDU', 'LLLLLLLA', 'pppppppo', '21212123'];
    const rhythm = heard('E8', mute, { chords: '| Em . D . |' });
    expect(rhythm?.strokes?.map(([usual]) => usual)[4]).toBe('down');
    expect(rhythm?.accents).toHaveLength(8);
  });

  test('a player’s small differences change nothing', () => {
    const lanes: Lanes = ['DUDUDUDUDUDUDUDU', 'BHAHBHAHBHAHBHAH', 'pcxcpcxcpcxcpcxc', '3121312131213121'];
    for (const tempo of [60, 100, 140]) {
      expect(heard('S16', lanes, { tempo, human: true })).toEqual(heard('S16', lanes, { tempo }));
    }
  });
});

describe('a groove that the teacher plays', () => {
  const slots = parseVamp('Em D', 4);

  test('is known where it was named, and nothing where it was not', () => {
    expect(guitarTruth(slots).rhythm).toBeNull();
    expect(guitarTruth(slots, { tempo: 90 }).rhythm).toBeNull();
    expect(guitarTruth(slots, { groove: 'mute-and-open' }).rhythm).toMatchObject({ opened: [6, 7], swing: 'straight' });
  });

  test('how he swings one that may be straight or swung is not known', () => {
    expect(guitarTruth(slots, { groove: 'campfire-strum' }).rhythm?.swing).toBeNull();
    expect(guitarTruth(slots, { groove: 'low-string-shuffle' }).rhythm?.swing).toBe('swung');
  });
});

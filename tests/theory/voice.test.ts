import { describe, expect, test } from 'vitest';
import { grooveById, grooveLine, GROOVES, parseGroove } from '../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { grooveOf, perform } from '../../shared-theory/perform.ts';
import { truthOf } from '../../shared-theory/truth.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import { tempoRange, voice } from '../../shared-theory/voice.ts';

const slots = parseVamp('Em D', 4);
const request = { slots, groove: 'relaxed-alternate', tempo: 100, seed: 5 } as const;

describe('voicing a vamp', () => {
  test('usual shapes, the groove in full, its meter', () => {
    const vamp = voice(request);
    expect(vamp.slots.map((slot) => slot.frets)).toEqual([
      [0, 2, 2, 0, 0, 0],
      [null, null, 0, 2, 3, 2],
    ]);
    expect(vamp).toMatchObject({ meter: '4/4', tempo: 100, seed: 5 });
    expect(grooveOf(vamp)?.id).toBe('relaxed-alternate');
    expect(voice({ ...request, groove: null }).grooveText).toBe('');
    expect(voice({ slots: parseVamp('C F', 3), groove: 'waltz', tempo: 120, seed: 1 }).meter).toBe('3/4');
  });

  test.each([
    ['E A', 'up'],
    ['E A', 'down'],
    ['A E', 'up'],
    ['A E', 'down'],
    ['Em D', 'up'],
    ['Em D', 'down'],
    ['G C', 'down'],
    ['C G', 'up'],
    ['D A', 'up'],
    ['Am Dm', 'down'],
    ['C Cm', 'same'],
  ] as const)('%s can go %s', (text, direction) => {
    const vamp = voice({ ...request, slots: parseVamp(text, 4), directions: [direction] });
    expect(truthOf(vamp, perform(vamp)).directions).toEqual([direction]);
  });

  test('a chosen swing is written into the groove', () => {
    const vamp = voice({ ...request, swing: 1.2 });
    expect(grooveOf(vamp)?.swing).toEqual([1.2, 1.2]);
    expect(vamp.grooveText.split('\n').slice(1)).toEqual(voice(request).grooveText.split('\n').slice(1));
  });

  test('the opening bar can be left out', () => {
    const waltz = { slots: parseVamp('C F', 3), groove: 'waltz', tempo: 120, seed: 1 };
    expect(grooveOf(voice(waltz))?.opening).toHaveLength(6);
    expect(grooveOf(voice({ ...waltz, opening: false }))?.opening).toBeUndefined();
    expect(grooveOf(voice({ ...waltz, opening: false, swing: 1 }))?.opening).toBeUndefined();
    expect(voice({ ...request, opening: false }).grooveText).toBe(voice(request).grooveText);
  });

  test('the other bass plays the root unless it is asked to alternate', () => {
    const boom = { ...request, groove: 'boom-chick' };
    const zones = (vamp: ReturnType<typeof voice>) => grooveOf(vamp)?.slots.map((slot) => slot.zone);
    expect(zones(voice(boom))).not.toContain('other-bass');
    expect(zones(voice({ ...boom, alternatingBass: true }))).toContain('other-bass');
    expect(voice({ ...boom, alternatingBass: true }).grooveText).toBe(grooveById('boom-chick').text);
    const chicka = { ...boom, groove: 'boom-chicka', swing: 1.4, opening: false };
    expect(grooveOf(voice(chicka))?.swing).toEqual([1.4, 1.4]);
    expect(grooveOf(voice(chicka))?.opening).toBeUndefined();
    expect(zones(voice(chicka))).not.toContain('other-bass');
  });

  test('a groove of one’s own plays as one of the catalogue does: by its text in either form, or read', () => {
    const own = { ...grooveById('boom-chicka'), id: 'our-own', name: 'Our own' };
    const line = grooveLine(own);
    for (const groove of [line, line.replaceAll(' / ', '\n'), parseGroove(line)]) {
      for (const more of [{}, { swing: 1.4 }, { opening: false }, { alternatingBass: true }]) {
        const vamp = voice({ ...request, ...more, groove });
        const known = voice({ ...request, ...more, groove: 'boom-chicka' });
        expect(grooveOf(vamp)).toEqual({ ...grooveOf(known), id: 'our-own', name: 'Our own', text: vamp.grooveText });
        expect(perform(vamp)).toEqual(perform(known));
      }
    }
    expect(() => voice({ ...request, groove: line, tempo: 200 })).toThrow(/our-own goes from 88 to 144.*200/);
    expect(() => voice({ ...request, groove: line.replace('zone B', 'zone Z') })).toThrow(/lane zone, slot 1/);
  });

  test('every groove of the catalogue is voiced in its meter, and its truth is that of the chords', () => {
    for (const { id, meter, tempo } of GROOVES) {
      const vamp = voice({ slots: parseVamp('Am F', BEATS_PER_BAR[meter]), groove: id, tempo: tempo[1], seed: 3 });
      expect(truthOf(vamp, perform(vamp, { loops: 2 }))).toMatchObject({ bass: [45, 41], directions: ['down'] });
    }
  });

  test('tempo ranges', () => {
    expect(tempoRange(grooveById('gallop'))).toEqual([92, 148]);
    expect(tempoRange(grooveLine(grooveById('gallop')))).toEqual([92, 148]);
    expect(tempoRange('driving-eighths')).toEqual([120, 184]);
    expect(tempoRange(null)).toEqual([30, 300]);
  });

  test('refuses what cannot be', () => {
    expect(() => voice({ ...request, slots: [] })).toThrow(/at least one chord/);
    expect(() => voice({ ...request, groove: 'polka' })).toThrow(/polka/);
    expect(() => voice({ ...request, tempo: 121 })).toThrow(/66 to 120.*121/);
    expect(() => voice({ ...request, tempo: Number.NaN })).toThrow(RangeError);
    expect(() => voice({ ...request, meter: '3/4' })).toThrow(/in 4\/4, not 3\/4/);
    expect(() => voice({ ...request, swing: 2 })).toThrow(/swings from 1 to 1.3/);
    expect(() => voice({ ...request, directions: [] })).toThrow(/1, not 0/);
    expect(() => voice({ ...request, directions: ['same'] })).toThrow(/No playable shapes of Em D/);
    expect(() => voice({ ...request, shapes: [] })).toThrow(/2 chords take as many shapes/);
  });
});

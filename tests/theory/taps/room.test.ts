import { describe, expect, test } from 'vitest';
import { heldTempo, roomTaps, rushesOrDrags } from '../../../shared-theory/taps/analysis.ts';
import { deviation } from '../../../shared-theory/taps/statistics.ts';
import type { DropOutTaps } from '../../../shared-theory/taps/taps.ts';
import { seeds, tapAlong } from '../../support/tappers.ts';

const even = (tempo: number, count = 16, first = 0) =>
  Array.from({ length: count }, (_, beat) => first + (beat * 60_000) / tempo);

const GROOVE = { tempo: 100, beatsPerBar: 4, counts: [1] };

/** Along with the groove for so many beats, then at another tempo for two bars and the first beat after. */
function through(before: number, then: number, silent = 9): DropOutTaps {
  const along = even(100, before);
  const last = along.at(-1) ?? 0;
  return {
    taps: [...along, ...Array.from({ length: silent }, (_, beat) => last + ((beat + 1) * 60_000) / then)],
    silentFrom: before,
  };
}

describe('the tempo through a silence', () => {
  test.each([
    [100, 0, null],
    [106, 6, 'rushes'],
    [94, -6, 'drags'],
    [101, 1, null],
  ] as const)('a groove at 100 that goes on at %d is %d percent off', (then, percent, told) => {
    const held = heldTempo(through(12, then).taps, GROOVE);
    expect(held?.percent).toBeCloseTo(percent, 6);
    expect(held?.level).toBe('same');
    expect(held && rushesOrDrags(held)).toBe(told);
  });

  test('who taps at another level of the beat is held against that level', () => {
    const double = [...even(200, 24), ...even(212, 17, even(200, 24).at(-1)).slice(1)];
    expect(heldTempo(double, GROOVE)).toMatchObject({ level: 'double' });
    expect(heldTempo(double, GROOVE)?.percent).toBeCloseTo(6, 6);
    expect(heldTempo(even(200, 40), { ...GROOVE, counts: [1, 2] })).toMatchObject({ level: 'lawful' });
    const half = [...even(50, 8), ...even(47, 5, even(50, 8).at(-1)).slice(1)];
    expect(heldTempo(half, GROOVE)?.percent).toBeCloseTo(-6, 6);
  });

  test('who was never with the groove is at no level of it', () => {
    expect(heldTempo(even(125, 24), GROOVE)).toMatchObject({ level: 'other' });
  });

  test('an uneven bar of seven eighths is two bars of seven beats', () => {
    const taps = [...even(120, 14), ...even(110, 8, even(120, 14).at(-1)).slice(1)];
    expect(heldTempo(taps, { tempo: 120, beatsPerBar: 3.5, counts: [1] })?.percent).toBeCloseTo(
      -(1 - 110 / 120) * 100,
      6,
    );
  });

  test('taps that cannot be read are held against nothing', () => {
    expect(heldTempo([0, 1, 2], GROOVE)).toBeNull();
  });

  test('of even hands that stray by 30 ms two in a hundred at most are told that they run or drag', () => {
    const told = seeds(300).filter((seed) => {
      const held = heldTempo(tapAlong({ tempo: 100, beats: 24 }, seed), GROOVE);
      return held !== null && rushesOrDrags(held) !== null;
    });
    expect(told.length).toBeLessThanOrEqual(6);
  });
});

describe('a room that taps', () => {
  const room = [98, 102, 100, 104, 96].map((tempo) => even(tempo));

  test('has a middle tempo, a middle half and each hand’s own, without names and in no order of hands', () => {
    const read = roomTaps([...room, [0, 10, 900, 905, 2000, 2900, 2950, 4800]], {
      kind: 'tempo',
      tempo: 100,
      beatsPerBar: 4,
    });
    expect(read).toMatchObject({ read: 5, of: 6, spread: null, curve: null });
    expect(read.tempo).toBeCloseTo(100, 9);
    expect(read.between?.map((each) => Math.round(each))).toEqual([98, 102]);
    expect(read.tempi.map((each) => Math.round(each))).toEqual([96, 98, 100, 102, 104]);
    expect(roomTaps(room.toReversed(), { kind: 'tempo', tempo: 100, beatsPerBar: 4 })).toEqual(
      roomTaps(room, { kind: 'tempo', tempo: 100, beatsPerBar: 4 }),
    );
  });

  test('where nobody can be read there is nothing', () => {
    expect(roomTaps([], { kind: 'together', tempo: null, beatsPerBar: 4 })).toEqual({
      read: 0,
      of: 0,
      tempo: null,
      between: null,
      tempi: [],
      unevenness: [],
      spread: null,
      drift: null,
      curve: null,
    });
    expect(roomTaps([[0, 1, 2]], { kind: 'drop-out', tempo: 100, beatsPerBar: 4 })).toMatchObject({ read: 0, of: 1 });
  });

  test('its unevenness is in percent of an interval, sorted', () => {
    const hands = [30, 10, 20].map((jitter) => tapAlong({ tempo: 100, beats: 32, jitter }, 4));
    const { unevenness } = roomTaps(hands, { kind: 'steadiness', tempo: 100, beatsPerBar: 4 });
    expect(unevenness).toHaveLength(3);
    expect(unevenness).toEqual(unevenness.toSorted((one, other) => one - other));
    expect(unevenness[2]).toBeGreaterThan(4);
  });

  test('its drift is that of all hands, and sure the more of them there are', () => {
    const hands = (count: number) => seeds(count).map((seed) => tapAlong({ tempo: 100, beats: 16, drift: 4 }, seed));
    const asked = { kind: 'together', tempo: 100, beatsPerBar: 4 } as const;
    const [few, many] = [4, 40].map((count) => roomTaps(hands(count), asked).drift);
    expect(Math.abs((many?.percent ?? 0) - 4)).toBeLessThan(3 * (many?.error ?? 0));
    expect(many?.error).toBeLessThan(few?.error ?? 0);
  });
});

describe('a room that claps together', () => {
  const asked = { kind: 'together', tempo: 100, beatsPerBar: 4 } as const;

  test('when each hand began, and how late its glass is, is nobody’s matter: hands that tap alike lie on one another', () => {
    expect(roomTaps([even(100), even(100, 12), even(100, 16, 7777)], asked).spread).toBeLessThan(1e-6);
  });

  test('the spread is that of the taps: 20 ms', () => {
    const hands = seeds(30).map((seed) => tapAlong({ tempo: 100, beats: 16, jitter: 20 }, seed));
    const { spread } = roomTaps(hands, asked);
    expect(spread).toBeGreaterThan(17);
    expect(spread).toBeLessThan(26);
  });

  test('hands at half or twice the tempo are held against their own beat', () => {
    expect(roomTaps([even(100), even(100), even(200), even(50)], asked).spread).toBeLessThan(1e-6);
  });

  test('hands whose tempi differ drift apart', () => {
    const { spread } = roomTaps([even(100), even(98), even(102)], asked);
    expect(spread).toBeGreaterThan(deviation([0, 10, -10]));
  });
});

describe('the curve through a silence', () => {
  const asked = { kind: 'drop-out', tempo: 100, beatsPerBar: 4 } as const;

  test('hands that hold the tempo lie on the groove, beat by beat until it is back', () => {
    const { curve } = roomTaps([through(12, 100), through(9, 100)], asked);
    expect(curve?.map(({ beat }) => beat)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    for (const { middle, low, high } of curve ?? []) {
      for (const percent of [low, middle, high]) expect(percent).toBeCloseTo(0, 6);
    }
  });

  test('hands that run get further ahead with each beat, in percent of a beat', () => {
    const { curve, drift } = roomTaps([through(12, 105)], asked);
    // A beat at 105 is 60 / 105 s: 4.76 percent of a beat at 100 sooner.
    for (const { beat, middle } of curve ?? []) expect(middle).toBeCloseTo(beat * (1 - 100 / 105) * 100, 4);
    expect(drift?.percent).toBeCloseTo(5, 4);
  });

  test('half of the room runs, half drags: the middle stays, the quartiles part', () => {
    const last = roomTaps([through(12, 105), through(12, 105), through(12, 96), through(12, 96)], asked).curve?.at(-1);
    expect(last?.high).toBeGreaterThan(30);
    expect(last?.low).toBeLessThan(-30);
  });

  test('hands at another level of the beat have the groove’s beats', () => {
    const along = even(200, 24);
    const double = { taps: [...along, ...even(200, 18, (along.at(-1) ?? 0) + 300)], silentFrom: 24 };
    expect(roomTaps([double], asked).curve?.map(({ beat }) => beat)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
  });

  test('who was not told of the silence, or had no beat before it, draws nothing', () => {
    expect(roomTaps([{ ...through(12, 105), silentFrom: null }], asked).curve).toBeNull();
    expect(roomTaps([{ ...through(12, 105), silentFrom: 1 }], asked).curve).toBeNull();
    expect(roomTaps([{ taps: even(100), silentFrom: 16 }], asked).curve).toBeNull();
    expect(roomTaps([through(12, 105)], { ...asked, tempo: null }).curve).toBeNull();
  });
});

import { describe, expect, test } from 'vitest';
import type { SoundChange } from '../../../server/protocol/messages.ts';
import type { SoundedNote } from '../../../shared-theory/perform.ts';
import type { LiveVamp } from '../../../client/host/played-slots.ts';
import { bothOf, SETTLED, slotOf, vampOf } from './played-vamps.ts';
import { bench } from './stage.ts';

/** The first tick comes 0.15 s after the press; a bar of four at 100 is 2.4 s. */
const FIRST_BAR = 10.15 + 2.4;
const BAR = 2.4;

function basses(notes: readonly { note: SoundedNote; at: number }[], from: number, to: number): number[] {
  const within = notes.filter(({ at }) => at >= from - 1e-6 && at < to - 1e-6);
  const lowest = Math.min(...within.map(({ note }) => note.midi));
  return [lowest];
}

describe('playing', () => {
  test('counts in one bar, one accented, then the first bar begins on its line', () => {
    const { player, struck, notes, told, run } = bench();
    player.play('r1', vampOf('Em D'));
    run(3);
    const ticks = struck.filter(({ note }) => typeof note === 'string');
    expect(ticks.map(({ note }) => note)).toEqual(['tick on one', 'tick', 'tick', 'tick']);
    ticks.forEach(({ at }, beat) => expect(at).toBeCloseTo(10.15 + beat * 0.6, 9));
    const first = notes()[0];
    expect(first?.at).toBeGreaterThanOrEqual(FIRST_BAR - 1e-6);
    expect(first?.at).toBeLessThan(FIRST_BAR + 0.0081);
    expect(told).toEqual(['started r1 100']);
  });

  test.each([
    ['4/4', 'quarter-downs', 4],
    ['3/4', 'waltz', 3],
  ])('counts in %s with %s: %i ticks', (_meter, groove, beats) => {
    const { player, struck, run } = bench();
    player.play('r1', vampOf('Em D', groove, 100, beats));
    run(1);
    expect(struck.filter(({ note }) => typeof note === 'string')).toHaveLength(beats);
  });

  test('where the count of its bar is asked, one tick announces it and says no number', () => {
    const { player, struck, notes, told, run } = bench();
    player.play('r1', { ...vampOf('Em D'), uncounted: true });
    run(3);
    expect(struck.filter(({ note }) => typeof note === 'string').map(({ note }) => note)).toEqual(['tick']);
    expect(notes()[0]?.at).toBeGreaterThanOrEqual(FIRST_BAR - 1e-6);
    expect(told).toEqual(['started r1 100']);
  });

  test('loops without a gap: every bar has its strokes, for a minute', () => {
    const { player, notes, run } = bench();
    player.play('r1', vampOf('Em D'));
    run(60);
    for (let bar = 0; bar < 20; bar++) {
      const from = FIRST_BAR + bar * BAR;
      const root = bar % 2 === 0 ? 40 : 50;
      expect(basses(notes(), from, from + BAR)).toEqual([root]);
      const beats = notes().filter(({ at, note }) => note.midi === root && at >= from - 1e-6 && at < from + BAR - 1e-6);
      expect(beats).toHaveLength(4);
    }
  });

  test('no string ever sounds two notes at once', () => {
    const { player, notes, run } = bench();
    player.play('r1', vampOf('F Bm', 'campfire-strum'));
    run(20);
    player.change({ kind: 'hold', slot: 1 });
    run(12);
    player.change({ kind: 'full' });
    run(12);
    for (const string of [1, 2, 3, 4, 5, 6]) {
      const line = notes()
        .filter(({ note }) => note.string === string)
        .toSorted((one, other) => one.at - other.at);
      line.forEach(({ end }, index) => expect(end).toBeLessThanOrEqual((line[index + 1]?.at ?? Infinity) + 1e-6));
    }
  });

  test('two presses are one: play twice at once and again later', () => {
    const once = bench();
    once.player.play('r1', vampOf('Em D'));
    once.run(5);
    const twice = bench();
    twice.player.play('r1', vampOf('Em D'));
    twice.player.play('r1', vampOf('Em D'));
    twice.run(0.03);
    twice.player.play('r1', vampOf('Em D'));
    twice.run(4.97);
    expect(twice.struck.map(({ at }) => at)).toEqual(once.struck.map(({ at }) => at));
    expect(twice.hushes()).toBe(0);
  });

  test('another round takes over: the first is stopped, the second counts in', () => {
    const { player, told, run, hushes } = bench();
    player.play('r1', vampOf('Em D'));
    run(5);
    player.play('r2', vampOf('C G'));
    run(1);
    expect(hushes()).toBe(1);
    expect(told).toEqual(['started r1 100', 'stopped r1', 'started r2 100']);
    expect(player.playing()).toBe('r2');
  });

  test('stop, then play: the first onset is the first chord again', () => {
    const { player, notes, run, now } = bench();
    player.play('r1', vampOf('Em D'));
    run(6);
    player.stop();
    expect(player.playing()).toBeNull();
    expect(player.position(now())).toBeNull();
    const before = notes().length;
    run(2);
    expect(notes()).toHaveLength(before);
    player.play('r1', vampOf('Em D'));
    run(4);
    expect(notes()[before]?.note).toMatchObject({ chord: 0, midi: 40 });
  });

  test('a clock that ticks once a second (a hidden tab) leaves no gap', () => {
    const busy = bench();
    busy.player.play('r1', vampOf('Em D', 'relaxed-alternate', 120));
    busy.run(30, 0.05);
    const hidden = bench();
    hidden.player.play('r1', vampOf('Em D', 'relaxed-alternate', 120));
    hidden.run(30, 1);
    const common = Math.min(busy.notes().length, hidden.notes().length);
    expect(common).toBeGreaterThan(100);
    const onsets = (side: typeof busy) =>
      side
        .notes()
        .slice(0, common)
        .map(({ at }) => at);
    expect(onsets(hidden)).toEqual(onsets(busy));
  });

  test('after a stall the music goes on from a bar line, with nothing in the past', () => {
    const { player, struck, run, jump, now } = bench();
    player.play('r1', vampOf('Em D'));
    run(4);
    const before = struck.length;
    jump(20);
    player.advance();
    expect(struck.length).toBeGreaterThan(before);
    for (const { at } of struck.slice(before)) expect(at).toBeGreaterThan(now());
  });
});

describe('changes take effect on the next bar line', () => {
  /** Presses in the middle of bar 2 (the first chord's second time); the next line is that of bar 3. */
  function changed(change: SoundChange, chords = 'Em D') {
    const side = bench();
    side.player.play('r1', vampOf(chords));
    side.run(FIRST_BAR + 2.5 * BAR - 10);
    side.player.change(change);
    side.run(6 * BAR);
    return { ...side, line: FIRST_BAR + 3 * BAR };
  }

  test('hold: from the line on only the held chord, each string stopped at the line', () => {
    const { notes, told, line } = changed({ kind: 'hold', slot: 0 });
    const after = notes().filter(({ at }) => at >= line - 1e-6);
    expect(after.length).toBeGreaterThan(20);
    expect(new Set(after.map(({ note }) => note.midi))).toEqual(new Set([40, 47, 52, 55, 59, 64]));
    for (const { at, end } of notes()) if (at < line - 1e-6) expect(end).toBeLessThanOrEqual(line + 1e-6);
    expect(told.at(-1)).toBe('took {"kind":"hold","slot":0} at bar 3 of r1');
  });

  test('bass alone: only the lowest notes, in the same bars', () => {
    const { notes, line } = changed({ kind: 'bass-alone' });
    for (const bar of [3, 4, 5]) {
      const from = line + (bar - 3) * BAR;
      const midis = notes().filter(({ at }) => at >= from - 1e-6 && at < from + BAR - 1e-6);
      expect(new Set(midis.map(({ note }) => note.midi))).toEqual(new Set([bar % 2 === 0 ? 40 : 50]));
    }
  });

  test('slower: the next bars are longer, the loop goes on where it was', () => {
    const { notes, told, line } = changed({ kind: 'tempo', tempo: 80 });
    expect(basses(notes(), line, line + 3)).toEqual([50]);
    expect(basses(notes(), line + 3, line + 6)).toEqual([40]);
    expect(told.at(-1)).toBe('took {"kind":"tempo","tempo":80} at bar 3 of r1');
  });

  test('a tempo past what the groove can take is told as it was played', () => {
    expect(changed({ kind: 'tempo', tempo: 500 }).told.at(-1)).toBe('took {"kind":"tempo","tempo":116} at bar 3 of r1');
  });

  test('full again after a hold begins with the first chord', () => {
    const side = changed({ kind: 'hold', slot: 1 });
    const { player, notes, run, now } = side;
    const asked = now();
    player.change({ kind: 'full' });
    run(2 * BAR);
    const later = notes().filter(({ at, note }) => at > asked && note.chord === 0 && note.midi === 40);
    expect(later.length).toBeGreaterThan(0);
    expect(side.told.at(-1)).toMatch(/took {"kind":"full"} at bar \d+ of r1/);
  });

  test('two changes before one line both take there, in order', () => {
    const { player, told, run } = bench();
    player.play('r1', vampOf('Em D'));
    run(FIRST_BAR + 0.5 * BAR - 10);
    player.change({ kind: 'tempo', tempo: 90 });
    run(0.2);
    player.change({ kind: 'hold', slot: 1 });
    run(2 * BAR);
    expect(told.slice(1)).toEqual([
      'took {"kind":"tempo","tempo":90} at bar 1 of r1',
      'took {"kind":"hold","slot":1} at bar 1 of r1',
    ]);
  });

  test('a change in the count-in takes with the first bar', () => {
    const { player, told, run } = bench();
    player.play('r1', vampOf('Em D'));
    run(1);
    player.change({ kind: 'bass-alone' });
    run(3);
    expect(told).toEqual(['started r1 100', 'took {"kind":"bass-alone"} at bar 0 of r1']);
  });

  test('nothing is told before it is heard, and a stop before the line tells nothing', () => {
    const { player, told, run } = bench();
    player.play('r1', vampOf('Em D'));
    run(FIRST_BAR + 0.5 * BAR - 10);
    player.change({ kind: 'bass-alone' });
    run(0.3);
    player.stop();
    run(5);
    expect(told).toEqual(['started r1 100', 'stopped r1']);
  });

  test('a change just before the line waits for the next one', () => {
    const { player, told, run } = bench();
    player.play('r1', vampOf('Em D'));
    run(FIRST_BAR + 2 * BAR - 10 - 0.02, 0.01);
    player.change({ kind: 'bass-alone' });
    run(2 * BAR);
    expect(told.at(-1)).toBe('took {"kind":"bass-alone"} at bar 3 of r1');
  });

  test('a slot that the loop has not is refused and nothing changes', () => {
    const { player, run } = bench();
    player.play('r1', vampOf('Em D'));
    run(3);
    expect(() => player.change({ kind: 'hold', slot: 5 })).toThrow('slots 0 to 1, not 5');
    expect(player.program()?.controls.mode).toEqual({ kind: 'full' });
  });

  test('changes, stops and positions while nothing plays do nothing', () => {
    const { player, told } = bench();
    player.change({ kind: 'full' });
    player.stop();
    player.advance();
    expect(player.position(10)).toBeNull();
    expect(told).toEqual([]);
  });
});

describe('what else a change brings', () => {
  /** Presses in the middle of bar `bar`; the roots then sounding, bar by bar from the next line on. */
  function rootsAfter(changes: readonly SoundChange[], vamp: LiveVamp, bars: number, bar = 2) {
    const side = bench();
    side.player.play('r1', vamp);
    side.run(FIRST_BAR + (bar + 0.5) * BAR - 10);
    for (const change of changes) {
      side.player.change(change);
      side.run(0.1);
    }
    side.run((bars + 1) * BAR);
    const line = FIRST_BAR + (bar + 1) * BAR;
    const roots = Array.from({ length: bars }, (_, index) => {
      const from = line + index * BAR;
      const within = side.notes().filter(({ at }) => at >= from - 1e-6 && at < from + BAR - 1e-6);
      return within.length === 0 ? null : Math.min(...within.map(({ note }) => note.midi));
    });
    return { ...side, roots, line };
  }
  const THREE: LiveVamp = vampOf('Em D C');

  // Lowest notes of the usual shapes: E2 40, D3 50, C3 48, A2 45, G2 43 (standard tuning).
  test.each<[string, SoundChange[], LiveVamp, (number | null)[]]>([
    ['again: from the first bar of the loop', [{ kind: 'again' }], vampOf('Em D'), [40, 50, 40]],
    ['full where full is: the place is kept', [{ kind: 'full' }], vampOf('Em D'), [50, 40, 50]],
    ['soft keeps the place', [{ kind: 'soft' }], vampOf('Em D'), [50, 40, 50]],
    [
      'again, then soft before the line: soft, from the first bar',
      [{ kind: 'again' }, { kind: 'soft' }],
      vampOf('Em D'),
      [40, 50],
    ],
    [
      'a hold that never sounded moves nothing',
      [{ kind: 'hold', slot: 0 }, { kind: 'full' }],
      vampOf('Em D'),
      [50, 40],
    ],
    ['first and third by turns', [{ kind: 'pair', slot: 2 }], THREE, [40, 48, 40, 48]],
    ['the pair of a loop of two is the loop, and goes on', [{ kind: 'pair', slot: 1 }], vampOf('Em D'), [50, 40]],
    ['the root alone', [{ kind: 'root-alone', slot: 1 }], vampOf('Em D'), [50, 50, 50]],
    ['a settler, from the first bar of the loop', [{ kind: 'settler', index: 1 }], SETTLED, [40, 50, 45, 40, 50, 45]],
    ['both, wrong first', [bothOf('Em G', 'Em D')], vampOf('Em D'), [40, 43, 40, 50, 40, 43]],
    ['both of unequal length keep their own bars', [bothOf('Em', 'Em D')], vampOf('Em D'), [40, 40, 50, 40, 40, 50]],
    ['silence', [{ kind: 'silence' }], vampOf('Em D'), [null, null, null]],
  ])('%s', (_, changes, vamp, roots) => {
    expect(rootsAfter(changes, vamp, roots.length).roots).toEqual(roots);
  });

  test.each<[string, SoundChange[], LiveVamp]>([
    ['a pair', [{ kind: 'pair', slot: 2 }], THREE],
    ['a root', [{ kind: 'root-alone', slot: 1 }], THREE],
    ['a settler', [{ kind: 'settler', index: 0 }], SETTLED],
    ['both', [bothOf('Em G', 'Em D')], SETTLED],
    ['silence', [{ kind: 'silence' }], SETTLED],
  ])('after %s the loop begins with its first bar, whatever the bar', (_, changes, vamp) => {
    for (const bars of [1, 2, 3, 4]) {
      const side = rootsAfter(changes, vamp, bars);
      const from = side.now();
      side.player.change({ kind: 'full' });
      side.run(3 * BAR);
      const line = side.line + Math.ceil((from + 0.06 - side.line) / BAR) * BAR;
      expect(basses(side.notes(), line, line + BAR)).toEqual([40]);
      expect(basses(side.notes(), line + BAR, line + 2 * BAR)).toEqual([50]);
      expect(side.told.at(-1)).toMatch(/^took {"kind":"full"}/);
    }
  });

  test('full, soft, full: the same notes at the same times, quieter between', () => {
    const plain = bench();
    plain.player.play('r1', vampOf('Em D'));
    plain.run(FIRST_BAR + 8 * BAR - 10);
    const side = rootsAfter([{ kind: 'soft' }], vampOf('Em D'), 1);
    side.player.change({ kind: 'full' });
    side.run(FIRST_BAR + 8 * BAR - side.now());
    const told = (notes: typeof plain.notes) =>
      notes().map(({ at, note }) => `${at.toFixed(6)} ${note.midi} ${note.touch} ${note.accent}`);
    expect(told(side.notes)).toEqual(told(plain.notes));
    const quieter = side.notes().map(({ note }, index) => (plain.notes()[index]?.note.trim ?? 0) - note.trim);
    expect(new Set(quieter.map((decibels) => Math.round(decibels)))).toEqual(new Set([0, 10]));
  });

  test('silence stops the ring, lets the bars go on counting, and is told when it falls', () => {
    const { notes, told, line, player, run } = rootsAfter([{ kind: 'silence' }], vampOf('Em D'), 2);
    for (const { end } of notes()) expect(end).toBeLessThanOrEqual(line + 1e-6);
    // Two bars later it is told once that they were silent.
    expect(told.slice(-2)).toEqual(['took {"kind":"silence"} at bar 3 of r1', 'silent for two bars of r1']);
    run(3 * BAR);
    expect(told.at(-1)).toBe('silent for two bars of r1');
    expect(told.filter((each) => each.startsWith('silent'))).toHaveLength(1);
    player.change({ kind: 'again' });
    run(2 * BAR);
    expect(told.at(-1)).toMatch(/^took {"kind":"again"} at bar [89] of r1$/);
  });

  test('a note that settles is sung over the first chord for two beats, and the loop goes on beneath', () => {
    const { notes, line } = rootsAfter(
      [{ kind: 'settler', index: 0 }],
      { ...vampOf('Em D'), settlers: [{ midi: 73 }] },
      4,
    );
    const sung = notes().filter(({ note, at }) => note.midi === 73 && at >= line - 1e-6);
    expect(sung.length).toBeGreaterThan(0);
    for (const { note } of sung) expect(note.duration).toBeLessThanOrEqual(BAR / 2 + 1e-6);
    expect(basses(notes(), line, line + BAR)).toEqual([40]);
  });

  test('a tempo goes on with what sounds, also in both and behind a settler', () => {
    const { notes, line } = rootsAfter([bothOf('Em G', 'Em D'), { kind: 'tempo', tempo: 80 }], vampOf('Em D'), 6);
    for (const [bar, root] of [40, 43, 40, 50].entries())
      expect(basses(notes(), line + bar * 3, line + (bar + 1) * 3)).toEqual([root]);
    const side = rootsAfter([{ kind: 'settler', index: 0 }], SETTLED, 1);
    side.player.change({ kind: 'tempo', tempo: 80 });
    side.run(4 * BAR);
    // One bar of the loop has passed, and one more is under way: then comes the settler.
    expect(basses(side.notes(), side.line + 2 * BAR, side.line + 2 * BAR + 3)).toEqual([48]);
  });

  test('a settler or reading that there is not is refused, and nothing changes', () => {
    const { player, run } = bench();
    player.play('r1', SETTLED);
    run(3);
    expect(() => player.change({ kind: 'settler', index: 2 })).toThrow('2 settlers, and none 2');
    expect(() => player.change({ kind: 'pair', slot: 2 })).toThrow('slots 0 to 1, not 2');
    expect(() => player.change({ kind: 'root-alone', slot: 7 })).toThrow('slots 0 to 1, not 7');
    expect(() => player.change({ ...bothOf('Em', 'D'), wrong: [] })).toThrow('at least one chord');
    expect(player.program()?.controls.mode).toEqual({ kind: 'full' });
  });
});

describe('position', () => {
  test('names beat, bar and slot of what is heard', () => {
    const { player, run } = bench();
    player.play('r1', vampOf('Em D'));
    expect(player.position(10)).toBeNull();
    expect(player.position(10.15 + 0.7)).toEqual({ phase: 'count-in', beat: 1, of: 4 });
    run(FIRST_BAR + 1 - 10);
    expect(player.position(FIRST_BAR + 0.6)).toMatchObject({ phase: 'vamp', bar: 0, slot: 0 });
    run(BAR);
    const later = player.position(FIRST_BAR + BAR + 1.5);
    expect(later).toMatchObject({ phase: 'vamp', bar: 1, slot: 1 });
    expect(later?.beat).toBeCloseTo(2.5, 6);
    expect(player.position(FIRST_BAR + 2 * BAR + 0.01)).toMatchObject({ bar: 0, slot: 0 });
  });

  test('half-bar chords: the slot changes inside the bar', () => {
    const { player, run } = bench();
    player.play('r1', vampOf('| G . D . |'));
    run(FIRST_BAR + 1 - 10);
    expect(player.position(FIRST_BAR + 0.5)).toMatchObject({ bar: 0, slot: 0 });
    expect(player.position(FIRST_BAR + 1.3)).toMatchObject({ bar: 0, slot: 1 });
  });

  test('a held chord stays at its own bar', () => {
    const { player, run } = bench();
    player.play('r1', vampOf('Em D C'));
    run(FIRST_BAR + 0.5 * BAR - 10);
    player.change({ kind: 'hold', slot: 2 });
    run(1.5 * BAR);
    expect(player.position(FIRST_BAR + 2 * BAR + 0.6)).toMatchObject({ bar: 2, slot: 2 });
  });

  test('a chord held for two bars is swept over both of its own', () => {
    const { player, run } = bench();
    player.play('r1', vampOf('| Em | . | D | . |'));
    run(FIRST_BAR + 0.5 * BAR - 10);
    player.change({ kind: 'hold', slot: 1 });
    const bars = [1, 2, 3].map((bar) => {
      run(BAR);
      return player.position(FIRST_BAR + (bar + 0.25) * BAR);
    });
    expect(bars).toMatchObject([
      { phase: 'vamp', bar: 2, slot: 1 },
      { phase: 'vamp', bar: 3, slot: 1 },
      { phase: 'vamp', bar: 2, slot: 1 },
    ]);
  });

  test.each<[string, SoundChange, object[]]>([
    [
      'a pair names the slots of the loop',
      { kind: 'pair', slot: 2 },
      [
        { phase: 'vamp', bar: 0, slot: 0 },
        { phase: 'vamp', bar: 2, slot: 2 },
        { phase: 'vamp', bar: 0, slot: 0 },
      ],
    ],
    [
      'the root alone stands at its own bar',
      { kind: 'root-alone', slot: 1 },
      [
        { phase: 'vamp', bar: 1, slot: 1 },
        { phase: 'vamp', bar: 1, slot: 1 },
      ],
    ],
    [
      'a settler is no bar of the loop',
      { kind: 'settler', index: 1 },
      [
        { phase: 'vamp', bar: 0, slot: 0 },
        { phase: 'vamp', bar: 1, slot: 1 },
        { phase: 'vamp', bar: 2, slot: 2 },
        { phase: 'settler', index: 1, bar: 0 },
        { phase: 'vamp', bar: 0, slot: 0 },
      ],
    ],
    [
      'both: which reading, and which of its bars and chords',
      bothOf('Em', 'Em D'),
      [
        { phase: 'both', side: 'wrong', bar: 0, slot: 0 },
        { phase: 'both', side: 'right', bar: 0, slot: 0 },
        { phase: 'both', side: 'right', bar: 1, slot: 1 },
        { phase: 'both', side: 'wrong', bar: 0, slot: 0 },
      ],
    ],
    [
      'silence: the loop goes on unheard',
      { kind: 'silence' },
      [
        { phase: 'vamp', bar: 1, slot: 1, silent: true },
        { phase: 'vamp', bar: 2, slot: 2, silent: true },
      ],
    ],
  ])('%s', (_, change, places) => {
    const { player, run } = bench();
    player.play('r1', { ...vampOf('Em D C'), settlers: [slotOf('Am'), slotOf('A')] });
    run(FIRST_BAR + 0.5 * BAR - 10);
    player.change(change);
    const heard = places.map((__, bar) => {
      const at = FIRST_BAR + (bar + 1.25) * BAR;
      run(bar === 0 ? 0.75 * BAR : BAR);
      return player.position(at);
    });
    expect(heard).toMatchObject(places);
    for (const place of heard) expect(place && place.phase !== 'count-in' ? place.beat : null).toBeCloseTo(1, 6);
    if (change.kind !== 'silence') for (const place of heard) expect(place).not.toHaveProperty('silent');
  });
});

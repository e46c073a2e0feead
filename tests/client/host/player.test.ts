import { describe, expect, test } from 'vitest';
import type { SoundChange } from '../../../server/protocol/messages.ts';
import type { SoundedNote } from '../../../shared-theory/perform.ts';
import { parseVamp, type VoicedVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';
import { createPlayer, type Voice } from '../../../client/host/player.ts';

type Struck = {
  readonly note: SoundedNote | 'tick' | 'tick on one';
  readonly at: number;
  end: number;
  dropped: boolean;
};

/** A player whose clock the test moves, and all it struck. */
function bench() {
  const struck: Struck[] = [];
  const told: string[] = [];
  let clock = 10;
  let hushed = 0;
  const record = (note: Struck['note'], at: number, seconds: number): Voice => {
    const sounding: Struck = { note, at, end: at + seconds, dropped: false };
    struck.push(sounding);
    return {
      get end() {
        return sounding.end;
      },
      stopAt: (time) => {
        sounding.end = time;
      },
      drop: () => {
        sounding.dropped = true;
      },
    };
  };
  const player = createPlayer(
    {
      now: () => clock,
      strike: (note, at) => record(note, at, note.duration),
      tick: (accented, at) => record(accented ? 'tick on one' : 'tick', at, 0.08),
      hush: () => {
        hushed += 1;
        for (const sounding of struck) sounding.end = Math.min(sounding.end, clock);
      },
    },
    {
      onStarted: (round, tempo) => told.push(`started ${round} ${tempo}`),
      onTook: (round, change, bar) => told.push(`took ${JSON.stringify(change)} at bar ${bar} of ${round}`),
      onStopped: (round) => told.push(`stopped ${round}`),
    },
  );
  const run = (seconds: number, step = 0.1): void => {
    for (const until = clock + seconds; clock < until - 1e-9;) {
      clock = Math.min(until, clock + step);
      player.advance();
    }
  };
  const notes = () =>
    struck.filter((s): s is Struck & { note: SoundedNote } => typeof s.note !== 'string' && !s.dropped);
  return {
    player,
    struck,
    told,
    run,
    notes,
    now: () => clock,
    jump: (by: number) => (clock += by),
    hushes: () => hushed,
  };
}

function vampOf(chords: string, groove: string | null = 'quarter-downs', tempo = 100, beats = 4): VoicedVamp {
  return voice({ slots: parseVamp(chords, beats), groove, tempo, seed: 7 });
}

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
});

import { describe, expect, test } from 'vitest';
import type { SoundChange } from '../../../server/protocol/messages.ts';
import { grooveOf, type SoundedNote } from '../../../shared-theory/perform.ts';
import { feltVamp } from '../../../client/host/controls.ts';
import type { LiveVamp } from '../../../client/host/played-slots.ts';
import { vampOf } from './played-vamps.ts';
import { bench } from './stage.ts';

/** The first tick comes 0.15 s after the press; a bar of four at 100 is 2.4 s. */
const FIRST_BAR = 10.15 + 2.4;
const BAR = 2.4;

/** A vamp with changes pressed in the middle of bar `bar`, and `bars` more of it; `line` is the bar line behind the press. */
function after(
  changes: readonly SoundChange[],
  { vamp = vampOf('Em D'), bar = 2, bars = 6 }: { vamp?: LiveVamp; bar?: number; bars?: number } = {},
) {
  const side = bench();
  side.player.play('r1', vamp);
  side.run(FIRST_BAR + (bar + 0.5) * BAR - 10);
  for (const change of changes) side.player.change(change);
  side.run(bars * BAR);
  const line = FIRST_BAR + (bar + 1) * BAR;
  const within = (by: 'guitar' | 'kit' | 'bass', from: number, to: number) =>
    side.heard(by).filter(({ at }) => at >= line + from * BAR - 1e-6 && at < line + to * BAR - 1e-6);
  return { ...side, line, within, took: side.told.slice(1) };
}

/** What was told, without its round. */
const told = (change: SoundChange, bar: number): string => `took ${JSON.stringify(change)} at bar ${bar} of r1`;

describe('the band', () => {
  test('joins on the next bar line, while the guitar goes on', () => {
    const { heard, within, line, took } = after([{ kind: 'band', kit: true, bass: true }]);
    for (const by of ['kit', 'bass'] as const) {
      expect(Math.min(...heard(by).map(({ at }) => at))).toBeGreaterThanOrEqual(line - 1e-6);
      expect(within(by, 0, 1).length).toBeGreaterThan(0);
    }
    const guitar = (side: ReturnType<typeof after>) =>
      side.heard('guitar').map(({ at, end }) => `${at.toFixed(6)} ${end.toFixed(6)}`);
    expect(guitar(after([{ kind: 'band', kit: true, bass: true }]))).toEqual(guitar(after([])));
    expect(took).toEqual([told({ kind: 'band', kit: true, bass: true }, 3)]);
  });

  test('stays when what sounds changes, and leaves when it is told to', () => {
    const side = after([
      { kind: 'band', kit: true, bass: false },
      { kind: 'hold', slot: 1 },
    ]);
    expect(side.within('kit', 0, 1).length).toBeGreaterThan(0);
    side.player.change({ kind: 'band', kit: false, bass: false });
    const last = side.now();
    side.run(3 * BAR);
    expect(side.heard('kit').filter(({ at }) => at > last + BAR)).toEqual([]);
    expect(side.player.program()?.controls.mode).toEqual({ kind: 'hold', slot: 1 });
  });

  test('plays from the beginning where the class wants it', () => {
    const side = bench();
    side.player.play('r1', { ...vampOf('Em D'), band: { kit: true, bass: true } });
    side.run(4);
    expect(side.heard('kit').length).toBeGreaterThan(0);
    expect(side.heard('bass').length).toBeGreaterThan(0);
    expect(side.told).toEqual(['started r1 100']);
  });

  test('the kit alone: no string sounds, and the loop goes on where it was', () => {
    const side = after([{ kind: 'kit-only' }], { bars: 3 });
    expect(side.within('guitar', 0, 2)).toEqual([]);
    expect(side.within('kit', 0, 1).length).toBeGreaterThan(0);
    for (const { end } of side.heard('guitar')) expect(end).toBeLessThanOrEqual(side.line + 1e-6);
    side.player.change({ kind: 'full' });
    side.run(2 * BAR);
    // Bars 3, 4 and 5 were the kit's; bar 6 is the first of the loop.
    expect(
      Math.min(
        ...side
          .notes()
          .filter(({ at }) => at > side.line + 2.9 * BAR)
          .map(({ at }) => at),
      ),
    ).toBeCloseTo(side.line + 3 * BAR, 1);
    expect(side.notes().find(({ at }) => at > side.line + 2.9 * BAR)?.note.midi).toBe(40);
  });
});

describe('one chord', () => {
  test('alone: struck once a bar, with all its strings, and left to ring', () => {
    const { within, line } = after([{ kind: 'chord-alone', slot: 1 }]);
    for (const bar of [0, 1, 2]) {
      const strings = within('guitar', bar, bar + 1);
      expect(strings).toHaveLength(4);
      for (const { at, end } of strings) {
        expect(at).toBeLessThan(line + bar * BAR + 0.05);
        expect(end).toBeGreaterThan(line + (bar + 1) * BAR - 0.01);
      }
    }
  });

  test('its root for a bar, then the chord for a bar, over and over', () => {
    const { within } = after([{ kind: 'root-then-chord', slot: 1 }], { bars: 8 });
    const strings = [0, 1, 2, 3, 4, 5].map((bar) => within('guitar', bar, bar + 1).length);
    expect(strings).toEqual([1, 4, 1, 4, 1, 4]);
  });
});

describe('the loop drops out', () => {
  test('for two bars, and is back by itself where it would have come', () => {
    const { within, took, notes, line } = after([{ kind: 'drop-out' }], { vamp: vampOf('Em D C') });
    expect(within('guitar', 0, 2)).toEqual([]);
    const back = notes().filter(({ at }) => at >= line + 2 * BAR - 1e-6);
    // It fell silent on bar 3, the loop's first; bar 5 is its third.
    expect(back[0]?.at).toBeCloseTo(line + 2 * BAR, 2);
    expect(back[0]?.note.midi).toBe(48);
    expect(took).toEqual([told({ kind: 'drop-out' }, 3), told({ kind: 'full' }, 5)]);
  });

  test('what is pressed meanwhile neither shortens nor lengthens it', () => {
    const side = after([{ kind: 'drop-out' }], { bars: 1 });
    // In the middle of its first silent bar, with its end scheduled already or not.
    side.player.change({ kind: 'tempo', tempo: 110 });
    side.run(0.2);
    side.player.change({ kind: 'band', kit: true, bass: false });
    side.run(5 * BAR);
    expect(side.told.slice(2)).toEqual([
      told({ kind: 'tempo', tempo: 110 }, 4),
      told({ kind: 'band', kit: true, bass: false }, 4),
      told({ kind: 'full' }, 5),
    ]);
  });

  test('asked again, it begins again; no question from memory waits for it', () => {
    const side = after([{ kind: 'drop-out' }], { bars: 2 });
    side.player.change({ kind: 'drop-out' });
    side.run(6 * BAR);
    expect(side.told.slice(1)).toEqual([
      told({ kind: 'drop-out' }, 3),
      told({ kind: 'drop-out' }, 5),
      told({ kind: 'full' }, 7),
    ]);
  });

  test('a silence that follows it counts its own bars', () => {
    const side = after([{ kind: 'drop-out' }], { bars: 1 });
    side.player.change({ kind: 'silence' });
    side.run(4 * BAR);
    expect(side.told.slice(2)).toEqual([told({ kind: 'silence' }, 4), 'silent for two bars of r1']);
  });
});

describe('the loop drops out after some bars', () => {
  test('they are heard first; the silence is told when it begins, and the loop is back by itself', () => {
    const { within, took, notes, line } = after([{ kind: 'drop-out', after: 2 }], { vamp: vampOf('Em D C'), bars: 8 });
    expect(within('guitar', 0, 1).length).toBeGreaterThan(0);
    expect(within('guitar', 1, 2).length).toBeGreaterThan(0);
    expect(within('guitar', 2, 4)).toEqual([]);
    const back = notes().filter(({ at }) => at >= line + 4 * BAR - 1e-6);
    expect(back[0]?.at).toBeCloseTo(line + 4 * BAR, 2);
    // Bars 5 and 6 fell silent; bar 7 is the loop's second.
    expect(back[0]?.note.midi).toBe(50);
    expect(took).toEqual([told({ kind: 'drop-out' }, 5), told({ kind: 'full' }, 7)]);
  });

  test('nothing pressed meanwhile about tempo or company moves it; what sounds instead takes it back', () => {
    const side = after([{ kind: 'drop-out', after: 3 }], { bars: 1 });
    side.player.change({ kind: 'tempo', tempo: 110 });
    side.player.change({ kind: 'band', kit: true, bass: false });
    side.run(6 * BAR);
    expect(side.told.slice(1).filter((each) => /drop-out|full/.test(each))).toEqual([
      told({ kind: 'drop-out' }, 6),
      told({ kind: 'full' }, 8),
    ]);
    const other = after([{ kind: 'drop-out', after: 3 }], { bars: 1 });
    other.player.change({ kind: 'muted' });
    other.run(7 * BAR);
    expect(other.told.slice(1)).toEqual([told({ kind: 'muted' }, 4)]);
  });

  test('out of a silence the loop is heard first', () => {
    const side = after([{ kind: 'silence' }], { bars: 2 });
    side.player.change({ kind: 'drop-out', after: 1 });
    side.run(6 * BAR);
    expect(side.told.slice(-3)).toEqual([
      told({ kind: 'full' }, 5),
      told({ kind: 'drop-out' }, 6),
      told({ kind: 'full' }, 8),
    ]);
  });
});

describe('a grid that was drawn', () => {
  const GRID = 'drawn, Drawn | E8 | 4/4 | 60-160 | r=1 / strk D-DU-UD- / zone A.AA.AA. / tch o.oo.oo. / acc 3.12.13.';
  test('sounds from the bar line on muted strings as it was drawn, whatever the loop does', () => {
    const grid = GRID.replace('acc 3.12.13.', 'acc 30120130');
    const { within, took } = after([{ kind: 'echo', groove: grid }], { vamp: vampOf('Em D', 'relaxed-alternate') });
    expect(took).toEqual([told({ kind: 'echo', groove: grid }, 3)]);
    for (const bar of [0, 1, 2]) {
      const notes = within('guitar', bar, bar + 1).map(({ note, at }) => ({ note: note as SoundedNote, at }));
      expect(new Set(notes.map(({ note }) => note.touch))).toEqual(new Set(['dead']));
      const start = FIRST_BAR + (3 + bar) * BAR;
      const slots = new Set(notes.map(({ at }) => Math.floor((at - start) / (BAR / 8) + 0.15)));
      expect([...slots].toSorted((one, other) => one - other)).toEqual([0, 2, 3, 5, 6]);
    }
  });

  test('nobody plays the loop’s own groove over it', () => {
    const grid = GRID.replace('acc 3.12.13.', 'acc 30120130');
    const { within } = after([
      { kind: 'band', kit: true, bass: true },
      { kind: 'echo', groove: grid },
    ]);
    expect([...within('kit', 0, 3), ...within('bass', 0, 3)]).toEqual([]);
  });
});

describe('hands that drive for long', () => {
  const driven = (tempo: number) => {
    const side = bench();
    side.player.play('r1', vampOf('Em D', 'driving-eighths', tempo));
    return side;
  };

  test('get the relaxed feel after ninety seconds, on a bar line, and the reminder', () => {
    const side = driven(160);
    side.run(89);
    expect(side.told).toHaveLength(1);
    side.run(12);
    const [, feel] = side.told;
    expect(feel).toContain('took {"kind":"feel","feel":"relaxed"}');
    expect(side.told.at(-1)).toMatch(/^rest for \d+(\.\d)? s of r1$/);
    const bars = Number(/bar (\d+)/.exec(feel ?? '')?.[1]);
    expect(bars * 1.5).toBeGreaterThanOrEqual(90);
    expect(bars * 1.5).toBeLessThan(95);
    side.run(120);
    expect(side.told.filter((each) => each.startsWith('rest'))).toHaveLength(1);
  });

  test('not while a question is open, nor where the downs are slow', () => {
    const open = driven(160);
    open.run(60);
    open.player.playAlong(false);
    open.run(120);
    open.player.playAlong(true);
    open.run(85);
    expect(open.told).toHaveLength(1);
    open.run(15);
    expect(open.told.some((each) => each.startsWith('rest'))).toBe(true);
    const slow = driven(120);
    slow.run(200);
    expect(slow.told).toHaveLength(1);
  });

  test('a question that opens just before takes the rest back', () => {
    const rested = driven(160);
    while (!rested.told.some((each) => each.includes('relaxed'))) rested.run(0.1);
    // The bar of the rest is placed by then, and is not begun.
    for (const before of [0.3, 1, 1.9, 4]) {
      const side = driven(160);
      while (side.now() < rested.now() - before) side.run(0.1);
      side.player.playAlong(false);
      side.run(20);
      expect(side.told).toHaveLength(1);
    }
  });

  test('the beat does not break, and waits some seconds for sounds that are not ready', () => {
    let slow = true;
    const side = bench((program) => !slow || program.controls.feel !== 'relaxed');
    side.player.play('r1', vampOf('Em D', 'driving-eighths', 160));
    side.run(97);
    expect(side.told).toHaveLength(1);
    slow = false;
    side.run(8);
    expect(side.told.some((each) => each.startsWith('rest'))).toBe(true);
  });
});

describe('a climb', () => {
  /** Tempo changes that were told, with the bars. */
  const steps = (side: ReturnType<typeof after>): readonly [number, number][] =>
    side.told.flatMap((each): [number, number][] => {
      const found = /took {"kind":"tempo","tempo":(\d+)} at bar (\d+)/.exec(each);
      return found ? [[Number(found[1]), Number(found[2])]] : [];
    });

  test('is about four hundredths faster at each start of the loop, until its mark', () => {
    const side = after([{ kind: 'climb', to: 112 }], { bars: 12 });
    expect(side.told[1]).toBe(told({ kind: 'climb', to: 112 }, 3));
    expect(steps(side)).toEqual([
      [104, 4],
      [108, 6],
      [112, 8],
    ]);
    expect(side.player.program()?.controls).toMatchObject({ tempo: 112, climb: null });
  });

  test.each(['drop-out', 'silence'] as const)(
    'takes no step unheard: after %s the loop is where it was counted to',
    (kind) => {
      const side = after([{ kind: 'climb', to: 116 }], { bars: 0.4 });
      // From bar 3 on nothing is heard for two bars; bar 4 begins the loop, and would be a step.
      side.player.change({ kind });
      side.run(1.6 * BAR);
      if (kind === 'silence') side.player.change({ kind: 'full' });
      side.run(4 * BAR);
      const back = side.notes().find(({ at }) => at >= side.line);
      expect(back?.at).toBeCloseTo(side.line + 2 * BAR, 1);
      expect(steps(side).every(([, bar]) => bar >= 5)).toBe(true);
      expect(steps(side).length).toBeGreaterThan(0);
    },
  );

  test('never goes past what the groove can take', () => {
    const side = after([{ kind: 'climb', to: 300 }], { bars: 14 });
    expect(side.told[1]).toBe(told({ kind: 'climb', to: 116 }, 3));
    expect(steps(side).at(-1)?.[0]).toBe(116);
  });

  test('a mark that is not above the tempo ends it at once', () => {
    const side = after([{ kind: 'climb', to: 90 }]);
    expect(side.told.slice(1)).toEqual([told({ kind: 'climb', to: 100 }, 3)]);
  });

  test('a tempo by hand ends it', () => {
    const side = after([{ kind: 'climb', to: 116 }], { bars: 3 });
    side.player.change({ kind: 'tempo', tempo: 90 });
    side.run(8 * BAR);
    expect(steps(side)).toEqual([
      [104, 4],
      [90, 6],
    ]);
  });

  test('a change that takes scheduled bars back takes a step back with them, and no step is made twice', () => {
    const side = after([{ kind: 'climb', to: 116 }], { bars: 1 });
    // The step of bar 4 is scheduled, and not heard yet.
    expect(side.player.program()?.controls.tempo).toBe(104);
    side.player.change({ kind: 'muted' });
    side.run(5 * BAR);
    expect(side.told.slice(2)).toEqual([
      told({ kind: 'muted' }, 4),
      told({ kind: 'tempo', tempo: 104 }, 6),
      told({ kind: 'tempo', tempo: 108 }, 8),
    ]);
  });

  test('no bar is late or early, and no string sounds twice over its steps', () => {
    for (const groove of ['quarter-downs', 'pushed-change', 'campfire-strum']) {
      const side = after([{ kind: 'climb', to: 130 }], { vamp: vampOf('Em D', groove), bars: 16 });
      let line = FIRST_BAR;
      const bars = new Map(side.notes().map(({ note, at, program }) => [(at - note.time).toFixed(6), program]));
      for (const [start, program] of bars) {
        expect(Number(start)).toBeCloseTo(line, 5);
        line += 240 / (program?.controls.tempo ?? 100);
      }
      for (const string of [1, 2, 3, 4, 5, 6]) {
        const played = side.notes().filter(({ note }) => note.string === string);
        played.forEach(({ end }, index) =>
          expect(end).toBeLessThanOrEqual((played[index + 1]?.at ?? Infinity) + 0.002),
        );
      }
    }
  });
});

describe('the feel', () => {
  const feelsOf = (side: ReturnType<typeof bench>) => {
    const program = side.player.program();
    return program ? (grooveOf(feltVamp(program.vamp, program.controls))?.id ?? null) : null;
  };

  test('swaps the groove on the next bar line, at a tempo that it can take', () => {
    const side = after([{ kind: 'feel', feel: 'driving' }], { vamp: vampOf('Em D', 'quarter-downs', 100) });
    expect(feelsOf(side)).toBe('driving-eighths');
    // Nothing but the feel changes.
    expect(side.told.slice(1)).toEqual([told({ kind: 'feel', feel: 'driving' }, 3)]);
    expect(side.player.program()?.controls.tempo).toBe(100);
    side.player.change({ kind: 'feel', feel: 'relaxed' });
    side.run(3 * BAR);
    expect(feelsOf(side)).toBe('relaxed-alternate');
    expect(side.player.program()?.controls.tempo).toBe(100);
    side.player.change({ kind: 'feel', feel: 'written' });
    side.run(3 * BAR);
    expect(feelsOf(side)).toBe('quarter-downs');
  });

  test('goes no faster than its groove can take, and gives the tempo back', () => {
    const side = after([{ kind: 'feel', feel: 'relaxed' }], { vamp: vampOf('Em D', 'driving-eighths', 150) });
    const [feel, tempo, ...more] = side.told.slice(1);
    expect(feel).toContain(JSON.stringify({ kind: 'feel', feel: 'relaxed' }));
    expect(tempo).toContain(JSON.stringify({ kind: 'tempo', tempo: 120 }));
    expect(more).toEqual([]);
    side.player.change({ kind: 'feel', feel: 'driving' });
    side.run(3 * BAR);
    expect(side.player.program()?.controls.tempo).toBe(150);
  });

  test('keeps the place in the loop, and leaves no gap', () => {
    const side = after([{ kind: 'feel', feel: 'relaxed' }], { vamp: vampOf('Em D C', 'pushed-change', 100), bar: 3 });
    // Bar 4 is the second of the loop.
    const [first] = side.within('guitar', 0, 1);
    expect(first?.at).toBeLessThan(side.line + 0.01);
    expect(first?.note).toMatchObject({ midi: 50 });
    side.player.change({ kind: 'feel', feel: 'written' });
    const asked = side.now();
    side.run(2 * BAR);
    const line = Math.min(
      ...side
        .heard('guitar')
        .filter(({ at, program }) => at > asked && program?.controls.feel === 'written')
        .map(({ at }) => at),
    );
    expect((line - FIRST_BAR) / BAR).toBeCloseTo(Math.round((line - FIRST_BAR) / BAR), 2);
  });
});

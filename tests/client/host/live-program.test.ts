import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SoundChange } from '../../../server/protocol/messages.ts';
import { chordPitchClasses } from '../../../shared-theory/chords.ts';
import { GRIDS, type Grid } from '../../../shared-theory/groove-grid.ts';
import { GROOVES } from '../../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../../shared-theory/meters.ts';
import { bassOf } from '../../../shared-theory/neck.ts';
import { perform } from '../../../shared-theory/perform.ts';
import { midiPitchClass } from '../../../shared-theory/pitch.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { voice } from '../../../shared-theory/voice.ts';
import { changedControls, fullControls } from '../../../client/host/controls.ts';
import {
  barBehind,
  enteredBar,
  isUnheard,
  levelOf,
  nextBar,
  programOf,
  type Program,
} from '../../../client/host/live-program.ts';
import type { LiveVamp, Mode } from '../../../client/host/played-slots.ts';
import { bothOf, slotOf, vampOf } from './played-vamps.ts';
import { bench } from './stage.ts';

const CHORDS = 'C Dm Em F G Am Bm D E A Bb Gm F#m Bdim Caug Dsus4 Asus2 G5'.split(' ');
const KINDS = [
  'full',
  'again',
  'hold',
  'pair',
  'bass-alone',
  'bass-forward',
  'root-alone',
  'chord-alone',
  'root-then-chord',
  'muted',
  'kit-only',
  'soft',
  'settler',
  'both',
  'silence',
  'drop-out',
  'echo',
] as const satisfies readonly Mode['kind'][];
const anyMode = fc.constantFrom(...KINDS);
const anyBand = fc.record({ kit: fc.boolean(), bass: fc.boolean() });

/** A grid of a meter on which every slot but the first is struck, as a grid that was drawn travels. */
function drawnIn(grid: Grid): string {
  const { meter, slots } = GRIDS[grid];
  const lane = (first: string, other: string) => [first, ...Array.from({ length: slots - 1 }, () => other)].join('');
  const lanes = `strk ${lane('d', 'D')} / zone ${lane('.', 'A')} / tch ${lane('.', 'o')} / acc ${lane('0', '1')}`;
  return `drawn, Drawn | ${grid} | ${meter} | 40-200 | r=1 / ${lanes}`;
}

function changeOf(kind: (typeof KINDS)[number], slot: number, beats: number, grid: Grid = 'E8'): Mode {
  switch (kind) {
    case 'echo':
      return { kind, groove: drawnIn(grid) };
    case 'hold':
    case 'pair':
    case 'root-alone':
    case 'chord-alone':
    case 'root-then-chord':
      return { kind, slot };
    case 'settler':
      return { kind, index: 0 };
    case 'both':
      return bothOf('C', 'Cm G', beats);
    case 'full':
    case 'again':
    case 'bass-alone':
    case 'bass-forward':
    case 'muted':
    case 'kit-only':
    case 'soft':
    case 'silence':
    case 'drop-out':
      return { kind };
  }
}

function programAfter(vamp: LiveVamp, ...changes: readonly SoundChange[]): Program {
  return programOf(
    vamp,
    changes.reduce((controls, change) => changedControls(vamp, controls, change), fullControls(vamp)),
  );
}

test('whatever is played: only notes of the chords that it says, no empty bar but where nothing is to be heard, no gap', () => {
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom(...CHORDS), { minLength: 1, maxLength: 4 }),
      fc.constantFrom(...GROOVES),
      anyMode,
      anyBand,
      fc.nat(),
      (chords, groove, kind, band, seed) => {
        const beats = BEATS_PER_BAR[groove.meter];
        const slots = parseVamp(chords.join(' '), beats);
        const vamp: LiveVamp = {
          ...voice({ slots, groove: groove.id, tempo: groove.tempo[1], seed: 5 }),
          settlers: [slotOf('Ebm', beats)],
          band,
        };
        const mode = changeOf(kind, seed % slots.length, beats, groove.grid);
        const { bars, played, barsPerLoop, again } = programAfter(vamp, mode);
        expect(bars.length % barsPerLoop).toBe(0);
        expect(again % barsPerLoop).toBe(0);
        let time = 0;
        for (const bar of bars) {
          expect(bar.time).toBeCloseTo(time, 6);
          expect(bar.seconds).toBeCloseTo((beats * 60) / vamp.tempo, 6);
          expect(bar.notes.length === 0).toBe(isUnheard(mode) || kind === 'kit-only');
          expect(bar.kit.length > 0).toBe(!isUnheard(mode) && kind !== 'echo' && (band.kit || kind === 'kit-only'));
          time += bar.seconds;
          for (const note of bar.notes) {
            const said = played[note.chord % played.length]?.slot;
            if (!said) throw new Error('every note belongs to a chord');
            if (kind === 'muted' || kind === 'echo') expect(note.touch).toBe('dead');
            else expect(chordPitchClasses(said.chord)).toContain(midiPitchClass(note.midi));
            if (kind === 'bass-alone' || kind === 'root-alone') expect(note.midi).toBe(bassOf(said.frets));
          }
        }
        const silentBass = ['bass-alone', 'root-alone', 'chord-alone', 'root-then-chord', 'muted', 'kit-only', 'echo'];
        const bassPlays = bars.some((bar) => bar.bass.length > 0);
        expect(bassPlays).toBe(band.bass && !isUnheard(mode) && !silentBass.includes(kind));
      },
    ),
    { numRuns: 60 },
  );
});

test('no sound outlives a change: after any two changes nothing of before sounds past their lines', () => {
  fc.assert(
    fc.property(anyMode, anyMode, fc.constantFrom(...GROOVES), anyBand, (one, other, groove, band) => {
      const beats = BEATS_PER_BAR[groove.meter];
      const [tempo] = groove.tempo;
      const vamp: LiveVamp = { ...vampOf('Em D C', groove.id, tempo, beats), settlers: [slotOf('A', beats)], band };
      const side = bench();
      side.player.play('r1', vamp);
      side.run(12, 0.5);
      for (const kind of [one, other]) {
        const before = side.struck.length;
        const asked = side.now();
        side.player.change(changeOf(kind, 1, beats, groove.grid));
        side.run(2 * ((beats * 60) / tempo), 0.5);
        const line = Math.min(...side.struck.slice(before).map(({ at }) => at), Infinity);
        const first = isUnheard({ kind } as Mode) ? asked + 0.06 + (beats * 60) / tempo : line;
        for (const { end, dropped } of side.struck.slice(0, before))
          if (!dropped) expect(end).toBeLessThanOrEqual(first + 1e-6);
      }
    }),
    { numRuns: 25 },
  );
});

describe('a groove that pushes the change over the line', () => {
  const PUSHED = vampOf('Em D', 'pushed-change', 100);
  const first = (program: Program, bar: number) => program.bars[bar]?.notes[0]?.time ?? Infinity;

  test('only the very first bar is struck on its one; the program never comes back to it', () => {
    const program = programOf(PUSHED, fullControls(PUSHED));
    expect(first(program, 0)).toBeLessThan(0.01);
    for (let bar = 1; bar < program.bars.length; bar += 1) expect(first(program, bar)).toBeGreaterThan(0.2);
    let bar = 0;
    for (let count = 0; count < 3 * program.bars.length; count += 1) {
      bar = barBehind(program, bar);
      expect(bar).toBeGreaterThan(0);
    }
    expect(barBehind(program, program.bars.length - 1)).toBe(program.barsPerLoop);
  });

  test('what the last bar pushes rings over the line where the program begins again', () => {
    const { bars, again } = programOf(PUSHED, fullControls(PUSHED));
    const last = bars.at(-1);
    const pushed = last?.notes.filter((note) => note.time + note.duration > last.seconds + 0.2) ?? [];
    expect(pushed.length).toBeGreaterThan(0);
    // It is the first chord that sounds there already, and the next stroke on its strings comes where they end.
    expect(new Set(pushed.map(({ chord }) => chord))).toEqual(new Set([0]));
    for (const note of pushed) {
      const next = bars[again]?.notes.find(({ string }) => string === note.string);
      if (next) expect(note.time + note.duration - (last?.seconds ?? 0)).toBeCloseTo(next.time, 1);
    }
  });

  test('a bar that is entered from elsewhere is struck on its one, with its own chord', () => {
    const program = programOf(PUSHED, fullControls(PUSHED));
    for (const [bar, root] of [
      [1, 50],
      [2, 40],
      [3, 50],
    ] as const) {
      const entered = enteredBar(program, bar);
      expect(entered.notes[0]?.time).toBeLessThan(0.01);
      expect(entered.notes[0]?.midi).toBe(root);
      expect(entered.seconds).toBeCloseTo(2.4, 9);
    }
    const plain = vampOf('Em D', 'relaxed-alternate', 100);
    const other = programOf(plain, fullControls(plain));
    expect(enteredBar(other, 3)).toBe(other.bars[3]);
  });
});

describe('where a program goes on', () => {
  const vamp = vampOf('Em D C');

  test.each<[Mode, Mode, 'on' | 'first']>([
    [{ kind: 'full' }, { kind: 'kit-only' }, 'on'],
    [{ kind: 'kit-only' }, { kind: 'bass-forward' }, 'on'],
    [{ kind: 'bass-forward' }, { kind: 'drop-out' }, 'on'],
    [{ kind: 'drop-out' }, { kind: 'full' }, 'on'],
    [{ kind: 'full' }, { kind: 'chord-alone', slot: 1 }, 'first'],
    [{ kind: 'root-then-chord', slot: 1 }, { kind: 'full' }, 'first'],
    [{ kind: 'silence' }, { kind: 'drop-out' }, 'first'],
  ])('from %o to %o', (from, to, goes) => {
    expect(nextBar(programAfter(vamp, from), 4, programAfter(vamp, to))).toBe(goes === 'on' ? 4 : 0);
  });

  test('what stands beside stays when the mode changes', () => {
    const { controls } = programAfter(
      vamp,
      { kind: 'band', kit: true, bass: true },
      { kind: 'feel', feel: 'relaxed' },
      { kind: 'climb', to: 110 },
      { kind: 'muted' },
      { kind: 'full' },
    );
    expect(controls).toMatchObject({ feel: 'relaxed', climb: 110, band: { kit: true, bass: true }, tempo: 100 });
  });
});

describe('levels', () => {
  const vamp = vampOf('Em D');
  const key = (...changes: readonly SoundChange[]) => levelOf(programAfter(vamp, ...changes)).key;

  test('what plays the loop keeps its level, at every tempo; what sounds in its place has one of its own', () => {
    const loop = key({ kind: 'full' });
    for (const same of [
      { kind: 'soft' },
      { kind: 'hold', slot: 1 },
      { kind: 'silence' },
      { kind: 'tempo', tempo: 80 },
    ] as const)
      expect(key(same)).toBe(loop);
    const others = [
      key({ kind: 'kit-only' }),
      key({ kind: 'bass-alone' }),
      key({ kind: 'bass-forward' }),
      key({ kind: 'muted' }),
      key({ kind: 'chord-alone', slot: 0 }),
      key({ kind: 'chord-alone', slot: 1 }),
      key({ kind: 'root-then-chord', slot: 1 }),
      key({ kind: 'band', kit: true, bass: false }),
      key({ kind: 'feel', feel: 'driving' }),
    ];
    expect(new Set([loop, ...others]).size).toBe(10);
  });

  test('a loop is measured as it is written, without small differences', () => {
    const { notes, seconds } = levelOf(
      programAfter(vamp, { kind: 'soft' }, { kind: 'tempo', tempo: 80 }),
    ).performance();
    expect(seconds).toBeCloseTo(4.8, 9);
    expect(notes).toEqual(perform(vamp).notes);
  });
});

import type { PerformedBar } from '../../shared-theory/live.ts';
import type { Performance } from '../../shared-theory/perform.ts';
import type { Instrument } from '../../shared-theory/sound/instrument.ts';
import { performanceGain } from '../../shared-theory/sound/mix.ts';
import { noteShelf, type NoteShelf } from '../../shared-theory/sound/note-shelf.ts';
import { levelOf, type Program } from './live-program.ts';
import { inSlices } from './slices.ts';

/** An instrument at a sample rate, with what has been rendered of it and how loud each program is to be. */
export type Rig = {
  readonly instrument: Instrument;
  readonly shelf: NoteShelf;
  /** Whether a bar of a program can sound: all its sounds are rendered and its level is known. */
  readonly ready: (program: Program, bar: PerformedBar) => boolean;
  /** Makes ready what `bars` of a program need, those due first before the others. False where it was not `wanted` any more. */
  readonly prepare: (program: Program, bars: readonly PerformedBar[], wanted: () => boolean) => Promise<boolean>;
  /** Factor of everything in a program, so that each sounds at one loudness; 1 before it is known. */
  readonly gain: (program: Program) => number;
};

/** So many levels are remembered: a round has fewer. */
const MOST_LEVELS = 200;

export function createRig(sampleRate: number, instrument: Instrument): Rig {
  const shelf = noteShelf(sampleRate, instrument);
  /** Levels of the programs of each vamp, by their key. */
  const levels = new Map<string, number>();
  const keys = new WeakMap<Program, string>();

  const keyOf = (program: Program): string => {
    const { slots, grooveText, tempo } = program.vamp;
    const key = keys.get(program) ?? JSON.stringify([levelOf(program).key, grooveText, tempo, slots]);
    keys.set(program, key);
    return key;
  };

  return {
    instrument,
    shelf,
    ready: (program, bar) => levels.has(keyOf(program)) && shelf.missing(asPerformance(bar)).length === 0,
    prepare: async (program, bars, wanted) => {
      const key = keyOf(program);
      if (!levels.has(key)) {
        // A loop is as loud as all of it: its first bar waits until that is known.
        const { performance, decibels } = levelOf(program);
        const loop = performance();
        if (!(await inSlices(shelf.missing(loop), wanted))) return false;
        for (const oldest of levels.keys()) if (levels.size >= MOST_LEVELS) levels.delete(oldest);
        levels.set(key, performanceGain(loop, shelf) * 10 ** (decibels / 20));
      }
      for (const bar of bars) if (!(await inSlices(shelf.missing(asPerformance(bar)), wanted))) return false;
      return true;
    },
    gain: (program) => levels.get(keyOf(program)) ?? 1,
  };
}

/** One bar by itself. */
function asPerformance({ seconds, chord, notes, kit, bass }: PerformedBar): Performance {
  return { seconds, loops: 1, bars: [{ time: 0, chord }], notes, kit, bass };
}

import type { CountInBeat, PerformedBar } from '../../shared-theory/live.ts';
import type { BassNote, KitStrike, SoundedNote } from '../../shared-theory/perform.ts';
import type { Program } from './live-program.ts';
import type { Voice } from './placed.ts';

/** The bar that is struck, and the program that it is of. */
export type Struck = { readonly program: Program; readonly performed: PerformedBar };

/** What the player plays on; times are seconds of the audio clock. */
export type Stage = {
  readonly now: () => number;
  /** Whether all of a bar of the program can sound now; where not, it is being made ready. */
  readonly ready: (program: Program, bar: PerformedBar) => boolean;
  /** Strikes a sound of a bar; its own time counts from that bar's start. */
  readonly strike: (note: SoundedNote, at: number, of: Struck) => Voice;
  readonly strikeKit: (strike: KitStrike, at: number, of: Struck) => Voice;
  readonly strikeBass: (note: BassNote, at: number, of: Struck) => Voice;
  /** One counted beat: all that it sounds of. */
  readonly count: (beat: CountInBeat, at: number) => readonly Voice[];
  /** Ramps everything down within 30 ms and forgets it. */
  readonly hush: () => void;
};

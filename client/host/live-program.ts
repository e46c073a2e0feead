import type { SoundChange } from '../../server/protocol/messages.ts';
import {
  barsOf,
  bassAlone,
  inTurn,
  mutedStrings,
  rootAlone,
  softly,
  sungOver,
  unheard,
  withTempo,
  type PerformedBar,
} from '../../shared-theory/live.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { perform, type Performance } from '../../shared-theory/perform.ts';
import type { VoicedVamp } from '../../shared-theory/vamps.ts';
import { beatsOf, playedSlots, type LiveVamp, type Mode, type Played } from './played-slots.ts';
import type { Heard } from './sound-view.ts';

/** How a vamp is played now: what sounds of it, at a tempo. */
export type Controls = {
  readonly mode: Mode;
  /** Beats a minute. */
  readonly tempo: number;
};

/** A vamp under its controls, ready to be played round and round. */
export type Program = {
  readonly vamp: LiveVamp;
  readonly controls: Controls;
  readonly performance: Performance;
  readonly bars: readonly PerformedBar[];
  /** Bars in one time round; `bars` holds several times with a player's small differences. */
  readonly barsPerLoop: number;
  /** The slots of one time round. */
  readonly played: readonly Played[];
};

/** About so many bars pass before the player's small differences of time and strength come round again. */
const VARIED_BARS = 8;

/** Controls at the start of a vamp. */
export function fullControls(vamp: VoicedVamp): Controls {
  return { mode: { kind: 'full' }, tempo: vamp.tempo };
}

/** Controls after a change; the tempo is the one that the groove can take. Throws `RangeError` for a slot or settler that the loop has not. */
export function changedControls(vamp: LiveVamp, controls: Controls, change: SoundChange): Controls {
  if (change.kind === 'tempo') return { ...controls, tempo: withTempo(vamp, change.tempo).tempo };
  playedSlots(vamp, change);
  return { ...controls, mode: change };
}

/** What is to be played under these controls. */
export function programOf(vamp: LiveVamp, controls: Controls): Program {
  const { mode } = controls;
  const played = playedSlots(vamp, mode);
  const timed = { ...vamp, tempo: controls.tempo };
  const round = { ...timed, slots: played.map(({ slot }) => slot) };
  const barsPerLoop = perform(round).bars.length;
  const loops = Math.max(1, Math.ceil(VARIED_BARS / barsPerLoop));
  const performance = performanceOf(timed, mode, played, loops);
  return { vamp, controls, performance, bars: barsOf(performance), barsPerLoop, played };
}

/** `timed` is the vamp at its tempo; `played` what one time round is made of. */
function performanceOf(timed: LiveVamp, mode: Mode, played: readonly Played[], loops: number): Performance {
  const round = { ...timed, slots: played.map(({ slot }) => slot) };
  const options = { loops, human: true };
  switch (mode.kind) {
    case 'bass-alone':
      return bassAlone(round, perform(round, options));
    case 'root-alone':
      return rootAlone(timed, mode.slot);
    case 'muted':
      return mutedStrings(round, options);
    case 'soft':
      return softly(perform(round, options));
    case 'silence':
      return unheard(perform(round, options));
    case 'both': {
      // Each reading begins its groove anew, and with the same small differences: nothing differs but what is compared.
      const sides = (['wrong', 'right'] as const).map((side) => ({
        ...timed,
        slots: played.filter(({ origin }) => origin.of === 'both' && origin.side === side).map(({ slot }) => slot),
      }));
      const turns = Array.from({ length: loops }, (_, turn) =>
        sides.map((side) => ({ ...side, seed: side.seed + turn })),
      );
      return inTurn(turns.flat().map((side) => perform(side, { human: true })));
    }
    case 'settler': {
      const settler = timed.settlers?.[mode.index];
      const loop = perform(round, options);
      return settler && 'midi' in settler ? sungOver(round, loop, settler.midi) : loop;
    }
    case 'full':
    case 'again':
    case 'hold':
    case 'pair':
      return perform(round, options);
  }
}

/** Where a moment is: `bar` counts in `program.bars`, `seconds` from that bar's start. */
export function placeInLoop({ vamp, controls, barsPerLoop, played }: Program, bar: number, seconds: number): Heard {
  const barBeats = BEATS_PER_BAR[vamp.meter];
  const elapsed = (bar % barsPerLoop) * barBeats + (seconds * controls.tempo) / 60;
  const now = played.findLast(({ start }) => start <= elapsed + 1e-6) ?? played[0];
  if (!now) throw new RangeError('A program plays at least one chord.');
  const within = Math.max(0, elapsed - now.start);
  const at = (beats: number) => ({
    bar: Math.floor(beats / barBeats + 1e-6),
    beat: Math.max(0, beats - Math.floor(beats / barBeats + 1e-6) * barBeats),
  });
  const { origin } = now;
  if (origin.of === 'settler') return { phase: 'settler', index: origin.index, ...at(within) };
  if (origin.of === 'both')
    return { phase: 'both', side: origin.side, slot: origin.slot, ...at(elapsed - origin.start) };
  // A chord that is held goes over its own bars again and again.
  const start = beatsOf(vamp.slots.slice(0, origin.slot));
  const own = vamp.slots[origin.slot]?.beats ?? barBeats;
  const heard = { phase: 'vamp', slot: origin.slot, ...at(start + (within % own)) } as const;
  return controls.mode.kind === 'silence' ? { ...heard, silent: true } : heard;
}

/** Modes that play the whole loop: between them the place in it is kept. */
const WHOLE_LOOP: readonly Mode['kind'][] = ['full', 'again', 'bass-alone', 'muted', 'soft'];

/** Whether the loop sounds as it is, however it is played. */
export function playsLoop({ vamp, controls: { mode } }: Program): boolean {
  return WHOLE_LOOP.includes(mode.kind) || (mode.kind === 'pair' && vamp.slots.length === 2 && mode.slot === 1);
}

/**
 * The bar to go on with when one program follows another at `bar`: the same one where only the tempo changes, or where both
 * play the loop; else the first, since other things begin at their beginning, and after them or after silence so does the loop.
 */
export function nextBar(from: Program, bar: number, to: Program): number {
  const same = from.controls.mode === to.controls.mode;
  const goesOn =
    playsLoop(from) && to.controls.mode.kind !== 'again' && (playsLoop(to) || to.controls.mode.kind === 'silence');
  return same || goesOn ? bar % to.bars.length : 0;
}

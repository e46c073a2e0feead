import type { SoundChange } from '../../server/protocol/messages.ts';
import { barsOf, bassAlone, holdSlot, withTempo, type PerformedBar } from '../../shared-theory/live.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { perform, type Performance } from '../../shared-theory/perform.ts';
import type { VoicedVamp } from '../../shared-theory/vamps.ts';
import type { Heard } from './sound-view.ts';

/** How a vamp is played now: one of full, held or bass alone, at a tempo. */
export type Controls = {
  readonly mode: Exclude<SoundChange, { kind: 'tempo' }>;
  /** Beats a minute. */
  readonly tempo: number;
};

/** A vamp under its controls, ready to be played round and round. */
export type Program = {
  readonly vamp: VoicedVamp;
  readonly controls: Controls;
  readonly performance: Performance;
  readonly bars: readonly PerformedBar[];
  /** Bars in one time round; `bars` holds several times with a player's small differences. */
  readonly barsPerLoop: number;
};

/** About so many bars pass before the player's small differences of time and strength come round again. */
const VARIED_BARS = 8;

/** Controls at the start of a vamp. */
export function fullControls(vamp: VoicedVamp): Controls {
  return { mode: { kind: 'full' }, tempo: vamp.tempo };
}

/** Controls after a change; the tempo is the one that the groove can take. Throws `RangeError` for a slot the loop has not. */
export function changedControls(vamp: VoicedVamp, controls: Controls, change: SoundChange): Controls {
  if (change.kind === 'tempo') return { ...controls, tempo: withTempo(vamp, change.tempo).tempo };
  if (change.kind === 'hold') holdSlot(vamp, change.slot);
  return { ...controls, mode: change };
}

/** What is to be played under these controls. */
export function programOf(vamp: VoicedVamp, controls: Controls): Program {
  const timed = { ...vamp, tempo: controls.tempo };
  const { mode } = controls;
  const played = mode.kind === 'hold' ? holdSlot(timed, mode.slot) : timed;
  const barsPerLoop = barsOf(perform(played)).length;
  const all = perform(played, { loops: Math.max(1, Math.ceil(VARIED_BARS / barsPerLoop)), human: true });
  const performance = mode.kind === 'bass-alone' ? bassAlone(played, all) : all;
  return { vamp, controls, performance, bars: barsOf(performance), barsPerLoop };
}

/** Where in the loop a moment is: `bar` counts in `program.bars`, `seconds` from that bar's start. */
export function placeInLoop({ vamp, controls, barsPerLoop }: Program, bar: number, seconds: number): Heard {
  const barBeats = BEATS_PER_BAR[vamp.meter];
  const beat = (seconds * controls.tempo) / 60;
  const starts = vamp.slots.map((_, slot) => vamp.slots.slice(0, slot).reduce((sum, { beats }) => sum + beats, 0));
  if (controls.mode.kind === 'hold') {
    const { slot } = controls.mode;
    const start = starts[slot] ?? 0;
    const room = Math.min(vamp.slots[slot]?.beats ?? barBeats, barBeats);
    return { phase: 'vamp', bar: Math.floor(start / barBeats), beat: (start % barBeats) + (beat % room), slot };
  }
  const loopBar = bar % barsPerLoop;
  const slot = starts.findLastIndex((start) => start <= loopBar * barBeats + beat + 1e-6);
  return { phase: 'vamp', bar: loopBar, beat, slot: Math.max(0, slot) };
}

/** The bar to go on with when one program follows another at `bar`: the same one, or the first where a chord is held or let go. */
export function nextBar(from: Program, bar: number, to: Program): number {
  const held = from.controls.mode.kind === 'hold' || to.controls.mode.kind === 'hold';
  return held ? 0 : bar % to.bars.length;
}

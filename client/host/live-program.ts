import { withBand } from '../../shared-theory/band.ts';
import { withFeel } from '../../shared-theory/feels.ts';
import {
  barsOf,
  bassAlone,
  bassForward,
  chordAlone,
  echoed,
  inTurn,
  kitOnly,
  mutedStrings,
  rootAlone,
  rootThenChord,
  softly,
  sungOver,
  unheard,
  type PerformedBar,
} from '../../shared-theory/live.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { grooveOf, perform, type Performance } from '../../shared-theory/perform.ts';
import { feltVamp, type Controls } from './controls.ts';
import { beatsOf, playedSlots, startedAt, type LiveVamp, type Mode, type Played } from './played-slots.ts';
import type { Heard } from './sound-view.ts';

/** A vamp under its controls, ready to be played round and round. */
export type Program = {
  readonly vamp: LiveVamp;
  readonly controls: Controls;
  /** The first time round and several more with a player's small differences, as they are heard. */
  readonly bars: readonly PerformedBar[];
  /** Beats that each of `bars` lasts. */
  readonly beats: readonly number[];
  /** Bars in one time round. */
  readonly barsPerLoop: number;
  /** The bar that follows the last: never one that nothing came before, since a stroke may have been pushed over its line. */
  readonly again: number;
  /** The slots of one time round. */
  readonly played: readonly Played[];
};

/** About so many bars pass before the player's small differences of time and strength come round again. */
const VARIED_BARS = 8;

/** A bar whose first string comes so late after its line, in seconds, was struck before it. */
const LATE_FIRST_SECONDS = 0.02;

/** What is to be played under these controls. Throws `RangeError` where their groove cannot play the loop. */
export function programOf(vamp: LiveVamp, controls: Controls): Program {
  const played = playedSlots(vamp, controls.mode);
  const barBeats = BEATS_PER_BAR[vamp.meter];
  const loopBeats = beatsOf(played.map(({ slot }) => slot));
  const barsPerLoop = Math.ceil(loopBeats / barBeats - 1e-6);
  const varied = Math.max(1, Math.ceil(VARIED_BARS / barsPerLoop));
  // One more than is used, so that what the last bar pushes over its line rings on there.
  const all = barsOf(performanceOf(vamp, controls, played, { loops: varied + 2, human: true }));
  const used = (varied + 1) * barsPerLoop;
  const bars = all.slice(0, used);
  const beats = bars.map((_, bar) => Math.min(barBeats, loopBeats - (bar % barsPerLoop) * barBeats));
  return { vamp, controls, bars, beats, barsPerLoop, again: all.length > used ? barsPerLoop : 0, played };
}

/** Modes in which a line of the bass guitar would tell more than is asked. */
const WITHOUT_BASS: readonly Mode['kind'][] = [
  'bass-alone',
  'root-alone',
  'chord-alone',
  'root-then-chord',
  'muted',
  'kit-only',
];

type Options = { readonly loops: number; readonly human: boolean };

/** What sounds: `played` round and round, or the two bars that a mode makes of one chord, or two readings by turns. */
function performanceOf(vamp: LiveVamp, controls: Controls, played: readonly Played[], options: Options): Performance {
  const { mode, band } = controls;
  const timed = feltVamp(vamp, controls);
  const round = { ...timed, slots: played.map(({ slot }) => slot) };
  const along = { kit: band.kit, bass: band.bass && !WITHOUT_BASS.includes(mode.kind) };
  const joined = (performance: Performance): Performance => withBand(round, performance, along);
  const full = (): Performance => perform(round, options);
  switch (mode.kind) {
    case 'bass-alone':
      return joined(bassAlone(round, full()));
    case 'bass-forward':
      return joined(bassForward(round, full()));
    case 'root-alone':
      return joined(rootAlone(timed, mode.slot));
    case 'chord-alone':
      return joined(chordAlone(timed, mode.slot));
    case 'root-then-chord':
      return joined(rootThenChord(timed, mode.slot));
    case 'muted':
      return joined(mutedStrings(round, options));
    case 'kit-only':
      return kitOnly(round, full());
    case 'echo':
      // A band would play the loop's own groove over the one that was drawn.
      return echoed(round, mode.groove, options);
    case 'soft':
      return softly(joined(full()));
    case 'silence':
    case 'drop-out':
      return unheard(full());
    case 'both': {
      // Each reading begins its groove anew, and with the same small differences: nothing differs but what is compared.
      const sides = (['wrong', 'right'] as const).map((side) => ({
        ...timed,
        slots: played.filter(({ origin }) => origin.of === 'both' && origin.side === side).map(({ slot }) => slot),
      }));
      const turns = Array.from({ length: options.loops }, (_, turn) =>
        sides.map((side) => ({ ...side, seed: side.seed + turn })),
      );
      const human = { human: options.human };
      return inTurn(turns.flat().map((side) => withBand(side, perform(side, human), along)));
    }
    case 'settler': {
      const settler = timed.settlers?.[mode.index];
      const loop = joined(full());
      return settler && 'midi' in settler ? sungOver(round, loop, settler.midi) : loop;
    }
    case 'full':
    case 'again':
    case 'hold':
    case 'pair':
      return joined(full());
  }
}

/** Modes that sound in place of the loop, and are brought to its loudness; all others keep the loop's own measure. */
const OWN_LEVEL: readonly Mode['kind'][] = [
  'bass-alone',
  'bass-forward',
  'root-alone',
  'chord-alone',
  'root-then-chord',
  'muted',
  'kit-only',
  'echo',
];

/** Strokes on muted strings are all peak and no ring: as loud as the loop to a meter, they would jump out of it. */
const MUTED_DECIBELS = -2;

/**
 * What sets the level of a program: one time round without a player's small differences, of the loop at the tempo it was written
 * for, or of what sounds in its place. Programs with equal `key` of one vamp have the same level.
 */
export function levelOf({ vamp, controls, played }: Program): {
  readonly key: string;
  readonly performance: () => Performance;
  /** How far it stands over the loudness of all vamps. */
  readonly decibels: number;
} {
  const { mode, feel, band } = controls;
  const own = OWN_LEVEL.includes(mode.kind);
  const key = JSON.stringify([own ? mode : 'loop', feel, band.kit, band.bass]);
  const once = { loops: 1, human: false };
  const decibels = mode.kind === 'muted' || mode.kind === 'echo' ? MUTED_DECIBELS : 0;
  if (own) return { key, performance: () => performanceOf(vamp, controls, played, once), decibels };
  const { tempo } = withFeel(vamp, feel);
  const loop: Controls = { ...controls, mode: { kind: 'full' }, tempo };
  return { key, performance: () => performanceOf(vamp, loop, playedSlots(vamp, loop.mode), once), decibels };
}

/**
 * A bar of the program as it is played where nothing of the program sounded before it: what should have been pushed over its
 * line is struck on it.
 */
export function enteredBar(program: Program, bar: number): PerformedBar {
  const { vamp, controls, played, barsPerLoop } = program;
  const plain = barOf(program, bar);
  const pushes = grooveOf(feltVamp(vamp, controls))?.slots.some((slot) => slot.pushes) ?? false;
  const [first] = plain.notes;
  const begun = controls.mode.kind === 'both' || controls.mode.kind === 'echo';
  if (bar === 0 || !pushes || !first || first.time < LATE_FIRST_SECONDS || begun) return plain;
  const from = startedAt(played, (bar % barsPerLoop) * BEATS_PER_BAR[vamp.meter]);
  const [entered] = barsOf(performanceOf(vamp, controls, from, { loops: 2, human: true }));
  return entered ? { ...entered, time: plain.time, chord: plain.chord } : plain;
}

/** The bar of that index. Throws `RangeError` where the program has none such. */
export function barOf({ bars }: Program, bar: number): PerformedBar {
  const found = bars[bar];
  if (!found) throw new RangeError(`The program has ${bars.length} bars, not a bar ${bar}.`);
  return found;
}

/** The bar that follows another. */
export function barBehind({ bars, again }: Program, bar: number): number {
  return bar + 1 < bars.length ? bar + 1 : again;
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
  return isUnheard(controls.mode) ? { ...heard, silent: true } : heard;
}

/** Whether the groove goes on unheard. */
export function isUnheard({ kind }: Mode): boolean {
  return kind === 'silence' || kind === 'drop-out';
}

/** Modes that play the whole loop: between them the place in it is kept. */
const WHOLE_LOOP: readonly Mode['kind'][] = [
  'full',
  'again',
  'bass-alone',
  'bass-forward',
  'muted',
  'kit-only',
  'soft',
  'drop-out',
  'echo',
];

/** Whether the loop sounds as it is, however it is played. */
export function playsLoop({ vamp, controls: { mode } }: Program): boolean {
  return WHOLE_LOOP.includes(mode.kind) || (mode.kind === 'pair' && vamp.slots.length === 2 && mode.slot === 1);
}

/**
 * The bar to go on with when one program follows another at `bar`: the same one where something changes beside what sounds, or
 * where both play the loop; else the first, since other things begin at their beginning, and after them or after silence so does the
 * loop.
 */
export function nextBar(from: Program, bar: number, to: Program): number {
  const same = from.controls.mode === to.controls.mode;
  const goesOn =
    playsLoop(from) && to.controls.mode.kind !== 'again' && (playsLoop(to) || to.controls.mode.kind === 'silence');
  return (same || goesOn) && bar < to.bars.length ? bar : 0;
}

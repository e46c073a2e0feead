import { beatsPerSlot } from '../grooves.ts';
import { BEATS_PER_BAR } from '../meters.ts';
import { grooveOf, type Performance, type SoundedNote } from '../perform.ts';
import { meterFacts } from '../sound/midi.ts';
import type { VoicedVamp } from '../vamps.ts';
import type { Attack, Bar } from './bars.ts';
import { DIVISIONS } from './note-values.ts';
import type { StaffNote } from './staff-notes.ts';

/** Beats closer than this are one place. */
const NEAR = 1e-6;
/** Seconds by which a stroke may fall short of its slot: rounding, no more. */
const EARLY = 0.002;

/** Where a vamp's music stands on paper. All lengths in divisions. */
export type Layout = {
  /** Of one loop. */
  readonly loop: number;
  readonly bars: readonly Bar[];
  /** Where each slot of the loop begins. */
  readonly slots: readonly number[];
  /** The shortest thing that the groove has. */
  readonly step: number;
  /** Divisions of a performance's time from its start: swung and spread strokes stand on their slot. */
  readonly placeOf: (seconds: number) => number;
  /** Divisions that so many seconds last, to the nearest slot and no less than one. */
  readonly lengthOf: (seconds: number) => number;
};

/** How a vamp's loop lies on paper. */
export function layoutOf(vamp: VoicedVamp): Layout {
  const { quarters } = meterFacts(vamp.meter);
  const groove = grooveOf(vamp);
  const beat = DIVISIONS * quarters;
  const slotBeats = groove ? beatsPerSlot(groove) : 0.5 / quarters;
  const step = Math.round(slotBeats * beat);
  const seconds = (slotBeats * 60) / vamp.tempo;
  const starts = vamp.slots.reduce<number[]>((sums, { beats }) => [...sums, (sums.at(-1) ?? 0) + beats], [0]);
  const loopBeats = starts.at(-1) ?? 0;
  const barBeats = BEATS_PER_BAR[vamp.meter];
  return {
    loop: Math.round(loopBeats * beat),
    bars: Array.from({ length: Math.ceil((loopBeats - NEAR) / barBeats) }, (_, bar) => ({
      from: Math.round(bar * barBeats * beat),
      to: Math.round(Math.min(loopBeats, (bar + 1) * barBeats) * beat),
    })),
    slots: starts.slice(0, -1).map((beats) => Math.round(beats * beat)),
    step,
    placeOf: (time) => Math.floor((time + EARLY) / seconds) * step,
    lengthOf: (time) => Math.max(1, Math.round(time / seconds)) * step,
  };
}

/** What sounds in one loop, its times as in the performance; `start` is where the loop begins, in divisions. */
export type Section = {
  readonly start: number;
  readonly notes: readonly SoundedNote[];
  readonly bass: NonNullable<Performance['bass']>;
  readonly kit: NonNullable<Performance['kit']>;
};

/**
 * The loops that must be written: the first, and the second where the loop goes on otherwise than it began, as under a change that is
 * pushed over its end. All later ones are as the last of these.
 */
export function sectionsOf(layout: Layout, performance: Performance): readonly Section[] {
  const section = (loop: number): Section => {
    const start = loop * layout.loop;
    const inside = ({ time }: { readonly time: number }) =>
      layout.placeOf(time) >= start && layout.placeOf(time) < start + layout.loop;
    return {
      start,
      notes: performance.notes.filter(inside),
      bass: (performance.bass ?? []).filter(inside),
      kit: (performance.kit ?? []).filter(inside),
    };
  };
  const [first, second] = [section(0), section(1)];
  return written(layout, first) === written(layout, second) ? [first] : [first, second];
}

function written(layout: Layout, { start, notes, bass, kit }: Section): string {
  const at = ({ time }: { readonly time: number }) => layout.placeOf(time) - start;
  return JSON.stringify([
    notes.map((note) => [at(note), note.string, note.fret, note.touch, note.accent, note.chord]),
    bass.map((note) => [at(note), note.midi, note.accent]),
    kit.map((strike) => [at(strike), strike.piece, strike.accent]),
  ]);
}

/** What begins at each place, `write` making its heads; `lasts` says how long they may be written, ring and are tied on. */
export function attacksOf<Sound extends { readonly time: number }>(
  layout: Layout,
  start: number,
  sounds: readonly Sound[],
  lasts: (sounds: readonly Sound[]) => Pick<Attack, 'most' | 'rings' | 'holds'>,
  write: (sounds: readonly Sound[]) => readonly StaffNote[],
): readonly (Attack & { readonly sounds: readonly Sound[] })[] {
  const groups = new Map<number, Sound[]>();
  for (const sound of sounds) {
    const at = layout.placeOf(sound.time) - start;
    groups.set(at, [...(groups.get(at) ?? []), sound]);
  }
  return [...groups]
    .toSorted(([one], [other]) => one - other)
    .map(([at, group]) => ({ at, ...lasts(group), notes: write(group), sounds: group }));
}

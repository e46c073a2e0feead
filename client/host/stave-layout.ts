import type { WireVamp } from '../../server/protocol/views.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import type { Meter } from '../../shared-theory/vamps.ts';

/** A bar of the line, in drawing units. Beats lie between `from` and `to`; the signs of repeat keep their room outside. */
export type BarPlace = {
  readonly x: number;
  readonly width: number;
  readonly from: number;
  readonly to: number;
  readonly beats: number;
};

/** Where a slot of the loop stands: from the bar line or beat where it begins to where the next begins. */
export type SlotPlace = { readonly x: number; readonly width: number };

export type StaveLayout = {
  readonly bars: readonly BarPlace[];
  readonly slots: readonly SlotPlace[];
  /** Upper end of each slash's middle line is above its `x`; one a beat. */
  readonly slashes: readonly number[];
  /** Distance of two beats in the narrowest bar. */
  readonly pitch: number;
};

/** Room of a repeat sign with its dots. */
const REPEAT_SIGN = 40;

/** Lays the bars of a vamp's loop from `left` over `width`; a last bar that is not full is drawn as long as it is. */
export function layStave(vamp: Pick<WireVamp, 'meter' | 'slots'>, left: number, width: number): StaveLayout {
  const perBar = BEATS_PER_BAR[vamp.meter as Meter];
  const total = vamp.slots.reduce((sum, slot) => sum + slot.beats, 0);
  const perBeat = width / total;
  const bars: BarPlace[] = [];
  for (let beat = 0; beat < total; beat += perBar) {
    const beats = Math.min(perBar, total - beat);
    const x = left + beat * perBeat;
    const first = beat === 0;
    const last = beat + perBar >= total;
    const from = first ? x + REPEAT_SIGN : x;
    const to = x + beats * perBeat - (last ? REPEAT_SIGN : 0);
    bars.push({ x, width: beats * perBeat, from, to, beats });
  }
  const pitch = Math.min(...bars.map((bar) => (bar.to - bar.from) / bar.beats));
  const slashes = bars.flatMap((bar) => Array.from({ length: Math.ceil(bar.beats) }, (_, beat) => beatX(bar, beat)));
  return { bars, slots: laySlots(vamp.slots, bars, perBar), slashes, pitch };
}

function laySlots(slots: WireVamp['slots'], bars: readonly BarPlace[], perBar: number): SlotPlace[] {
  const end = bars.at(-1);
  const lineEnd = end ? end.x + end.width : 0;
  let beat = 0;
  const starts = slots.map((slot) => {
    const bar = bars[Math.floor(beat / perBar)];
    const inBar = beat % perBar;
    beat += slot.beats;
    if (!bar) return lineEnd;
    return inBar === 0 ? bar.x : beatX(bar, inBar) - 0.42 * ((bar.to - bar.from) / bar.beats);
  });
  return starts.map((x, index) => ({ x, width: (starts[index + 1] ?? lineEnd) - x }));
}

/** Where beat `beat` (0 is the first, fractions allowed) of a bar stands: a little after its bar line, as in print. */
export function beatX(bar: BarPlace, beat: number): number {
  const pitch = (bar.to - bar.from) / bar.beats;
  return bar.from + (beat + 0.5) * pitch;
}

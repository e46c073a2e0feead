import { analyseTaps, fasterThan, type TapAnalysis, type TempoChange } from './analyse.ts';
import { levelAt, type TempoLevel } from './level.ts';
import type { Taps } from './taps.ts';

/** Beyond this percent over eight beats a hand rushes or drags: common practice. */
export const MOST_DRIFT = 2;

/** Bars through which a groove stays silent. */
const SILENT_BARS = 2;

/** Fewer taps say nothing of a tempo. */
const LEAST_STRETCH = 4;

/** Whether a change of tempo is one that a hand is told of: large enough, and beyond doubt. */
export function rushesOrDrags({ percent, sure }: TempoChange): 'rushes' | 'drags' | null {
  if (!sure || Math.abs(percent) <= MOST_DRIFT) return null;
  return percent > 0 ? 'rushes' : 'drags';
}

/** A groove that a hand taps along with: beats a minute, its lawful counts as factors of that, beats in a bar. */
export type TappedGroove = {
  readonly tempo: number;
  readonly counts: readonly number[];
  readonly beatsPerBar: number;
};

/** How a tempo was kept, and at which level of the beat. */
export type HeldTempo = TempoChange & { readonly level: TempoLevel };

/**
 * How much faster the last two bars of beats that were tapped are than the groove, at the level of the beat at which the hand tapped
 * before: through a silence nobody knows better than the taps where it began. null where the taps cannot be read, or too few remain.
 */
export function heldTempo(taps: Taps, groove: TappedGroove): HeldTempo | null {
  const read = analyseTaps(taps);
  if (read === null) return null;
  const { beats } = read;
  const { level, factor } = levelAt(tempoBefore(read, groove), groove.tempo, groove.counts);
  // From the first beat of the two bars to the one that ends them.
  const from = (beats.at(-1)?.beat ?? 0) - Math.max(LEAST_STRETCH, stretch(groove, factor));
  const there = beats.filter(({ beat }) => beat >= from);
  const change = fasterThan(60_000 / (groove.tempo * factor), there);
  return change && { ...change, level };
}

function stretch({ beatsPerBar }: TappedGroove, factor: number): number {
  return Math.round(SILENT_BARS * beatsPerBar * factor);
}

/** The tempo before the last two bars, in beats a minute; that of all taps where too few are before. */
function tempoBefore({ beats, tempo }: TapAnalysis, groove: TappedGroove): number {
  const lasts = (SILENT_BARS * groove.beatsPerBar * 60_000) / groove.tempo;
  const until = (beats.at(-1)?.time ?? 0) - lasts;
  const before = beats.filter(({ time }) => time <= until);
  const change = before.length < LEAST_STRETCH ? null : fasterThan(60_000 / tempo, before);
  return change === null ? tempo : tempo * (1 + change.percent / 100);
}

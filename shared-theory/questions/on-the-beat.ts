import { GRIDS } from '../groove-grid.ts';
import { BEATS_PER_BAR } from '../meters.ts';
import type { TappedGroove } from '../taps/holding.ts';
import type { Taps } from '../taps/taps.ts';
import type { Truth } from '../truth.ts';
import { analyseTaps } from '../taps/analyse.ts';
import type { Mark } from './question.ts';

/** Taps of a right answer: eight intervals, the fewest for a fair verdict. */
const RIGHT_TAPS = 9;

/** Taps exactly on the beat, at a tempo in beats a minute. */
export function onTheBeat(tempo: number): Taps {
  return Array.from({ length: RIGHT_TAPS }, (_, beat) => Math.round((beat * 600_000) / tempo) / 10);
}

/** What there is to tap along with; null where no groove was named, or nobody knows its tempo. */
export function grooveToTap({ tempo, rhythm }: Truth): TappedGroove | null {
  if (tempo === null || !rhythm) return null;
  return { tempo, counts: rhythm.counts, beatsPerBar: BEATS_PER_BAR[GRIDS[rhythm.grid].meter] };
}

/**
 * What taps say to a class: the error that they show, else their tempo in whole beats a minute. `unreadable` where they have none.
 */
export function heardOfTaps(taps: Taps, mark?: Mark): string {
  const read = analyseTaps(taps);
  return mark?.errors[0] ?? (read === null ? 'unreadable' : String(Math.round(read.tempo)));
}

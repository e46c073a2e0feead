import { NOT_SURE } from '../../shared-theory/questions/question.ts';
import { grooveToTap } from '../../shared-theory/questions/on-the-beat.ts';
import { analyseTaps, roomTaps } from '../../shared-theory/taps/analysis.ts';
import type { DropOutTaps, Taps } from '../../shared-theory/taps/taps.ts';
import type * as Wire from '../protocol/views.ts';
import type { HeardRound } from './events.ts';
import { heardOn, questionOn } from './marking.ts';
import type { Sheet } from './state.ts';

/** What was tapped on a sheet, as it travels. Who may see which of it is decided in `view.ts` alone. */

/**
 * Hands drawn one by one, at most; of more, so many evenly among them, the outermost with them. So that a thousand hands four times
 * a second are no more than a hundred to the pages, and to the network.
 */
const MOST_DRAWN = 100;

/** Of a groove whose tempo nobody knows. */
const UNKNOWN = { tempo: null, beatsPerBar: 4, counts: [1] };

type Tapped = Parameters<typeof roomTaps>[1]['kind'];

const drawn = new WeakMap<
  Sheet,
  { readonly round: HeardRound; readonly times: number; readonly taps: Wire.WireTaps }
>();

/** What the room tapped as a whole, without anyone's name; worked out once until somebody writes, or the round is corrected. */
export function wireTaps(sheet: Sheet): Wire.WireTaps {
  const { round } = sheet;
  let times = 0;
  for (const written of sheet.answers.values()) times += written.times;
  const last = drawn.get(sheet);
  if (last?.round === round && last.times === times) return last.taps;
  const taps = roomOf(sheet);
  drawn.set(sheet, { round, times, taps });
  return taps;
}

function roomOf(sheet: Sheet): Wire.WireTaps {
  const { kind } = questionOn(sheet);
  const hands: (Taps | DropOutTaps)[] = [];
  for (const { answer } of sheet.answers.values()) {
    if (answer !== null && answer !== NOT_SURE) hands.push(answer as Taps | DropOutTaps);
  }
  const { tempo, beatsPerBar, counts } = grooveToTap(heardOn(sheet).truth) ?? UNKNOWN;
  const { read, of, spread, drift, curve, ...room } = roomTaps(hands, {
    kind: kind as Tapped,
    tempo,
    beatsPerBar,
    counts,
  });
  return {
    read,
    of,
    tempo: rounded(room.tempo),
    between: room.between && [tenth(room.between[0]), tenth(room.between[1])],
    tempi: evenly(room.tempi).map(tenth),
    unevenness: evenly(room.unevenness).map(tenth),
    spread: rounded(spread),
    drift: drift && { percent: tenth(drift.percent), error: tenth(drift.error) },
    curve:
      curve &&
      curve.map(({ beat, middle, low, high }) => ({
        beat,
        middle: tenth(middle),
        low: tenth(low),
        high: tenth(high),
      })),
  };
}

/** What one hand tapped; null where it cannot be read. */
export function wireHandTaps(answer: Taps | DropOutTaps): NonNullable<Wire.WireStudent['taps']> | null {
  const read = analyseTaps('taps' in answer ? answer.taps : answer);
  if (read === null) return null;
  const { tempo, unevenness, drift } = read;
  return { tempo: tenth(tempo), unevenness: tenth(unevenness * 100), drift: drift && tenth(drift.percent) };
}

/** So many of a sorted list, the first and the last among them. */
function evenly(sorted: readonly number[]): readonly number[] {
  const most = MOST_DRAWN;
  if (sorted.length <= most) return sorted;
  return Array.from(
    { length: most },
    (_, index) => sorted[Math.round((index * (sorted.length - 1)) / (most - 1))] ?? 0,
  );
}

function rounded(value: number | null): number | null {
  return value === null ? null : tenth(value);
}

function tenth(value: number): number {
  // Nothing drifts by minus nothing.
  return Math.round(value * 10) / 10 + 0;
}

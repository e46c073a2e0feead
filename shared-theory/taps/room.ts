import { analyseTaps, type TapAnalysis, type TempoChange } from './analyse.ts';
import { heldTempo, type TappedGroove } from './holding.ts';
import { levelAt } from './level.ts';
import type { DropOutTaps, Taps } from './taps.ts';
import { deviation, median, quantile, sum } from './statistics.ts';
import { silenceCurve, type CurvePoint } from './silence.ts';

/** What a room tapped, without anyone's name and in no order of hands. */
export type RoomTaps = {
  /** Hands whose taps could be read, of those that tapped. */
  readonly read: number;
  readonly of: number;
  /** Middle tempo in beats a minute, and the middle half of all; null where nobody's could be read. */
  readonly tempo: number | null;
  readonly between: readonly [number, number] | null;
  /** Each hand's own tempo, sorted. */
  readonly tempi: readonly number[];
  /** Each hand's unevenness in percent of an interval, sorted. */
  readonly unevenness: readonly number[];
  /** together: standard deviation of the room's taps around each hand's own middle, in milliseconds; else null. */
  readonly spread: number | null;
  /** How much faster the room got over eight beats, or in the silence than the groove, in percent with the standard error. */
  readonly drift: { readonly percent: number; readonly error: number } | null;
  /** drop-out: by beat from the silence on; else null. */
  readonly curve: readonly CurvePoint[] | null;
};

/** What was tapped along with. `tempo`: beats a minute of the groove, null where nobody named one. */
export type RoomAsked = Pick<TappedGroove, 'beatsPerBar'> & {
  readonly kind: 'tempo' | 'steadiness' | 'drop-out' | 'together';
  readonly tempo: number | null;
  /** Lawful counts as factors of the tempo. Default 1 alone. */
  readonly counts?: readonly number[];
};

/** What a room tapped as a whole. */
export function roomTaps(answers: readonly (Taps | DropOutTaps)[], asked: RoomAsked): RoomTaps {
  const { kind, tempo, beatsPerBar, counts = [1] } = asked;
  const groove = tempo === null ? null : { tempo, beatsPerBar, counts };
  const hands = answers.map((answer): DropOutTaps => ('taps' in answer ? answer : { taps: answer, silentFrom: null }));
  const read = hands.flatMap(({ taps }) => analyseTaps(taps) ?? []);
  const tempi = read.map((hand) => hand.tempo);
  const drifts = hands.flatMap(({ taps }) => {
    if (kind === 'drop-out' && groove !== null) return heldTempo(taps, groove) ?? [];
    return analyseTaps(taps)?.drift ?? [];
  });
  return {
    read: read.length,
    of: hands.length,
    tempo: read.length === 0 ? null : median(tempi),
    between: read.length === 0 ? null : [quantile(tempi, 1 / 4), quantile(tempi, 3 / 4)],
    tempi: sorted(tempi),
    unevenness: sorted(read.map((hand) => 100 * hand.unevenness)),
    spread: kind === 'together' ? spreadOf(read) : null,
    drift: together(drifts),
    curve: kind === 'drop-out' && groove !== null ? silenceCurve(hands, groove) : null,
  };
}

const sorted = (numbers: readonly number[]) => numbers.toSorted((one, other) => one - other);

/**
 * How far the taps lie from the room's middle beat, once each hand's own middle is taken away: when a hand's first tap fell is not known,
 * so only how it wanders against the others' tempo is. A hand at another level of the beat is held against its own.
 */
function spreadOf(read: readonly TapAnalysis[]): number | null {
  if (read.length === 0) return null;
  const tempo = median(read.map((hand) => hand.tempo));
  const strays = read.flatMap((hand) => {
    const { level, factor } = levelAt(hand.tempo, tempo, [1]);
    const period = level === 'other' ? hand.period : 60_000 / (tempo * factor);
    const parts = new Set(hand.beats.map(({ part }) => part));
    return [...parts].flatMap((part) => {
      const late = hand.beats.filter((beat) => beat.part === part).map(({ time, beat }) => time - beat * period);
      const own = median(late);
      return late.map((each) => each - own);
    });
  });
  return deviation(strays);
}

/** The changes of many hands as one, each weighing by how sure it is; its error also shows how far hands differ. */
function together(changes: readonly TempoChange[]): RoomTaps['drift'] {
  if (changes.length === 0) return null;
  // Beyond half a percent nobody's taps are sure: a hand like a machine's may not decide for all.
  const weights = changes.map(({ error }) => 1 / Math.max(error, 0.5) ** 2);
  const all = sum(weights);
  const weighed = (value: (change: TempoChange) => number) =>
    sum(changes.map((change, index) => (weights[index] ?? 0) * value(change))) / all;
  const percent = weighed((change) => change.percent);
  const within = sum(changes.map(({ error }, index) => ((weights[index] ?? 0) * error) ** 2)) / all ** 2;
  const between = changes.length < 2 ? 0 : weighed((change) => (change.percent - percent) ** 2) / (changes.length - 1);
  return { percent, error: Math.sqrt(Math.max(within, between)) };
}

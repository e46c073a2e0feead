import type { BassNote, KitStrike, Performance, SoundedNote } from '../perform.ts';

/** Performances one after the other, as one loop; their chords are counted on. */
export function inTurn(performances: readonly Performance[]): Performance {
  let seconds = 0;
  let chords = 0;
  const moved = performances.map((part) => {
    const [time, first] = [seconds, chords];
    const { notes, bars, kit = [], bass = [] } = part;
    seconds += part.seconds;
    chords += 1 + Math.max(0, ...[bars, notes, kit, bass].flatMap((each) => each.map(({ chord }) => chord)));
    const move = <T extends { readonly time: number; readonly chord: number }>(each: T): T => ({
      ...each,
      time: each.time + time,
      chord: each.chord + first,
    });
    return { bars: bars.map(move), notes: notes.map(move), kit: kit.map(move), bass: bass.map(move) };
  });
  const kit = moved.flatMap((part) => part.kit);
  const bass = moved.flatMap((part) => part.bass);
  return {
    seconds,
    loops: 1,
    bars: moved.flatMap(({ bars }) => bars),
    notes: moved.flatMap(({ notes }) => notes),
    ...(kit.length > 0 ? { kit } : {}),
    ...(bass.length > 0 ? { bass } : {}),
  };
}

/** One bar to be scheduled: `time` and `seconds` in the performance, the times of its sounds from the bar's own start. */
export type PerformedBar = {
  readonly time: number;
  readonly seconds: number;
  readonly chord: number;
  /** The guitar. */
  readonly notes: readonly SoundedNote[];
  readonly kit: readonly KitStrike[];
  readonly bass: readonly BassNote[];
};

/** A performance bar by bar. Every sound belongs to the bar in which it begins, and may ring into later ones. */
export function barsOf(performance: Performance): readonly PerformedBar[] {
  const starts = performance.bars.map((bar) => bar.time);
  const notes = byBar(performance.notes, starts);
  const kit = byBar(performance.kit ?? [], starts);
  const bass = byBar(performance.bass ?? [], starts);
  return performance.bars.map(({ time, chord }, index) => ({
    time,
    seconds: (starts[index + 1] ?? performance.seconds) - time,
    chord,
    notes: notes[index] ?? [],
    kit: kit[index] ?? [],
    bass: bass[index] ?? [],
  }));
}

/** Sounds in order of time, for each bar those that begin in it, timed from its start. */
function byBar<T extends { readonly time: number }>(sounds: readonly T[], starts: readonly number[]): readonly T[][] {
  const bars = starts.map((): T[] => []);
  let bar = 0;
  for (const sound of sounds) {
    // Times of sounds and bars are worked out along different ways: less than a microsecond is the same moment.
    while (bar + 1 < starts.length && sound.time >= (starts[bar + 1] ?? Infinity) - 1e-6) bar += 1;
    bars[bar]?.push({ ...sound, time: Math.max(0, sound.time - (starts[bar] ?? 0)) });
  }
  return bars;
}

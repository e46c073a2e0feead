import { chordPitchClasses, chordSymbol, SUFFIXES, type Chord } from '../../shared-theory/chords.ts';
import { solveAnew } from '../../shared-theory/neck/solve.ts';
import { TUNINGS, type TuningId } from '../../shared-theory/neck/tunings.ts';
import { fiveRuns, middle, type Bench } from './row.ts';

const MOST_MILLISECONDS = 5;
const LEAST_TIMES_FASTER = 4;

const ROOTS = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'] as const;
const GUITARS = (Object.keys(TUNINGS) as TuningId[]).filter((id) => TUNINGS[id].kind === 'guitar');

/** Frets of the neck and those that a hand covers. */
const HIGHEST_FRET = 12;
const HAND_FRETS = 4;

/** Runs of each chord while the slowest is looked for, and how many are looked at again. */
const RUNS = 3;
const CANDIDATES = 100;

type Problem = { readonly chord: Chord; readonly tuning: TuningId };

/** Every chord over its root, and over a note a whole step below, which is mostly foreign to it. */
function problems(): readonly Problem[] {
  return GUITARS.flatMap((tuning) =>
    SUFFIXES.flatMap(({ quality, addition }) =>
      ROOTS.flatMap((root, index): readonly Problem[] => {
        const chord: Chord = { root, quality, ...(addition === null ? {} : { addition }) };
        const bass = ROOTS[(index + 10) % 12] ?? root;
        return [
          { chord, tuning },
          { chord: { ...chord, bass }, tuning },
        ];
      }),
    ),
  );
}

function milliseconds(run: () => unknown): number {
  const from = performance.now();
  run();
  return performance.now() - from;
}

function shortestTime({ chord, tuning }: Problem): number {
  return Math.min(...Array.from({ length: RUNS }, () => milliseconds(() => solveAnew(chord, { tuning }))));
}

function slowestOf(some: readonly Problem[], count: number): readonly Problem[] {
  return some
    .map((problem) => ({ problem, time: shortestTime(problem) }))
    .toSorted((one, other) => other.time - one.time)
    .slice(0, count)
    .map(({ problem }) => problem);
}

/** The problem that takes longest, looked for twice: the first time warms up, and a pause of the machine picks none. */
function slowest(): Problem {
  const [worst] = slowestOf(slowestOf(problems(), CANDIDATES), 1);
  if (!worst) throw new RangeError('No chord was solved.');
  return worst;
}

/** Tries every way to put four frets, open strings and strings left out on the neck, and counts those that sound the chord. */
function tryEverything({ chord, tuning }: Problem): number {
  const open: readonly number[] = TUNINGS[tuning].strings;
  const wanted = chordPitchClasses(chord).reduce((bits, sound) => bits | (1 << sound), 0);
  let found = 0;
  const next = (string: number, place: number, heard: number): void => {
    const note = open[string];
    if (note === undefined) {
      if (heard === wanted) found += 1;
      return;
    }
    next(string + 1, place, heard);
    next(string + 1, place, heard | (1 << (note % 12)));
    for (let fret = place; fret < place + HAND_FRETS; fret += 1)
      next(string + 1, place, heard | (1 << ((note + fret) % 12)));
  };
  for (let place = 1; place <= HIGHEST_FRET; place += 1) next(0, place, 0);
  return found;
}

let found: Problem | null = null;

function worstProblem(): Problem {
  found ??= slowest();
  return found;
}

/** The chord and tuning that take longest to solve, without what was solved before. */
const solvingWorstChord: Bench = async () => {
  const worst = worstProblem();
  const { times } = await fiveRuns(() => solveAnew(worst.chord, { tuning: worst.tuning }));
  const { median, spread } = middle(times);
  return {
    name: 'solving the worst chord',
    value: median,
    unit: 'ms',
    baseline: null,
    against: null,
    ratio: null,
    budget: `at most ${MOST_MILLISECONDS} ms`,
    within: median <= MOST_MILLISECONDS,
    spread,
  };
};

/** The same against a bare search of the neck, in one run. */
const solvingAgainstSearch: Bench = async () => {
  const worst = worstProblem();
  const { times, baselines } = await fiveRuns(
    () => solveAnew(worst.chord, { tuning: worst.tuning }),
    () => tryEverything(worst),
  );
  const { median: ratio, spread } = middle(times.map((time, run) => (baselines[run] ?? 0) / time));
  return {
    name: 'worst chord, beside a search',
    value: middle(times).median,
    unit: 'ms',
    baseline: middle(baselines).median,
    against: `trying every placement of ${chordSymbol(worst.chord)}, ${worst.tuning}`,
    ratio,
    budget: `at least ${LEAST_TIMES_FASTER} times faster`,
    within: ratio >= LEAST_TIMES_FASTER,
    spread,
  };
};

export const neckBenches: readonly Bench[] = [solvingWorstChord, solvingAgainstSearch];

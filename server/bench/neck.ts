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

/** The problem that takes longest, by the shorter of two runs so that a pause of the machine picks none. */
function slowest(): Problem {
  const timed = problems().map((problem) => {
    const run = () => solveAnew(problem.chord, { tuning: problem.tuning });
    return { problem, time: Math.min(milliseconds(run), milliseconds(run)) };
  });
  return timed.reduce((worst, each) => (each.time > worst.time ? each : worst)).problem;
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

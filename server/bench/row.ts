/** One measured row. `baseline` and `ratio` are null where there is nothing to measure against in the same run. */
export type BenchRow = {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** What the value is held against, in the same unit, and its name. */
  readonly baseline: number | null;
  readonly against: string | null;
  readonly ratio: number | null;
  /** In words: `at least 20 times`. */
  readonly budget: string;
  readonly within: boolean;
  /** Lowest and highest of the runs: ratios where there is a ratio, values otherwise. */
  readonly spread: readonly [number, number];
};

/** One measurement; many may follow in the list of rows. */
export type Bench = () => BenchRow | Promise<BenchRow>;

const RUNS = 5;

/** Median, lowest and highest. Throws `RangeError` for no values. */
export function middle(values: readonly number[]): { median: number; spread: readonly [number, number] } {
  const sorted = values.toSorted((one, other) => one - other);
  const median = sorted[Math.floor(sorted.length / 2)];
  const lowest = sorted[0];
  const highest = sorted.at(-1);
  if (median === undefined || lowest === undefined || highest === undefined)
    throw new RangeError('Nothing was measured.');
  return { median, spread: [lowest, highest] };
}

/** Milliseconds of each of five runs after one to warm up; `other` runs in between each time, where there is a baseline. */
export async function fiveRuns(
  run: () => unknown,
  other?: () => unknown,
): Promise<{ readonly times: readonly number[]; readonly baselines: readonly number[] }> {
  const times: number[] = [];
  const baselines: number[] = [];
  await run();
  await other?.();
  for (let index = 0; index < RUNS; index++) {
    times.push(await milliseconds(run));
    if (other) baselines.push(await milliseconds(other));
  }
  return { times, baselines };
}

async function milliseconds(run: () => unknown): Promise<number> {
  const from = performance.now();
  await run();
  return performance.now() - from;
}

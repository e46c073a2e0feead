/** Root mean square of the samples from one index to another. */
function energy(samples: Float32Array, from: number, to: number): number {
  let sum = 0;
  for (let n = from; n < to; n++) sum += (samples[n] ?? 0) ** 2;
  return Math.sqrt(sum / Math.max(1, to - from));
}

/** What is left under about a kilohertz and a half: strings, without the pick's noise, which differs from stroke to stroke. */
export function smoothed(samples: Float32Array): Float32Array {
  return runningMean(runningMean(samples));
}

function runningMean(samples: Float32Array): Float32Array {
  const half = 8;
  const out = new Float32Array(samples.length);
  let sum = 0;
  for (let n = -half; n < samples.length; n++) {
    sum += (samples[n + half] ?? 0) - (samples[n - half - 1] ?? 0);
    if (n >= 0) out[n] = sum / (2 * half + 1);
  }
  return out;
}

/** How a stretch of `expected` is found again in `heard`. */
export type Match = {
  /** Samples by which it lies later in `heard` than in `expected`. */
  readonly lag: number;
  /** Its factor there. */
  readonly gain: number;
  /** What is left over when the expected is taken away, as a share of it: 0 for the very same, about 1 for something else. */
  readonly rest: number;
};

/** The lag between two bounds at which `heard` is likest to `expected` from one index to another. */
export function bestMatch(
  heard: Float32Array,
  expected: Float32Array,
  [from, to]: readonly [number, number],
  [lowest, highest]: readonly [number, number],
): Match {
  const own = energy(expected, from, to);
  let best: Match = { lag: lowest, gain: 0, rest: Infinity };
  for (let lag = lowest; lag <= highest; lag++) {
    let product = 0;
    for (let n = from; n < to; n++) product += (heard[n + lag] ?? 0) * (expected[n] ?? 0);
    const gain = product / ((to - from) * own ** 2);
    // Of all factors this one leaves the least over.
    const left = energy(heard, from + lag, to + lag) ** 2 - (gain * own) ** 2;
    const rest = gain > 0 ? Math.sqrt(Math.max(0, left)) / (gain * own) : Infinity;
    if (rest < best.rest) best = { lag, gain, rest };
  }
  return best;
}

/** The earliest lag at which not more than `most` is left over, at its best within the next millisecond or two; null where there is none. */
export function firstMatch(
  heard: Float32Array,
  expected: Float32Array,
  stretch: readonly [number, number],
  [lowest, highest]: readonly [number, number],
  most: number,
): Match | null {
  for (let lag = lowest; lag <= highest; lag++) {
    if (bestMatch(heard, expected, stretch, [lag, lag]).rest <= most)
      return bestMatch(heard, expected, stretch, [lag, lag + 80]);
  }
  return null;
}

/** Index of the first sample from `from` on over a level; −1 where there is none. */
export function firstOver(samples: Float32Array, level: number, from = 0): number {
  for (let n = from; n < samples.length; n++) if (Math.abs(samples[n] ?? 0) > level) return n;
  return -1;
}

/** Index of the last sample over a level; −1 where there is none. */
export function lastOver(samples: Float32Array, level: number): number {
  return samples.findLastIndex((sample) => Math.abs(sample) > level);
}

/** The longest stretch under a level between two indices, in samples. */
export function longestSilence(samples: Float32Array, level: number, from: number, to: number): number {
  let longest = 0;
  let since = from;
  for (let n = from; n < to; n++) {
    if (Math.abs(samples[n] ?? 0) <= level) continue;
    longest = Math.max(longest, n - since);
    since = n;
  }
  return Math.max(longest, to - since);
}

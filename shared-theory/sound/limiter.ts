/** Highest sample of finished sound: a tenth of a decibel under −1 dBFS. */
const CEILING = 10 ** (-1.1 / 20);

/** The gain begins to fall so long before a peak: less than a millisecond, so that nothing is changed before the stroke that peaks. */
const LOOK_AHEAD_SECONDS = 0.0008;
const RELEASE_SECONDS = 0.08;

/**
 * Holds peaks under −1 dBFS, in place: the gain falls within the look-ahead before a peak and recovers after it, without a step. What
 * has no such peak is left as it is.
 */
export function limit(samples: Float32Array, sampleRate: number): void {
  if (!samples.some((sample) => Math.abs(sample) > CEILING)) return;
  const window = Math.max(2, Math.round(LOOK_AHEAD_SECONDS * sampleRate));
  const gains = lowestAhead(samples, window);
  const recover = Math.exp(-1 / (RELEASE_SECONDS * sampleRate));
  for (let n = 1; n < gains.length; n++) {
    gains[n] = Math.min(gains[n] ?? 1, 1 - (1 - (gains[n - 1] ?? 1)) * recover);
  }
  // The mean of a window makes a slope of every step, and reaches the peak's own gain where the peak is.
  const start = gains[0] ?? 1;
  let sum = window * start;
  for (let n = 0; n < samples.length; n++) {
    sum += (gains[n] ?? 1) - (gains[n - window] ?? start);
    samples[n] = (samples[n] ?? 0) * Math.min(1, sum / window);
  }
}

/** For each sample the lowest gain that it or one of the next `window − 1` needs to stay under the ceiling. */
function lowestAhead(samples: Float32Array, window: number): Float64Array {
  const gains = new Float64Array(samples.length).fill(1);
  for (let n = 0; n < samples.length; n++) {
    const needed = CEILING / Math.abs(samples[n] ?? 0);
    if (needed >= 1) continue;
    for (let back = Math.max(0, n - window + 1); back <= n; back++) {
      gains[back] = Math.min(gains[back] ?? 1, needed);
    }
  }
  return gains;
}

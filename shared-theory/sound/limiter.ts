/** Highest sample of finished sound. */
const CEILING = 0.97;

const ATTACK_SECONDS = 0.002;
const RELEASE_SECONDS = 0.08;

/** Holds peaks under `CEILING`, in place: the gain falls a moment before a peak and recovers after it, without a corner. */
export function limit(samples: Float32Array, sampleRate: number): void {
  const over = new Float32Array(samples.length);
  let any = false;
  for (let n = 0; n < samples.length; n++) {
    const excess = Math.abs(samples[n] ?? 0) / CEILING;
    over[n] = excess;
    any ||= excess > 1;
  }
  if (!any) return;
  const fall = Math.exp(-1 / (ATTACK_SECONDS * sampleRate));
  const recover = Math.exp(-1 / (RELEASE_SECONDS * sampleRate));
  let held = 0;
  for (let n = over.length - 1; n >= 0; n--) {
    held = Math.max(over[n] ?? 0, held * fall);
    over[n] = held;
  }
  held = 0;
  for (let n = 0; n < over.length; n++) {
    held = Math.max(over[n] ?? 0, held * recover);
    if (held > 1) samples[n] = (samples[n] ?? 0) / held;
  }
}

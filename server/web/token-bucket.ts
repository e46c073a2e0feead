/** Lets through `burst` at once and `perSecond` on the long run. `now` gives monotonic milliseconds. */
export function tokenBucket(
  perSecond: number,
  burst: number,
  now: () => number = () => performance.now(),
): () => boolean {
  let tokens = burst;
  let last = now();
  return () => {
    const time = now();
    tokens = Math.min(burst, tokens + ((time - last) / 1000) * perSecond);
    last = time;
    if (tokens < 1) return false;
    tokens -= 1;
    return true;
  };
}

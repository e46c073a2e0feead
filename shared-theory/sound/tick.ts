/** Peak of a tick on one, and of the others: with the voice that counts over them nearly as loud as the loop that they lead into. */
const LEVELS = { accented: 0.5, other: 0.34 } as const;

/** A woody tick of the count-in: the first beat of the bar is higher and louder. Mono samples, 80 ms. */
export function countInTick(accented: boolean, sampleRate: number): Float32Array {
  const out = new Float32Array(Math.round(0.08 * sampleRate));
  const base = accented ? 1480 : 1110;
  const level = LEVELS[accented ? 'accented' : 'other'];
  // A struck bar of wood: its second mode lies about 2.76 times above the first and dies faster (Fletcher and Rossing).
  const modes = [
    { hertz: base, share: 0.75, seconds: 0.055 },
    { hertz: base * 2.756, share: 0.25, seconds: 0.02 },
  ];
  for (let n = 0; n < out.length; n++) {
    const t = n / sampleRate;
    const rise = Math.min(1, t / 0.0008);
    const sum = modes.reduce(
      (total, { hertz, share, seconds }) =>
        total + share * 10 ** ((-3 * t) / seconds) * Math.sin(2 * Math.PI * hertz * t),
      0,
    );
    out[n] = level * rise * sum;
  }
  return out;
}

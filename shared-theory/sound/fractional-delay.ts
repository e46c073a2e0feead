/** A string loop's delay: whole samples in a line, and an all-pass for the rest. */
export type LoopDelay = {
  /** Samples held in the delay line. */
  readonly line: number;
  /** Coefficients a1, a2, a3 of a third-order all-pass. */
  readonly allPass: readonly [number, number, number];
};

/** Delay of the damping filter in the loop: it is symmetric, so one sample at every frequency. */
const DAMPING_DELAY = 1;

/** The all-pass is flattest, and stable, where its delay lies within half a sample of its order. */
const ALL_PASS_LEAST = 2.5;

/**
 * Splits one period of a note into line, damping filter and all-pass, so that the loop resonates at `frequency` exactly.
 * Thiran's maximally flat all-pass (Laakso, Välimäki, Karjalainen and Laine, "Splitting the unit delay", 1996).
 * @throws {RangeError} where a period is under eight samples
 */
export function loopDelay(frequency: number, sampleRate: number): LoopDelay {
  const period = sampleRate / frequency;
  if (!(period >= 8)) {
    throw new RangeError(
      `${frequency} Hz is too high for a string at ${sampleRate} Hz; the highest is ${sampleRate / 8}`,
    );
  }
  const line = Math.floor(period - DAMPING_DELAY - ALL_PASS_LEAST);
  let wanted = period - DAMPING_DELAY - line;
  const exact = wanted;
  // The all-pass keeps its nominal delay at zero frequency; two corrections make it exact at the fundamental.
  for (let pass = 0; pass < 2; pass++) wanted += exact - phaseDelay(allPass(wanted), (2 * Math.PI) / period);
  return { line, allPass: allPass(wanted) };
}

function allPass(delay: number): readonly [number, number, number] {
  const a1 = (-3 * (delay - 3)) / (delay + 1);
  const a2 = (3 * (delay - 3) * (delay - 2)) / ((delay + 1) * (delay + 2));
  const a3 = (-(delay - 3) * (delay - 2) * (delay - 1)) / ((delay + 1) * (delay + 2) * (delay + 3));
  return [a1, a2, a3];
}

/** Phase delay in samples of the all-pass at `omega` radians a sample. */
function phaseDelay([a1, a2, a3]: readonly [number, number, number], omega: number): number {
  const real = 1 + a1 * Math.cos(omega) + a2 * Math.cos(2 * omega) + a3 * Math.cos(3 * omega);
  const imaginary = -(a1 * Math.sin(omega) + a2 * Math.sin(2 * omega) + a3 * Math.sin(3 * omega));
  return 3 + (2 * Math.atan2(imaginary, real)) / omega;
}

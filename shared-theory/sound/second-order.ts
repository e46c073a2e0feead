/** Coefficients of one second-order section, a0 = 1: y = b0·x + b1·x′ + b2·x″ − a1·y′ − a2·y″. */
export type SecondOrder = {
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly a1: number;
  readonly a2: number;
};

/** What the sections below share: R. Bristow-Johnson's audio equaliser formulas. */
function shape(hertz: number, q: number, sampleRate: number): { readonly cosine: number; readonly alpha: number } {
  // Far up, a corner past the reach of the rate stays just within it.
  const omega = (2 * Math.PI * Math.min(hertz, sampleRate * 0.45)) / sampleRate;
  return { cosine: Math.cos(omega), alpha: Math.sin(omega) / (2 * q) };
}

/** Second-order low-pass: 12 dB an octave above `hertz`, `q` at the corner. */
export function lowPass(hertz: number, q: number, sampleRate: number): SecondOrder {
  const { cosine, alpha } = shape(hertz, q, sampleRate);
  const edge = (1 - cosine) / 2 / (1 + alpha);
  return { b0: edge, b1: 2 * edge, b2: edge, a1: (-2 * cosine) / (1 + alpha), a2: (1 - alpha) / (1 + alpha) };
}

/** Second-order high-pass: 12 dB an octave below `hertz`, nothing of direct current. */
export function highPass(hertz: number, q: number, sampleRate: number): SecondOrder {
  const { cosine, alpha } = shape(hertz, q, sampleRate);
  const edge = (1 + cosine) / 2 / (1 + alpha);
  return { b0: edge, b1: -2 * edge, b2: edge, a1: (-2 * cosine) / (1 + alpha), a2: (1 - alpha) / (1 + alpha) };
}

/** Band-pass of gain one at its centre. */
export function bandPass(hertz: number, q: number, sampleRate: number): SecondOrder {
  const { cosine, alpha } = shape(hertz, q, sampleRate);
  const b0 = alpha / (1 + alpha);
  return { b0, b1: 0, b2: -b0, a1: (-2 * cosine) / (1 + alpha), a2: (1 - alpha) / (1 + alpha) };
}

/** Adds `gain` times the section's output of `input` to `out`, which may be `input`. */
export function addFiltered(
  out: Float64Array,
  input: Float64Array,
  { b0, b1, b2, a1, a2 }: SecondOrder,
  gain: number,
): void {
  let x1 = 0;
  let x2 = 0;
  let y1 = 0;
  let y2 = 0;
  for (let n = 0; n < out.length; n++) {
    const x = input[n] ?? 0;
    const y = b0 * x + b1 * x1 + b2 * x2 - a1 * y1 - a2 * y2;
    x2 = x1;
    x1 = x;
    y2 = y1;
    y1 = y;
    out[n] = (out[n] ?? 0) + gain * y;
  }
}

/** The samples after the section. */
export function filtered(input: Float64Array, section: SecondOrder): Float64Array {
  const out = new Float64Array(input.length);
  addFiltered(out, input, section, 1);
  return out;
}

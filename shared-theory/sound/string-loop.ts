import type { LoopDelay } from './fractional-delay.ts';

/** A string's loop: its delay, and the damping filter for one trip round it. */
export type Loop = LoopDelay & { readonly side: number; readonly middle: number };

/** Under this, far below the softest sample of a file, a string is still: the loop stops before it runs on tiny numbers. */
const STILL = 1e-9;

/**
 * Runs a string: line, damping and all-pass, driven by `drive` times `gain`. Adds the string's motion to `out`, and stops
 * where the drive is over and a whole trip round the loop was still.
 */
export function addRinging(out: Float64Array, drive: Float64Array, gain: number, loop: Loop): void {
  const {
    line,
    allPass: [a1, a2, a3],
    side,
    middle,
  } = loop;
  const delay = new Float64Array(line);
  let at = 0;
  let d1 = 0;
  let d2 = 0;
  let x1 = 0;
  let x2 = 0;
  let x3 = 0;
  let y1 = 0;
  let y2 = 0;
  let y3 = 0;
  let loudest = 0;
  for (let n = 0; n < out.length; n++) {
    const d0 = delay[at] ?? 0;
    const x0 = side * (d0 + d2) + middle * d1;
    d2 = d1;
    d1 = d0;
    const y0 = a3 * (x0 - y3) + a2 * (x1 - y2) + a1 * (x2 - y1) + x3;
    x3 = x2;
    x2 = x1;
    x1 = x0;
    y3 = y2;
    y2 = y1;
    y1 = y0;
    const value = n < drive.length ? y0 + gain * (drive[n] ?? 0) : y0;
    delay[at] = value;
    if (value > loudest) loudest = value;
    else if (-value > loudest) loudest = -value;
    out[n] = (out[n] ?? 0) + value;
    at += 1;
    if (at === line) {
      if (loudest < STILL && n >= drive.length) return;
      at = 0;
      loudest = 0;
    }
  }
}

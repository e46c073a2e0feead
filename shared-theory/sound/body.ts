/** One mode of the guitar's body: centre in hertz, quality factor, gain beside the direct sound. */
type Mode = { readonly hertz: number; readonly q: number; readonly gain: number };

/**
 * Air, top and back of a steel-string guitar, about where measured instruments have them (Fletcher and Rossing, "The Physics
 * of Musical Instruments"). Broad and gentle, so that no note of the low strings sticks out.
 */
const MODES: readonly Mode[] = [
  { hertz: 104, q: 3.5, gain: 0.5 },
  { hertz: 205, q: 4.5, gain: 0.45 },
  { hertz: 400, q: 5, gain: 0.3 },
  { hertz: 1150, q: 2, gain: 0.25 },
];

/** Adds the body to a string's sound, in place: the string itself and its modes beside it, no delay. */
export function addBody(samples: Float64Array, sampleRate: number): void {
  const direct = samples.slice();
  for (const { hertz, q, gain } of MODES) {
    // Band-pass with unit peak gain (R. Bristow-Johnson's audio equaliser formulas).
    const omega = (2 * Math.PI * hertz) / sampleRate;
    const alpha = Math.sin(omega) / (2 * q);
    const b0 = (gain * alpha) / (1 + alpha);
    const a1 = (-2 * Math.cos(omega)) / (1 + alpha);
    const a2 = (1 - alpha) / (1 + alpha);
    let x1 = 0;
    let x2 = 0;
    let y1 = 0;
    let y2 = 0;
    for (let n = 0; n < samples.length; n++) {
      const x = direct[n] ?? 0;
      const y = b0 * (x - x2) - a1 * y1 - a2 * y2;
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      samples[n] = (samples[n] ?? 0) + y;
    }
  }
}

/** Coefficients of one second-order section, a0 = 1. */
type Section = { readonly b: readonly [number, number, number]; readonly a: readonly [number, number] };

/** Seconds of a gating block and the step between blocks (Rec. ITU-R BS.1770-4, annex 1). */
const BLOCK_SECONDS = 0.4;
const STEP_SECONDS = 0.1;
const ABSOLUTE_GATE = -70;
const RELATIVE_GATE = -10;

/**
 * The K-weighting of Rec. ITU-R BS.1770-4 at any sample rate: a high shelf for the head and a high-pass. The analogue
 * prototypes give the table of the recommendation at 48 kHz.
 */
export function kWeighting(sampleRate: number): readonly [shelf: Section, pass: Section] {
  const shelfGain = 10 ** (3.999843853973347 / 20);
  const shelfK = Math.tan((Math.PI * 1681.974450955533) / sampleRate);
  const shelfQ = 0.7071752369554196;
  const band = shelfGain ** 0.4996667741545416;
  const shelf0 = 1 + shelfK / shelfQ + shelfK * shelfK;
  const shelf: Section = {
    b: [
      (shelfGain + (band * shelfK) / shelfQ + shelfK * shelfK) / shelf0,
      (2 * (shelfK * shelfK - shelfGain)) / shelf0,
      (shelfGain - (band * shelfK) / shelfQ + shelfK * shelfK) / shelf0,
    ],
    a: [(2 * (shelfK * shelfK - 1)) / shelf0, (1 - shelfK / shelfQ + shelfK * shelfK) / shelf0],
  };
  const passK = Math.tan((Math.PI * 38.13547087602444) / sampleRate);
  const passQ = 0.5003270373238773;
  const pass0 = 1 + passK / passQ + passK * passK;
  const pass: Section = {
    b: [1, -2, 1],
    a: [(2 * (passK * passK - 1)) / pass0, (1 - passK / passQ + passK * passK) / pass0],
  };
  return [shelf, pass];
}

/** The samples as the ear weighs them. */
export function kWeighted(samples: Float32Array | Float64Array, sampleRate: number): Float64Array {
  const out = new Float64Array(samples);
  for (const { b, a } of kWeighting(sampleRate)) {
    let x1 = 0;
    let x2 = 0;
    let y1 = 0;
    let y2 = 0;
    for (let n = 0; n < out.length; n++) {
      const x = out[n] ?? 0;
      const y = b[0] * x + b[1] * x1 + b[2] * x2 - a[0] * y1 - a[1] * y2;
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      out[n] = y;
    }
  }
  return out;
}

/** Integrated loudness in LUFS of one channel, gated as Rec. ITU-R BS.1770-4 says; −Infinity for silence. */
export function integratedLoudness(samples: Float32Array | Float64Array, sampleRate: number): number {
  const weighted = kWeighted(samples, sampleRate);
  const block = Math.round(BLOCK_SECONDS * sampleRate);
  const step = Math.round(STEP_SECONDS * sampleRate);
  const powers: number[] = [];
  for (let from = 0; from === 0 || from + block <= weighted.length; from += step) {
    powers.push(meanSquare(weighted, from, Math.min(from + block, weighted.length)));
  }
  const loud = powers.filter((power) => toLufs(power) > ABSOLUTE_GATE);
  const gate = toLufs(mean(loud)) + RELATIVE_GATE;
  return toLufs(mean(loud.filter((power) => toLufs(power) > gate)));
}

/** Mean square of `samples` from one index to another. */
export function meanSquare(samples: Float32Array | Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let n = from; n < to; n++) sum += (samples[n] ?? 0) ** 2;
  return to > from ? sum / (to - from) : 0;
}

function toLufs(power: number): number {
  return -0.691 + 10 * Math.log10(power);
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}

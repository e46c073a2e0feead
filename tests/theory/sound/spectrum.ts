/** Bins of a Blackman-Harris main lobe on either side of its line; beyond them the window leaks under −92 dB. */
export const LOBE_BINS = 4;

/** The four terms of the window (F. J. Harris, "On the use of windows for harmonic analysis", Proceedings of the IEEE 66, 1978). */
const WINDOW = [0.35875, -0.48829, 0.14128, -0.01168] as const;

/**
 * Amplitudes of `size` samples from `first` on, from 0 hertz in steps of `sampleRate / size`, under a Blackman-Harris window.
 * `size` is a power of two.
 */
export function spectrum(samples: Float32Array, first: number, size: number): Float64Array {
  const real = new Float64Array(size);
  const imaginary = new Float64Array(size);
  for (let n = 0; n < size; n++) {
    const weight = WINDOW.reduce((sum, term, order) => sum + term * Math.cos((2 * Math.PI * order * n) / size), 0);
    real[reversed(n, size)] = (samples[first + n] ?? 0) * weight;
  }
  // J. W. Cooley and J. W. Tukey's transform by halves, in place.
  for (let half = 1; half < size; half *= 2) {
    for (let k = 0; k < half; k++) {
      const c = Math.cos((Math.PI * k) / half);
      const s = -Math.sin((Math.PI * k) / half);
      for (let low = k; low < size; low += 2 * half) {
        const high = low + half;
        const x = c * (real[high] ?? 0) - s * (imaginary[high] ?? 0);
        const y = c * (imaginary[high] ?? 0) + s * (real[high] ?? 0);
        real[high] = (real[low] ?? 0) - x;
        imaginary[high] = (imaginary[low] ?? 0) - y;
        real[low] = (real[low] ?? 0) + x;
        imaginary[low] = (imaginary[low] ?? 0) + y;
      }
    }
  }
  const scale = 2 / (size * WINDOW[0]);
  return Float64Array.from({ length: size / 2 }, (_, bin) => scale * Math.hypot(real[bin] ?? 0, imaginary[bin] ?? 0));
}

function reversed(index: number, size: number): number {
  let out = 0;
  for (let bit = 1, mirror = size / 2; bit < size; bit *= 2, mirror /= 2) if (index & bit) out += mirror;
  return out;
}

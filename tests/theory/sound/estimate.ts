import { midiFrequency } from '../../../shared-theory/pitch.ts';

/** Root mean square of samples between two times in seconds. */
export function level(samples: Float32Array, sampleRate: number, from: number, to: number): number {
  let sum = 0;
  const first = Math.round(from * sampleRate);
  const last = Math.min(samples.length, Math.round(to * sampleRate));
  for (let n = first; n < last; n++) sum += (samples[n] ?? 0) ** 2;
  return Math.sqrt(sum / (last - first));
}

export function decibels(ratio: number): number {
  return 20 * Math.log10(ratio);
}

export function peak(samples: Float32Array): number {
  return samples.reduce((highest, sample) => Math.max(highest, Math.abs(sample)), 0);
}

/** Amplitude and phase of one frequency in a Hann window. */
export function partial(samples: Float32Array, sampleRate: number, frequency: number, from: number, seconds: number) {
  const first = Math.round(from * sampleRate);
  const length = Math.round(seconds * sampleRate);
  let real = 0;
  let imaginary = 0;
  for (let n = 0; n < length; n++) {
    const windowed = (samples[first + n] ?? 0) * (0.5 - 0.5 * Math.cos((2 * Math.PI * n) / length));
    const angle = (2 * Math.PI * frequency * (first + n)) / sampleRate;
    real += windowed * Math.cos(angle);
    imaginary -= windowed * Math.sin(angle);
  }
  return { amplitude: (4 * Math.hypot(real, imaginary)) / length, phase: Math.atan2(imaginary, real) };
}

/**
 * Amplitude of one frequency in a four-term Blackman-Harris window, whose side lobes lie 92 dB down (Harris, "On the use of
 * windows for harmonic analysis", 1978): for what is faint beside strong partials.
 */
export function faintAmplitude(
  samples: Float32Array,
  sampleRate: number,
  frequency: number,
  from: number,
  seconds: number,
): number {
  const first = Math.round(from * sampleRate);
  const length = Math.round(seconds * sampleRate);
  let real = 0;
  let imaginary = 0;
  for (let n = 0; n < length; n++) {
    const turn = (2 * Math.PI * n) / length;
    const window = 0.35875 - 0.48829 * Math.cos(turn) + 0.14128 * Math.cos(2 * turn) - 0.01168 * Math.cos(3 * turn);
    const angle = (2 * Math.PI * frequency * n) / sampleRate;
    real += (samples[first + n] ?? 0) * window * Math.cos(angle);
    imaginary -= (samples[first + n] ?? 0) * window * Math.sin(angle);
  }
  return (2 * Math.hypot(real, imaginary)) / (0.35875 * length);
}

/** Cents off by the fundamental's phase over 0.4 s: exact for a steady pitch within a semitone or two. */
export function centsByPhase(samples: Float32Array, sampleRate: number, midi: number): number {
  const frequency = midiFrequency(midi);
  const hop = Math.round(0.4 * sampleRate) / sampleRate;
  const early = partial(samples, sampleRate, frequency, 0.1, 0.3).phase;
  const late = partial(samples, sampleRate, frequency, 0.1 + hop, 0.3).phase;
  const turned = late - early - 2 * Math.PI * Math.round((late - early) / (2 * Math.PI));
  return 1200 * Math.log2(1 + turned / (2 * Math.PI * hop * frequency));
}

/** Cents off by autocorrelation of all partials together, at a lag of about a quarter of a second. */
export function centsByAutocorrelation(samples: Float32Array, sampleRate: number, midi: number): number {
  const frequency = midiFrequency(midi);
  const periods = Math.max(1, Math.round(0.25 * frequency));
  const near = Math.round((periods * sampleRate) / frequency);
  const reach = Math.ceil(sampleRate / frequency / 4);
  const from = Math.round(0.1 * sampleRate);
  const length = Math.round(0.3 * sampleRate);
  const likeness = (lag: number) => {
    let product = 0;
    let energy = 0;
    for (let n = from; n < from + length; n++) {
      product += (samples[n] ?? 0) * (samples[n + lag] ?? 0);
      energy += (samples[n + lag] ?? 0) ** 2;
    }
    return product / Math.sqrt(energy);
  };
  const lags = Array.from({ length: 2 * reach + 1 }, (_, index) => near - reach + index);
  const likenesses = lags.map(likeness);
  const best = likenesses.indexOf(Math.max(...likenesses.slice(1, -1)));
  const [before = 0, at = 0, after = 0] = likenesses.slice(best - 1, best + 2);
  const lag = (lags[best] ?? near) + (0.5 * (before - after)) / (before - 2 * at + after);
  return 1200 * Math.log2((periods * sampleRate) / lag / frequency);
}

/** Samples between two frequencies: fourth-order Butterworth at each end (R. Bristow-Johnson's audio equaliser formulas). */
export function band(samples: Float32Array, sampleRate: number, low: number, high: number): Float32Array {
  // Quality factors of the two sections of a fourth-order Butterworth filter.
  return [0.5412, 1.3066].reduce(
    (filtered, q) => section(section(filtered, sampleRate, low, q, 'high-pass'), sampleRate, high, q, 'low-pass'),
    samples,
  );
}

function section(
  samples: Float32Array,
  sampleRate: number,
  hertz: number,
  q: number,
  kind: 'low-pass' | 'high-pass',
): Float32Array {
  const omega = (2 * Math.PI * hertz) / sampleRate;
  const alpha = Math.sin(omega) / (2 * q);
  const turn = kind === 'low-pass' ? -1 : 1;
  const edge = (1 + turn * Math.cos(omega)) / 2 / (1 + alpha);
  const a1 = (-2 * Math.cos(omega)) / (1 + alpha);
  const a2 = (1 - alpha) / (1 + alpha);
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  return samples.map((now) => {
    const out = edge * (now - 2 * turn * x1 + x2) - a1 * y1 - a2 * y2;
    x2 = x1;
    x1 = now;
    y2 = y1;
    y1 = out;
    return out;
  });
}

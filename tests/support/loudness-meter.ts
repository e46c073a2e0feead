import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

type Exports = {
  readonly memory: WebAssembly.Memory;
  readonly __wbindgen_malloc: (bytes: number) => number;
  readonly ebur128_integrated_mono: (rate: number, at: number, count: number) => number;
  readonly ebur128_true_peak_mono: (rate: number, at: number, count: number) => number;
};

/** Loudness and peaks as another program measures them. */
export type LoudnessMeter = {
  /** Integrated loudness of one channel, LUFS. */
  readonly integrated: (samples: Float32Array, sampleRate: number) => number;
  /** Highest level between and on samples, decibels of full scale. */
  readonly truePeak: (samples: Float32Array, sampleRate: number) => number;
};

/**
 * The meter of ebur128-wasm 3.0.0 (a translation of the C library libebur128). Its own module is written for bundlers alone,
 * so the program inside is started here; what it would report errors with throws.
 */
export async function loudnessMeter(): Promise<LoudnessMeter> {
  const require = createRequire(import.meta.url);
  const file = require.resolve('ebur128-wasm/ebur128_wasm_bg.wasm');
  const fail = () => {
    throw new Error('The meter has stopped: it takes samples of one channel, and a lawful rate.');
  };
  const { instance } = await WebAssembly.instantiate(readFileSync(file), {
    './ebur128_wasm_bg.js': {
      __wbg_new_693216e109162396: fail,
      __wbg_stack_0ddaca5d1abfb52f: fail,
      __wbg_error_09919627ac0992f5: fail,
      __wbindgen_object_drop_ref: () => undefined,
    },
  });
  const meter = instance.exports as unknown as Exports;
  // The program frees what it is given.
  const given = (samples: Float32Array): number => {
    const at = meter.__wbindgen_malloc(samples.byteLength);
    new Float32Array(meter.memory.buffer).set(samples, at / 4);
    return at;
  };
  return {
    integrated: (samples, sampleRate) => meter.ebur128_integrated_mono(sampleRate, given(samples), samples.length),
    truePeak: (samples, sampleRate) => meter.ebur128_true_peak_mono(sampleRate, given(samples), samples.length),
  };
}

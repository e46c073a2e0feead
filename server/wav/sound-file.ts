import type { Performance } from '../../shared-theory/perform.ts';
import type { Instrument } from '../../shared-theory/sound/instrument.ts';
import { mixPerformance } from '../../shared-theory/sound/mix.ts';
import { writeWav } from '../../shared-theory/sound/wav.ts';

/** Samples a second of every sound file. */
export const SAMPLE_RATE = 44100;

/** Silence before the first stroke, so that its onset can be told, and time for the last chord to ring out. In seconds. */
export const LEAD_SECONDS = 0.1;
export const TAIL_SECONDS = 1.5;

/** Who plays what; plain data, so that it can be sent to a worker. */
export type SoundJob = { readonly performance: Performance; readonly instrument: Instrument };

/** A performance as a WAV file, between a little silence and its ringing out. */
export function soundFile({ performance, instrument }: SoundJob): Uint8Array<ArrayBuffer> {
  const options = { sampleRate: SAMPLE_RATE, lead: LEAD_SECONDS, tail: TAIL_SECONDS, instrument };
  return writeWav(mixPerformance(performance, options), SAMPLE_RATE);
}

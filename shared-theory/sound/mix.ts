import type { Performance } from '../perform.ts';
import type { Instrument } from './instrument.ts';
import { limit } from './limiter.ts';
import { integratedLoudness } from './loudness.ts';
import { BASS_STOP_SECONDS, HAT_STOP_SECONDS, noteShelf, stopSeconds, trimGain, type NoteShelf } from './note-shelf.ts';

/**
 * Loudness of every vamp in LUFS, whatever its chords, groove, voice and band: loudness never hints at an answer. The programme level
 * of EBU R 128; a strum's peaks lie some twenty decibels higher and have room.
 */
export const TARGET_LUFS = -23;

export type MixOptions = {
  readonly sampleRate: number;
  /** Silence before the first bar, in seconds; default 0. */
  readonly lead?: number;
  /** Seconds that the last strings ring on after the end; default 0. */
  readonly tail?: number;
  /** A shelf of the same sample rate to take sounds from and leave them on; it has an instrument of its own. */
  readonly shelf?: NoteShelf;
  /** What is played, where no shelf is given; default steel strings. */
  readonly instrument?: Instrument;
};

/**
 * The sound of a performance, guitar, kit and bass, as mono samples of `lead + performance.seconds + tail` seconds, at `TARGET_LUFS`
 * (Rec. ITU-R BS.1770-4), no sample over −1 dBFS. Each note begins within one sample of its time and ends by the ramp of the live
 * sound. Throws `RangeError` for a shelf of another sample rate.
 */
export function mixPerformance(performance: Performance, options: MixOptions): Float32Array {
  const { sampleRate, instrument, shelf = noteShelf(sampleRate, instrument) } = options;
  if (shelf.sampleRate !== sampleRate)
    throw new RangeError(`The shelf holds sounds at ${shelf.sampleRate} Hz, not at ${sampleRate} Hz.`);
  const mixed = mixNotes(performance, { ...options, shelf });
  const gain = matchingGain(mixed, sampleRate);
  for (let n = 0; n < mixed.length; n++) mixed[n] = (mixed[n] ?? 0) * gain;
  limit(mixed, sampleRate);
  return mixed;
}

/** Factor that brings `samples` to `TARGET_LUFS`; 1 for silence. */
export function matchingGain(samples: Float32Array, sampleRate: number): number {
  const loudness = integratedLoudness(samples, sampleRate);
  return Number.isFinite(loudness) ? 10 ** ((TARGET_LUFS - loudness) / 20) : 1;
}

/** The factor for a performance in the live sound: the same that its file would get. */
export function performanceGain(performance: Performance, shelf: NoteShelf): number {
  return matchingGain(mixNotes(performance, { sampleRate: shelf.sampleRate, shelf }), shelf.sampleRate);
}

/** One sound in the mix: when it begins, when it is stopped, and how fast it then falls silent, in seconds. */
type Placed = { readonly time: number; readonly duration: number; readonly ramp: number; readonly gain: number };

/** The sounds of a performance added up, before their loudness is matched and their peaks are limited. */
export function mixNotes(performance: Performance, options: MixOptions & { readonly shelf: NoteShelf }): Float32Array {
  const { sampleRate, shelf, lead = 0, tail = 0 } = options;
  const out = new Float32Array(Math.round((lead + performance.seconds + tail) * sampleRate));
  // What is still held at the end rings into the tail.
  const heldOn = <T extends { readonly time: number; readonly duration: number }>(note: T): T => {
    const held = note.time + note.duration >= performance.seconds - 0.001 ? tail : 0;
    return { ...note, duration: note.duration + held };
  };
  const place = (samples: Float32Array, { time, duration, ramp, gain }: Placed) => {
    addSound(out, samples, { time: time + lead, duration, ramp, gain }, sampleRate);
  };
  for (const note of performance.notes.map(heldOn)) {
    place(shelf.take(note), { ...note, ramp: stopSeconds(note), gain: trimGain(note) });
  }
  for (const strike of performance.kit ?? []) {
    const duration = strike.duration ?? Infinity;
    place(shelf.takeKit(strike), {
      ...heldOn({ ...strike, duration }),
      ramp: HAT_STOP_SECONDS,
      gain: trimGain(strike),
    });
  }
  for (const note of (performance.bass ?? []).map(heldOn)) {
    place(shelf.takeBass(note), { ...note, ramp: BASS_STOP_SECONDS, gain: trimGain(note) });
  }
  fadeTail(out, Math.round(tail * sampleRate));
  return out;
}

function addSound(out: Float32Array, samples: Float32Array, sound: Placed, sampleRate: number): void {
  const start = Math.round(sound.time * sampleRate);
  const ramp = Math.round(sound.ramp * sampleRate);
  const stop = Math.round(Math.min(sound.duration, samples.length / sampleRate) * sampleRate);
  const end = Math.min(samples.length, stop + ramp, out.length - start);
  for (let n = Math.max(0, -start); n < end; n++) {
    const fall = n <= stop ? 1 : 1 - (n - stop) / ramp;
    out[start + n] = (out[start + n] ?? 0) + (samples[n] ?? 0) * sound.gain * fall;
  }
}

/** The last of the tail fades, so that a file never ends with a click. */
function fadeTail(out: Float32Array, tail: number): void {
  for (let n = Math.max(0, out.length - tail); n < out.length; n++) {
    out[n] = (out[n] ?? 0) * Math.min(1, (out.length - 1 - n) / (tail * 0.5));
  }
}

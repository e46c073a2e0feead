import type { Performance, SoundedNote } from '../perform.ts';
import { limit } from './limiter.ts';
import { integratedLoudness } from './loudness.ts';
import { noteShelf, stopSeconds, trimGain, type NoteShelf } from './note-shelf.ts';

/**
 * Loudness of every vamp in LUFS, whatever its chords and groove: loudness never hints at an answer. The programme level of
 * EBU R 128; a strum's peaks lie some twenty decibels higher and have room.
 */
export const TARGET_LUFS = -23;

export type MixOptions = {
  readonly sampleRate: number;
  /** Silence before the first bar, in seconds; default 0. */
  readonly lead?: number;
  /** Seconds that the last strings ring on after the end; default 0. */
  readonly tail?: number;
  /** A shelf of the same sample rate to take strings from and leave them on. */
  readonly shelf?: NoteShelf;
};

/**
 * The sound of a performance as mono samples of `lead + performance.seconds + tail` seconds, at `TARGET_LUFS` (Rec. ITU-R
 * BS.1770-4), no sample over 0.98. Each note begins within one sample of its time and ends by the ramp of the live sound.
 */
export function mixPerformance(performance: Performance, options: MixOptions): Float32Array {
  const { sampleRate, shelf = noteShelf(sampleRate) } = options;
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

function mixNotes(performance: Performance, options: MixOptions & { readonly shelf: NoteShelf }): Float32Array {
  const { sampleRate, shelf, lead = 0, tail = 0 } = options;
  const out = new Float32Array(Math.round((lead + performance.seconds + tail) * sampleRate));
  for (const note of performance.notes) {
    // What is still held at the end rings into the tail.
    const held = note.time + note.duration >= performance.seconds - 0.001 ? tail : 0;
    addNote(out, { ...note, time: note.time + lead, duration: note.duration + held }, shelf);
  }
  fadeTail(out, Math.round(tail * sampleRate));
  return out;
}

function addNote(out: Float32Array, note: SoundedNote, shelf: NoteShelf): void {
  const samples = shelf.take(note);
  const start = Math.round(note.time * shelf.sampleRate);
  const ramp = Math.round(stopSeconds(note) * shelf.sampleRate);
  const stop = Math.round(note.duration * shelf.sampleRate);
  const end = Math.min(samples.length, stop + ramp, out.length - start);
  const gain = trimGain(note);
  for (let n = Math.max(0, -start); n < end; n++) {
    const fall = n <= stop ? 1 : 1 - (n - stop) / ramp;
    out[start + n] = (out[start + n] ?? 0) + (samples[n] ?? 0) * gain * fall;
  }
}

/** The last of the tail fades, so that a file never ends with a click. */
function fadeTail(out: Float32Array, tail: number): void {
  for (let n = Math.max(0, out.length - tail); n < out.length; n++) {
    out[n] = (out[n] ?? 0) * Math.min(1, (out.length - 1 - n) / (tail * 0.5));
  }
}

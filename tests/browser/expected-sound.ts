import type { Performance } from '../../shared-theory/perform.ts';
import type { Instrument } from '../../shared-theory/sound/instrument.ts';
import { mixNotes, performanceGain } from '../../shared-theory/sound/mix.ts';
import { noteShelf, type NoteShelf } from '../../shared-theory/sound/note-shelf.ts';
import { STROKE_SECONDS, strokesOf } from './strokes.ts';

/** A stretch of music between two changes, in whole bars. */
export type Part = {
  readonly performance: Performance;
  /** The first bar of the performance that sounds, and the one that does not any more. */
  readonly bars: readonly [from: number, to: number];
  /** What it is brought to the loudness of all vamps by. */
  readonly measure: Performance;
  readonly instrument: Instrument;
  /** All that rings is stopped on its line; else each string rings until it is struck. */
  readonly anew: boolean;
};

/** A stroke of the guitar, or a note of the band. */
export type Onset = {
  /** Seconds from the first sample. */
  readonly time: number;
  /** What it adds to the sound from there on, for as long as a stroke takes. */
  readonly own: Float32Array;
};

/** What parts sound like one after the other, without limits to peaks; times in seconds from the first sample. */
export type Expected = {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  readonly onsets: readonly Onset[];
};

/** Rings on behind the last line. */
const RINGING_SECONDS = 8;

/** Less than this is the same moment. */
const NEAR = 1e-6;

/** Where each part begins, and where the last one ends, in seconds. */
export function linesOf(parts: readonly Part[], start = 0): readonly number[] {
  const lines = [start];
  for (const part of parts) lines.push((lines.at(-1) ?? start) + end(part) - begin(part));
  return lines;
}

/** The sound of parts from `start` on, made in Node. */
export function soundOf(parts: readonly Part[], start: number, sampleRate: number): Expected {
  const lines = linesOf(parts, start);
  const samples = new Float32Array(Math.ceil(((lines.at(-1) ?? 0) + RINGING_SECONDS) * sampleRate));
  const shelves = new Map<Instrument, NoteShelf>();
  const onsets: Onset[] = [];
  for (const [index, part] of parts.entries()) {
    const shelf = shelves.get(part.instrument) ?? noteShelf(sampleRate, part.instrument);
    shelves.set(part.instrument, shelf);
    const gain = performanceGain(part.measure, shelf);
    const played = partOf(part, parts[index + 1]);
    const moved = (lines[index] ?? 0) - begin(part);
    const whole = Math.floor(moved * sampleRate);
    const lead = moved - whole / sampleRate;
    const mix = (of: Performance): Float32Array => mixNotes(of, { sampleRate, shelf, lead });
    const mixed = mix(played);
    for (let n = Math.max(0, -whole); n < mixed.length && n + whole < samples.length; n++) {
      samples[n + whole] = (samples[n + whole] ?? 0) + gain * (mixed[n] ?? 0);
    }
    for (const { time, of } of onsetsOf(played)) {
      const at = Math.round((time + lead) * sampleRate);
      const own = mix(of)
        .subarray(at)
        .map((sample) => sample * gain);
      onsets.push({ time: (at + whole) / sampleRate, own });
    }
  }
  return { samples, sampleRate, onsets };
}

/**
 * Each stroke and each note of the band as a performance of its own, in the time of the whole. A hat is a breath of noise: beside
 * strings nobody can tell when it began to the millisecond, so that it counts only where the kit is alone.
 */
function onsetsOf(played: Performance): readonly { readonly time: number; readonly of: Performance }[] {
  const { notes, kit = [], bass = [], bars } = played;
  const single = (time: number, sounds: Partial<Performance>) => {
    const seconds = time + STROKE_SECONDS;
    return { time, of: { seconds, loops: 1, bars, notes: [], ...sounds } };
  };
  const starts = strokesOf(played);
  const strokes = starts.map((time, index) => {
    const before = starts[index + 1] ?? Infinity;
    return single(time, { notes: notes.filter((note) => note.time >= time && note.time < before) });
  });
  return [
    ...strokes,
    ...kit
      .filter(({ piece }) => notes.length === 0 || piece === 'kick' || piece === 'snare')
      .map((strike) => single(strike.time, { kit: [strike] })),
    ...bass.map((note) => single(note.time, { bass: [note] })),
  ];
}

function begin({ performance, bars: [from] }: Part): number {
  return performance.bars[from]?.time ?? performance.seconds;
}

function end({ performance, bars: [, to] }: Part): number {
  return performance.bars[to]?.time ?? performance.seconds;
}

type Timed = { readonly time: number };

/** The sounds of a part that begin in it. */
function within<T extends Timed>(sounds: readonly T[] | undefined, part: Part): readonly T[] {
  return (sounds ?? []).filter(({ time }) => time >= begin(part) - NEAR && time < end(part) - NEAR);
}

/** What is played of a performance, in its own time: each sound until the next part stops it. */
function partOf(part: Part, next: Part | undefined): Performance {
  const line = end(part);
  const notes = within(next?.performance.notes, next ?? part);
  const [bass] = within(next?.performance.bass, next ?? part);
  /** A sound that stops on the line where everything does, else where its string is struck. */
  const until = <T extends Timed & { readonly duration: number }>(sound: T, struck: Timed | undefined): T => {
    const own = next && struck ? line + struck.time - begin(next) : Infinity;
    return { ...sound, duration: Math.min(sound.duration, (next?.anew ? line : own) - sound.time) };
  };
  const strings = (string: number): Timed | undefined => notes.find((note) => note.string === string);
  return {
    ...part.performance,
    seconds: line + RINGING_SECONDS,
    notes: within(part.performance.notes, part).map((note) => until(note, strings(note.string))),
    bass: within(part.performance.bass, part).map((note) => until(note, bass)),
    kit: within(part.performance.kit, part).map((strike) =>
      next?.anew ? until({ ...strike, duration: strike.duration ?? Infinity }, undefined) : strike,
    ),
  };
}

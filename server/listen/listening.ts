import { STEEL } from '../../shared-theory/sound/instrument.ts';
import { mixPerformance } from '../../shared-theory/sound/mix.ts';
import { noteShelf, type NoteShelf } from '../../shared-theory/sound/note-shelf.ts';
import type { Voice } from '../../shared-theory/sound/instrument.ts';
import { hearChord, heardAs, type HeardChord, type HeardNote } from './hearing.ts';
import type { Strum } from './strums.ts';

/** Samples a second of what the ear is given. */
export const RATE = 44_100;

/** Seconds that the last strings of a strum ring out, and of silence after them. */
const TAIL_SECONDS = 0.3;
const GAP_SECONDS = 0.3;

/** Several strums one after another, with the seconds at which each is heard. */
export type Sheet = {
  readonly samples: Float32Array;
  readonly places: readonly { readonly strum: Strum; readonly from: number; readonly to: number }[];
};

/** One strum, what was heard of it, and whether that is right. */
export type Heard = {
  readonly strum: Strum;
  readonly heard: HeardChord;
  readonly bassRight: boolean;
  /** The bass note in some octave. */
  readonly bassNameRight: boolean;
  readonly qualityRight: boolean;
};

/** The sound of several strums in a row, each at the loudness of a round. */
export function sheetOf(some: readonly Strum[]): Sheet {
  const shelves = new Map<Voice, NoteShelf>();
  const places: { strum: Strum; from: number; to: number }[] = [];
  const parts: { at: number; samples: Float32Array }[] = [];
  let at = GAP_SECONDS;
  for (const strum of some) {
    const { performance, voice } = strum;
    const instrument = { ...STEEL, voice };
    const shelf = shelves.get(voice) ?? noteShelf(RATE, instrument);
    shelves.set(voice, shelf);
    const samples = mixPerformance(performance, { sampleRate: RATE, tail: TAIL_SECONDS, shelf, instrument });
    parts.push({ at: Math.round(at * RATE), samples });
    const to = at + performance.seconds + TAIL_SECONDS;
    places.push({ strum, from: at, to });
    at = to + GAP_SECONDS;
  }
  const samples = new Float32Array(Math.ceil(at * RATE));
  for (const part of parts) samples.set(part.samples, part.at);
  return { samples, places };
}

/** What the ear made of each strum of a sheet, from all the notes that it heard in it. */
export function hearStrums({ places }: Sheet, notes: readonly HeardNote[]): readonly Heard[] {
  return places.map(({ strum, from, to }) => {
    const heard = hearChord(notes, from, to);
    return {
      strum,
      heard,
      bassRight: heard.bass === strum.bass,
      bassNameRight: heard.bass !== null && heard.bass % 12 === strum.bass % 12,
      qualityRight: heard.quality === heardAs(strum.quality),
    };
  });
}

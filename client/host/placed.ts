import type { SoundChange } from '../../server/protocol/messages.ts';
import type { HandRun } from '../../shared-theory/hand-care.ts';
import type { CountInBeat } from '../../shared-theory/live.ts';
import type { Program } from './live-program.ts';

/** Something scheduled that sounds until `end`, in seconds of the audio clock. */
export type Voice = {
  readonly end: number;
  /** Stops it earlier, by its own ramp. */
  readonly stopAt: (time: number) => void;
  /** Takes it back before it has begun. */
  readonly drop: () => void;
};

/** A voice with the string that sounds it (null where nothing else silences it) and the moment at which that string is let go. */
export type Sounding = { readonly voice: Voice; readonly string: string | null; until: number };

/** What is to be known before a bar is placed, beside where it begins. */
export type Ordered = {
  readonly program: Program;
  readonly changes: readonly SoundChange[];
  /** Bars placed unheard since that took. */
  readonly unheard: number;
  /** Bars still to be heard before the loop drops out; null while it is not to. */
  readonly dropsIn: number | null;
  /** How the hands in the room fare that play along. */
  readonly hand: HandRun;
  /** The music broke off before it: the bar begins anew. */
  readonly broken: boolean;
};

/** A stretch of music that is scheduled; times in seconds of the audio clock. */
export type Placed = {
  readonly start: number;
  readonly end: number;
  readonly sounds: readonly Sounding[];
  /** What takes effect with it, as it is to be told. */
  readonly changes: readonly SoundChange[];
  told: boolean;
} & (
  | { readonly kind: 'count-in'; readonly beats: readonly CountInBeat[] }
  | {
      readonly kind: 'bar';
      readonly program: Program;
      readonly bar: number;
      /** Bars since the vamp's first. */
      readonly count: number;
      /** Bars that have passed unheard before it, since that took. */
      readonly unheard: number;
      /** The hand is given a rest on its line. */
      readonly rests: boolean;
      /** As it stood before its line: what was ordered, without what goes by itself there. */
      readonly ordered: Ordered;
    }
);

/** A moment from which bars are counted: times are products from here, so that they do not drift over hours. */
export type Origin = { readonly time: number; readonly beats: number };

/** The moment that lies `beats` after an origin. */
export function timeAt({ time, beats: from }: Origin, beats: number, tempo: number): number {
  return time + ((beats - from) * 60) / tempo;
}

/** What sounds on each string last. */
export function lastOnStrings(placed: readonly Placed[]): Map<string, Sounding> {
  const last = new Map<string, Sounding>();
  for (const { sounds } of placed) for (const each of sounds) if (each.string !== null) last.set(each.string, each);
  return last;
}

/** Strings are let go by a moment where something else begins. */
export function stopRinging(placed: readonly Placed[], time: number): void {
  for (const sounding of placed.flatMap(({ sounds }) => sounds)) stopSounding(sounding, time);
}

export function stopSounding(sounding: Sounding, time: number): void {
  sounding.until = Math.min(sounding.until, time);
  if (sounding.voice.end > time) sounding.voice.stopAt(time);
}

import { STANDARD_TUNING } from '../../../shared-theory/neck.ts';
import { STEEL, VOICES, type Instrument, type Voice } from '../../../shared-theory/sound/instrument.ts';
import { renderString, type StruckString } from '../../../shared-theory/sound/plucked-string.ts';
import { level } from './estimate.ts';

export const STRINGS = [1, 2, 3, 4, 5, 6] as const;

/** The four hands: a pick down and up, the thumb, a finger. */
export const HANDS = [
  { stroke: 'down' },
  { stroke: 'up' },
  { stroke: 'down', by: 'thumb' },
  { stroke: 'up', by: 'finger' },
] as const satisfies readonly Partial<StruckString>[];

export function instrumentOf(voice: Voice): Instrument {
  return { ...STEEL, voice };
}

/** Every voice beside every hand, named for a table of tests. */
export const VOICES_AND_HANDS = VOICES.flatMap((voice) =>
  HANDS.map((hand) => [voice, 'by' in hand ? hand.by : hand.stroke, hand] as const),
);

/** A heavy open downstroke of a string, or what `rest` makes of it. */
export function struck(string: number, fret: number, rest: Partial<StruckString> = {}): StruckString {
  const midi = (STANDARD_TUNING[6 - string] ?? 0) + fret;
  return { midi, string, fret, touch: 'open', accent: 3, stroke: 'down', ...rest };
}

export type Setting = { readonly sampleRate?: number; readonly seed?: number; readonly instrument?: Instrument };

export function render(note: StruckString, seconds: number, setting: Setting = {}): Float32Array {
  const { sampleRate = 44100, seed = 1, instrument = STEEL } = setting;
  return renderString(note, { seconds, sampleRate, seed, instrument });
}

/** Seconds until the level stays more than `fall` decibels under its loudest ten milliseconds. */
export function secondsToFall(samples: Float32Array, sampleRate: number, fall: number): number {
  const windows = Array.from({ length: Math.floor(samples.length / sampleRate / 0.01) - 4 }, (_, index) =>
    level(samples, sampleRate, index * 0.01, (index + 1) * 0.01),
  );
  const floor = Math.max(...windows) * 10 ** (-fall / 20);
  return (windows.findLastIndex((value) => value > floor) + 1) * 0.01;
}

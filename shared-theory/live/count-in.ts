import { BEATS_PER_BAR } from '../meters.ts';
import type { Meter } from '../vamps.ts';

/** One tick of the count-in: `number` is what is counted aloud, `accented` on one. */
export type CountInBeat = { readonly time: number; readonly number: number; readonly accented: boolean };

/** The counted beats before a vamp and their whole length in seconds: one bar, two of 6/8; 7/8 is counted by its groups. */
export function countIn(
  meter: Meter,
  tempo: number,
): { readonly seconds: number; readonly beats: readonly CountInBeat[] } {
  const beat = 60 / tempo;
  const bars = meter === '6/8' ? 2 : 1;
  const barBeats = BEATS_PER_BAR[meter];
  const counted = Math.floor(barBeats);
  const beats = Array.from({ length: bars * counted }, (_, index) => ({
    time: (Math.floor(index / counted) * barBeats + (index % counted)) * beat,
    number: (index % counted) + 1,
    accented: index % counted === 0,
  }));
  return { seconds: bars * barBeats * beat, beats };
}

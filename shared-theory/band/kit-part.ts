import { slotsPerBar } from '../groove-grid.ts';
import { grooveOf } from '../contacts.ts';
import type { KitStrike, Performance } from '../perform.ts';
import type { VoicedVamp } from '../vamps.ts';
import { beatOf, pieceAt } from './beat.ts';
import { placesOf } from './places.ts';

/**
 * The kit to a vamp's performance, in order of time: at most one stroke a slot, with the accent that the grid gives it. Without a groove
 * the foot gives each chord. An open hat is closed by the next foot or hat; the last one by the first of the loop come round.
 */
export function kitPart(vamp: VoicedVamp, performance: Performance): readonly KitStrike[] {
  const groove = grooveOf(vamp);
  const beat = groove && beatOf(groove);
  const strikes = placesOf(vamp, performance).flatMap(({ time, trim, chord, slot, cell }): KitStrike[] => {
    if (!groove || !beat) return [{ time, trim, chord, piece: 'kick', accent: 2 }];
    const played = pieceAt(beat, slot % slotsPerBar(groove), cell);
    return played ? [{ time, trim, chord, ...played }] : [];
  });
  return strikes.map((strike, index) => {
    if (strike.piece !== 'open-hat') return strike;
    const closes = ({ piece }: KitStrike) => piece !== 'snare';
    const closing = strikes.slice(index + 1).find(closes)?.time;
    const again = performance.seconds + (strikes.find(closes)?.time ?? performance.seconds);
    return { ...strike, duration: (closing ?? again) - strike.time };
  });
}

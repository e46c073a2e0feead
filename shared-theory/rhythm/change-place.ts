import { chordSymbol } from '../chords.ts';
import { startsOf } from '../contacts.ts';
import type { VoicedVamp } from '../vamps.ts';
import type { HeardLoop } from './heard-bars.ts';
import type { RhythmTruth } from './rhythm-truth.ts';

/** Where one chord comes in for the one before it, `start` being the loop's slot at which it is counted; null for neither. */
function placeOf({ slots, perBar }: HeardLoop, chord: number, start: number): RhythmTruth['changePlace'] {
  const at = (slot: number) => slots[(slot + slots.length) % slots.length] ?? null;
  let before = start - 1;
  while (at(before) === null && before > start - slots.length) before -= 1;
  if (at(before)?.chord === chord) return 'pushed';
  return at(start)?.chord === chord && start % perBar === 0 ? 'on-one' : null;
}

/** Where every chord that differs from the one before it comes in; null where they do so in different ways, or none differs. */
export function changePlaceOf(loop: HeardLoop, vamp: VoicedVamp): RhythmTruth['changePlace'] {
  const starts = startsOf(vamp);
  const beats = starts.at(-1) ?? 1;
  let heard: RhythmTruth['changePlace'] | 'none' = 'none';
  for (const [chord, slot] of vamp.slots.entries()) {
    const before = vamp.slots.at(chord - 1) ?? slot;
    if (before.chord.root === slot.chord.root && chordSymbol(before.chord) === chordSymbol(slot.chord)) continue;
    const place = placeOf(loop, chord, Math.round(((starts[chord] ?? 0) / beats) * loop.slots.length));
    if (place === null || (heard !== 'none' && heard !== place)) return null;
    heard = place;
  }
  return heard === 'none' ? null : heard;
}

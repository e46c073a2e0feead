import { BEATS_PER_BAR } from '../meters.ts';
import type { Meter, VoicedSlot, VoicedVamp } from '../vamps.ts';

/** The slot of the loop. Throws `RangeError` where the loop has none such. */
export function slotAt(vamp: VoicedVamp, slot: number): VoicedSlot {
  const found = vamp.slots[slot];
  if (!found) throw new RangeError(`The loop has slots 0 to ${vamp.slots.length - 1}, not ${slot}.`);
  return found;
}

/** Two bars of the chord in a slot, to be looped: one that opens it and one that goes on. Throws `RangeError` where the loop has no such slot. */
export function holdSlot(vamp: VoicedVamp, slot: number): VoicedVamp {
  return { ...vamp, slots: [{ ...slotAt(vamp, slot), beats: 2 * BEATS_PER_BAR[vamp.meter] }] };
}

/**
 * The slots that the first chord and that of `slot` take by turns: a loop of two as it is, else each for its own length in
 * whole bars, two at most. Throws `RangeError` where the loop has no such slot.
 */
export function pairSlots(
  vamp: VoicedVamp,
  slot: number,
): readonly { readonly slot: number; readonly beats: number }[] {
  const barBeats = BEATS_PER_BAR[vamp.meter];
  return [...new Set([0, slot])].map((each) => {
    const { beats } = slotAt(vamp, each);
    const bars = Math.min(2, Math.max(1, Math.round(beats / barBeats)));
    return { slot: each, beats: vamp.slots.length === 2 ? beats : bars * barBeats };
  });
}

/** The slots with the last one lengthened to the end of its bar, so that something else can begin on the next. */
export function wholeBars(slots: readonly VoicedSlot[], meter: Meter): readonly VoicedSlot[] {
  const barBeats = BEATS_PER_BAR[meter];
  const beats = slots.reduce((sum, slot) => sum + slot.beats, 0);
  const missing = Math.ceil(beats / barBeats - 1e-6) * barBeats - beats;
  return slots.map((slot, index) => (index === slots.length - 1 ? { ...slot, beats: slot.beats + missing } : slot));
}

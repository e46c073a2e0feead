import type { SoundChange, SoundSlot } from '../../server/protocol/messages.ts';
import type { WireSettler } from '../../server/protocol/views.ts';
import { readSymbol } from '../../shared-theory/chords.ts';
import { holdSlot, pairSlots, wholeBars } from '../../shared-theory/live.ts';
import type { Meter, VoicedSlot, VoicedVamp } from '../../shared-theory/vamps.ts';

/** A vamp to be played live, with the settlers that may follow it. */
export type LiveVamp = VoicedVamp & { readonly settlers?: readonly LiveSettler[] };

/** A third chord that is played behind the loop, or a note that is sung over it, by its MIDI number. */
export type LiveSettler = VoicedSlot | { readonly midi: number };

/** What sounds of a vamp. */
export type Mode = Exclude<SoundChange, { kind: 'tempo' }>;

/** What a slot that is played stands for: a slot of the vamp, a settler, or a slot of one of two readings. */
type Origin =
  | { readonly of: 'vamp'; readonly slot: number }
  | { readonly of: 'settler'; readonly index: number }
  | { readonly of: 'both'; readonly side: 'wrong' | 'right'; readonly slot: number; readonly start: number };

/** A slot as it is played; `start` in beats from the beginning of one time round. */
export type Played = { readonly slot: VoicedSlot; readonly start: number; readonly origin: Origin };

/** A slot that can sound from one that travels. Throws `RangeError` for a chord that is none. */
export function voicedSlot({ chord, beats, frets }: SoundSlot): VoicedSlot {
  return { chord: readSymbol(chord), beats, frets };
}

/** What settles a loop, as it can sound. Throws `RangeError` for a chord that is none. */
export function liveSettler(settler: WireSettler): LiveSettler {
  return 'note' in settler ? { midi: settler.midi } : voicedSlot(settler);
}

/** Beats that slots last together. */
export function beatsOf(slots: readonly VoicedSlot[]): number {
  return slots.reduce((sum, { beats }) => sum + beats, 0);
}

/** Slots with their starts, one after the other. */
function laidOut(slots: readonly Pick<Played, 'slot' | 'origin'>[], from = 0): readonly Played[] {
  let start = from;
  return slots.map((each) => {
    const played = { ...each, start };
    start += each.slot.beats;
    return played;
  });
}

/** What one time round is made of in a mode. Throws `RangeError` for a slot or settler that the loop has not. */
export function playedSlots(vamp: LiveVamp, mode: Mode): readonly Played[] {
  const own = (slot: VoicedSlot, index: number) => ({ slot, origin: { of: 'vamp', slot: index } as const });
  switch (mode.kind) {
    case 'hold':
    case 'root-alone':
      return laidOut(holdSlot(vamp, mode.slot).slots.map((slot) => own(slot, mode.slot)));
    case 'pair':
      return laidOut(
        pairSlots(vamp, mode.slot).flatMap(({ slot: index, beats }) => {
          const slot = vamp.slots[index];
          return slot ? [own({ ...slot, beats }, index)] : [];
        }),
      );
    case 'settler': {
      const settler = vamp.settlers?.[mode.index];
      if (!settler)
        throw new RangeError(`The loop has ${vamp.settlers?.length ?? 0} settlers, and none ${mode.index}.`);
      if ('midi' in settler) return laidOut(vamp.slots.map(own));
      const origin = { of: 'settler', index: mode.index } as const;
      return laidOut([...vamp.slots.map(own), ...wholeBars([settler], vamp.meter).map((slot) => ({ slot, origin }))]);
    }
    case 'both': {
      const wrong = reading(mode.wrong, 'wrong', vamp.meter, 0);
      return [...wrong, ...reading(mode.right, 'right', vamp.meter, beatsOf(wrong.map(({ slot }) => slot)))];
    }
    case 'full':
    case 'again':
    case 'bass-alone':
    case 'muted':
    case 'soft':
    case 'silence':
      return laidOut(vamp.slots.map(own));
  }
}

/** One of two readings, which begins `start` beats into the round and lasts for whole bars. */
function reading(slots: readonly SoundSlot[], side: 'wrong' | 'right', meter: Meter, start: number): readonly Played[] {
  if (slots.length === 0) throw new RangeError('Each of two readings has at least one chord.');
  const voiced = wholeBars(slots.map(voicedSlot), meter);
  return laidOut(
    voiced.map((slot, index) => ({ slot, origin: { of: 'both', side, slot: index, start } as const })),
    start,
  );
}

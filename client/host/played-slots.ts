import type { Band, ModeChange, SoundSlot } from '../../server/protocol/messages.ts';
import type { WireSettler } from '../../server/protocol/views.ts';
import { readSymbol } from '../../shared-theory/chords.ts';
import { holdSlot, pairSlots, wholeBars } from '../../shared-theory/live.ts';
import type { Meter, VoicedSlot, VoicedVamp } from '../../shared-theory/vamps.ts';

/** A vamp to be played live, with the settlers that may follow it and those who play along from its beginning; nobody by default. */
export type LiveVamp = VoicedVamp & {
  readonly settlers?: readonly LiveSettler[];
  readonly band?: Band;
  /** How its bar is made is asked: one tick announces it, and its numbers are not counted before it. */
  readonly uncounted?: boolean;
};

/** A third chord that is played behind the loop, or a note that is sung over it, by its MIDI number. */
export type LiveSettler = VoicedSlot | { readonly midi: number };

/** What sounds of a vamp. */
export type Mode = ModeChange;

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
    case 'chord-alone':
    case 'root-then-chord':
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
    case 'bass-forward':
    case 'muted':
    case 'kit-only':
    case 'soft':
    case 'silence':
    case 'drop-out':
    case 'echo':
      return laidOut(vamp.slots.map(own));
  }
}

/** The slots of one time round that begins `beats` into it: a chord that sounds there begins anew. */
export function startedAt(played: readonly Played[], beats: number): readonly Played[] {
  const later = played.filter(({ start, slot }) => start + slot.beats > beats + 1e-6);
  const earlier = played.filter(({ start }) => start < beats - 1e-6);
  const tail = later.map((each) => {
    const cut = Math.max(0, beats - each.start);
    return { ...each, slot: { ...each.slot, beats: each.slot.beats - cut } };
  });
  const head = earlier.map((each) => {
    const own = Math.min(each.slot.beats, beats - each.start);
    return { ...each, slot: { ...each.slot, beats: own } };
  });
  return laidOut([...tail, ...head]);
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

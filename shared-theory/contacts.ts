import {
  beatsPerSlot,
  SILENT_DOWN,
  silentHand,
  slotBeats,
  slotsPerBar,
  type Groove,
  type GrooveSlot,
} from './groove-grid.ts';
import { FULL_STROKE, openSlots, opensOnBass, ringsChord } from './groove-opening.ts';
import { parseGroove } from './groove-text.ts';
import type { VoicedVamp } from './vamps.ts';

/** A contact of the hand in one loop, silent ones too. */
export type Contact = {
  /** From the loop's start, swing included. */
  readonly beats: number;
  readonly cell: GrooveSlot;
  /** Slot of the loop whose chord it plays: after a push the one to come, which for the last slot is the first. */
  readonly chord: number;
  /** The chord begins here. */
  readonly opens: boolean;
  /** It sounds what the next bar begins with already. */
  readonly pushes?: true;
  /** What the hand does here from the second time round, where that differs: a silent pass, after a push. */
  readonly again?: GrooveSlot;
};

/** Beats closer than this are one place in the bar. */
export const NEAR = 1e-6;

/** One open downstroke: what a chord gets where no groove is named. */
const PLAIN_STROKE: GrooveSlot = { ...FULL_STROKE, accent: 2 };

const parsed = new Map<string, Groove>();

/** The groove of a vamp, null where it names none. Throws `GrooveError` for a text that is no groove. */
export function grooveOf(vamp: Pick<VoicedVamp, 'grooveText'>): Groove | null {
  if (vamp.grooveText === '') return null;
  const groove = parsed.get(vamp.grooveText) ?? parseGroove(vamp.grooveText);
  if (parsed.size > 500) parsed.clear();
  parsed.set(vamp.grooveText, groove);
  return groove;
}

/** Beats from the loop's start at which each slot begins, and at which the last one ends. */
export function startsOf({ slots }: Pick<VoicedVamp, 'slots'>): readonly number[] {
  let beats = 0;
  return [
    0,
    ...slots.map((slot) => {
      if (!(slot.beats > 0)) throw new RangeError(`A chord lasts more than no beats, not ${slot.beats}.`);
      return (beats += slot.beats);
    }),
  ];
}

/** Whether some stroke of the cells lets more ring than the bass. */
function ringsMore(cells: readonly GrooveSlot[]): boolean {
  return cells.some(
    ({ touch, zone }) => (touch === 'open' || touch === 'ring') && zone !== 'root' && zone !== 'other-bass',
  );
}

/**
 * What the hand does from one place of the loop to another, in which a chord sounds. Inside a bar, where the pattern would not sound
 * its root, it opens with the pattern's first stroke; an opening bar is played from its beginning wherever the chord begins. It
 * opens with a full stroke where it or the bar ends before more than the bass has rung.
 */
function cellsOf(groove: Groove, start: number, end: number): readonly GrooveSlot[] {
  const perBar = slotsPerBar(groove);
  const barEnd = (Math.floor(start / perBar) + 1) * perBar;
  const opening = groove.opening?.slice(0, Math.min(end, barEnd) - start) ?? [];
  const cells = Array.from({ length: end - start }, (_, index) => {
    const usual = groove.slots[(start + index) % groove.slots.length] ?? PLAIN_STROKE;
    const bass = index === 0 && !opensOnBass(usual) ? groove.slots[0] : undefined;
    return opening[index] ?? bass ?? usual;
  });
  const [first, ...rest] = cells;
  if (!first) return cells;
  const full: GrooveSlot = { ...first, stroke: 'down', zone: 'all', touch: 'open' };
  if (groove.opening) return ringsMore(opening) ? cells : [full, ...rest];
  if (!groove.slots.some(ringsChord) || ringsMore(cells)) return cells;
  const open = openSlots(groove);
  return [full, ...rest.map((cell, index) => (index + 1 < open ? silentHand(groove, start + index + 1) : cell))];
}

/** Contacts in which a push sounds the chord of the next bar, or of the next time round, whose first stroke then is silent. */
function withPushes(contacts: readonly Contact[], perBar: number): readonly Contact[] {
  const places = contacts.flatMap(({ cell }, place) => (cell.pushes ? [place] : []));
  const pushed = [...contacts];
  for (const place of places) {
    const next = Math.min((Math.floor(place / perBar) + 1) * perBar, contacts.length) % contacts.length;
    const [push, target] = [pushed[place], pushed[next]];
    if (!push || !target) continue;
    pushed[place] = { ...push, chord: target.chord, pushes: true };
    pushed[next] = next === 0 ? { ...target, again: SILENT_DOWN } : { ...target, cell: SILENT_DOWN };
  }
  return pushed;
}

/** The groove laid over one loop. */
function layOut(groove: Groove, starts: readonly number[], tempo: number): readonly Contact[] {
  const step = beatsPerSlot(groove);
  const places = starts.map((beats, index) => {
    const place = Math.round(beats / step);
    if (Math.abs(place * step - beats) > NEAR)
      throw new RangeError(
        `Chord ${index + 1} begins ${beats} beats into the loop, between the slots of ${groove.id}.`,
      );
    return place;
  });
  const contacts = places.slice(0, -1).flatMap((start, chord) =>
    cellsOf(groove, start, places[chord + 1] ?? start).map((cell, index): Contact => ({
      beats: slotBeats(groove, start + index, tempo),
      cell,
      chord,
      opens: index === 0,
    })),
  );
  return withPushes(contacts, slotsPerBar(groove));
}

/**
 * What the hand does in one loop of a vamp, contact by contact, silent ones too. Throws `RangeError` where a chord begins between the
 * groove's slots.
 */
export function contactsOf(vamp: VoicedVamp): readonly Contact[] {
  const groove = grooveOf(vamp);
  const starts = startsOf(vamp);
  if (groove) return layOut(groove, starts, vamp.tempo);
  return starts.slice(0, -1).map((beats, chord) => ({ beats, cell: PLAIN_STROKE, chord, opens: true }));
}

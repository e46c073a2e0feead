import { silentHand, slotBeats, slotsPerBar, slotSounds, type Groove, type GrooveSlot } from './groove-grid.ts';
import { grooveLine, parseGroove } from './groove-text.ts';
import { strumSpread } from './strum-spread.ts';

/** Seconds that the note which tells a quality must ring to be heard (common practice of ear-training). */
const HEARD_SECONDS = 0.3;

/** A player's small differences shorten what rings by so much at most: one stroke late, the next early. */
const HUMAN_SECONDS = 0.016;

/** One open stroke over all strings. */
export const FULL_STROKE: GrooveSlot = { stroke: 'down', zone: 'all', touch: 'open', accent: 3 };

/** Whether the bass string is the lowest of what a slot strikes, from the bass up, and has a pitch. */
export function opensOnBass({ stroke, zone, touch }: GrooveSlot): boolean {
  if (touch === 'dead') return false;
  const down = stroke === 'down' || stroke === 'thumb' || stroke === 'pinch';
  return down && (zone === 'root' || zone === 'low' || zone === 'all');
}

/** Whether a slot lets the chord's high strings ring on, its third among them. */
export function ringsChord({ touch, zone }: GrooveSlot): boolean {
  return (touch === 'open' || touch === 'ring') && (zone === 'high' || zone === 'all');
}

/** Whether a slot ends what rings: every touch but those that ring themselves. */
function endsRinging(slot: GrooveSlot): boolean {
  return slotSounds(slot) && slot.touch !== 'open' && slot.touch !== 'ring';
}

/** Seconds that a chord rings at its longest, from one of these slots to one that mutes it, at a tempo of beats a minute. */
function longestRing(groove: Groove, slots: readonly GrooveSlot[], tempo: number): number {
  const at = (place: number) => (slotBeats(groove, place, tempo) * 60) / tempo;
  let longest = 0;
  let from: number | null = null;
  for (const [place, slot] of slots.entries()) {
    if (ringsChord(slot)) from ??= at(place);
    else if (from !== null && endsRinging(slot)) {
      longest = Math.max(longest, at(place) - from);
      from = null;
    }
  }
  return from === null ? longest : Math.max(longest, at(slots.length) - from);
}

/** Seconds that a stroke must ring at a tempo so that its last string is heard. */
function neededSeconds(groove: Groove, tempo: number): number {
  return HEARD_SECONDS + HUMAN_SECONDS + strumSpread(groove, tempo);
}

/** The bars of a groove's pattern. */
function patternBars(groove: Groove): readonly (readonly GrooveSlot[])[] {
  const perBar = slotsPerBar(groove);
  return Array.from({ length: groove.slots.length / perBar }, (_, bar) =>
    groove.slots.slice(bar * perBar, (bar + 1) * perBar),
  );
}

/** Whether a bar that a chord begins lets its bass and then its quality be heard at the groove's fastest tempo. */
function heardIn(groove: Groove, bar: readonly GrooveSlot[]): boolean {
  const fastest = groove.tempo[1];
  // A push into the bar leaves its first slot silent.
  const pushed = groove.slots.some(({ pushes }) => pushes);
  const [first, ...rest] = bar;
  const sounding = pushed && first ? [silentHand(groove, 0), ...rest] : bar;
  const bass = sounding.find(slotSounds);
  const opens = first !== undefined && opensOnBass(first) && bass !== undefined && opensOnBass(bass);
  return opens && longestRing(groove, sounding, fastest) >= neededSeconds(groove, fastest);
}

/** So many slots that a full stroke on the first is heard at the groove's fastest tempo; no more than a bar has. */
export function openSlots(groove: Groove): number {
  const fastest = groove.tempo[1];
  const perBar = slotsPerBar(groove);
  const needed = neededSeconds(groove, fastest);
  const lasts = (slots: number) => (slotBeats(groove, slots, fastest) * 60) / fastest;
  let slots = 1;
  while (slots < perBar && lasts(slots) < needed) slots += 1;
  return slots;
}

/** One full stroke, the hand silent until it was heard at the groove's fastest tempo, and then the pattern. */
function fullOpening(groove: Groove, pattern: readonly GrooveSlot[]): readonly GrooveSlot[] {
  const open = openSlots(groove);
  return pattern.map((slot, place) => {
    if (place === 0) return FULL_STROKE;
    return place < open ? silentHand(groove, place) : slot;
  });
}

/**
 * The groove with an opening bar where its own bars would not let a chord's third be heard: the pattern's first bar where that does,
 * else one with a full open stroke. The same groove where chords can be heard in it as it is.
 */
export function withOpening(groove: Groove): Groove {
  const bars = groove.opening ? [groove.opening] : patternBars(groove);
  if (bars.every((bar) => heardIn(groove, bar))) return groove;
  const [pattern = []] = patternBars(groove);
  const opening = heardIn(groove, pattern) ? pattern : fullOpening(groove, pattern);
  return parseGroove(grooveLine({ ...groove, opening }));
}

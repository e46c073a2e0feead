import { slotSounds, slotsPerBar, type Groove, type GrooveSlot } from '../groove-grid.ts';
import { BEATS_PER_BAR } from '../meters.ts';
import type { KitPiece } from '../perform.ts';
import type { Meter } from '../vamps.ts';

/** What the kit makes of a groove as a whole. */
export type Beat = {
  /** Slots of a bar that carry its numbers, from the first. */
  readonly numbers: readonly number[];
  /** Slots of a bar where the snare answers. */
  readonly back: readonly number[];
  /** The hand sounds no number at all: the kit's foot gives those that the chops answer, on these slots of a bar. */
  readonly feet: readonly number[];
  /** Accent of the lightest of the pattern's bass strokes, which are the foot where it has any, and no chord is; null without. */
  readonly foot: 1 | 2 | 3 | null;
  /** The pattern mutes or chokes: what rings among that on an and is an open hat. */
  readonly mutes: boolean;
};

/** Numbers that the snare answers on, counted from 0: the weak ones of the meter; in seven the last group. */
const BACK: Readonly<Record<Meter, readonly number[]>> = {
  '4/4': [1, 3],
  '12/8': [1, 3],
  '3/4': [1, 2],
  '6/8': [1],
  '7/8': [2],
};
/** Where neither two nor four sounds, the bar is felt at half the tempo, and the snare answers on three. */
const HALF_TIME_BACK = [2] as const;

/** Seven eighths are two, two and three. */
const SEVEN_NUMBERS = [0, 2, 4] as const;

/** Slots of a bar that carry its numbers, from the first. */
function numbersOf(groove: Groove): readonly number[] {
  if (groove.meter === '7/8') return SEVEN_NUMBERS;
  const count = BEATS_PER_BAR[groove.meter];
  const each = slotsPerBar(groove) / count;
  return Array.from({ length: count }, (_, number) => number * each);
}

const isBass = (zone: GrooveSlot['zone']) => zone === 'root' || zone === 'other-bass';

/** Reads a groove's pattern once for all its bars. */
export function beatOf(groove: Groove): Beat {
  const perBar = slotsPerBar(groove);
  const numbers = numbersOf(groove);
  const sounding = new Set(groove.slots.flatMap((cell, slot) => (slotSounds(cell) ? [slot % perBar] : [])));
  const slotsOf = (counted: readonly number[]) => counted.flatMap((number) => numbers[number] ?? []);
  const usual = slotsOf(BACK[groove.meter]);
  const halfTime = groove.meter === '4/4' && !usual.some((slot) => sounding.has(slot));
  const offBeat = !numbers.some((slot) => sounding.has(slot));
  const basses = groove.slots.flatMap(({ zone, accent }) => (isBass(zone) && accent !== 0 ? [accent] : []));
  return {
    numbers,
    back: halfTime && !offBeat ? slotsOf(HALF_TIME_BACK) : usual,
    feet: offBeat ? slotsOf([0, 2].filter((number) => number === 0 || numbers.length === 4)) : [],
    foot: basses.toSorted((one, other) => one - other)[0] ?? null,
    mutes: groove.slots.some(
      ({ touch }) => touch === 'palm' || touch === 'half' || touch === 'dead' || touch === 'choke',
    ),
  };
}

/** Accent of the foot on numbers where the groove itself is silent. */
const FOOT_ACCENT = 2;

/**
 * What the kit plays on a slot of the bar; null where it rests, as it does wherever the hand does. A hand that imitates a kit names its
 * pieces: a muted bass the kick, a dead slap over all strings the snare, a short high the closed hat, a high up that rings the open
 * one. A chord no lighter than the bass strokes that it answers is the snare wherever it falls: so a train beat and a bossa have theirs.
 * Elsewhere the accents and the meter do: one is the kick, the weak numbers the snare, other weight the kick, the rest hat.
 */
export function pieceAt(beat: Beat, slot: number, cell: GrooveSlot): { piece: KitPiece; accent: 1 | 2 | 3 } | null {
  const { accent, zone, touch } = cell;
  if (!slotSounds(cell) || accent === 0) {
    return beat.feet.includes(slot) ? { piece: 'kick', accent: FOOT_ACCENT } : null;
  }
  const number = beat.numbers.indexOf(slot);
  const rings = touch === 'open' || touch === 'ring';
  const heavy = accent >= 2;
  if (touch === 'dead' && zone === 'all') return { piece: 'snare', accent };
  if (isBass(zone)) return { piece: 'kick', accent };
  if (number === 0) return { piece: 'kick', accent };
  if (heavy && beat.back.includes(slot)) return { piece: 'snare', accent };
  // A chord that begins inside the bar has its bass in the full stroke that opens it.
  if (heavy && number > 0 && zone === 'all') return { piece: 'kick', accent };
  if (beat.mutes && rings && number < 0) return { piece: 'open-hat', accent };
  if (beat.foot !== null && heavy && accent >= beat.foot) return { piece: 'snare', accent };
  if (heavy && beat.foot === null && beat.feet.length === 0) return { piece: 'kick', accent };
  return { piece: 'closed-hat', accent };
}

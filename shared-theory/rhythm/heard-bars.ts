import { GRIDS, slotsPerBar, beatsPerSlot, type Grid } from '../groove-grid.ts';
import type { Performance, Touch } from '../perform.ts';
import type { VoicedVamp } from '../vamps.ts';
import type { OnSlot } from './rhythm-truth.ts';

/** A stroke comes this early at most, in seconds: a player's small differences. */
const EARLY_SECONDS = 0.01;

/** What one stroke took of the strings of its shape: those from its bass up, those above its bass, all of them, or some between. */
type Reach = 'low' | 'high' | 'full' | 'middle';

/** One stroke as it sounded. */
export type HeardStroke = {
  /** Seconds from the loop's start, of its first string. */
  readonly time: number;
  readonly stroke: 'down' | 'up';
  readonly plucked: boolean;
  readonly touch: Touch;
  readonly accent: 1 | 2 | 3;
  readonly reach: Reach;
  /** It plays the chord's bass or the other one. */
  readonly bass: boolean;
  /** Slot of the loop whose chord it sounds. */
  readonly chord: number;
};

/** One loop as it sounds whenever it comes round, slot by slot of the grid; null where nothing is struck. */
export type HeardLoop = {
  readonly grid: Grid;
  readonly slots: readonly (HeardStroke | null)[];
  /** Slots of the pattern and of a bar. */
  readonly pattern: number;
  readonly perBar: number;
  /** Seconds that a slot lasts, swing apart. */
  readonly slotSeconds: number;
};

/** A stroke while its notes come in: the strings that it took, the highest number being the lowest string. */
type Struck = {
  -readonly [Field in Exclude<keyof HeardStroke, 'reach'>]: HeardStroke[Field];
} & { reach: Reach; lowest: number; highest: number };

/** The lowest and the highest string of a shape. */
function shapeEnds({ slots }: VoicedVamp, chord: number): readonly [number, number] {
  const frets = slots[chord]?.frets ?? [];
  return [
    frets.length - frets.findIndex((fret) => fret !== null),
    frets.length - frets.findLastIndex((fret) => fret !== null),
  ];
}

function reachOf({ lowest, highest, bass }: Struck, [low, high]: readonly [number, number]): Reach {
  const toTop = highest <= high;
  if (!bass && lowest < low) return toTop ? 'high' : 'middle';
  return toTop && lowest > highest ? 'full' : 'low';
}

/**
 * The last loop of a performance on the groove's grid: as it sounds whenever it comes round. Of the groove it takes the size of its
 * grid alone; all else is read off the notes, which come in the order of their times.
 */
export function heardLoop(vamp: VoicedVamp, grid: Grid, { notes, seconds, loops }: Performance): HeardLoop {
  const slotSeconds = (beatsPerSlot({ grid }) * 60) / vamp.tempo;
  const loopSeconds = seconds / loops;
  const start = seconds - loopSeconds;
  const slots = Array.from({ length: Math.round(loopSeconds / slotSeconds) }, (): Struck | null => null);
  for (const note of notes) {
    const time = note.time - start;
    if (time < -EARLY_SECONDS) continue;
    const slot = Math.floor((time + EARLY_SECONDS) / slotSeconds);
    const struck = slots[slot];
    if (struck === undefined) continue;
    const { string, stroke, touch, accent, chord } = note;
    const plucked = note.by !== undefined;
    const bass = note.bass === true;
    if (struck === null) {
      const ends = { lowest: string, highest: string, reach: 'low' } as const;
      slots[slot] = { time, stroke, plucked, touch, accent, bass, chord, ...ends };
      continue;
    }
    if (string > struck.lowest) struck.lowest = string;
    if (string < struck.highest) struck.highest = string;
    if (plucked) struck.plucked = true;
    if (bass) struck.bass = true;
  }
  const ends = vamp.slots.map((_, chord) => shapeEnds(vamp, chord));
  for (const struck of slots) if (struck) struck.reach = reachOf(struck, ends[struck.chord] ?? [6, 1]);
  return { grid, slots, pattern: GRIDS[grid].slots, perBar: slotsPerBar({ grid }), slotSeconds };
}

/**
 * What each slot of the pattern was, bar by bar: the most frequent first, of equally frequent ones that which came last, since a
 * chord's first bar may open it in another way. A loop shorter than the pattern comes round within it.
 */
export function onSlots<T>(
  { slots, pattern }: HeardLoop,
  read: (stroke: HeardStroke | null, place: number) => T,
): readonly OnSlot<T>[] {
  return Array.from({ length: pattern }, (_, place): OnSlot<T> => {
    const from = place % slots.length;
    const counted = new Map<T, number>();
    for (let slot = from; slot < slots.length; slot += pattern) {
      const value = read(slots[slot] ?? null, slot);
      const count = (counted.get(value) ?? 0) + 1;
      counted.delete(value);
      counted.set(value, count);
    }
    const [usual, ...others] = [...counted].toReversed().toSorted(([, one], [, other]) => other - one);
    if (!usual) throw new RangeError('A loop has at least one slot.');
    return [usual[0], ...others.map(([value]) => value)];
  });
}

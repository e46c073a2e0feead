import { GRIDS, slotsPerBar, beatsPerSlot, type Grid } from '../groove-grid.ts';
import type { Performance, SoundedNote, Touch } from '../perform.ts';
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

function reachOf(notes: readonly SoundedNote[], bass: boolean, { slots }: VoicedVamp): Reach {
  const { frets } = slots[notes[0]?.chord ?? 0] ?? { frets: [] };
  const lowest = frets.length - frets.findIndex((fret) => fret !== null);
  const highest = frets.length - frets.findLastIndex((fret) => fret !== null);
  let fromBass = bass;
  let toTop = false;
  for (const { string } of notes) {
    if (string >= lowest) fromBass = true;
    if (string <= highest) toTop = true;
  }
  if (fromBass) return toTop && notes.length > 1 ? 'full' : 'low';
  return toTop ? 'high' : 'middle';
}

function strokeOf(notes: readonly SoundedNote[], start: number, vamp: VoicedVamp): HeardStroke | null {
  const [first] = notes;
  if (!first) return null;
  const bass = notes.some((note) => note.bass === true);
  return {
    time: first.time - start,
    stroke: first.stroke,
    plucked: notes.some(({ by }) => by !== undefined),
    touch: first.touch,
    accent: first.accent,
    reach: reachOf(notes, bass, vamp),
    bass,
    chord: first.chord,
  };
}

/**
 * The last loop of a performance on the groove's grid: as it sounds whenever it comes round. Of the groove it takes the size of its
 * grid alone; all else is read off the notes.
 */
export function heardLoop(vamp: VoicedVamp, grid: Grid, { notes, seconds, loops }: Performance): HeardLoop {
  const slotSeconds = (beatsPerSlot({ grid }) * 60) / vamp.tempo;
  const loopSeconds = seconds / loops;
  const start = seconds - loopSeconds;
  const struck = Array.from({ length: Math.round(loopSeconds / slotSeconds) }, (): SoundedNote[] => []);
  for (const note of notes) {
    if (note.time < start - EARLY_SECONDS) continue;
    struck[Math.floor((note.time - start + EARLY_SECONDS) / slotSeconds)]?.push(note);
  }
  return {
    grid,
    slots: struck.map((together) => strokeOf(together, start, vamp)),
    pattern: GRIDS[grid].slots,
    perBar: slotsPerBar({ grid }),
    slotSeconds,
  };
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

import { beatsPerSlot, type Groove } from '../groove-grid.ts';
import { contactsOf, grooveOf, type Contact } from '../contacts.ts';
import type { Performance } from '../perform.ts';
import { seededRandom } from '../random.ts';
import type { VoicedVamp } from '../vamps.ts';

/** One slot of the grid as it is performed: what the hand does there, and when the band meets it. */
export type Place = Contact & {
  /** Seconds from the start of the performance, with the hand's own difference where it touches the strings. */
  readonly time: number;
  /** Which slot of the loop it is, counted from 0; 0 where the vamp names no groove. */
  readonly slot: number;
  /** Decibels of a player's small difference; 0 in an exact performance. */
  readonly trim: number;
};

/** A player's small differences move a stroke no further than this, in seconds, and change it by no more than so many decibels. */
const HUMAN_SECONDS = 0.008;
const HUMAN_DECIBELS = 1;

/** Times worked out along different ways are the same moment within this. */
const NEAR = 1e-6;

/** Every slot of every loop of a performance, in order of time. */
export function placesOf(vamp: VoicedVamp, performance: Performance): readonly Place[] {
  const groove = grooveOf(vamp);
  const contacts = contactsOf(vamp);
  const beat = 60 / vamp.tempo;
  const round = performance.seconds / performance.loops;
  const random = seededRandom(vamp.seed, 'band');
  let next = 0;
  /** How much later than the grid the hand's first string sounds there; null where it touches none. */
  const shiftAt = (grid: number): number | null => {
    const { notes } = performance;
    while ((notes[next]?.time ?? Infinity) < grid - HUMAN_SECONDS - NEAR) next += 1;
    const shift = (notes[next]?.time ?? Infinity) - grid;
    return shift <= HUMAN_SECONDS + NEAR ? shift : null;
  };
  return Array.from({ length: performance.loops }, (_, loop) =>
    contacts.map((contact): Place => {
      const grid = loop * round + contact.beats * beat;
      const shift = shiftAt(grid) ?? 0;
      const exact = Math.abs(shift) < NEAR;
      const chance = (random() * 2 - 1) * HUMAN_DECIBELS;
      return {
        ...contact,
        cell: loop > 0 ? (contact.again ?? contact.cell) : contact.cell,
        time: grid + (exact ? 0 : shift),
        slot: slotOf(groove, contact),
        trim: exact ? 0 : chance,
      };
    }),
  ).flat();
}

/** The slot of a contact: swing moves it by less than a slot. */
function slotOf(groove: Groove | null, { beats }: Contact): number {
  return groove ? Math.floor(beats / beatsPerSlot(groove) + NEAR) : 0;
}

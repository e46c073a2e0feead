import { GROOVE_TEXTS } from './groove-catalogue.ts';
import { slotsPerBar, slotSounds, type Groove, type GrooveSlot } from './groove-grid.ts';
import { parseGroove } from './groove-text.ts';

export * from './groove-grid.ts';
export { withOpening } from './groove-opening.ts';
export { GrooveError, grooveLine, parseGroove, withRootBass } from './groove-text.ts';

const cellsOf = ({ slots, opening }: Groove): readonly GrooveSlot[] => [...slots, ...(opening ?? [])];

/** Whether fingers play it without a pick: then nobody asks how the strokes go. */
export function isFingered(groove: Groove): boolean {
  return cellsOf(groove).some(({ stroke }) => stroke === 'pinch' || stroke === 'thumb' || stroke === 'fingers');
}

/** True where the pick's sounding strokes are downs alone; false where any is an up, and where fingers play. */
export function allDowns(groove: Groove): boolean {
  return !isFingered(groove) && cellsOf(groove).every(({ stroke }) => stroke !== 'up');
}

/**
 * How a groove's strokes go: all down; down and up by turns, the hand coming down on every other slot of the bar whether it strikes or
 * not; null for neither, and where fingers play.
 */
export function strokesOf(groove: Groove): 'all-downs' | 'down-up' | null {
  if (isFingered(groove)) return null;
  if (allDowns(groove)) return 'all-downs';
  const perBar = slotsPerBar(groove);
  const byTurns = (slots: readonly GrooveSlot[]) =>
    slots.every((slot, place) => !slotSounds(slot) || slot.stroke === ((place % perBar) % 2 === 0 ? 'down' : 'up'));
  return byTurns(groove.slots) && byTurns(groove.opening ?? []) ? 'down-up' : null;
}

/** The groove catalogue in the order it is taught. */
export const GROOVES: readonly Groove[] = GROOVE_TEXTS.map(parseGroove);

/** The groove of that kebab name, of the catalogue or of a class's own. Throws `RangeError` naming the ids there are. */
export function grooveById(id: string, own: readonly Groove[] = []): Groove {
  const known = [...GROOVES, ...own];
  const groove = known.find((candidate) => candidate.id === id);
  if (!groove) throw new RangeError(`No groove "${id}"; there are ${known.map((each) => each.id).join(', ')}.`);
  return groove;
}

/** A groove by its kebab name, by its text in either form, or as it is. Throws `RangeError` or `GrooveError`. */
export function readGroove(groove: string | Groove): Groove {
  if (typeof groove !== 'string') return groove;
  return groove.includes('|') ? parseGroove(groove) : grooveById(groove);
}

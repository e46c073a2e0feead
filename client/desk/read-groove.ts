import { GrooveError, parseGroove } from '../../shared-theory/groove-text.ts';
import type { Groove } from '../../shared-theory/groove-grid.ts';
import type { RoomSettings } from '../../server/protocol/messages.ts';
import { DRAWN_LANES, type Cell } from './groove-draft.ts';

/** A text as a groove, or what is wrong with it. */
export function readGroove(text: string): Groove | GrooveError {
  try {
    return parseGroove(text);
  } catch (error) {
    if (error instanceof GrooveError) return error;
    throw error;
  }
}

/** The class's own grooves; a line that cannot be read any more is none of them. */
export function ownGrooves({ grooves }: Pick<RoomSettings, 'grooves'>): readonly Groove[] {
  return grooves.flatMap((text) => {
    const groove = readGroove(text);
    return groove instanceof GrooveError ? [] : [groove];
  });
}

/** The cell that a fault is in; null where it is in none that is drawn. */
export function faultyCell({ lane, slot }: GrooveError): Cell | null {
  const opening = lane?.startsWith('open-') ?? false;
  const drawn = DRAWN_LANES.find((each) => each === (opening ? lane?.slice('open-'.length) : lane));
  return drawn === undefined || slot === null
    ? null
    : { side: opening ? 'opening' : 'pattern', lane: drawn, slot: slot - 1 };
}

import type { DeskView } from '../../server/protocol/views.ts';
import type { Desk, Wish } from './desk-state.ts';

/** Begins a round and turns to it; gives its id, null where it was refused. */
export async function begin(desk: Desk, wish: Wish): Promise<string | null> {
  const reply = await desk.wish(wish);
  if (!reply?.ok) return null;
  desk.show(null);
  desk.turnTo('round');
  return (reply.value as { readonly round?: string } | undefined)?.round ?? null;
}

/**
 * A round that Hearsay plays: of a level, as an item of the plan or beside it, in a groove by id or in one that the level draws, or in
 * one of the two of a contrast pair.
 */
type Start = {
  readonly level: number;
  readonly item?: string;
  readonly groove?: string | null;
  readonly contrast?: string;
};

/** Starts it. It plays at once where a host screen can. */
export async function startRound(desk: Desk, view: DeskView, start: Start): Promise<void> {
  const { level, item = null, groove = null, contrast = null } = start;
  const round = await begin(desk, {
    type: 'StartRound',
    after: view.vamp?.number ?? 0,
    level,
    item,
    groove,
    contrast,
  });
  if (round !== null && item === null && contrast === null) desk.groove.value = null;
  if (round !== null) desk.contrast.value = contrast === null ? null : { contrast, level, round };
  if (round !== null && view.soundHeld) await desk.wish({ type: 'RequestPlay', round });
}

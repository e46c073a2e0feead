import type { RoomSettings } from '../../server/protocol/messages.ts';

/** Ids of the class's own grooves: each line of the grid language begins with its id and a comma. */
export function ownGrooveIds({ grooves }: Pick<RoomSettings, 'grooves'>): ReadonlySet<string> {
  return new Set(grooves.flatMap((text) => /^([a-z0-9-]+),/.exec(text)?.[1] ?? []));
}

import { noRoundPage, roundPage, typedPage } from '../crib/sheet-page.ts';
import type { SheetPage, SheetQuery } from '../crib/sheet-page.ts';
import { csvOf } from '../export/csv.ts';
import { lessonTable } from '../export/lesson-table.ts';
import type { Keeper } from '../keeper/keeper.ts';
import { refuse, type Refusal } from '../rooms/commands.ts';

/** A file to be kept, with the name it is offered under. */
export type RoomFile = { readonly ok: true; readonly name: string; readonly bytes: Uint8Array };

/** The evidence of a room's lesson so far as a table for spreadsheets, with names; refused where there is no such room, or it cannot be read now. */
export async function tableOf(keeper: Pick<Keeper, 'find' | 'look'>, room: string): Promise<RoomFile | Refusal> {
  if ((await keeper.find(room)) === 'absent') return refuse('room-not-found', { room });
  const file = await keeper.look(room, ({ state, people }): RoomFile => {
    const bytes = new TextEncoder().encode(csvOf(lessonTable(state, people)));
    return { ok: true, name: `hearsay-${room}.csv`, bytes };
  });
  return file ?? refuse('not-saved');
}

/** The crib of a room's round, or where no number is given of the chords that the query names; refused as above. */
export async function cribOf(
  keeper: Pick<Keeper, 'find' | 'look'>,
  room: string,
  number: number | null,
  query: SheetQuery,
): Promise<({ readonly ok: true } & SheetPage) | Refusal> {
  if ((await keeper.find(room)) === 'absent') return refuse('room-not-found', { room });
  const page = await keeper.look(room, ({ state: { rounds, settings } }) => {
    if (number === null) return typedPage(room, settings, query);
    const round = rounds.find(({ heard }) => heard.number === number)?.heard;
    return round === undefined ? noRoundPage(room, settings) : roundPage(room, settings, round, query);
  });
  return page === null || page === undefined ? refuse('not-saved') : { ok: true, ...page };
}

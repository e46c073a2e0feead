import { withRootBass } from '../../shared-theory/grooves.ts';
import { grooveOf, perform } from '../../shared-theory/perform.ts';
import type { VoicedVamp } from '../../shared-theory/vamps.ts';
import { shapesGoing, tempoRange } from '../../shared-theory/voice.ts';
import { noRoundPage, roundPage, typedPage } from '../crib/sheet-page.ts';
import type { SheetPage, SheetQuery } from '../crib/sheet-page.ts';
import { csvOf } from '../export/csv.ts';
import { lessonTable } from '../export/lesson-table.ts';
import type { Keeper } from '../keeper/keeper.ts';
import { refuse, type Refusal } from '../rooms/commands.ts';
import type { HeardRound } from '../rooms/events.ts';
import { vampOf } from '../rooms/heard-round.ts';
import { vampMidi } from '../vamp-midi.ts';

/** A file to be kept, with the name it is offered under. */
export type RoomFile = { readonly ok: true; readonly name: string; readonly bytes: Uint8Array };

/** Beats a minute of a round whose tempo the teacher did not name. */
const USUAL_TEMPO = 90;

/**
 * A round as it sounds: what the host played, or the teacher's chords in the shapes that send the bass where he said it went,
 * with the strokes he named or one a chord.
 */
function soundingVamp(round: HeardRound): VoicedVamp {
  const vamp = vampOf(round);
  if (round.source === 'host') return vamp;
  const shapes = shapesGoing(vamp.slots, round.truth.directions);
  const [low, high] = tempoRange(grooveOf(vamp)?.id ?? null);
  return {
    ...vamp,
    slots: vamp.slots.map((slot, index) => ({ ...slot, frets: shapes?.[index] ?? slot.frets })),
    grooveText: withRootBass(vamp.grooveText),
    tempo: round.tempo ?? Math.min(high, Math.max(low, USUAL_TEMPO)),
  };
}

/** The MIDI file of a room's round, once through its loop; refused where there is no such room or round, or it cannot be read now. */
export async function midiOf(
  keeper: Pick<Keeper, 'find' | 'look'>,
  room: string,
  number: number,
): Promise<RoomFile | Refusal> {
  if ((await keeper.find(room)) === 'absent') return refuse('room-not-found', { room });
  const file = await keeper.look(room, ({ state }): RoomFile | Refusal => {
    const round = state.rounds.find(({ heard }) => heard.number === number)?.heard;
    if (round === undefined) return refuse('round-unknown');
    const vamp = soundingVamp(round);
    return { ok: true, name: `hearsay-${room}-${number}.mid`, bytes: vampMidi(vamp, perform(vamp)) };
  });
  return file ?? refuse('not-saved');
}

/** The evidence of a room's lesson so far as a table for spreadsheets, with names; refused as above. */
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

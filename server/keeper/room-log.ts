import type { NewEvent, RoomEvent, Stamp } from '../rooms/events.ts';
import { readEvent, studentOf, versioned } from '../rooms/events.ts';
import type { Hands, People, Person } from '../rooms/people.ts';
import { peopleOf } from '../rooms/people.ts';
import type { RoomState } from '../rooms/state.ts';
import { evolve } from '../rooms/evolve.ts';
import { unopenedRoom } from '../rooms/state.ts';
import type { LogRow, PersonRow, RoomLog } from '../store/event-store.ts';

/** A room in memory: the fold of its log, the people beside it, and the seq of the last event. */
export type HeldRoom = { readonly state: RoomState; readonly people: People; seq: number };

/** A room before its first event. */
export function unopened(): HeldRoom {
  return { state: unopenedRoom(), people: peopleOf([]), seq: 0 };
}

/**
 * Folds a room from its log. Throws where the log has a gap or holds an event that this version cannot read: better no room
 * than a wrong one.
 */
export function foldRoom({ rows, people }: RoomLog): HeldRoom {
  const state = unopenedRoom();
  let seq = 0;
  for (const row of rows) {
    seq += 1;
    if (row.seq !== seq) throw new RangeError(`the log goes from event ${seq - 1} to ${row.seq}`);
    evolve(state, readEvent(row.body), row);
  }
  const seat = (student: string) => state.students.get(student)?.seat ?? Infinity;
  const persons = people.map(personOf).toSorted((one, other) => seat(one.student) - seat(other.student));
  return { state, people: peopleOf(persons), seq };
}

/** The next row of a room's log, and the event as it is folded. */
export function nextRow(
  held: HeldRoom,
  event: NewEvent,
  stamp: Stamp,
): { readonly row: LogRow; readonly event: RoomEvent } {
  const written = versioned(event);
  const { at, mono, boot } = stamp;
  const row: LogRow = {
    seq: held.seq + 1,
    at,
    mono,
    boot,
    student: studentOf(written),
    type: written.type,
    body: JSON.stringify(written),
  };
  return { row, event: written };
}

/** A person as the store keeps it. */
export function personRow({ student, name, tokenHash, hands }: Person): PersonRow {
  const { leftHanded, pair, leftThumb } = hands;
  return { student, name, tokenHash, settings: JSON.stringify({ leftHanded, pair, leftThumb }) };
}

function personOf({ student, name, tokenHash, settings }: PersonRow): Person {
  const read = JSON.parse(settings) as Partial<Hands>;
  const { leftHanded = false, pair = false, leftThumb = false } = read;
  return { student, name, tokenHash, hands: { leftHanded, pair, leftThumb } };
}

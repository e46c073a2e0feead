import type { AppendOutcome, ClassRow, EventStore, KeyStore, LogRow, PersonRow, RoomAppend } from './event-store.ts';

type MemoryRoom = { readonly rows: LogRow[]; readonly people: Map<string, PersonRow> };
/** What several stores in one process share, as several connections share a file. */
export type Memory = {
  readonly rooms: Map<string, MemoryRoom>;
  readonly classes: Map<string, ClassRow>;
  readonly keys: Map<string, number>;
};

export function emptyMemory(): Memory {
  return { rooms: new Map(), classes: new Map(), keys: new Map() };
}

/** A store that keeps everything in memory: for tests, and for trying the server without a file. */
export function memoryStore(memory: Memory = emptyMemory()): EventStore & KeyStore {
  let open = true;
  const asked = async <T>(answer: () => T): Promise<T> => {
    if (!open) throw new Error('the store is closed');
    return answer();
  };
  return {
    append: (appends) =>
      asked(() => {
        return appends.map((append) => appendTo(memory, append));
      }),
    read: (room) =>
      asked(() => {
        const found = memory.rooms.get(room);
        return found === undefined ? null : { rows: [...found.rows], people: inOrder(found.people.values()) };
      }),
    rooms: (types) =>
      asked(() =>
        [...memory.rooms]
          .flatMap(([room, { rows }]) => {
            const mark = rows.findLast(({ type }) => types.includes(type))?.type;
            return mark === undefined ? [] : [{ room, openedAt: rows[0]?.at ?? 0, mark }];
          })
          .toSorted((one, other) => other.openedAt - one.openedAt),
      ),
    erase: ({ room, student, blank, row }) =>
      asked<'stored' | 'collided'>(() => {
        const found = memory.rooms.get(room);
        if (found === undefined || row.seq !== found.rows.length + 1) return 'collided';
        found.people.delete(student);
        for (const [index, old] of found.rows.entries()) {
          if (old.student === student) found.rows[index] = { ...old, student: null, ...blank };
        }
        found.rows.push(row);
        return 'stored';
      }),
    scrub: () => asked(() => {}),
    classes: () => asked(() => [...memory.classes.values()].toSorted((one, other) => (one.name < other.name ? -1 : 1))),
    putClass: (row) => asked(() => void memory.classes.set(row.id, row)),
    putTeacherKey: (hash, madeAt) => asked(() => void memory.keys.set(hash, madeAt)),
    hasTeacherKey: (hash) => asked(() => memory.keys.has(hash)),
    dropTeacherKeys: (madeBefore) =>
      asked(() => {
        for (const [hash, madeAt] of memory.keys) if (madeAt < madeBefore) memory.keys.delete(hash);
      }),
    close: async () => {
      open = false;
    },
  };
}

function appendTo(memory: Memory, append: RoomAppend): AppendOutcome {
  const { room, rows, people, classChange } = append;
  try {
    check(append);
  } catch (failed) {
    return { failed };
  }
  const found = memory.rooms.get(room) ?? { rows: [], people: new Map<string, PersonRow>() };
  if (rows[0]?.seq !== found.rows.length + 1) return 'collided';
  memory.rooms.set(room, found);
  found.rows.push(...rows);
  for (const person of people) found.people.set(person.student, person);
  const changed = classChange && memory.classes.get(classChange.id);
  if (changed) memory.classes.set(changed.id, { ...changed, settings: classChange.change(changed.settings) });
  return 'stored';
}

/** What a database would refuse, or bring back changed. */
function check({ room, rows, people }: RoomAppend): void {
  const [first] = rows;
  if (first === undefined) throw new RangeError(`an append to ${room} without rows`);
  for (const [index, { seq, at, mono, boot, student, type, body }] of rows.entries()) {
    if (seq !== first.seq + index) throw new RangeError(`seq ${first.seq + index} expected in ${room}, not ${seq}`);
    for (const number of [at, mono]) {
      if (!Number.isFinite(number)) throw new TypeError(`a time is a finite number, not ${number}`);
    }
    for (const text of [boot, type, body, student ?? '']) checkText(text);
  }
  for (const { student, name, tokenHash, settings } of people) {
    for (const text of [student, name, tokenHash, settings]) checkText(text);
  }
}

function checkText(text: unknown): void {
  if (typeof text !== 'string' || /[\p{Cs}\0]/u.test(text))
    throw new TypeError('a text is whole characters without NUL');
}

function inOrder(people: Iterable<PersonRow>): PersonRow[] {
  return [...people].toSorted((one, other) => (one.student < other.student ? -1 : 1));
}

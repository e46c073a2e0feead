import { isOfOneWrite, openConnection, type Connection } from './database.ts';
import type {
  AppendOutcome,
  ClassChange,
  ClassRow,
  EventStore,
  KeyStore,
  LogRow,
  PersonRow,
  RoomAppend,
  RoomRow,
} from './event-store.ts';
import { migrate } from './migrations.ts';

/** Opens the store in one SQLite file, made where it is missing. Throws what the driver throws, or RangeError for a file of a later version. */
export function openSqliteStore(file: string): EventStore & KeyStore {
  const connection = openConnection(file);
  migrate(connection);
  const statements = prepare(connection);
  const next = (room: string) => statements.next.all(room)[0]?.next ?? 1;
  const add = (room: string, row: LogRow) =>
    statements.addEvent.run(room, row.seq, row.at, row.mono, row.boot, row.student, row.type, row.body);

  const changeClass = ({ id, change }: ClassChange): void => {
    const [found] = statements.classSettings.all(id);
    if (found !== undefined) statements.setClassSettings.run(change(found.settings), id);
  };

  /** Stores one room's part, or nothing of it. Another writer between check and insert is held off by the transaction. */
  const appendRoom = (append: RoomAppend): AppendOutcome => {
    const { room, rows, people, classChange } = append;
    try {
      checkRun(append);
      if (rows[0]?.seq !== next(room)) return 'collided';
      return connection.savepoint(() => {
        for (const row of rows) add(room, row);
        for (const person of people) {
          statements.putPerson.run(room, person.student, person.name, person.tokenHash, person.settings);
        }
        if (classChange !== undefined) changeClass(classChange);
        return 'stored';
      });
    } catch (failed) {
      if (!isOfOneWrite(failed)) throw failed;
      return { failed };
    }
  };

  return {
    append: async (appends) => connection.transaction(() => appends.map(appendRoom)),
    read: async (room) =>
      connection.snapshot(() => {
        const rows = statements.readEvents.all(room);
        return rows.length === 0 ? null : { rows, people: statements.readPeople.all(room) };
      }),
    rooms: async (types) => statements.rooms.all(JSON.stringify(types)),
    erase: async ({ room, student, blank, row }) =>
      connection.transaction(() => {
        if (row.seq !== next(room)) return 'collided';
        statements.blank.run(blank.type, blank.body, room, student);
        statements.removePerson.run(room, student);
        add(room, row);
        statements.markUnscrubbed.run();
        return 'stored';
      }),
    scrub: async () => {
      if (statements.unscrubbed.all().length === 0) return;
      // Pages that were freed, or left over from a split, may still hold the bytes; so may the write-ahead log.
      connection.exec('VACUUM');
      if (connection.pragma('journal_mode') === 'wal' && connection.pragma('wal_checkpoint(TRUNCATE)') !== 0) {
        throw new Error('another process reads the store, so erased bytes are still in its write-ahead log');
      }
      statements.markScrubbed.run();
    },
    classes: async () => statements.classes.all(),
    putClass: async (row) => statements.putClass.run(row.id, row.name, row.settings),
    putTeacherKey: async (hash, madeAt) => statements.putKey.run(hash, madeAt),
    hasTeacherKey: async (hash) => statements.findKey.all(hash).length === 1,
    dropTeacherKeys: async (madeBefore) => statements.dropKeys.run(madeBefore),
    close: async () => connection.close(),
  };
}

/** A gap inside one append is a fault of the caller, not another writer's doing. */
function checkRun({ room, rows }: RoomAppend): void {
  const [first] = rows;
  if (!first) throw new RangeError(`an append to ${room} without rows`);
  rows.forEach((row, index) => {
    if (row.seq !== first.seq + index)
      throw new RangeError(`seq ${first.seq + index} expected in ${room}, not ${row.seq}`);
  });
}

function prepare(connection: Connection) {
  return {
    next: connection.prepare<{ next: number }>(
      'SELECT seq + 1 AS next FROM events WHERE room = ? ORDER BY seq DESC LIMIT 1',
    ),
    addEvent: connection.prepare(
      'INSERT INTO events (room, seq, at, mono, boot, student, type, body) VALUES (?, ?, ?, ?, ?, ?, ?, ?)',
    ),
    readEvents: connection.prepare<LogRow>(
      'SELECT seq, at, mono, boot, student, type, body FROM events WHERE room = ? ORDER BY seq',
    ),
    putPerson: connection.prepare(
      `INSERT INTO people (room, student, name, token_hash, settings) VALUES (?, ?, ?, ?, ?)
       ON CONFLICT (room, student) DO UPDATE
       SET name = excluded.name, token_hash = excluded.token_hash, settings = excluded.settings`,
    ),
    readPeople: connection.prepare<PersonRow>(
      'SELECT student, name, token_hash AS tokenHash, settings FROM people WHERE room = ? ORDER BY student',
    ),
    removePerson: connection.prepare('DELETE FROM people WHERE room = ? AND student = ?'),
    blank: connection.prepare('UPDATE events SET type = ?, body = ?, student = NULL WHERE room = ? AND student = ?'),
    markUnscrubbed: connection.prepare('INSERT OR IGNORE INTO unscrubbed VALUES (1)'),
    unscrubbed: connection.prepare('SELECT mark FROM unscrubbed'),
    markScrubbed: connection.prepare('DELETE FROM unscrubbed'),
    // With max() the bare column `type` is that of the same row.
    rooms: connection.prepare<RoomRow>(
      `SELECT marks.room, first.at AS openedAt, marks.mark
       FROM (SELECT room, type AS mark, max(seq) FROM events
             WHERE type IN (SELECT value FROM json_each(?)) GROUP BY room) AS marks
       JOIN events AS first ON first.room = marks.room AND first.seq = 1
       ORDER BY first.at DESC, marks.room`,
    ),
    classes: connection.prepare<ClassRow>('SELECT id, name, settings FROM classes ORDER BY name, id'),
    classSettings: connection.prepare<{ settings: string }>('SELECT settings FROM classes WHERE id = ?'),
    setClassSettings: connection.prepare('UPDATE classes SET settings = ? WHERE id = ?'),
    putClass: connection.prepare(
      `INSERT INTO classes (id, name, settings) VALUES (?, ?, ?)
       ON CONFLICT (id) DO UPDATE SET name = excluded.name, settings = excluded.settings`,
    ),
    putKey: connection.prepare('INSERT INTO teacher_keys (hash, made_at) VALUES (?, ?)'),
    findKey: connection.prepare('SELECT hash FROM teacher_keys WHERE hash = ?'),
    dropKeys: connection.prepare('DELETE FROM teacher_keys WHERE made_at < ?'),
  };
}

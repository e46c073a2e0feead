import type { Connection } from './database.ts';

/** Steps of the schema in order; a step that was published is never changed, a new one is added below it. */
const MIGRATIONS: readonly string[] = [
  `CREATE TABLE events (
     room TEXT NOT NULL,
     seq INTEGER NOT NULL CHECK (seq > 0),
     at REAL NOT NULL,
     mono REAL NOT NULL,
     boot TEXT NOT NULL,
     student TEXT,
     type TEXT NOT NULL,
     body TEXT NOT NULL CHECK (json_valid(body)),
     PRIMARY KEY (room, seq)
   ) WITHOUT ROWID;
   CREATE INDEX events_by_type ON events (type, room, seq);
   CREATE TABLE people (
     room TEXT NOT NULL,
     student TEXT NOT NULL,
     name TEXT NOT NULL,
     token_hash TEXT NOT NULL,
     settings TEXT NOT NULL CHECK (json_valid(settings)),
     PRIMARY KEY (room, student)
   ) WITHOUT ROWID;
   CREATE TABLE classes (
     id TEXT NOT NULL PRIMARY KEY,
     name TEXT NOT NULL,
     settings TEXT NOT NULL CHECK (json_valid(settings))
   ) WITHOUT ROWID;
   CREATE TABLE teacher_keys (
     hash TEXT NOT NULL PRIMARY KEY,
     made_at REAL NOT NULL
   ) WITHOUT ROWID;`,
  // One row while bytes of an erased student may still lie in the files.
  `CREATE TABLE unscrubbed (mark INTEGER NOT NULL PRIMARY KEY CHECK (mark = 1));`,
];

/** Brings a database to the present schema. Throws RangeError where a later version of the program wrote it. */
export function migrate(connection: Connection): void {
  connection.transaction(() => {
    const done = Number(connection.pragma('user_version'));
    if (done > MIGRATIONS.length) {
      throw new RangeError(`the store is at version ${done}, this program knows up to ${MIGRATIONS.length}`);
    }
    for (const step of MIGRATIONS.slice(done)) connection.exec(step);
    if (done < MIGRATIONS.length) connection.exec(`PRAGMA user_version = ${MIGRATIONS.length}`);
  });
}

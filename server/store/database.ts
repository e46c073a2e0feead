import Database from 'libsql';

/** What may be bound; numbers must be finite, text must be well formed and without NUL. */
type Value = string | number | null;

type Statement<Row> = {
  readonly run: (...values: readonly Value[]) => void;
  readonly all: (...values: readonly Value[]) => readonly Row[];
};

export type Connection = {
  /** `Row` is what the statement's columns give. */
  readonly prepare: <Row = unknown>(sql: string) => Statement<Row>;
  readonly exec: (sql: string) => void;
  /** First column of the first row that a pragma gives. */
  readonly pragma: (source: string) => Value;
  /** Runs `work` in one write transaction; a throw rolls it back. */
  readonly transaction: <T>(work: () => T) => T;
  /** Runs `work`, which only reads, on one state of the file. */
  readonly snapshot: <T>(work: () => T) => T;
  /** Runs `work` so that a throw undoes it alone; inside a transaction. */
  readonly savepoint: <T>(work: () => T) => T;
  readonly close: () => void;
};

/** Milliseconds a write waits for another process; the event loop stands still meanwhile. */
const BUSY_TIMEOUT_MS = 1000;

/** Opens a file as a durable database: write-ahead log unless asked otherwise, every commit synced, deleted bytes overwritten. */
export function openConnection(
  file: string,
  { waitMs = BUSY_TIMEOUT_MS, journal = 'WAL' }: { readonly waitMs?: number; readonly journal?: 'WAL' | 'DELETE' } = {},
): Connection {
  const database = new Database(file, { timeout: waitMs });
  const prepare = <Row = unknown>(sql: string): Statement<Row> => {
    const statement = database.prepare(sql);
    // The driver keeps what was bound before where too little is given, so the count is ours to check.
    const places = sql.split('?').length - 1;
    return {
      run: (...values) => {
        statement.run(...checked(values, places, sql));
      },
      // Only `all` leaves the statement at rest: after the driver's `get` neither vacuum nor close would work.
      all: (...values) => statement.all(...checked(values, places, sql)) as Row[],
    };
  };
  const pragma = (source: string): Value => {
    const [row] = prepare<Record<string, Value>>(`PRAGMA ${source}`).all();
    return row ? (Object.values(row)[0] ?? null) : null;
  };
  const attempt = <T>(work: () => T, begin: string, end: string, undo: string): T => {
    database.exec(begin);
    try {
      const result = work();
      database.exec(end);
      return result;
    } catch (error) {
      // Some errors (disk full) end the transaction by themselves; undoing again would hide the first error.
      if (database.inTransaction) database.exec(undo);
      throw error;
    }
  };

  database.exec('PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA secure_delete = ON;');
  // Sorting and vacuum must leave no copy of a name in a temporary file.
  database.exec('PRAGMA temp_store = MEMORY');
  // The answer tells what the file system allows; without a log beside the file the classic journal is as safe, only slower.
  if (journal === 'WAL' && pragma('journal_mode = WAL') !== 'wal') pragma('journal_mode = DELETE');

  return {
    prepare,
    exec: (sql) => void database.exec(sql),
    pragma,
    transaction: (work) => attempt(work, 'BEGIN IMMEDIATE', 'COMMIT', 'ROLLBACK'),
    snapshot: (work) => attempt(work, 'BEGIN', 'COMMIT', 'ROLLBACK'),
    savepoint: (work) => attempt(work, 'SAVEPOINT part', 'RELEASE part', 'ROLLBACK TO part; RELEASE part'),
    close: () => {
      // The driver frees its statements only at garbage collection, so closing alone would leave the log beside the file.
      if (pragma('journal_mode') === 'wal') pragma('wal_checkpoint(TRUNCATE)');
      try {
        pragma('journal_mode = DELETE');
      } catch (error) {
        // Somebody else still reads the file; then the log is theirs to clear away.
        if (!isBusy(error)) throw error;
      }
      database.close();
    },
  };
}

/** Errors that concern one write; all others (disk full, input and output, read-only, busy, corrupt) concern the whole file. */
const OF_ONE_WRITE = /^SQLITE_(CONSTRAINT|MISMATCH|TOOBIG|RANGE)/;

/** True for an error that the values of one write brought about: another write may well succeed. */
export function isOfOneWrite(error: unknown): boolean {
  if (error instanceof TypeError || error instanceof RangeError) return true;
  return error instanceof Error && 'code' in error && OF_ONE_WRITE.test(String(error.code));
}

/** True for the driver's error when another process holds the file. */
export function isBusy(error: unknown): boolean {
  return error instanceof Error && 'code' in error && String(error.code).startsWith('SQLITE_BUSY');
}

/** The driver stores NaN as null, cuts text at NUL, and ends the process on a boolean: nothing of that gets through. */
function checked(values: readonly Value[], places: number, sql: string): Value[] {
  if (values.length !== places) throw new RangeError(`${places} values expected, ${values.length} given: ${sql}`);
  return values.map((value) => {
    const fits =
      value === null ||
      (typeof value === 'number' && Number.isFinite(value)) ||
      (typeof value === 'string' && !value.includes('\0') && !LONE_SURROGATE.test(value));
    if (!fits) throw new TypeError(`not a value for the database: ${describe(value)}`);
    return value;
  });
}

const LONE_SURROGATE = /\p{Surrogate}/u;

function describe(value: unknown): string {
  return typeof value === 'string' ? 'text with NUL or half a character' : `${typeof value} ${String(value)}`;
}

/** One event as it lies in the log. */
export type LogRow = {
  /** Place in the room's log, from 1, without gaps. */
  readonly seq: number;
  /** Wall time in milliseconds since 1970: recorded, never used for order. */
  readonly at: number;
  /** Milliseconds of the process's monotonic clock; comparable only within one `boot`. */
  readonly mono: number;
  /** Names the run of the process that wrote it. */
  readonly boot: string;
  /** The student whose event it is, so that it can be erased; null for events of the room. */
  readonly student: string | null;
  /** Type of the event, `AnswerWritten`. */
  readonly type: string;
  /** The event as JSON text, its `type` and `version` included. */
  readonly body: string;
};

/** What is known of a person: never in the log. */
export type PersonRow = {
  /** Random id that events carry. */
  readonly student: string;
  readonly name: string;
  /** SHA-256 of the student's token, lower-case hex. */
  readonly tokenHash: string;
  /** JSON text: left-handed, pair, left thumb. */
  readonly settings: string;
};

/** What one room adds in one commit. */
export type RoomAppend = {
  readonly room: string;
  /** At least one; `seq` runs on from the expected next number without gaps. */
  readonly rows: readonly LogRow[];
  /** Inserted, or replacing the row of the same room and student, in the same transaction. */
  readonly people: readonly PersonRow[];
  /** What becomes of the settings of the room's class, in the same transaction. */
  readonly classChange?: ClassChange;
};

/** `change` makes the new settings of a class from its present ones, both as JSON text. A class that there is not stays away. */
export type ClassChange = { readonly id: string; readonly change: (settings: string) => string };

/**
 * `collided`: the first row's seq is not the next one of that room. `failed`: the room's own rows could not be stored, and
 * why. Nothing of this room was stored in either case.
 */
export type AppendOutcome = 'stored' | 'collided' | { readonly failed: unknown };

/** A room as read back. */
export type RoomLog = { readonly rows: readonly LogRow[]; readonly people: readonly PersonRow[] };

/** One line of the list of rooms. */
export type RoomRow = {
  readonly room: string;
  /** `at` of the room's first event. */
  readonly openedAt: number;
  /** Type of the room's last event among the types asked for. */
  readonly mark: string;
};

/** A class: its rooms copy its settings when they open. */
export type ClassRow = {
  readonly id: string;
  readonly name: string;
  /** JSON text of the room settings. */
  readonly settings: string;
};

/** Erasing a student for good. */
export type Erasure = {
  readonly room: string;
  readonly student: string;
  /** What stands in place of each of the student's events: type `Erased`, and its JSON text. */
  readonly blank: { readonly type: string; readonly body: string };
  /** Appended after them, so that another writer's copy of the room collides and is read again. */
  readonly row: LogRow;
};

/** The log of all rooms, the people in them, and the classes. Everything that resolves is on disk. */
export type EventStore = {
  /**
   * Appends for many rooms in one transaction; outcomes stand in the order of `appends`, one room at most once.
   * A room that collides or fails is rolled back alone. Rejects where nothing at all was stored (disk full, read-only).
   */
  readonly append: (appends: readonly RoomAppend[]) => Promise<readonly AppendOutcome[]>;
  /** Rows in order of seq and people, as one snapshot; null for an unknown room. */
  readonly read: (room: string) => Promise<RoomLog | null>;
  /** All rooms that have an event of one of `types`, newest first. */
  readonly rooms: (types: readonly string[]) => Promise<readonly RoomRow[]>;
  /**
   * Deletes the person's row, overwrites type and body of each of the student's rows with `blank`, clears their `student`
   * (seq, at, mono and boot stay), appends `row`. `collided` changes nothing. The old bytes go with the next `scrub`.
   */
  readonly erase: (erasure: Erasure) => Promise<'stored' | 'collided'>;
  /** Sees that what was erased since the last one is in no file; nothing to do where nothing was. Rejects where it did not work yet. */
  readonly scrub: () => Promise<void>;
  /** All classes by name. */
  readonly classes: () => Promise<readonly ClassRow[]>;
  /** Inserts, or replaces the class of the same id. */
  readonly putClass: (row: ClassRow) => Promise<void>;
  /** Ends writing and frees the file; nothing may be called after it. */
  readonly close: () => Promise<void>;
};

/** Devices that were let in as the teacher's, kept over restarts. */
export type KeyStore = {
  /** `hash`: SHA-256 of the key in the device's cookie, lower-case hex. `madeAt`: wall time in milliseconds. */
  readonly putTeacherKey: (hash: string, madeAt: number) => Promise<void>;
  readonly hasTeacherKey: (hash: string) => Promise<boolean>;
  /** Forgets the keys made before a wall time. */
  readonly dropTeacherKeys: (madeBefore: number) => Promise<void>;
};

import type { Command, Reply, RoomSettings, SoundOrder } from '../protocol/messages.ts';
import { roomCode } from '../rooms/code.ts';
import type { Effect } from '../rooms/commands.ts';
import { refuse } from '../rooms/commands.ts';
import type { Stamp } from '../rooms/events.ts';
import { versioned } from '../rooms/events.ts';
import type { People } from '../rooms/people.ts';
import { classAfter, wrongSetting } from '../rooms/settings.ts';
import type { RoomState } from '../rooms/state.ts';
import { evolve } from '../rooms/evolve.ts';
import type { AppendOutcome, EventStore, RoomAppend } from '../store/event-store.ts';
import type { Batch, Caller, Chance, Errand } from './batch.ts';
import { decideBatch, erasedBy, memoryKey } from './batch.ts';
import type { HeldRoom } from './room-log.ts';
import { nextRow, unopened } from './room-log.ts';
import type { Later } from './scrubbing.ts';
import { createScrubbing } from './scrubbing.ts';
import type { Aside } from './shelf.ts';
import { createShelf } from './shelf.ts';

export type { Caller } from './batch.ts';

/** A room at a moment at which all of it is on disk. Live objects: read them at once, change nothing, keep nothing. */
export type RoomLook = {
  readonly state: RoomState;
  readonly people: People;
  /** Events in the log. */
  readonly seq: number;
  /** Session of the host page that holds the sound. */
  readonly soundHolder: string | null;
};

/** What others must hear of, once it is on disk. */
export type RoomChange = {
  readonly room: string;
  /** What all students see alike has changed, and with it what each sees of the current question. */
  readonly turned: boolean;
  /** Students of whom something was written. */
  readonly students: ReadonlySet<string>;
};

export type KeeperOptions = {
  readonly store: EventStore;
  readonly clock: { readonly wall: () => number; readonly mono: () => number; readonly boot: string };
  readonly chance: Chance;
  /** Called after the commit and the replies, before the next command of any room is decided. */
  readonly changed: (change: RoomChange, look: RoomLook) => void;
  /** A student was erased: the pages must leave. Called in any case, also where the room cannot be read after it. */
  readonly erased: (room: string, student: string) => void;
  /** An order for the host page of that session. */
  readonly order: (room: string, page: string, order: SoundOrder) => void;
  /** A room that could not be read, decided or stored; the lesson of the others goes on. */
  readonly fault: (room: string, error: unknown) => void;
  /** Runs the next tick; default `setImmediate`. */
  readonly defer?: (tick: () => void) => void;
  /** Tries again later; default a timer that keeps no process alive. Returns what calls it off. */
  readonly later?: Later;
};

type RoomListing = { readonly room: string; readonly status: RoomState['status']; readonly openedAt: number };

export type Keeper = {
  /** Opens a room and gives its code. RangeError for settings that cannot hold; rejects where it is not stored. */
  readonly open: (classId: string, settings: RoomSettings) => Promise<string>;
  /** Never rejects: what cannot be done is refused. */
  readonly submit: (room: string, caller: Caller, command: Command) => Promise<Reply>;
  /** Whether there is such a room; `failed` where it cannot be read now. */
  readonly find: (room: string) => Promise<'here' | 'absent' | 'failed'>;
  /** Looks into a room between two commits; null for a room that is not there or cannot be read. */
  readonly look: <T>(room: string, read: (look: RoomLook) => T) => Promise<T | null>;
  readonly rooms: () => Promise<readonly RoomListing[]>;
  /** A host page is gone: if it held the sound, nobody does. */
  readonly pageLeft: (room: string, page: string) => void;
  /** Waits for what was submitted; refuses what comes later. The store stays open. */
  readonly close: () => Promise<void>;
};

const STATUS_BY_EVENT: Readonly<Record<string, RoomState['status']>> = {
  RoomOpened: 'register',
  RoundStarted: 'round',
  LessonEnded: 'lesson-ended',
  RoomClosed: 'room-ended',
};
const NOT_SAVED: Reply = { ok: false, reason: 'not-saved' };

/**
 * Keeps rooms: decides the commands of one tick one after the other, stores all their events in one commit, then answers and
 * tells. Whatever goes wrong with one room is that room's alone.
 */
export function createKeeper(options: KeeperOptions): Keeper {
  const { store, clock, chance, fault } = options;
  const defer = options.defer ?? setImmediate;
  const shelf = createShelf(store, clock.mono);
  const scrubbing = createScrubbing(store, (error) => fault('erasure', error), options.later);
  let waiting: Errand[] = [];
  let flight: Promise<void> | null = null;
  let scheduled = false;
  let closed = false;

  const stampNow = (): Stamp => ({ at: clock.wall(), mono: clock.mono(), boot: clock.boot });
  const lookAt = (room: string, { state, people, seq }: HeldRoom): RoomLook => {
    return { state, people, seq, soundHolder: shelf.aside(room).holder };
  };
  /** Puts errands before all that wait: they were there first. */
  const waitAgain = (errands: readonly Errand[]): void => {
    if (errands.length > 0) waiting = [...errands, ...waiting];
  };

  const schedule = (): void => {
    if (scheduled || flight !== null || waiting.length === 0) return;
    scheduled = true;
    defer(() => {
      scheduled = false;
      flight = tick().finally(() => {
        flight = null;
        schedule();
      });
    });
  };
  const busy = (): boolean => waiting.length > 0 || flight !== null;
  const settled = async (): Promise<void> => {
    for (let begun = flight; begun !== null; begun = flight) await begun;
  };

  const tick = async (): Promise<void> => {
    const byRoom = new Map<string, Errand[]>();
    for (const errand of waiting) {
      const errands = byRoom.get(errand.room);
      if (errands === undefined) byRoom.set(errand.room, [errand]);
      else errands.push(errand);
    }
    waiting = [];
    await Promise.all(Array.from(byRoom, ([room, errands]) => loadFor(room, errands)));
    const batches = Array.from(byRoom).flatMap(([room, errands]) => decideRoom(room, errands) ?? []);
    const outcomes = await commit(batches);
    for (const batch of batches) {
      waitAgain(batch.left);
      const outcome = outcomes.get(batch.room) ?? 'stored';
      if (outcome === 'stored') await finish(batch);
      else takeBack(batch, outcome === 'collided');
    }
    shelf.sweep();
  };

  /** Brings the room into memory, or refuses its errands. */
  const loadFor = async (room: string, errands: readonly Errand[]): Promise<void> => {
    const found = await find(room);
    if (found === 'here') return;
    const reply: Reply = found === 'absent' ? refuse('room-not-found', { room }) : NOT_SAVED;
    for (const errand of errands) errand.reply(reply);
  };

  const decideRoom = (room: string, errands: readonly Errand[]): Batch | null => {
    const found = shelf.get(room);
    if (found === undefined) return null;
    try {
      return decideBatch(room, found, shelf.aside(room), errands, chance, (error) => fault(room, error));
    } catch (error) {
      shelf.drop(room);
      fault(room, error);
      for (const { reply } of errands) reply(NOT_SAVED);
      return null;
    }
  };

  /** One commit for all rooms that wrote something. */
  const commit = async (batches: readonly Batch[]): Promise<Map<string, 'stored' | 'collided' | 'failed'>> => {
    const writing = batches.filter(({ rows }) => rows.length > 0);
    if (writing.length === 0) return new Map();
    try {
      const stored = await store.append(writing.map(appendOf));
      return new Map(writing.map(({ room }, index) => [room, outcomeOf(room, stored[index])]));
    } catch (error) {
      for (const { room } of writing) fault(room, error);
      return new Map(writing.map(({ room }) => [room, 'failed']));
    }
  };

  /** What a room adds; what it changes of its settings holds for its class as well, and for the rooms that open next. */
  const appendOf = ({ room, rows, people, settings }: Batch): RoomAppend => {
    const id = shelf.get(room)?.state.class;
    if (settings.length === 0 || id === undefined) return { room, rows, people };
    return { room, rows, people, classChange: { id, change: (stored) => classAfter(stored, settings) } };
  };

  const outcomeOf = (room: string, outcome: AppendOutcome | undefined): 'stored' | 'collided' | 'failed' => {
    if (typeof outcome === 'string') return outcome;
    fault(room, outcome?.failed ?? new Error('the store did not say what became of it'));
    return 'failed';
  };

  /** Nothing of it happened. After a collision each is tried once more, upon what the other writer wrote. */
  const takeBack = ({ room, decided }: Batch, collided: boolean): void => {
    shelf.drop(room);
    const again: Errand[] = [];
    for (const { errand } of decided) {
      if (collided && !errand.retried) {
        errand.retried = true;
        again.push(errand);
      } else errand.reply(NOT_SAVED);
    }
    waitAgain(again);
  };

  /** All of it is on disk: effects, then answers, then the news. */
  const finish = async (batch: Batch): Promise<void> => {
    const { room, decided, rows } = batch;
    const aside = shelf.aside(room);
    let erased = false;
    let moved = false;
    for (const { errand, decision } of decided) {
      if (!decision.ok) {
        errand.reply(decision);
        continue;
      }
      const student = erasedBy(decision);
      if (student !== null) {
        if (!(await erase(room, student, errand))) continue;
        erased = true;
      }
      for (const effect of decision.effects ?? []) moved = takeEffect(room, aside, effect) || moved;
      const reply: Reply = decision.value === undefined ? { ok: true } : { ok: true, value: decision.value };
      const key = memoryKey(errand);
      if (key !== null) aside.replies.keep(key, reply);
      errand.reply(reply);
    }
    const now = shelf.get(room);
    if (now === undefined || (rows.length === 0 && !erased && !moved)) return;
    tell({ room, turned: now.state.turn !== batch.turn, students: batch.students }, now);
  };

  /** True where another page holds the sound from now on. */
  const takeEffect = (room: string, aside: Aside, effect: Effect): boolean => {
    switch (effect.kind) {
      case 'erase':
        return false;
      case 'order':
        if (aside.holder !== null) guarded(room, options.order, room, aside.holder, effect.order);
        return false;
      case 'hold-sound':
        if (aside.holder === effect.page) return false;
        if (aside.holder !== null) guarded(room, options.order, room, aside.holder, { order: 'stop' });
        aside.holder = effect.page;
        return true;
    }
  };

  /** Erases for good and reads the room anew. False where it was not done; the errand is then answered or tried again. */
  const erase = async (room: string, student: string, errand: Errand): Promise<boolean> => {
    const found = shelf.get(room) ?? unopened();
    const { row } = nextRow(found, { type: 'Erased' }, errand.stamp);
    const blank = { type: 'Erased', body: JSON.stringify(versioned({ type: 'Erased' })) };
    shelf.drop(room);
    try {
      if ((await store.erase({ room, student, blank, row })) === 'collided') {
        takeBackErasure(errand);
        return false;
      }
    } catch (error) {
      fault(room, error);
      errand.reply(NOT_SAVED);
      return false;
    }
    // The student is gone: whatever fails from here on, the teacher and the pages are told so.
    await scrubbing.run();
    await find(room);
    guarded(room, options.erased, room, student);
    return true;
  };

  const takeBackErasure = (errand: Errand): void => {
    if (errand.retried) return errand.reply(NOT_SAVED);
    errand.retried = true;
    waitAgain([errand]);
  };

  /** Brings the room into memory where it is one. */
  const find = async (room: string): Promise<'here' | 'absent' | 'failed'> => {
    try {
      return (await shelf.load(room)) === null ? 'absent' : 'here';
    } catch (error) {
      fault(room, error);
      return 'failed';
    }
  };

  const tell = (change: RoomChange, now: HeldRoom): void => {
    guarded(change.room, options.changed, change, lookAt(change.room, now));
  };

  /** A listener that throws must not stop the lesson. */
  const guarded = <A extends readonly unknown[]>(room: string, hook: (...args: A) => void, ...args: A): void => {
    try {
      hook(...args);
    } catch (error) {
      fault(room, error);
    }
  };

  return {
    open: async (classId, settings) => {
      const wrong = wrongSetting(settings);
      if (wrong !== null) throw new RangeError(`a room cannot have ${wrong}`);
      const taken = new Set<string>();
      for (;;) {
        const room = roomCode(chance.below, (code) => taken.has(code) || shelf.get(code) !== undefined);
        const stamp = stampNow();
        const fresh = unopened();
        const { row, event } = nextRow(fresh, { type: 'RoomOpened', room, class: classId, settings }, stamp);
        const [outcome] = await store.append([{ room, rows: [row], people: [] }]);
        if (outcome === 'stored') {
          evolve(fresh.state, event, stamp);
          fresh.seq = row.seq;
          shelf.put(room, fresh);
          return room;
        }
        if (outcome !== 'collided') throw outcome?.failed ?? new Error('the store did not say what became of it');
        taken.add(room);
      }
    },
    submit: (room, caller, command) =>
      new Promise((reply) => {
        if (closed) reply(NOT_SAVED);
        else waiting.push({ room, caller, command, stamp: stampNow(), reply, retried: false });
        schedule();
      }),
    find: async (room) => {
      await settled();
      return find(room);
    },
    look: async (room, read) => {
      try {
        for (;;) {
          await settled();
          if ((await find(room)) !== 'here') return null;
          const found = shelf.get(room);
          if (flight === null && found !== undefined) return read(lookAt(room, found));
        }
      } catch (error) {
        fault(room, error);
        return null;
      }
    },
    rooms: async () => {
      const rows = await store.rooms(Object.keys(STATUS_BY_EVENT));
      return rows.map(({ room, openedAt, mark }) => ({ room, openedAt, status: STATUS_BY_EVENT[mark] ?? 'unopened' }));
    },
    pageLeft: (room, page) => {
      const aside = shelf.aside(room);
      if (aside.holder !== page) return;
      aside.holder = null;
      void settled().then(() => {
        const now = shelf.get(room);
        if (now !== undefined) tell({ room, turned: false, students: new Set() }, now);
      });
    },
    close: async () => {
      closed = true;
      scrubbing.close();
      while (busy()) {
        await new Promise<void>((next) => defer(next));
        await settled();
      }
    },
  };
}

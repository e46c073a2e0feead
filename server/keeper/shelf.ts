import type { Reply } from '../protocol/messages.ts';
import type { EventStore } from '../store/event-store.ts';
import type { HeldRoom } from './room-log.ts';
import { foldRoom } from './room-log.ts';

/** Replies kept a room: many times what a class sends in the minutes in which a repeat can still arrive. */
const MOST_REPLIES = 4_096;
/** A room that nobody used for so long leaves memory; its log brings it back. */
const IDLE_MS = 30 * 60_000;

/** Replies to commands that happened, by sender and id, so that a repeat is answered and not applied twice. */
export type Replies = {
  readonly get: (key: string) => Reply | undefined;
  readonly keep: (key: string, reply: Reply) => void;
};

/** What is known of a room beside its log; it outlives the room's copy in memory, not the process. */
export type Aside = {
  /** Session of the host page that holds the sound. */
  holder: string | null;
  readonly replies: Replies;
};

/** The rooms in memory. */
export type Shelf = {
  readonly get: (room: string) => HeldRoom | undefined;
  readonly put: (room: string, held: HeldRoom) => void;
  /** Folds the room from its log where it is not in memory. Null: no such room. Rejects where it cannot be read. */
  readonly load: (room: string) => Promise<HeldRoom | null>;
  /** Throws the copy out, so that the next load reads the log. */
  readonly drop: (room: string) => void;
  /** What is known beside the log; asking for it counts as use. */
  readonly aside: (room: string) => Aside;
  /** Lets rooms go that nobody used for half an hour. */
  readonly sweep: () => void;
};

/** An empty shelf over a store; `mono` gives milliseconds. */
export function createShelf(store: Pick<EventStore, 'read'>, mono: () => number): Shelf {
  const rooms = new Map<string, HeldRoom>();
  const loading = new Map<string, Promise<HeldRoom | null>>();
  const asides = new Map<string, Aside & { usedMs: number }>();

  const read = async (room: string): Promise<HeldRoom | null> => {
    const log = await store.read(room);
    if (log === null) return null;
    const folded = foldRoom(log);
    rooms.set(room, folded);
    return folded;
  };
  return {
    get: (room) => rooms.get(room),
    put: (room, held) => void rooms.set(room, held),
    load: async (room) => {
      const known = rooms.get(room);
      if (known !== undefined) return known;
      const begun = loading.get(room) ?? read(room).finally(() => loading.delete(room));
      loading.set(room, begun);
      return begun;
    },
    drop: (room) => void rooms.delete(room),
    aside: (room) => {
      const aside = asides.get(room) ?? { holder: null, replies: createReplies(), usedMs: 0 };
      aside.usedMs = mono();
      asides.set(room, aside);
      return aside;
    },
    sweep: () => {
      for (const [room, { holder, usedMs }] of asides) {
        if (holder !== null || mono() - usedMs < IDLE_MS) continue;
        asides.delete(room);
        rooms.delete(room);
      }
    },
  };
}

/** Remembers the newest replies and forgets the oldest. */
export function createReplies(most = MOST_REPLIES): Replies {
  const kept = new Map<string, Reply>();
  return {
    get: (key) => kept.get(key),
    keep: (key, reply) => {
      kept.set(key, reply);
      const [oldest] = kept.keys();
      if (kept.size > most && oldest !== undefined) kept.delete(oldest);
    },
  };
}

import { PROTOCOL_VERSION, type Handshake, type Reply } from '../../server/protocol/messages.ts';
import type { StudentCommon, StudentOwn } from '../../server/protocol/views.ts';
import { newId } from '../shared/ids.ts';
import { openLine, type ConnectionStatus, type LineOptions } from '../shared/line.ts';
import { nameLate } from '../shared/names.ts';
import type { Keep } from '../shared/storage.ts';
import { createAnswering, type AnsweringState } from './answering.ts';
import { createStore, type Store } from './store.ts';

/** What a student chooses at the door. */
export type Seat = {
  readonly name: string;
  readonly leftHanded: boolean;
  readonly pair: boolean;
  readonly leftThumb: boolean;
};

export type Refusal = { readonly reason: string; readonly detail: Readonly<Record<string, string | number>> };

export type StudentState = AnsweringState & {
  readonly status: ConnectionStatus;
  readonly common: StudentCommon | null;
  /** null until this phone has taken a seat. */
  readonly own: StudentOwn | null;
  /** False while a phone that had a seat here waits to hear of it: no name is asked for again meanwhile. */
  readonly atDoor: boolean;
  readonly joining: boolean;
  /** Why a seat was not given, or why the room cannot be entered. */
  readonly refusal: Refusal | null;
  /** The private press "can't hear". */
  readonly call: { readonly ask: string; readonly state: 'telling' | 'told' | 'failed' } | null;
};

export type Student = {
  readonly room: string;
  readonly store: Store<StudentState>;
  readonly join: (seat: Seat) => Promise<void>;
  /** Writes an answer; null takes it back. */
  readonly write: (ask: string, answer: unknown) => void;
  readonly callCannotHear: (ask: string) => Promise<void>;
  readonly close: () => void;
};

/** How long a seat may follow the room's phase. */
const SEAT_MS = 600;

/** Opens the room for one phone. Its token, and whether it has had a seat, are kept in `keep`, by room. */
export function createStudent(room: string, keep: Keep, options: LineOptions = {}): Student {
  const tokenPlace = `hearsay:${room}:token`;
  const seatedPlace = `hearsay:${room}:seated`;
  const store = createStore<StudentState>({
    status: { kind: 'connecting' },
    common: null,
    own: null,
    atDoor: keep.get(seatedPlace) === null,
    joining: false,
    refusal: null,
    call: null,
    pending: null,
    outcome: null,
    slow: false,
  });

  const handshake = (): Handshake => {
    // Made here and kept before it is first sent: a seat whose acknowledgement was lost is found again by it.
    let token = keep.get(tokenPlace);
    if (token === null) keep.set(tokenPlace, (token = newId()));
    return { role: 'student', room, version: PROTOCOL_VERSION, token };
  };

  const listeners = {
    common: (common: StudentCommon) => {
      store.set({ common });
      // What is drawn already is drawn anew once the names are here.
      void nameLate(common.naming).then(
        () => store.set({}),
        // Out of reach: the next news tries again.
        () => undefined,
      );
      // The seat follows at once where the server still knows it.
      if (!store.get().atDoor) setTimeout(() => store.set({ atDoor: true }), SEAT_MS);
    },
    own: (own: StudentOwn) => {
      if (own.token) keep.set(tokenPlace, own.token);
      keep.set(seatedPlace, '1');
      answering.countFrom(own.counter);
      const { outcome } = store.get();
      // It says what counts by now, from whichever tab.
      const told = outcome?.ask === own.ask && !outcome?.refusal;
      store.set({ own, refusal: null, ...(told && { outcome: null }) });
      answering.flush();
    },
    // Taken off the roll: the seat and its token are gone; the door stands open, and the line comes with another token.
    removed: () => {
      keep.remove(tokenPlace);
      keep.remove(seatedPlace);
      store.set({ own: null, atDoor: true, refusal: { reason: 'not-joined', detail: {} } });
      line.reconnect();
    },
  };

  const follow = (status: ConnectionStatus): void => {
    store.set({ status });
    if (status.kind === 'refused') store.set({ refusal: { reason: status.reason, detail: status.detail ?? {} } });
  };

  const line = openLine(handshake, listeners, follow, options);
  const answering = createAnswering({
    send: line.send,
    keep,
    room,
    tell: (part) => {
      store.set(part);
      // Taken off the roll while this phone was away: nobody told it then, so the refusal does.
      if (part.outcome?.refusal?.reason === 'not-joined') listeners.removed();
    },
    now: () => performance.now(),
    wall: () => Date.now(),
    later: (act, ms) => setTimeout(act, ms),
  });

  return {
    room,
    store,
    join: async (seat) => {
      if (store.get().joining) return;
      store.set({ joining: true, refusal: null });
      const command = { type: 'Join', id: newId(), ...seat } as const;
      // The same id again: a repeat is answered, not seated twice.
      const reply = (await line.send(command)) ?? (await line.send(command));
      store.set({ joining: false, refusal: refusalOf(reply) });
    },
    write: answering.write,
    callCannotHear: async (ask) => {
      store.set({ call: { ask, state: 'telling' } });
      const reply = await line.send({ type: 'CannotHear', id: newId(), ask });
      store.set({ call: { ask, state: reply?.ok ? 'told' : 'failed' } });
    },
    close: line.close,
  };
}

function refusalOf(reply: Reply | null): Refusal | null {
  if (!reply) return { reason: 'no-network', detail: {} };
  return reply.ok ? null : { reason: reply.reason, detail: reply.detail ?? {} };
}

/** The answer on disk for the question that stands now; null where none. */
export function writtenOf({ common, own, outcome }: StudentState): unknown {
  const ask = common?.ask;
  if (ask === undefined) return null;
  if (outcome?.ask === ask && !outcome.refusal) return outcome.answer;
  return own?.ask === ask ? (own.answer ?? null) : null;
}

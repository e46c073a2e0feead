import { batch, computed, effect, signal, type ReadonlySignal } from '@preact/signals';
import { PROTOCOL_VERSION, type Handshake, type Reply } from '../../server/protocol/messages.ts';
import type { StudentCommon, StudentOwn } from '../../server/protocol/views.ts';
import { openConnection, type ConnectionStatus } from '../shared/connection.ts';
import { newId } from '../shared/ids.ts';
import type { Keep } from '../shared/storage.ts';
import { createAnswering, type Answering } from './answering.ts';

/** What a student chooses at the door. */
export type Seat = {
  readonly name: string;
  readonly leftHanded: boolean;
  readonly pair: boolean;
  readonly leftThumb: boolean;
};

export type Refusal = { readonly reason: string; readonly detail: Readonly<Record<string, string | number>> };

/** The private press "can't hear": told, or not gone through. */
export type HearingCall = { readonly ask: string; readonly state: 'telling' | 'told' | 'failed' };

export type Student = {
  readonly room: string;
  readonly status: ReadonlySignal<ConnectionStatus>;
  readonly common: ReadonlySignal<StudentCommon | null>;
  /** null until this phone has taken a seat. */
  readonly own: ReadonlySignal<StudentOwn | null>;
  readonly answering: Answering;
  /** The answer on disk for the question that stands now; null where none. */
  readonly written: ReadonlySignal<unknown>;
  readonly joining: ReadonlySignal<boolean>;
  /** Why a seat was not given, or why the room cannot be entered. */
  readonly refusal: ReadonlySignal<Refusal | null>;
  readonly call: ReadonlySignal<HearingCall | null>;
  /** False while a phone that had a seat here waits to hear of it: no name is asked for again meanwhile. */
  readonly atDoor: ReadonlySignal<boolean>;
  readonly join: (seat: Seat) => Promise<void>;
  readonly callCannotHear: (ask: string) => Promise<void>;
  readonly close: () => void;
};

/** How long a seat may follow the room's phase. */
const SEAT_MS = 600;

/** Opens the room for one phone. The token of an earlier visit is kept in `keep`, by room. */
export function createStudent(room: string, keep: Keep, options: { readonly url?: string } = {}): Student {
  const tokenPlace = `hearsay:${room}:token`;
  const common = signal<StudentCommon | null>(null);
  const own = signal<StudentOwn | null>(null);
  const joining = signal(false);
  const refusal = signal<Refusal | null>(null);
  const atDoor = signal(keep.get(tokenPlace) === null);
  const call = signal<HearingCall | null>(null);

  const handshake = (): Handshake => {
    const token = keep.get(tokenPlace);
    return { role: 'student', room, version: PROTOCOL_VERSION, ...(token && { token }) };
  };

  const take = (next: StudentOwn): void => {
    if (next.token) keep.set(tokenPlace, next.token);
    answering.countFrom(next.counter);
    own.value = next;
    answering.flush();
  };

  const connection = openConnection(
    handshake,
    {
      common: (next: StudentCommon) => {
        common.value = next;
        // The seat follows at once where the server still knows it.
        if (!atDoor.value) setTimeout(() => (atDoor.value = true), SEAT_MS);
      },
      own: take,
      // Taken off the roll: the seat and its token are gone; the door stands open.
      removed: () => {
        keep.remove(tokenPlace);
        batch(() => {
          own.value = null;
          refusal.value = { reason: 'not-joined', detail: {} };
        });
      },
    },
    options,
  );
  const answering = createAnswering({
    send: connection.send,
    keep,
    room,
    now: () => performance.now(),
    wall: () => Date.now(),
    later: (act, ms) => setTimeout(act, ms),
  });

  const stop = effect(() => {
    const status = connection.status.value;
    if (status.kind !== 'refused') return;
    // A seat that is no more (erased, or another store): the door again, without the old token.
    if (status.reason === 'not-joined' && keep.get(tokenPlace) !== null) {
      keep.remove(tokenPlace);
      connection.reconnect();
    } else refusal.value = { reason: status.reason, detail: status.detail ?? {} };
  });

  const written = computed<unknown>(() => {
    const ask = common.value?.ask;
    if (ask === undefined) return null;
    const settled = answering.outcome.value;
    if (settled?.kind === 'in' && settled.ask === ask) return settled.answer;
    return own.value?.ask === ask ? (own.value.answer ?? null) : null;
  });

  const refused = (reply: Reply | null): Refusal | null => {
    if (!reply) return { reason: 'no-network', detail: {} };
    return reply.ok ? null : { reason: reply.reason, detail: reply.detail ?? {} };
  };

  return {
    room,
    status: connection.status,
    common,
    own,
    answering,
    written,
    joining,
    refusal,
    call,
    atDoor,
    join: async (seat) => {
      if (joining.value) return;
      const id = newId();
      joining.value = true;
      refusal.value = null;
      // The same id again: a repeat is answered, not seated twice.
      const reply =
        (await connection.send({ type: 'Join', id, ...seat })) ??
        (await connection.send({ type: 'Join', id, ...seat }));
      joining.value = false;
      refusal.value = refused(reply);
    },
    callCannotHear: async (ask) => {
      call.value = { ask, state: 'telling' };
      const reply = await connection.send({ type: 'CannotHear', id: newId(), ask });
      call.value = { ask, state: reply?.ok ? 'told' : 'failed' };
    },
    close: () => {
      stop();
      connection.close();
    },
  };
}

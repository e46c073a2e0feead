import { io } from 'socket.io-client';
import {
  SOCKET_PATH,
  type Command,
  type Handshake,
  type Reply,
  type ServerEvents,
} from '../../server/protocol/messages.ts';
import { AGAIN_MS, passes } from './passing.ts';

/** How long a command may go unacknowledged, and a check after waking. */
const ACKNOWLEDGE_MS = 3000;
const CHECK_MS = 1500;

/** `lost`: was live and tries again by itself. `refused`: the server said why, it will not pass, and the page must act. */
export type ConnectionStatus =
  | { readonly kind: 'connecting' | 'live' | 'lost' }
  | { readonly kind: 'refused'; readonly reason: string; readonly detail?: Readonly<Record<string, string | number>> };

export type Line = {
  /** Sends now or not at all. null: not acknowledged (no connection, or too slow); send again with the same id. */
  readonly send: (command: Command) => Promise<Reply | null>;
  /** Leaves and comes back with the present handshake, e.g. after a refusal. */
  readonly reconnect: () => void;
  readonly close: () => void;
};

export type Listeners = { readonly [event in ServerEvents]?: (payload: never) => void };
export type LineOptions = { readonly url?: string };

/**
 * The one socket of a page. `handshake` may be a function: it is then asked at each attempt. `tell` hears each change of
 * the line's status; it begins as `connecting`.
 */
export function openLine(
  handshake: Handshake | (() => Handshake),
  on: Listeners,
  tell: (status: ConnectionStatus) => void,
  options: LineOptions = {},
): Line {
  const current = typeof handshake === 'function' ? handshake : () => handshake;
  let status: ConnectionStatus = { kind: 'connecting' };
  const become = (next: ConnectionStatus): void => tell((status = next));
  const socket = io(options.url ?? location.origin, {
    path: `${SOCKET_PATH}${current().room}/`,
    auth: (give) => give(current()),
    reconnectionDelay: 500,
    reconnectionDelayMax: 3000,
    // Each page has its own socket; a cached one of an earlier room must not be handed out.
    forceNew: true,
  });

  // What the library does not try again: a server that closed on purpose, or refused for a reason that passes.
  let coming: ReturnType<typeof setTimeout> | undefined;
  const comeBack = (): void => {
    clearTimeout(coming);
    coming = setTimeout(() => {
      if (!socket.active) socket.connect();
    }, AGAIN_MS);
  };

  // Registered once: a listener added at each connect would hear everything twice after a drop.
  socket.on('connect', () => become({ kind: 'live' }));
  socket.on('disconnect', (why) => {
    if (status.kind !== 'refused') become({ kind: 'lost' });
    // The handshake then says why, or lets the page in.
    if (why === 'io server disconnect') comeBack();
  });
  socket.on('connect_error', (error: Error & { data?: unknown }) => {
    const refusal = readRefusal(error);
    if (refusal && !passes(refusal.reason)) become(refusal);
    else {
      if (status.kind === 'live') become({ kind: 'lost' });
      if (!socket.active) comeBack();
    }
  });
  for (const [event, listener] of Object.entries(on)) socket.on(event, listener as (payload: unknown) => void);

  // A socket that slept may look open and be dead. It is closed only from the open state: closing one that is still
  // connecting breaks some browsers until they are restarted.
  const check = (): void => {
    if (document.visibilityState === 'hidden') return;
    if (!socket.connected) {
      if (status.kind !== 'refused' && !socket.active) socket.connect();
      return;
    }
    socket.timeout(CHECK_MS).emit('check', (error: unknown) => {
      if (error && socket.connected) socket.disconnect().connect();
    });
  };
  const wakings: readonly [EventTarget, string][] = [
    [document, 'visibilitychange'],
    [window, 'pageshow'],
    [window, 'online'],
  ];
  for (const [target, event] of wakings) target.addEventListener(event, check);

  return {
    // The library would keep what is emitted while disconnected and fire all of it on return: never hand it anything then.
    send: async (command) => {
      if (!socket.connected) return null;
      try {
        return (await socket.timeout(ACKNOWLEDGE_MS).emitWithAck('command', command)) as Reply;
      } catch {
        return null;
      }
    },
    reconnect: () => {
      become({ kind: 'connecting' });
      if (socket.connected) socket.disconnect();
      socket.connect();
    },
    close: () => {
      clearTimeout(coming);
      for (const [target, event] of wakings) target.removeEventListener(event, check);
      socket.disconnect();
    },
  };
}

/** A refused handshake carries `{ reason, detail }`; anything else is a network that fails. */
function readRefusal(error: Error & { data?: unknown }): (ConnectionStatus & { readonly kind: 'refused' }) | null {
  const data = error.data as { reason?: unknown; detail?: Readonly<Record<string, string | number>> } | undefined;
  if (typeof data?.reason !== 'string') return null;
  return { kind: 'refused', reason: data.reason, ...(data.detail && { detail: data.detail }) };
}

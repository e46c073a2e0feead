import type { Server as HttpServer } from 'node:http';
import { Server } from 'socket.io';
import type { Caller, Keeper, RoomChange, RoomLook } from '../keeper/keeper.ts';
import { hashToken } from '../keeper/token.ts';
import { SOCKET_PATH, type Reply, type SoundOrder } from '../protocol/messages.ts';
import { parseCommand } from '../protocol/parsers.ts';
import { admit } from './admission.ts';
import { createHub, type Hub } from './hub.ts';
import type { LiveServer, LiveSocket, SocketData } from './live.ts';
import { sameOrigin, type HostNames } from './security.ts';
import type { Sessions } from './sessions.ts';
import { tokenBucket } from './token-bucket.ts';

/** Messages a second, and at once. A class behind one address is many sockets, so the bound is each socket's own. */
const RATES = { student: [10, 20], host: [30, 60], desk: [30, 60] } as const;
/** No page of ours has a reason to send more in one message. */
const MOST_BYTES = 16_000;
const PING_EVERY_MS = 5000;
const PING_PATIENCE_MS = 8000;

export type SocketParts = {
  readonly http: HttpServer;
  readonly keeper: Pick<Keeper, 'submit' | 'find' | 'look' | 'pageLeft'>;
  readonly sessions: Sessions;
  readonly hosts: HostNames;
  readonly addresses: () => readonly string[];
  readonly visited: (peer: string) => void;
  readonly visitors: () => number;
  readonly fault: (error: unknown) => void;
};

/** The sockets of all rooms, and the ends that the keeper calls. */
export type Sockets = {
  readonly changed: (change: RoomChange, look: RoomLook) => void;
  readonly erased: (room: string, student: string) => void;
  readonly order: (room: string, page: string, order: SoundOrder) => void;
  /** Lets host and desk pages know that addresses or visitors have changed. */
  readonly refresh: () => void;
  /** Ends all connections and closes the http server beneath them. */
  readonly close: () => Promise<void>;
};

export function createSockets(parts: SocketParts): Sockets {
  const { http, keeper, sessions, hosts } = parts;
  const hubs = new Map<string, Hub>();
  const io: LiveServer = new Server(http, {
    path: SOCKET_PATH,
    serveClient: false,
    pingInterval: PING_EVERY_MS,
    pingTimeout: PING_PATIENCE_MS,
    maxHttpBufferSize: MOST_BYTES,
    // Keeps pages of other sites out: the browsers' own rules for other origins say nothing about web sockets.
    allowRequest: (request, answer) => answer(null, hosts.allows(request.headers.host) && sameOrigin(request)),
  });

  const hubOf = (room: string): Hub => {
    const known = hubs.get(room);
    if (known !== undefined) return known;
    const look = (read: (look: RoomLook) => void) => keeper.look(room, read);
    const hub = createHub({ room, io, look, addresses: parts.addresses, visitors: parts.visitors });
    hubs.set(room, hub);
    return hub;
  };

  const leave = (socket: LiveSocket): void => {
    const { role, room, session } = socket.data;
    const hub = hubs.get(room);
    if (hub === undefined) return;
    hub.leave(socket);
    if (role === 'host' && !hub.hasPage(session)) keeper.pageLeft(room, session);
    if (!hub.isEmpty()) return;
    hub.close();
    hubs.delete(room);
  };

  /** The student who has joined is told the seat before the acknowledgement, so that a page never knows the one without the other. */
  const seated = (socket: LiveSocket, value: unknown): Promise<unknown> => {
    const { student, token } = value as { readonly student: string; readonly token?: string };
    const { data } = socket;
    if (token !== undefined) data.tokenHash = hashToken(token);
    return keeper.look(data.room, (look) => {
      if (socket.connected) hubOf(data.room).seat(socket, look, student, token);
    });
  };

  const obey = async (socket: LiveSocket, payload: unknown): Promise<Reply> => {
    const parsed = parseCommand(payload);
    if (!parsed.ok) return parsed;
    const { data } = socket;
    const reply = await keeper.submit(data.room, callerOf(data), parsed.value);
    if (reply.ok && parsed.value.type === 'Join') await seated(socket, reply.value);
    return reply;
  };

  io.use((socket, next) => {
    const admission = admit(socket.handshake, socket.id, keeper, sessions);
    admission.then(
      (outcome) => {
        if (outcome.ok) {
          socket.data = outcome.value;
          next();
        } else next(refusal(outcome));
      },
      (error: unknown) => {
        parts.fault(error);
        next(new Error('fault'));
      },
    );
  });

  io.on('connection', (socket) => {
    const { role, room } = socket.data;
    const [perSecond, burst] = RATES[role];
    const allowed = tokenBucket(perSecond, burst);
    parts.visited(socket.handshake.address);
    socket.use(([, ...received], next) => {
      if (allowed()) next();
      else acknowledge(received, { ok: false, reason: 'too-many-messages' });
    });
    socket.on('command', (...received: readonly unknown[]) => {
      obey(socket, received[0]).then(
        (reply) => acknowledge(received, reply),
        (error: unknown) => {
          parts.fault(error);
          acknowledge(received, { ok: false, reason: 'not-saved' });
        },
      );
    });
    socket.on('check', (...received: readonly unknown[]) => acknowledge(received, { ok: true }));
    // A client may emit an event of this name; without a listener it would be printed as a fault of ours.
    socket.on('error' as 'check', () => {});
    socket.on('disconnect', () => leave(socket));
    const entering = keeper.look(room, (look) => {
      // It may have gone while a commit was waited for.
      if (socket.connected) hubOf(room).enter(socket, look);
    });
    // A page that was shown nothing would wait for ever; a broken line it opens anew.
    void entering.then((entered) => entered === null && socket.conn.close());
  });

  return {
    changed: (change, look) => hubs.get(change.room)?.changed(change, look),
    erased: (room, student) => hubs.get(room)?.erased(student),
    order: (room, page, order) => hubs.get(room)?.order(page, order),
    refresh: () => hubs.forEach((hub) => hub.refresh()),
    close: async () => {
      await io.close();
      hubs.forEach((hub) => hub.close());
    },
  };
}

function callerOf({ role, session, tokenHash }: SocketData): Caller {
  return role === 'student' ? { role, session, tokenHash } : { role, session };
}

/** Answers where an answer is wanted; whoever sends something else in its place gets none. */
function acknowledge(received: readonly unknown[], reply: Reply): void {
  const last = received.at(-1);
  if (typeof last === 'function') last(reply);
}

/** Reaches the page as `connect_error` with the reason in `data`. */
function refusal({ reason, detail }: { readonly reason: string; readonly detail?: unknown }): Error {
  return Object.assign(new Error(reason), { data: { reason, ...(detail !== undefined && { detail }) } });
}

import type { DefaultEventsMap, Server, Socket } from 'socket.io';
import type { ServerEvents } from '../protocol/messages.ts';

type Emitted = { readonly [event in ServerEvents]: (payload?: unknown) => void };
type Heard = {
  readonly command: (payload: unknown, acknowledge: unknown) => void;
  readonly check: (acknowledge: unknown) => void;
};

/** Who sits behind a socket. */
export type SocketData = {
  role: 'student' | 'host' | 'desk';
  room: string;
  /** Hash of the token of a student's phone; null while it has none. */
  tokenHash: string | null;
  /** The student whose page this is; null until the phone has joined. */
  student: string | null;
  /** Names an open host page over reconnects; the connection for all others. */
  session: string;
};

export type LiveServer = Server<Heard, Emitted, DefaultEventsMap, SocketData>;
export type LiveSocket = Socket<Heard, Emitted, DefaultEventsMap, SocketData>;

/** All students of a room. */
export function studentsRoom(room: string): string {
  return `students ${room}`;
}

/** All open pages of one student. */
export function studentRoom(room: string, student: string): string {
  return `student ${room} ${student}`;
}

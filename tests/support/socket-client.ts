import { io, type Socket } from 'socket.io-client';
import { PROTOCOL_VERSION, SOCKET_PATH, type Command, type Reply } from '../../server/protocol/messages.ts';
import type { DeskView, HostView, StudentCommon, StudentOwn } from '../../server/protocol/views.ts';

export type ClientOptions = {
  readonly transports?: readonly ('polling' | 'websocket')[];
  readonly token?: string;
  readonly version?: number;
  readonly page?: string;
  readonly cookie?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly reconnection?: boolean;
};

type Distribute<C> = C extends Command ? Omit<C, 'id'> & { readonly id?: string } : never;
/** A command whose id may be left to the client. */
type CommandLike = Distribute<Command>;

export type Client = {
  readonly socket: Socket;
  /** Sends and waits for the acknowledgement, at most ten seconds. */
  readonly send: (command: CommandLike) => Promise<Reply>;
  /** Emits whatever it is given. */
  readonly raw: (payload: unknown) => Promise<Reply>;
  readonly close: () => void;
};

export type StudentClient = Client & {
  readonly common: () => StudentCommon | null;
  readonly own: () => StudentOwn | null;
  readonly token: () => string | undefined;
  readonly removed: () => boolean;
};

export type WatcherClient<View> = Client & {
  readonly view: () => View;
  readonly patches: () => readonly Partial<View>[];
  readonly orders: () => readonly unknown[];
};

let ids = 0;

/** Opens a socket; rejects with the refusal's `{ reason, detail }` where the door stays shut. */
export async function connect(
  url: string,
  room: string,
  role: 'student' | 'host' | 'desk',
  options: ClientOptions = {},
  listeners: Readonly<Record<string, (payload: never) => void>> = {},
): Promise<Client> {
  const { token, page, version = PROTOCOL_VERSION, cookie, headers, transports } = options;
  const socket = io(url, {
    path: `${SOCKET_PATH}${room}/`,
    forceNew: true,
    reconnection: options.reconnection ?? false,
    auth: { role, room, version, ...(token && { token }), ...(page && { page }) },
    extraHeaders: { ...headers, ...(cookie && { cookie }) },
    ...(transports && { transports: [...transports] }),
  });
  for (const [event, listener] of Object.entries(listeners)) socket.on(event, listener as (payload: unknown) => void);
  await new Promise<void>((resolve, reject) => {
    socket.once('connect', resolve);
    socket.once('connect_error', (error: Error & { data?: unknown }) => {
      socket.disconnect();
      reject(error.data ? Object.assign(new Error(error.message), error.data) : error);
    });
  });
  const raw = (payload: unknown) => socket.timeout(10_000).emitWithAck('command', payload) as Promise<Reply>;
  return {
    socket,
    raw,
    send: (command) => raw({ ...command, id: command.id ?? `test-${(ids += 1)}` }),
    close: () => void socket.disconnect(),
  };
}

/** A phone: connected, not yet joined. */
export async function connectStudent(url: string, room: string, options: ClientOptions = {}): Promise<StudentClient> {
  let common: StudentCommon | null = null;
  let own: StudentOwn | null = null;
  let { token } = options;
  let removed = false;
  const client = await connect(url, room, 'student', options, {
    common: (next: StudentCommon) => (common = next),
    own: (next: StudentOwn) => {
      own = next;
      token = next.token ?? token;
    },
    removed: () => (removed = true),
  });
  return { ...client, common: () => common, own: () => own, token: () => token, removed: () => removed };
}

/** A phone that has taken a seat. */
export async function joinedStudent(
  url: string,
  room: string,
  name: string,
  options: ClientOptions = {},
): Promise<StudentClient> {
  const student = await connectStudent(url, room, options);
  const reply = await student.send({ type: 'Join', name, leftHanded: false, pair: false, leftThumb: false });
  if (!reply.ok) throw new Error(`${name} could not join: ${reply.reason}`);
  return student;
}

/** A host or desk page with its view, patches applied. */
export async function connectWatcher<Role extends 'host' | 'desk'>(
  url: string,
  room: string,
  role: Role,
  options: ClientOptions,
): Promise<WatcherClient<Role extends 'host' ? HostView : DeskView>> {
  type View = Role extends 'host' ? HostView : DeskView;
  let view: View | null = null;
  const patches: Partial<View>[] = [];
  const orders: unknown[] = [];
  const client = await connect(url, room, role, options, {
    view: (whole: View) => (view = whole),
    patch: (patch: Partial<View>) => {
      patches.push(patch);
      if (view) view = { ...view, ...patch };
    },
    sound: (order: unknown) => orders.push(order),
  });
  const seen = await until(() => view, 'a first view');
  return { ...client, view: () => view ?? seen, patches: () => patches, orders: () => orders };
}

/** Waits until `look` gives something that is neither null, undefined nor false. */
export async function until<T>(look: () => T | null | undefined | false, what = 'it', withinMs = 15_000): Promise<T> {
  for (const end = Date.now() + withinMs; ;) {
    const found = look();
    if (found) return found;
    if (Date.now() > end) throw new Error(`waited in vain for ${what}`);
    await new Promise((resolve) => void setTimeout(resolve, 10));
  }
}

/** Opens the teacher link as a browser does, and gives the cookie. */
export async function teacherCookie(url: string, key: string): Promise<string> {
  const answer = await fetch(`${url}/teacher?key=${key}`, { redirect: 'manual' });
  const cookie = answer.headers.get('set-cookie')?.split(';')[0];
  if (answer.status !== 303 || cookie === undefined) throw new Error(`the teacher link gave ${answer.status}`);
  return cookie;
}

/** Opens a room over http and gives its code. */
export async function openRoom(url: string, cookie: string): Promise<string> {
  const answer = await fetch(`${url}/api/rooms`, { method: 'POST', headers: { cookie } });
  return ((await answer.json()) as { room: string }).room;
}

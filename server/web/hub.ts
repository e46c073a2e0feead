import type { RoomChange, RoomLook } from '../keeper/keeper.ts';
import type { SoundOrder } from '../protocol/messages.ts';
import type { StudentOwn } from '../protocol/views.ts';
import { deskView, hasWritten, hostView, seesOther, studentCommon, studentOwn, type Live } from '../rooms/view.ts';
import { studentRoom, studentsRoom, type LiveServer, type LiveSocket } from './live.ts';
import { draw, patchBetween, type Drawn } from './patches.ts';
import { createSeats } from './seats.ts';

/** Patches to host and desk come at most this often. */
const PATCH_EVERY_MS = 250;

export type HubParts = {
  readonly room: string;
  readonly io: LiveServer;
  /** Looks into the room between two commits. */
  readonly look: (read: (look: RoomLook) => void) => Promise<unknown>;
  readonly addresses: () => readonly string[];
  readonly visitors: () => number;
};

/** All open pages of one room: who is here, and what each was shown last. */
export type Hub = {
  /** Shows a page that has just connected all of it. */
  readonly enter: (socket: LiveSocket, look: RoomLook) => void;
  readonly leave: (socket: LiveSocket) => void;
  /** After joining: this page is the student's from now on; a token that the server made is told once. */
  readonly seat: (socket: LiveSocket, look: RoomLook, student: string, token?: string) => void;
  /** The room has new events. */
  readonly changed: (change: RoomChange, look: RoomLook) => void;
  /** The student is gone for good. */
  readonly erased: (student: string) => void;
  /** Facts that no log holds have changed: addresses, visitors. */
  readonly refresh: () => void;
  readonly order: (page: string, order: SoundOrder) => void;
  /** Whether a host page of that name is open. */
  readonly hasPage: (page: string) => boolean;
  readonly isEmpty: () => boolean;
  readonly close: () => void;
};

export function createHub(parts: HubParts): Hub {
  const { room, io } = parts;
  const seats = createSeats();
  /** Host and desk pages with what each was shown last. */
  const watchers = new Map<LiveSocket, Drawn>();
  /** What of a student's own was sent last, so that only a difference travels. */
  const ownSent = new Map<string, string>();
  let commonSent = '';
  /** Sheet that the pages looked at last; undefined before the first page. */
  let lookedAt: string | null | undefined;
  let version = 0;
  let lastFlush = -PATCH_EVERY_MS;
  let timer: NodeJS.Timeout | null = null;

  const sendOwn = ({ state, people }: RoomLook, student: string, token?: string): void => {
    const own = studentOwn(state, people, student, token);
    if (own === null) return;
    ownSent.set(student, lasting(own));
    io.to(studentRoom(room, student)).emit('own', own);
  };

  /** What a student writes is acknowledged to the page that wrote; own travels when more has changed, or other pages must learn it. */
  const sendOwnIfChanged = (look: RoomLook, student: string): void => {
    const own = studentOwn(look.state, look.people, student);
    if (own !== null && (seats.pages(student) > 1 || ownSent.get(student) !== lasting(own))) sendOwn(look, student);
  };

  /** All students see it alike, but for those who are asked something else: to them goes theirs. */
  const sendCommon = (look: RoomLook): void => {
    const { state } = look;
    const common = studentCommon(state);
    const others = new Map([...seesOther(state)].map((student) => [student, studentCommon(state, student)]));
    const text = JSON.stringify([common, ...others]);
    if (text === commonSent) return;
    commonSent = text;
    const apart = [...others.keys()].map((student) => studentRoom(room, student));
    io.to(studentsRoom(room)).except(apart).emit('common', common);
    for (const [student, other] of others) io.to(studentRoom(room, student)).emit('common', other);
    const sheet = state.current;
    // Own may still name the sheet before: who has written on this one must see it again.
    const turned = sheet !== null && sheet.ask !== lookedAt;
    lookedAt = sheet?.ask ?? null;
    for (const student of seats.here()) {
      if (turned && hasWritten(state, student)) sendOwn(look, student);
      else sendOwnIfChanged(look, student);
    }
  };

  const erased = (student: string): void => {
    ownSent.delete(student);
    for (const socket of seats.remove(student)) {
      socket.data.student = null;
      socket.data.tokenHash = null;
      void socket.leave(studentRoom(room, student));
      socket.emit('removed');
    }
    refresh();
  };

  const drawing = ({ state, people, soundHolder }: RoomLook): ((socket: LiveSocket) => Drawn) => {
    const live: Live = {
      v: (version += 1),
      addresses: parts.addresses(),
      here: seats.here(),
      soundHolder,
      visitors: parts.visitors(),
    };
    // Pages that see the same are drawn once.
    const drawn = new Map<string, Drawn>();
    return ({ data: { role, session } }) => {
      const key = role === 'desk' ? role : session;
      const known = drawn.get(key);
      if (known !== undefined) return known;
      const fresh = draw(role === 'desk' ? deskView(state, people, live) : hostView(state, people, live, session));
      drawn.set(key, fresh);
      return fresh;
    };
  };

  const flush = (look: RoomLook): void => {
    lastFlush = performance.now();
    const drawn = drawing(look);
    for (const [socket, before] of watchers) {
      const after = drawn(socket);
      const patch = patchBetween(before, after);
      watchers.set(socket, after);
      if (patch !== null) socket.emit('patch', patch);
    }
  };

  const refresh = (): void => {
    if (timer !== null || watchers.size === 0) return;
    const wait = Math.max(0, lastFlush + PATCH_EVERY_MS - performance.now());
    timer = setTimeout(() => {
      timer = null;
      void parts.look(flush);
    }, wait);
  };

  const seat: Hub['seat'] = (socket, look, student, token) => {
    const { data } = socket;
    if (data.student !== student) {
      data.student = student;
      seats.sit(socket, student);
      void socket.join(studentRoom(room, student));
    }
    sendOwn(look, student, token);
    refresh();
  };

  return {
    enter: (socket, look) => {
      const { role, tokenHash } = socket.data;
      if (lookedAt === undefined) lookedAt = look.state.current?.ask ?? null;
      if (role !== 'student') {
        const whole = drawing(look)(socket);
        watchers.set(socket, whole);
        socket.emit('view', whole.view);
        refresh();
        return;
      }
      if (socket.data.student === null) seats.stand(socket);
      void socket.join(studentsRoom(room));
      const student = tokenHash === null ? undefined : look.people.byToken.get(tokenHash);
      socket.emit('common', studentCommon(look.state, student ?? null));
      if (student !== undefined) seat(socket, look, student);
    },
    leave: (socket) => {
      watchers.delete(socket);
      seats.leave(socket);
      const { student } = socket.data;
      if (student !== null && seats.pages(student) === 0) ownSent.delete(student);
      refresh();
    },
    seat,
    changed: (change, look) => {
      if (change.turned) sendCommon(look);
      for (const student of change.students) if (seats.pages(student) > 0) sendOwnIfChanged(look, student);
      refresh();
    },
    erased,
    refresh,
    order: (page, order) => {
      for (const socket of watchers.keys()) if (socket.data.session === page) socket.emit('sound', order);
    },
    hasPage: (page) => [...watchers.keys()].some(({ data }) => data.session === page),
    isEmpty: () => watchers.size === 0 && seats.isEmpty(),
    close: () => {
      if (timer !== null) clearTimeout(timer);
      timer = null;
    },
  };
}

/** The part of a student's own that outlasts the answers he writes himself and is told on the spot. */
function lasting({ name, leftHanded, pair, leftThumb, mark, echo, lesson }: StudentOwn): string {
  return JSON.stringify([name, leftHanded, pair, leftThumb, mark ?? null, echo ?? false, lesson ?? null]);
}

import { createServer, type Server as HttpServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createView } from '../../../client/shared/connection.ts';
import { openLine, type ConnectionStatus, type Line, type Listeners } from '../../../client/shared/line.ts';
import type { Handshake } from '../../../server/protocol/messages.ts';
import { roomServer, type RoomServer } from './room-server.ts';

const WAIT = { timeout: 8000 };
/** A check that is not acknowledged for so long has failed. */
const CHECKED_MS = 1600;
const handshake: Handshake = { role: 'desk', room: 'WAKUR', version: 1 };

let server: RoomServer;
let lines: Line[] = [];
let statuses: ConnectionStatus[] = [];

function open(on: Listeners = {}, url = server.url): Line {
  const line = openLine(handshake, on, (status) => statuses.push(status), { url });
  lines.push(line);
  return line;
}

const kinds = (): string[] => statuses.map(({ kind }) => kind);
const last = (): ConnectionStatus | undefined => statuses.at(-1);

beforeEach(async () => {
  statuses = [];
  server = await roomServer();
});

afterEach(async () => {
  vi.useRealTimers();
  for (const line of lines) line.close();
  lines = [];
  await server.close();
});

test('after two drops an event is heard once, not three times', async () => {
  const heard = vi.fn();
  open({ common: heard });
  for (const connections of [1, 2, 3]) {
    await vi.waitFor(() => expect(server.desk.connections).toBe(connections), WAIT);
    await vi.waitFor(() => expect(last()?.kind).toBe('live'), WAIT);
    if (connections < 3) {
      server.drop();
      await vi.waitFor(() => expect(last()?.kind).toBe('lost'), WAIT);
    }
  }
  server.io.emit('common', { v: 1, phase: 'waiting' });
  await vi.waitFor(() => expect(heard).toHaveBeenCalled(), WAIT);
  expect(heard).toHaveBeenCalledTimes(1);
  expect(kinds()).toEqual(['live', 'lost', 'live', 'lost', 'live']);
});

test('what is sent without a line is not sent, now or later', async () => {
  const line = open();
  await vi.waitFor(() => expect(last()?.kind).toBe('live'), WAIT);
  server.drop();
  await vi.waitFor(() => expect(last()?.kind).toBe('lost'), WAIT);
  for (const id of ['1', '2', '3']) expect(await line.send({ type: 'RequestStop', id })).toBeNull();
  await vi.waitFor(() => expect(last()?.kind).toBe('live'), WAIT);
  expect(await line.send({ type: 'RequestStop', id: '4' })).toEqual({ ok: true });
  expect(server.commands.map(({ id }) => id)).toEqual(['4']);
});

test('a command that is not acknowledged comes back empty-handed', async () => {
  const line = open();
  await vi.waitFor(() => expect(last()?.kind).toBe('live'), WAIT);
  server.desk.reply = () => undefined;
  expect(await line.send({ type: 'RequestStop', id: '1' })).toBeNull();
  expect(server.commands).toHaveLength(1);
});

test('a refused handshake says why and is not tried again by itself', async () => {
  server.io.use((_socket, next) => {
    next(Object.assign(new Error('refused'), { data: { reason: 'room-not-found', detail: { room: 'WAKUR' } } }));
  });
  open();
  await vi.waitFor(
    () => expect(last()).toEqual({ kind: 'refused', reason: 'room-not-found', detail: { room: 'WAKUR' } }),
    WAIT,
  );
  window.dispatchEvent(new Event('online'));
  await new Promise((resolve) => setTimeout(resolve, 300));
  expect(kinds()).toEqual(['refused']);
});

test('on waking a live line is kept, a dead one replaced', async () => {
  // A line binds its timers when it opens; what travels stays real.
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  const line = open();
  await vi.waitFor(() => expect(last()?.kind).toBe('live'), WAIT);
  const here = (id: string) => line.send({ type: 'RequestStop', id });
  window.dispatchEvent(new Event('pageshow'));
  // Acknowledgements come in order: after this one the check's is here.
  expect(await here('1')).toEqual({ ok: true });
  expect(server.desk.checks).toBe(1);
  vi.advanceTimersByTime(CHECKED_MS);
  expect(await here('2')).toEqual({ ok: true });
  expect([server.desk.connections, kinds()]).toEqual([1, ['live']]);
  server.desk.alive = false;
  document.dispatchEvent(new Event('visibilitychange'));
  expect(await here('3')).toEqual({ ok: true });
  expect(server.desk.checks).toBe(2);
  vi.advanceTimersByTime(CHECKED_MS);
  await vi.waitFor(() => expect(server.desk.connections).toBe(2), WAIT);
  await vi.waitFor(() => expect(last()?.kind).toBe('live'), WAIT);
});

test.each([
  ['not-saved', { data: { reason: 'not-saved' } }],
  ['a fault without a reason', {}],
])('a handshake refused by %s is tried again by itself', async (_, refusal) => {
  let refusals = 0;
  server.io.use((_socket, next) => {
    refusals += 1;
    if (refusals > 2) next();
    else next(Object.assign(new Error('refused'), refusal));
  });
  open();
  await vi.waitFor(() => expect(last()?.kind).toBe('live'), WAIT);
  expect([refusals, server.desk.connections]).toEqual([3, 1]);
  expect(kinds()).toEqual(['live']);
});

test('a line that was closed does not come back', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  let handshakes = 0;
  server.io.use((_socket, next) => {
    handshakes += 1;
    next(handshakes > 2 ? undefined : new Error('fault'));
  });
  const closed = open();
  await vi.waitFor(() => expect(handshakes).toBe(2), WAIT);
  // Its refusal is on the way, or waited for already.
  await new Promise((resolve) => setImmediate(resolve));
  closed.close();
  vi.advanceTimersByTime(5000);
  const other = open();
  await vi.waitFor(() => expect(last()?.kind).toBe('live'), WAIT);
  expect(await other.send({ type: 'RequestStop', id: '1' })).toEqual({ ok: true });
  expect([handshakes, server.desk.connections]).toEqual([3, 1]);
});

test('waking while still connecting closes nothing and opens nothing', async () => {
  let requests = 0;
  let closed = 0;
  // Takes the first request and leaves it hanging, as a network does that is about to fail.
  const hanging: HttpServer = createServer((request) => {
    requests += 1;
    request.on('close', () => (closed += 1));
  });
  await new Promise<void>((resolve) => hanging.listen(0, '127.0.0.1', resolve));
  open({}, `http://127.0.0.1:${(hanging.address() as AddressInfo).port}`);
  await vi.waitFor(() => expect(requests).toBe(1), WAIT);
  const before = closed;
  for (let times = 0; times < 5; times += 1) window.dispatchEvent(new Event('online'));
  await new Promise((resolve) => setTimeout(resolve, 300));
  expect({ requests, closed }).toEqual({ requests: 1, closed: before });
  hanging.closeAllConnections();
  await new Promise((resolve) => hanging.close(resolve));
});

test('a server that closes the line on purpose is asked again', async () => {
  open();
  await vi.waitFor(() => expect(last()?.kind).toBe('live'), WAIT);
  server.io.disconnectSockets();
  await vi.waitFor(() => expect(server.desk.connections).toBe(2), WAIT);
});

test('patches replace top-level fields of a whole view, and wait for one', () => {
  const { view, listeners } = createView<{ readonly v: number; readonly seats: readonly string[] }>();
  listeners.patch({ v: 1 });
  expect(view.value).toBeNull();
  listeners.view({ v: 2, seats: ['Ana'] });
  listeners.patch({ v: 3 });
  expect(view.value).toEqual({ v: 3, seats: ['Ana'] });
  listeners.view({ v: 4, seats: [] });
  expect(view.value).toEqual({ v: 4, seats: [] });
});

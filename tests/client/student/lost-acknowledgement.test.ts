// @vitest-environment node
import { connect, createServer, type AddressInfo, type Socket } from 'node:net';
import { afterEach, expect, test, vi } from 'vitest';
import { createKeep } from '../../../client/shared/storage.ts';
import { createStudent, type Student } from '../../../client/student/student-state.ts';
import { connectWatcher, openRoom, teacherCookie, until, type Client } from '../../support/socket-client.ts';
import { startServer, type RunningServer } from '../../support/start-server.ts';

const endings: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of endings.splice(0).toReversed()) await end();
  vi.unstubAllGlobals();
});

/** What a phone would learn of its seat: the acknowledgement, and what is its own. */
const ofSeat = (bytes: Buffer): boolean => bytes.includes('"ok":') || bytes.includes('"own"');

/** A network between phone and server in which that can be lost. */
async function network(port: number) {
  const lines = new Set<Socket>();
  const air = { deaf: false };
  const relay = createServer((phone) => {
    const server = connect(port, '127.0.0.1');
    for (const [from, to] of [
      [phone, server],
      [server, phone],
    ] as const) {
      lines.add(from);
      from.on('data', (bytes) => (from === server && air.deaf && ofSeat(bytes) ? undefined : to.write(bytes)));
      from.on('error', () => to.destroy());
      from.on('close', () => to.destroy());
    }
  });
  await new Promise<void>((resolve) => relay.listen(0, '127.0.0.1', resolve));
  endings.push(() => {
    for (const line of lines) line.destroy();
    relay.close();
  });
  return { air, url: `http://127.0.0.1:${(relay.address() as AddressInfo).port}` };
}

const ZOE = { name: 'Zoe', leftHanded: false, pair: false, leftThumb: false };

test('a server killed between commit and acknowledgement has seated the phone once', async () => {
  // All that a line asks of a browser: whether the page is seen, and when it wakes.
  vi.stubGlobal('document', Object.assign(new EventTarget(), { visibilityState: 'visible' }));
  vi.stubGlobal('window', new EventTarget());
  const stored = new Map<string, string>();
  const keep = () =>
    createKeep(() => ({
      getItem: (name) => stored.get(name) ?? null,
      setItem: (name, value) => void stored.set(name, value),
      removeItem: (name) => void stored.delete(name),
    }));
  const started = (server: RunningServer): RunningServer => {
    endings.push(server.cleanUp);
    return server;
  };
  const first = started(await startServer());
  const cookie = await teacherCookie(first.url, first.key);
  const room = await openRoom(first.url, cookie);
  const { air, url } = await network(first.port);
  const phone = (): Student => {
    const student = createStudent(room, keep(), { url });
    endings.push(student.close);
    return student;
  };
  const desk = async (server: RunningServer) => {
    const watcher = await connectWatcher(server.url, room, 'desk', { cookie });
    endings.push((watcher as Client).close);
    return () => watcher.view().students.map(({ name }) => name);
  };

  const roll = await desk(first);
  const zoe = phone();
  await until(() => zoe.store.get().status.kind === 'live', 'the line');
  air.deaf = true;
  const joining = zoe.join(ZOE);
  // The desk is told after the commit alone.
  await until(() => roll().length === 1, 'the seat on disk');
  await first.kill('SIGKILL');
  expect(zoe.store.get().own).toBeNull();

  const second = started(await startServer({ data: first.data, port: first.port }));
  air.deaf = false;
  await joining;
  const back = await until(() => zoe.store.get().own, 'the seat');
  expect(back.name).toBe('Zoe');
  // Pressed again, and opened again: still the one seat.
  await zoe.join(ZOE);
  const reloaded = phone();
  expect(reloaded.store.get().atDoor).toBe(false);
  await until(() => reloaded.store.get().own?.name === 'Zoe', 'the seat after a reload');
  expect((await desk(second))()).toEqual(['Zoe']);
});

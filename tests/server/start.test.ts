import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, connect as connectTcp } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { openQuestion, startGuitarRound, write } from '../support/lesson.ts';
import {
  connectStudent,
  connectWatcher,
  joinedStudent,
  openRoom,
  teacherCookie,
  until,
  type Client,
  type StudentClient,
} from '../support/socket-client.ts';
import { failedStart, startServer, type RunningServer, type StartOptions } from '../support/start-server.ts';

const servers: RunningServer[] = [];
const clients: Client[] = [];
const folders: string[] = [];
const server = async (options: StartOptions = {}): Promise<RunningServer> => {
  const started = await startServer(options);
  servers.push(started);
  return started;
};
const folder = (): string => {
  const made = mkdtempSync(join(tmpdir(), 'hearsay-start-'));
  folders.push(made);
  return made;
};
afterEach(async () => {
  for (const client of clients.splice(0)) client.close();
  for (const started of servers.splice(0)) await started.cleanUp();
  for (const made of folders.splice(0)) rmSync(made, { recursive: true, force: true });
});
/** One sentence a person can act on, and nothing of the inside. */
const oneSentence = (output: string) => {
  expect(output.trim().split('\n')).toHaveLength(1);
  expect(output).not.toMatch(/\n\s+at |:\d+:\d+|Error:|node:internal/);
};

describe('a start', () => {
  test('serves on every kind of address, and survives what is no http', async () => {
    const { url, port } = await server();
    // IPv6 may be missing where this runs.
    for (const host of [`http://127.0.0.1:${port}`, `http://localhost:${port}`]) {
      expect((await fetch(`${host}/healthz`)).status).toBe(200);
    }
    // A browser that turns http into https sends a TLS ClientHello: record type 22, version 3.1.
    const hello = Buffer.from('16030100a5010000a10303' + '00'.repeat(150), 'hex');
    for (const bytes of [hello, Buffer.from('SSH-2.0-x\r\n'), Buffer.alloc(70_000, 0x41)]) {
      await new Promise<void>((resolve) => {
        const line = connectTcp(port, '127.0.0.1', () => line.end(bytes));
        line.on('error', () => {});
        line.on('close', () => resolve());
        line.resume();
      });
    }
    expect((await fetch(`${url}/healthz`)).status).toBe(200);
  });

  test.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)(
    'ends cleanly by %s with phones connected, and leaves one file',
    async (signal) => {
      const { url, key, data, kill, output } = await server();
      const cookie = await teacherCookie(url, key);
      const room = await openRoom(url, cookie);
      for (let index = 0; index < 12; index += 1) {
        clients.push(
          await joinedStudent(url, room, `P${index}`, { transports: index % 2 ? ['polling'] : ['websocket'] }),
        );
      }
      expect(existsSync(join(data, 'hearsay.db-wal'))).toBe(true);
      expect(await kill(signal)).toBe(0);
      expect(readdirSync(data).filter((name) => name.startsWith('hearsay'))).toEqual(['hearsay.db']);
      expect(output()).not.toMatch(/\n\s+at |:\d+:\d+|fault/);
    },
  );

  test('a second signal ends at once', async () => {
    const { process: child, kill } = await server();
    child.kill('SIGINT');
    const code = await kill('SIGINT');
    expect([0, 1]).toContain(code);
  });
});

describe('a start that cannot be', () => {
  test('a taken port is told with the way out', async () => {
    const taken = createServer().listen(0);
    await new Promise((resolve) => void taken.once('listening', resolve));
    const { port } = taken.address() as { port: number };
    const data = folder();
    const { code, output } = await failedStart({ port, data });
    taken.close();
    expect(code).toBe(1);
    oneSentence(output);
    expect(output).toContain(`Port ${port} is taken`);
    expect(output).toContain(`PORT=${port + 1}`);
    // Nothing stays locked behind it.
    expect(readdirSync(data).some((name) => name.endsWith('-wal'))).toBe(false);
    await (await server({ data })).kill();
  });

  test('a second server on the same data is told where the first one answers, and harms nothing', async () => {
    const first = await server();
    const { code, output } = await failedStart({ data: first.data });
    expect(code).toBe(1);
    oneSentence(output);
    expect(output).toMatch(new RegExp(`already running .*:${first.port}`));
    const cookie = await teacherCookie(first.url, first.key);
    expect(await openRoom(first.url, cookie)).toMatch(/^[A-Z]{5}$/);
  });

  test('a damaged file is told and stays as it is', async () => {
    const data = folder();
    const file = join(data, 'hearsay.db');
    writeFileSync(file, 'these are somebody’s notes '.repeat(300));
    const before = readFileSync(file);
    const { code, output } = await failedStart({ data });
    expect(code).toBe(1);
    oneSentence(output);
    expect(output).toContain(file);
    expect(readFileSync(file)).toEqual(before);
  });

  test('a folder that cannot be is told', async () => {
    const file = join(folder(), 'file');
    writeFileSync(file, '');
    const { code, output } = await failedStart({ data: join(file, 'below') });
    expect(code).toBe(1);
    oneSentence(output);
    expect(output).toContain('HEARSAY_DATA');
  });

  test('a wrong setting is told', async () => {
    const { code, output } = await failedStart({ data: folder(), environment: { PORT: 'forty' } });
    expect(code).toBe(1);
    oneSentence(output);
    expect(output).toContain('forty');
  });
});

describe('killed in the middle of a question', () => {
  test('nothing acknowledged is lost or doubled, the question is open, and everybody comes back to the same seat', async () => {
    const first = await server();
    const cookie = await teacherCookie(first.url, first.key);
    const room = await openRoom(first.url, cookie);
    const desk = await connectWatcher(first.url, room, 'desk', { cookie });
    clients.push(desk);
    const phones: StudentClient[] = await Promise.all(
      Array.from({ length: 30 }, (_, index) => joinedStudent(first.url, room, `P${index}`)),
    );
    clients.push(...phones);
    const round = await startGuitarRound(desk);
    const ask = await openQuestion(desk, round);
    await Promise.all(phones.map((student) => until(() => student.common()?.ask === ask)));

    // Everybody changes the answer again and again; the server is killed while answers are on their way.
    const answers = ['up', 'down', 'same'];
    const acknowledged = phones.map(() => 0);
    const storming = { underway: true };
    const storm = phones.map(async (student, place) => {
      for (let counter = 1; storming.underway; counter += 1) {
        const command = {
          type: 'WriteAnswer',
          ask,
          counter,
          answer: answers[(counter + place) % 3],
          heldMs: 0,
        } as const;
        const reply = await student.send(command).catch(() => null);
        if (reply === null) return;
        if (reply.ok) acknowledged[place] = counter;
        await new Promise((resolve) => void setTimeout(resolve, 90));
      }
    });
    await until(() => acknowledged.every((counter) => counter >= 2), 'some acknowledged answers');
    expect(await first.kill('SIGKILL')).toBeNull();
    storming.underway = false;
    for (const client of clients.splice(0)) client.close();
    await Promise.all(storm);

    const second = await server({ data: first.data });
    const again = await connectWatcher(second.url, room, 'desk', { cookie: cookieOn(second, cookie, first) });
    clients.push(again);
    expect(again.view().current).toMatchObject({ ask, status: 'open' });
    expect(
      again
        .view()
        .students.map(({ name }) => name)
        .toSorted(),
    ).toEqual(phones.map((_, place) => `P${place}`).toSorted());
    const back = await Promise.all(
      phones.map((student) => connectStudent(second.url, room, { token: student.token() ?? '' })),
    );
    clients.push(...back);
    await Promise.all(back.map((student) => until(student.own, 'own after coming back')));
    for (const [place, student] of back.entries()) {
      const { counter, answer, name } = student.own() ?? { counter: -1 };
      expect(name).toBe(phones[place]?.own()?.name);
      // What was acknowledged is there; one more may be, that was stored when the power of speech was taken.
      expect([acknowledged[place], (acknowledged[place] ?? 0) + 1]).toContain(counter);
      expect(answer).toBe(answers[(counter + place) % 3]);
    }
    await until(() => again.view().handsIn === 30, 'thirty hands');
    expect(again.view().students).toHaveLength(30);
    const [one] = back;
    if (!one) throw new Error('thirty came back');
    expect(await write(one, ask, 1000, 'up')).toMatchObject({ ok: true });
    expect(await again.send({ type: 'CloseQuestion', ask })).toMatchObject({ ok: true });
    await until(() => again.view().spread, 'the spread');
    expect(again.view().spread?.counts.reduce((sum, { count }) => sum + count, 0)).toBe(30);
  });
});

/** A device that was let in stays let in; only the port, and with it the cookie's name, is another one here. */
function cookieOn(now: RunningServer, cookie: string, before: RunningServer): string {
  return cookie.replace(`-${before.port}=`, `-${now.port}=`);
}

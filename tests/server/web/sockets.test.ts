import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Command } from '../../../server/protocol/messages.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { emptyMemory, memoryStore } from '../../../server/store/memory-store.ts';
import { openQuestion, startGuitarRound, write } from '../../support/lesson.ts';
import {
  connect,
  connectStudent,
  connectWatcher,
  joinedStudent,
  until,
  type Client,
  type StudentClient,
  type WatcherClient,
} from '../../support/socket-client.ts';
import { startTestApp, type TestApp } from '../../support/test-app.ts';

let app: TestApp;
let room: string;
let desk: WatcherClient<DeskView>;
const opened: Client[] = [];
const kept = <C extends Client>(client: C): C => (opened.push(client), client);
const phone = async (name: string, options = {}): Promise<StudentClient> =>
  kept(await joinedStudent(app.url, room, name, options));
const host = async (options = {}) =>
  kept(await connectWatcher(app.url, room, 'host', { cookie: app.cookie, ...options }));
const names = () => desk.view().students.map(({ name }) => name);

beforeAll(async () => {
  app = await startTestApp();
});
beforeEach(async () => {
  for (const client of opened.splice(0)) client.close();
  room = await app.room();
  desk = kept(await connectWatcher(app.url, room, 'desk', { cookie: app.cookie }));
});
afterAll(async () => {
  for (const client of opened.splice(0)) client.close();
  expect(app.faults).toEqual([]);
  await app.close();
});

describe('the door', () => {
  test('a wrong code is told, with the code', async () => {
    await expect(connectStudent(app.url, 'nopal')).rejects.toMatchObject({
      reason: 'room-not-found',
      detail: { room: 'NOPAL' },
    });
  });
  test('R62 a room that cannot be read now is not called absent', async () => {
    const memory = emptyMemory();
    const before = await startTestApp(memoryStore(memory));
    const code = await before.room();
    await before.close();
    const store = memoryStore(memory);
    let unreadable = false;
    const later = await startTestApp({
      ...store,
      read: async (name) => {
        if (unreadable) throw new Error('input and output');
        return store.read(name);
      },
    });
    unreadable = true;
    await expect(connectStudent(later.url, code)).rejects.toMatchObject({ reason: 'not-saved' });
    unreadable = false;
    const student = await connectStudent(later.url, code);
    expect(student.socket.connected).toBe(true);
    student.close();
    await later.close();
    expect(later.faults.map(String)).toEqual(['Error: input and output']);
  });
  test('a code may be typed in small letters', async () => {
    expect(kept(await connectStudent(app.url, room.toLowerCase())).socket.connected).toBe(true);
  });
  test.each(['host', 'desk'] as const)('a %s without the cookie stays outside', async (role) => {
    await expect(connect(app.url, room, role)).rejects.toMatchObject({ reason: 'not-teacher' });
    const cookie = `hearsay-teacher-${app.port}=guess`;
    await expect(connect(app.url, room, role, { cookie })).rejects.toMatchObject({ reason: 'not-teacher' });
  });
  test('a page of another version is asked to reload', async () => {
    await expect(connect(app.url, room, 'student', { version: 0 })).rejects.toMatchObject({ reason: 'page-too-old' });
  });
  test.each(['polling', 'websocket'] as const)(
    'a page of another site is refused over %s, one of ours is not',
    async (transport) => {
      const from = (origin: string) =>
        connect(app.url, room, 'student', { transports: [transport], headers: { origin } });
      await expect(from('http://evil.test')).rejects.toThrow();
      await expect(from('null')).rejects.toThrow();
      expect(kept(await from(app.url)).socket.connected).toBe(true);
    },
  );
});

describe('taking a seat', () => {
  test.each([
    ['', 'name-empty'],
    ['   ', 'name-empty'],
    ['x'.repeat(500), 'name-too-long'],
    ['\u200b\u200b', 'name-not-readable'],
    ['\u0000\u0007', 'name-not-readable'],
    ['\u202e', 'name-not-readable'],
    ['\u202eevil 10', 'name-not-readable'],
    ['<img src=x onerror=x=1>', 'name-not-readable'],
  ])('%j is refused as %s, and nothing happens', async (name, reason) => {
    const student = kept(await connectStudent(app.url, room));
    const reply = await student.send({ type: 'Join', name, leftHanded: false, pair: false, leftThumb: false });
    expect(reply).toMatchObject({ ok: false, reason });
    expect(student.own()).toBeNull();
    expect(desk.view().students).toEqual([]);
  });
  test.each([
    ['{"type":"b"}', '{"type":"b"}'],
    ['  Ana \t B ', 'Ana B'],
    ['علی‌رضا', 'علی‌رضا'],
  ])('%j is kept as the plain text it is', async (name, start) => {
    const student = kept(await connectStudent(app.url, room));
    const reply = await student.send({
      type: 'Join',
      name: name.slice(0, 24),
      leftHanded: false,
      pair: false,
      leftThumb: false,
    });
    expect(reply.ok).toBe(true);
    expect(student.own()?.name.startsWith(start)).toBe(true);
  });
  test('two of one name are told apart, everywhere', async () => {
    const [first, second] = [await phone('Ana'), await phone('Ana')];
    expect([first.own()?.name, second.own()?.name]).toEqual(['Ana', 'Ana (2)']);
    await until(() => names().length === 2, 'two students');
    expect(names()).toEqual(['Ana', 'Ana (2)']);
  });
  test('the token brings a student back to the same seat; two pages of one student are one student', async () => {
    const first = await phone('Ana');
    const token = first.token() ?? '';
    expect(token).toMatch(/^[0-9a-f]{32}$/);
    const second = kept(await connectStudent(app.url, room, { token }));
    await until(() => second.own()?.name === 'Ana', 'own on the second page');
    expect(second.own()).not.toHaveProperty('token');
    await until(() => desk.view().students[0]?.here, 'a student who is here');
    first.close();
    const third = await phone('Bo');
    await until(() => names().length === 2, 'two students');
    expect(desk.view().students[0]?.here).toBe(true);
    second.close();
    await until(() => desk.view().students[0]?.here === false, 'a student who is away');
    third.close();
    const back = kept(await connectStudent(app.url, room, { token }));
    await until(() => back.own()?.name === 'Ana', 'own after coming back');
    expect(names()).toEqual(['Ana', 'Bo']);
  });
  test('who joins again after the line broke, before hearing that it worked, has one seat', async () => {
    const join = {
      type: 'Join',
      id: '0123456789abcdef0123456789abcdef',
      name: 'Ana',
      leftHanded: false,
      pair: false,
      leftThumb: false,
    } as const;
    const first = kept(await connectStudent(app.url, room));
    await first.send(join);
    first.close();
    const second = kept(await connectStudent(app.url, room));
    expect(await second.send(join)).toMatchObject({ ok: true });
    expect(second.own()).toMatchObject({ name: 'Ana', token: first.token() });
    expect((await second.send({ ...join, id: 'another' })).ok).toBe(true);
    await until(() => names().length > 0, 'a student');
    expect(names()).toEqual(['Ana']);
  });
  test('a page learns on the other what was written there', async () => {
    const first = await phone('Ana');
    const second = kept(await connectStudent(app.url, room, { token: first.token() ?? '' }));
    const ask = await openQuestion(desk, await startGuitarRound(desk));
    expect(await write(first, ask, 1, 'down')).toMatchObject({ ok: true });
    await until(() => second.own()?.answer === 'down' && second.own()?.ask === ask, 'the answer on the second page');
  });
  test('an erased student is told to leave, and may come anew', async () => {
    const ana = await phone('Ana');
    await until(() => desk.view().students.length === 1, 'a student');
    const student = desk.view().students[0]?.student ?? '';
    expect(await desk.send({ type: 'EraseStudent', student })).toMatchObject({ ok: true });
    await until(ana.removed, 'the news of being removed');
    await until(() => desk.view().students.length === 0, 'an empty roll');
    expect((await ana.send({ type: 'Join', name: 'Ana', leftHanded: false, pair: false, leftThumb: false })).ok).toBe(
      true,
    );
    await until(() => desk.view().students.length === 1, 'a new student');
    expect(desk.view().students[0]?.student).not.toBe(student);
  });
});

describe('a student who acts as the teacher', () => {
  const round = 'r1';
  const change = { kind: 'full' } as const;
  const forbidden: readonly Command[] = [
    { type: 'StartRound', id: 'x1', after: 0, level: 2, item: null, groove: null, contrast: null },
    { type: 'StartGuitarRound', id: 'x2', after: 0, chords: 'Em D', groove: null, tempo: null, directions: null },
    { type: 'OpenQuestion', id: 'x3', round, question: 'direction-1', how: 'phones' },
    { type: 'CloseQuestion', id: 'x4', ask: 'a1' },
    { type: 'ShowSpread', id: 'x5', ask: 'a1' },
    { type: 'ShowAnswer', id: 'x6', ask: 'a1' },
    { type: 'AnswerAgain', id: 'x7', ask: 'a1' },
    { type: 'RequestPlay', id: 'x8', round },
    { type: 'RequestChange', id: 'x9', round, change },
    { type: 'RequestStop', id: 'x10' },
    { type: 'ChangeSettings', id: 'x11', settings: { namesShown: false } },
    { type: 'RenameStudent', id: 'x12', student: 's', name: 'x' },
    { type: 'EraseStudent', id: 'x13', student: 's' },
    { type: 'EndLesson', id: 'x14' },
    { type: 'CloseRoom', id: 'x15' },
    { type: 'HoldSound', id: 'x16', takeOver: true },
    { type: 'VampStarted', id: 'x17', round, tempo: 100 },
    { type: 'ChangeTook', id: 'x18', round, change, bar: 1 },
    { type: 'VampStopped', id: 'x19', round },
  ];
  test('is refused with every command of desk and host, and the room stays as it was', async () => {
    const ana = await phone('Ana');
    await openQuestion(desk, await startGuitarRound(desk));
    const { v: _before, ...before } = await fresh();
    for (const command of forbidden) {
      expect(await ana.raw(command)).toEqual({ ok: false, reason: 'not-teacher' });
      // Within the bound of messages.
      await new Promise((resolve) => void setTimeout(resolve, 60));
    }
    const { v: _after, ...after } = await fresh();
    expect(after).toEqual(before);
  });
  const fresh = async () => {
    const second = await connectWatcher(app.url, room, 'desk', { cookie: app.cookie });
    second.close();
    return second.view();
  };
});

describe('what cannot be read', () => {
  const junk: readonly unknown[] = [
    [],
    [null],
    'x',
    Number.MAX_VALUE,
    {},
    { id: {} },
    { type: 'Join' },
    { type: '__proto__' },
    { type: 'Join', id: {}, name: [], leftHanded: 'no', pair: null, leftThumb: 1 },
    { type: 'WriteAnswer', id: 'j', ask: 'a1', counter: -1, answer: {}, heldMs: 'x' },
    Buffer.from('Join'),
    { type: 'Join', id: Buffer.alloc(10), name: new Uint8Array(5) },
    JSON.parse('{"__proto__":{"x":1},"type":"Join"}'),
    'y'.repeat(10_000),
    Array.from({ length: 3000 }, (_, index) => index),
    null,
    undefined,
    true,
  ];
  test('is answered to its sender, and everybody else goes on', async () => {
    const good = await phone('Good');
    for (const payload of junk) {
      const bad = kept(await connectStudent(app.url, room));
      const reply = await bad.raw(payload);
      expect(reply).toMatchObject({ ok: false, reason: 'message-not-readable' });
      bad.close();
    }
    const ask = await openQuestion(desk, await startGuitarRound(desk));
    expect(await write(good, ask, 1)).toMatchObject({ ok: true });
    await until(() => names().length > 0, 'the roll');
    expect(names()).toEqual(['Good']);
  });
  test('a missing or wrong acknowledgement is no fault', async () => {
    const bad = kept(await connectStudent(app.url, room));
    bad.socket.emit('command');
    bad.socket.emit('command', { type: 'Join' }, 'not a function');
    bad.socket.emit('command', { type: 'Join' }, { call: 1 });
    bad.socket.emit('check');
    bad.socket.emit('check', 5);
    bad.socket.emit('error', 1);
    bad.socket.emit('no such event', { a: 1 });
    expect(await bad.raw({})).toMatchObject({ ok: false });
    expect(await bad.socket.timeout(5000).emitWithAck('check')).toEqual({ ok: true });
  });
  test('a message too large drops its sender alone', async () => {
    const good = await phone('Good');
    for (const transport of ['websocket', 'polling'] as const) {
      const bad = kept(await connectStudent(app.url, room, { transports: [transport] }));
      bad.socket.emit('command', { type: 'Join', id: 'big', name: 'x'.repeat(20_000) });
      await until(() => !bad.socket.connected, `the end of the ${transport} connection`);
    }
    expect(good.socket.connected).toBe(true);
    expect(await good.raw({})).toMatchObject({ ok: false, reason: 'message-not-readable' });
  });
  test.each([
    '442["x"]',
    '451-["hello",{"_placeholder":true,"num":"splice"}]',
    '42',
    '42[]',
    '42{"a":1}',
    '42["error",1]',
    '42["__proto__",1]',
    '4999',
    '\u001e\u001e',
    '9',
    'b4AAAA',
    '41',
    '40{"role":5}',
    '4',
    '42["command",',
  ])('the frame %j closes at most its own connection', async (frame) => {
    const address = `${app.url}/live/${room}/?EIO=4&transport=polling`;
    const opening = await (await fetch(address)).text();
    const { sid } = JSON.parse(opening.slice(1)) as { sid: string };
    const auth = JSON.stringify({ role: 'student', room, version: 1 });
    const post = (body: string) =>
      fetch(`${address}&sid=${sid}`, { method: 'POST', body, headers: { 'content-type': 'text/plain' } });
    await post(`40${auth}`);
    await (await fetch(`${address}&sid=${sid}`)).text();
    await post(frame);
    expect((await fetch(`${app.url}/healthz`)).status).toBe(200);
    expect(desk.socket.connected).toBe(true);
  });
  test.each([
    ['text/plain', 'x'.repeat(5_000_000), 413],
    ['application/octet-stream', 'x'.repeat(5_000_000), 400],
  ])('five megabytes of %s are refused', async (type, body, status) => {
    const address = `${app.url}/live/${room}/?EIO=4&transport=polling`;
    const { sid } = JSON.parse((await (await fetch(address)).text()).slice(1)) as { sid: string };
    const sent = await fetch(`${address}&sid=${sid}`, {
      method: 'POST',
      body,
      headers: { 'content-type': type },
    }).catch(() => null);
    // The server may cut the line before it has read all of it.
    if (sent !== null) expect(sent.status).toBe(status);
    expect((await fetch(`${app.url}/healthz`)).status).toBe(200);
  });
  test('a flood is held back at its own socket', async () => {
    const [flooding, good] = [await phone('Flood'), await phone('Good')];
    const replies = await Promise.all(Array.from({ length: 300 }, () => flooding.raw({})));
    const reasons = replies.map((reply) => (reply.ok ? 'ok' : reply.reason));
    expect(reasons.filter((reason) => reason === 'too-many-messages').length).toBeGreaterThan(200);
    expect(await good.raw({})).toMatchObject({ reason: 'message-not-readable' });
  });
});

describe('a question', () => {
  test.each([
    ['polling alone', ['polling']],
    ['websocket alone', ['websocket']],
    ['polling, then websocket', ['polling', 'websocket']],
  ] as const)('runs from opening to the mark by %s', async (_how, transports) => {
    const [ana, bo] = [await phone('Ana', { transports }), await phone('Bo', { transports })];
    const teacher = kept(await connectWatcher(app.url, room, 'desk', { cookie: app.cookie, transports }));
    const wall = await host({ transports });
    const ask = await openQuestion(teacher, await startGuitarRound(teacher));
    expect(await write(ana, ask, 1, 'up')).toMatchObject({ ok: true });
    expect(await write(ana, ask, 2, 'down')).toMatchObject({ ok: true });
    expect(await write(bo, ask, 1, 'up')).toMatchObject({ ok: true });
    await until(() => wall.view().handsIn === 2, 'two hands in');
    expect(wall.view().spread).toBeNull();
    expect(await teacher.send({ type: 'CloseQuestion', ask })).toMatchObject({ ok: true });
    await until(() => ana.common()?.phase === 'closed', 'the close');
    expect(await teacher.send({ type: 'ShowSpread', ask })).toMatchObject({ ok: true });
    await until(() => wall.view().spread, 'the spread on the wall');
    expect(wall.view().spread?.counts.map(({ key, count }) => [key, count])).toEqual(
      expect.arrayContaining([
        ['up', 1],
        ['down', 1],
      ]),
    );
    expect(wall.view().truth).toBeNull();
    expect(await teacher.send({ type: 'ShowAnswer', ask })).toMatchObject({ ok: true });
    // Usual open shapes: the bass goes from the open low E string up to the open D string.
    await until(() => ana.own()?.mark && bo.own()?.mark, 'the marks');
    expect(ana.common()).toMatchObject({ phase: 'shown', truth: { answer: 'up' } });
    expect([ana.own()?.mark?.credit, bo.own()?.mark?.credit]).toEqual([0, 1]);
    expect(await bo.send({ type: 'WriteAnswer', ask, counter: 9, answer: 'down', heldMs: 0 })).toMatchObject({
      ok: false,
      reason: 'question-shown',
    });
    expect(await bo.send({ type: 'WriteAnswer', ask: 'a99', counter: 9, answer: 'down', heldMs: 0 })).toMatchObject({
      ok: false,
      reason: 'question-unknown',
    });
  });
  test('an answer after the close is too late, one written before it counts', async () => {
    const [ana, bo] = [await phone('Ana'), await phone('Bo')];
    const ask = await openQuestion(desk, await startGuitarRound(desk));
    await until(() => ana.common()?.phase === 'open' && bo.common()?.phase === 'open', 'the open question');
    const seen = performance.now();
    expect(await desk.send({ type: 'CloseQuestion', ask })).toMatchObject({ ok: true });
    // Nobody wrote before there was a question, whatever the phone says.
    const late = { type: 'WriteAnswer', ask, counter: 1, answer: 'up' } as const;
    expect(await ana.send({ ...late, heldMs: 1e9 })).toMatchObject({ ok: false, reason: 'too-late' });
    expect(await bo.send({ ...late, heldMs: Math.round(performance.now() - seen) })).toMatchObject({ ok: true });
    expect(await desk.send({ type: 'ShowSpread', ask })).toMatchObject({ ok: true });
    expect(await ana.send({ ...late, heldMs: 0 })).toMatchObject({ ok: false, reason: 'too-late' });
  });
  test('everybody who is not yet in sees the same, and a page that comes back sees all of it', async () => {
    const ana = await phone('Ana');
    const ask = await openQuestion(desk, await startGuitarRound(desk));
    await write(ana, ask, 1, 'same');
    ana.close();
    const back = kept(await connectStudent(app.url, room, { token: ana.token() ?? '' }));
    const late = await phone('Late');
    await until(() => back.own() !== null && late.common() !== null, 'snapshots');
    expect(back.common()).toEqual(late.common());
    expect(back.own()).toMatchObject({ ask, answer: 'same', counter: 1 });
    const wall = await host();
    expect(wall.view().current?.ask).toBe(ask);
  });
  test('the end of the lesson tells each phone how many of its answers were right', async () => {
    const [ana, bo] = [await phone('Ana'), await phone('Bo')];
    const ask = await openQuestion(desk, await startGuitarRound(desk));
    await write(ana, ask, 1, 'up');
    await write(bo, ask, 1, 'down');
    for (const type of ['CloseQuestion', 'ShowAnswer'] as const) expect((await desk.send({ type, ask })).ok).toBe(true);
    expect((await desk.send({ type: 'EndLesson' })).ok).toBe(true);
    await until(() => ana.own()?.lesson !== undefined && bo.own()?.lesson !== undefined, 'the count of each');
    const counts = [ana, bo].map((student) => student.own()?.lesson?.right);
    expect(new Set(counts)).toEqual(new Set([0, 1]));
  });
  test('many answers are few patches, and no message to the other phones', async () => {
    const phones = await Promise.all(Array.from({ length: 40 }, (_, index) => phone(`P${index}`)));
    const ask = await openQuestion(desk, await startGuitarRound(desk));
    await Promise.all(phones.map((student) => until(() => student.common()?.ask === ask)));
    await until(() => desk.view().current?.ask === ask, 'the question on the desk');
    const heard: unknown[] = [];
    phones[0]?.socket.onAny((...args: unknown[]) => heard.push(args));
    const [before, from] = [desk.patches().length, performance.now()];
    await Promise.all(phones.map((student) => write(student, ask, 1)));
    await until(() => desk.view().handsIn === 40, 'all hands in');
    // At most one each 250 ms, one that was on its way at either end.
    const windows = Math.ceil((performance.now() - from) / 250);
    expect(desk.patches().length - before).toBeLessThanOrEqual(windows + 2);
    expect(heard).toEqual([]);
  });
  test('R65 a page that turns back to an earlier sheet sees again what was written there, and hears no more than that', async () => {
    const [ana, bo] = [await phone('Ana'), await phone('Bo')];
    const round = await startGuitarRound(desk);
    const heard: unknown[] = [];
    for (const student of [ana, bo]) student.socket.on('own', () => heard.push(student));
    const first = await openQuestion(desk, round);
    await write(ana, first, 1, 'down');
    expect(await desk.send({ type: 'CloseQuestion', ask: first })).toMatchObject({ ok: true });
    const second = await openQuestion(desk, round, 'quality-0');
    await write(ana, second, 2, 'minor');
    await write(bo, second, 1, 'minor');
    expect(await desk.send({ type: 'CloseQuestion', ask: second })).toMatchObject({ ok: true });
    await until(() => bo.common()?.ask === second && bo.common()?.phase === 'closed', 'the second close');
    expect(heard).toEqual([]);
    expect(await desk.send({ type: 'ShowSpread', ask: first })).toMatchObject({ ok: true });
    await until(() => ana.common()?.ask === first && bo.common()?.ask === first, 'the first sheet again');
    await until(() => ana.own()?.ask === first, 'the answer to it');
    expect(ana.own()).toMatchObject({ ask: first, answer: 'down', counter: 2 });
    expect(heard).toEqual([ana]);
  });
  test('two hundred phones behind one address come in and are heard', async () => {
    const phones = await Promise.all(
      Array.from({ length: 200 }, (_, index) => phone(`P${index}`, { transports: ['websocket'] })),
    );
    const ask = await openQuestion(desk, await startGuitarRound(desk));
    const replies = await Promise.all(phones.map((student) => write(student, ask, 1)));
    expect(replies.every(({ ok }) => ok)).toBe(true);
    await until(() => desk.view().handsIn === 200, 'all hands in');
    expect(desk.view().visitors).toBe(0);
  });
});

describe('the sound', () => {
  const hold = (page: Client, takeOver = false) => page.send({ type: 'HoldSound', takeOver });
  test('is one page’s; another must ask; orders go to the page that holds it', async () => {
    const [first, second] = [await host(), await host()];
    const reply = await desk.send({ type: 'StartRound', after: 0, level: 2, item: null, groove: null, contrast: null });
    const { round } = (reply.ok ? reply.value : {}) as { round: string };
    expect(await desk.send({ type: 'RequestPlay', round })).toMatchObject({ ok: false, reason: 'no-host-sound' });
    expect(await hold(first)).toMatchObject({ ok: true });
    await until(() => first.view().holdsSound && second.view().soundHeld, 'the sound in both views');
    expect(second.view().holdsSound).toBe(false);
    expect(await hold(second)).toMatchObject({ ok: false, reason: 'sound-held-elsewhere' });
    expect(await desk.send({ type: 'RequestPlay', round })).toMatchObject({ ok: true });
    await until(() => first.orders().length === 1, 'the order');
    expect(first.orders()).toEqual([{ order: 'play', round }]);
    expect(second.orders()).toEqual([]);
    expect(await hold(second, true)).toMatchObject({ ok: true });
    await until(() => second.view().holdsSound && !first.view().holdsSound, 'the sound at the second page');
    expect(first.orders().at(-1)).toEqual({ order: 'stop' });
  });
  test('is free again when its page goes', async () => {
    const first = await host();
    await hold(first);
    await until(() => desk.view().soundHeld, 'a page with the sound');
    first.close();
    await until(() => !desk.view().soundHeld, 'no page with the sound');
    expect(await hold(await host())).toMatchObject({ ok: true });
  });
  test('stays with a page that comes back under its own name', async () => {
    const page = 'page-0123456789abcdef';
    const first = await host({ page });
    await hold(first);
    await until(() => first.view().holdsSound, 'the sound');
    const again = await host({ page });
    expect(again.view().holdsSound).toBe(true);
    first.close();
    expect(await hold(again)).toMatchObject({ ok: true });
    expect(again.view().holdsSound).toBe(true);
  });
});

import { afterAll, beforeAll, expect, test } from 'vitest';
import type { DeskView } from '../../../server/protocol/views.ts';
import { openQuestion, startGuitarRound, write } from '../../support/lesson.ts';
import {
  connectStudent,
  connectWatcher,
  joinedStudent,
  until,
  type Client,
  type StudentClient,
  type WatcherClient,
} from '../../support/socket-client.ts';
import { startTestApp, type TestApp } from '../../support/test-app.ts';

const CLASS = 150;
let app: TestApp;
const opened: Client[] = [];
const kept = <C extends Client>(client: C): C => (opened.push(client), client);
const deskOf = async (room: string): Promise<WatcherClient<DeskView>> =>
  kept(await connectWatcher(app.url, room, 'desk', { cookie: app.cookie }));

beforeAll(async () => {
  app = await startTestApp();
});
afterAll(async () => {
  for (const client of opened) client.close();
  expect(app.faults).toEqual([]);
  await app.close();
});

test('while a large class is summed up nobody is cut off, and the room next door goes on answering', async () => {
  const [large, small] = [await app.room(), await app.room()];
  const [desk, nextDoor] = [await deskOf(large), await deskOf(small)];
  const transports = ['websocket'] as const;
  const phones: StudentClient[] = [];
  for (let seat = 0; seat < CLASS; seat += 1) {
    phones.push(kept(await joinedStudent(app.url, large, `Phone ${seat}`, { transports })));
  }
  const ana = kept(await joinedStudent(app.url, small, 'Ana', { transports }));
  const cutOff: string[] = [];
  for (const { socket } of opened) socket.on('disconnect', (why) => cutOff.push(why));

  const round = await startGuitarRound(desk);
  const asked = [];
  for (const { question, kind } of await until(() => desk.view().steps.length > 0 && desk.view().steps)) {
    if (!['direction', 'quality', 'keys'].includes(kind)) continue;
    const ask = await openQuestion(desk, round, question);
    const answers =
      { direction: ['up', 'down'], quality: ['major', 'minor'], keys: [['7M'], ['7M', '2M']] }[kind] ?? [];
    await Promise.all(
      phones.map(async (phone, seat) => {
        const counter = (phone.own()?.counter ?? 0) + 1;
        expect(await write(phone, ask, counter, answers[seat % 2])).toMatchObject({ ok: true });
      }),
    );
    expect(await desk.send({ type: 'CloseQuestion', ask })).toMatchObject({ ok: true });
    expect(await desk.send({ type: 'ShowAnswer', ask })).toMatchObject({ ok: true });
    asked.push(question);
  }
  const ask = await openQuestion(nextDoor, await startGuitarRound(nextDoor));
  await until(() => ana.common()?.ask === ask, 'the question next door');

  // All of it at once: the end of the large lesson, and answers in the small room.
  const [ended, ...written] = await Promise.all([
    desk.send({ type: 'EndLesson' }),
    ...Array.from({ length: 10 }, (_, index) => write(ana, ask, index + 1, index % 2 === 0 ? 'down' : 'up')),
  ]);
  expect([ended, ...written].map(({ ok }) => ok)).toEqual(Array.from({ length: 11 }, () => true));
  await until(() => desk.view().breakdown?.length === asked.length, 'how every question went');
  await until(() => phones.every((phone) => phone.own()?.lesson?.of === asked.length), 'the count on every phone');
  expect(desk.view().reports).toHaveLength(CLASS);
  expect(cutOff).toEqual([]);
  const again = kept(await connectStudent(app.url, small, { token: ana.token() ?? '' }));
  await until(again.own, 'what stands of the phone next door');
  expect(again.own()).toMatchObject({ ask, answer: 'up', counter: 10 });
});

test('a host page that was closed in the middle of a question shows, when it is back, what one that stayed shows', async () => {
  const room = await app.room();
  const desk = await deskOf(room);
  const wall = async (page: string) => kept(await connectWatcher(app.url, room, 'host', { cookie: app.cookie, page }));
  const [stayed, left] = [await wall('the-page-that-stays'), await wall('the-page-that-leaves')];
  const [ana, bo] = [await joinedStudent(app.url, room, 'Ana'), await joinedStudent(app.url, room, 'Bo')].map(kept);
  if (!ana || !bo) throw new Error('two phones expected');
  const ask = await openQuestion(desk, await startGuitarRound(desk));
  expect(await write(ana, ask, 1, 'up')).toMatchObject({ ok: true });
  left.close();
  expect(await write(bo, ask, 1, 'down')).toMatchObject({ ok: true });
  expect(await write(ana, ask, 2, 'down')).toMatchObject({ ok: true });
  const back = await wall('the-page-that-leaves');
  expect(back.view()).toMatchObject({ handsIn: 2, handsOf: 2, current: { ask, status: 'open' }, spread: null });
  await until(() => stayed.view().handsIn === 2, 'both hands on the page that stayed');
  const shown = ({ v: _sendings, ...view }: ReturnType<typeof back.view>) => view;
  expect(shown(back.view())).toEqual(shown(stayed.view()));
  expect(await desk.send({ type: 'CloseQuestion', ask })).toMatchObject({ ok: true });
  expect(await desk.send({ type: 'ShowSpread', ask })).toMatchObject({ ok: true });
  await until(() => back.view().spread, 'the spread on the page that came back');
  expect(back.view().spread?.of).toBe(2);
});

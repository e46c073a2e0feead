import { afterAll, beforeAll, expect, test } from 'vitest';
import { openQuestion, startGuitarRound, write } from '../../support/lesson.ts';
import { connectWatcher, joinedStudent, until } from '../../support/socket-client.ts';
import { startTestApp, type TestApp } from '../../support/test-app.ts';

let app: TestApp;
beforeAll(async () => {
  app = await startTestApp();
});
afterAll(() => app.close());

test('R83 R85 a phone gets its own question while the others get theirs, also after it comes back', async () => {
  const room = await app.room();
  const desk = await connectWatcher(app.url, room, 'desk', { cookie: app.cookie });
  const [ana, bo] = [await joinedStudent(app.url, room, 'Ana'), await joinedStudent(app.url, room, 'Bo')];
  await until(() => desk.view().students.length === 2, 'both on the roll');
  const id = desk.view().students.find(({ name }) => name === 'Ana')?.student ?? '';
  expect(await desk.send({ type: 'SetDepth', student: id, depth: 'chords' })).toMatchObject({ ok: true });
  const round = await startGuitarRound(desk);
  const ask = await openQuestion(desk, round, 'keys-0');
  await until(() => bo.common()?.ask === ask, 'the question of the class');
  await until(() => ana.common()?.ask === `${ask}.root-0`, 'the question in its place');
  expect(await write(ana, `${ask}.root-0`, 1, { string: 6, fret: 0 })).toMatchObject({ ok: true });
  expect(await write(bo, ask, 1, ['7M'])).toMatchObject({ ok: true });
  await until(() => desk.view().handsIn === 1 && desk.view().students.every(({ wrote }) => wrote), 'both hands');
  expect(desk.view().handsOf).toBe(1);
  expect(await desk.send({ type: 'CloseQuestion', ask })).toMatchObject({ ok: true });
  await until(() => ana.common()?.phase === 'closed' && bo.common()?.phase === 'closed', 'the close on both');
  expect(ana.common()?.ask).toBe(`${ask}.root-0`);
  await until(() => desk.view().breakdown?.length === 2, 'both questions in the lesson');
  expect(desk.view().breakdown).toMatchObject([
    { question: 'root-0', right: 1 },
    { question: 'keys-0', silent: 0 },
  ]);
  for (const client of [desk, ana, bo]) client.close();
});

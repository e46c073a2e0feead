import { createServer, request, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { DeskView } from '../../../server/protocol/views.ts';
import { itemAt } from '../../../shared-theory/items.ts';
import { judgeOf } from '../../../shared-theory/questions/judges.ts';
import {
  COLLECTED_KINDS,
  NOT_SURE,
  type Answer,
  type Kind,
  type NotSure,
} from '../../../shared-theory/questions/question.ts';
import { guitarTruth } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';
import { openQuestion, write } from '../../support/lesson.ts';
import {
  connectWatcher,
  joinedStudent,
  until,
  type StudentClient,
  type WatcherClient,
} from '../../support/socket-client.ts';
import { RHYTHM_ANSWERS } from '../../support/rhythm-answers.ts';
import { startTestApp, type TestApp } from '../../support/test-app.ts';

let app: TestApp;
let proxy: Server;
let refused = 0;

beforeAll(async () => {
  app = await startTestApp();
  // A school's proxy: passes requests on, and cuts every line that wants to become a WebSocket.
  proxy = createServer((incoming, outgoing) => {
    const { method, url, headers } = incoming;
    const onward = request({ host: '127.0.0.1', port: app.port, method, path: url, headers }, (answer) => {
      outgoing.writeHead(answer.statusCode ?? 502, answer.headers);
      answer.pipe(outgoing);
    });
    onward.on('error', () => outgoing.destroy());
    outgoing.on('close', () => onward.destroy());
    incoming.pipe(onward);
  });
  proxy.on('upgrade', (_request, socket) => {
    refused += 1;
    socket.destroy();
  });
  await new Promise<void>((resolve) => void proxy.listen(0, '127.0.0.1', resolve));
});
afterAll(async () => {
  proxy.closeAllConnections();
  proxy.close();
  expect(app.faults).toEqual([]);
  await app.close();
});

/** What a phone writes by its seat: right, not sure, something else that the pad takes, nothing. */
function answerOf(kind: Kind, right: Answer, seat: number): Answer | NotSure | null {
  const other: Readonly<Record<Kind, Answer>> = {
    ...RHYTHM_ANSWERS,
    strokes: 'all-downs',
    count: 3,
    direction: 'same',
    quality: 'major',
    root: { string: 6, fret: 7 },
    distance: 7,
    numeral: ['I', 'IV'],
    'one-or-several': 'one',
    keys: ['0M'],
    settler: ['7M', '0M'],
    order: [0, 1, 0, 1],
    bass: { string: 6, fret: 7 },
    seventh: 'seventh',
    home: 1,
  };
  return itemAt([right, NOT_SURE, other[kind], null], seat % 4);
}

/** A round with every question it has, led to the end of the lesson; gives all that was worked out of the answers. */
async function lesson(url: string) {
  const room = await app.room();
  const desk: WatcherClient<DeskView> = await connectWatcher(url, room, 'desk', { cookie: app.cookie });
  const phones: StudentClient[] = [];
  for (let seat = 0; seat < 4; seat += 1) phones.push(await joinedStudent(url, room, `Phone ${seat}`));
  const entered = { groove: 'relaxed-alternate', tempo: null, directions: null } as const;
  const truth = guitarTruth(parseVamp('Em D', 4), entered);
  const started = await desk.send({ type: 'StartGuitarRound', after: 0, chords: 'Em D', ...entered });
  expect(started).toMatchObject({ ok: true });
  const steps = await until(() => desk.view().steps.length > 0 && desk.view().steps, 'the questions');
  const { qualities } = desk.view().settings;
  const settings = { policy: 'majors', qualities: qualities as never } as const;
  const marks: unknown[] = [];
  for (const { question, kind, target } of steps) {
    // An opinion has no right answer.
    if (COLLECTED_KINDS.has(kind as Kind)) continue;
    const ask = await openQuestion(desk, String(desk.view().vamp?.round), question);
    const right = judgeOf<Kind>(kind as Kind).truth({ truth, settings, target });
    if (right === null) throw new Error(`${question} has no right answer`);
    for (const [seat, phone] of phones.entries()) {
      const answer = answerOf(kind as Kind, right, seat);
      const counter = (phone.own()?.counter ?? 0) + 1;
      if (answer === null) continue;
      const reply = await write(phone, ask, counter, answer);
      expect({ question, answer, reply }).toMatchObject({ question, answer, reply: { ok: true } });
    }
    expect(await desk.send({ type: 'CloseQuestion', ask })).toMatchObject({ ok: true });
    expect(await desk.send({ type: 'ShowAnswer', ask })).toMatchObject({ ok: true });
    await until(
      () => desk.view().current?.ask === ask && desk.view().current?.status === 'shown',
      'the answer on the desk',
    );
    await until(() => phones.every((phone) => phone.common()?.phase === 'shown'), 'the answer on the phones');
    await until(() => phones[0]?.own()?.mark?.credit === 1, `full credit for the right answer to ${question}`);
    marks.push([question, desk.view().students.map(({ name, mark }) => [name, mark ?? null])]);
  }
  expect(await desk.send({ type: 'EndLesson' })).toMatchObject({ ok: true });
  await until(() => phones.every((phone) => phone.own()?.lesson), 'the count on every phone');
  await until(() => desk.view().status === 'lesson-ended' && desk.view().breakdown, 'the end on the desk');
  const { breakdown, reports, common } = desk.view();
  const transports = phones.map(({ socket }) => socket.io.engine.transport.name);
  for (const client of [desk, ...phones]) client.close();
  return {
    transports,
    result: {
      marks,
      counts: phones.map((phone) => phone.own()?.lesson),
      // Ids are drawn for each room.
      reports: reports.map(({ student: _student, ...report }) => report),
      breakdown: breakdown?.map(({ question: _question, ...line }) => line),
      errors: common.map(({ error, times, chances }) => [error, times, chances]),
    },
  };
}

test('a lesson behind a proxy that lets no WebSocket through ends with the same marks', async () => {
  const open = await lesson(app.url);
  const behind = await lesson(`http://127.0.0.1:${(proxy.address() as AddressInfo).port}`);
  expect(open.transports).toEqual(Array.from({ length: 4 }, () => 'websocket'));
  expect(behind.transports).toEqual(Array.from({ length: 4 }, () => 'polling'));
  expect(refused).toBeGreaterThan(0);
  expect(open.result.marks.length).toBeGreaterThanOrEqual(8);
  expect(behind.result).toEqual(open.result);
});

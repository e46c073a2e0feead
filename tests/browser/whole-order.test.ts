import { afterAll, beforeAll, expect, test } from 'vitest';
import { joinedStudent, until, type StudentClient } from '../support/socket-client.ts';
import { openClassRoom, type ClassRoom } from './class-room.ts';

/** The whole order led from a desk on a phone, with the one press at the thumb alone. */

const STUDENTS = ['Nele', 'Oda', 'Jory'];

/** Right answers for Em and D as open chords in the relaxed alternate: common practice. */
const RIGHT: Readonly<Record<string, unknown>> = {
  // A hundred a minute.
  tempo: [0, 600, 1200, 1800, 2400, 3000, 3600, 4200],
  steadiness: [0, 600, 1200, 1800, 2400, 3000, 3600, 4200],
  count: 2,
  'direction 1': 'up',
  'quality 0': 'minor',
  'root 0': { string: 6, fret: 0 },
  'distance 1': 10,
  'quality 1': 'major',
  numeral: ['vi', 'V'],
  'one-or-several': 'several',
  keys: ['2M', '7M'],
  // An opinion: any answer will do.
  home: 0,
};

let room: ClassRoom;
const students: StudentClient[] = [];

beforeAll(async () => {
  room = await openClassRoom({ width: 390, height: 844 });
  for (const name of STUDENTS) students.push(await joinedStudent(room.server.url, room.room, name));
});

afterAll(async () => {
  for (const student of students) student.close();
  await room.end();
});

test('every question of a round takes three presses at one place of the desk', async () => {
  const { desk } = room;
  await desk.getByRole('button', { name: 'round', exact: true }).click();
  await desk.getByRole('textbox', { name: 'chords' }).fill('Em D');
  await desk.locator('select[name=groove]').selectOption('relaxed-alternate');
  await desk.locator('input[name=tempo]').fill('100');
  await desk.getByRole('button', { name: 'ask about my guitar', exact: true }).click();
  const thumb = desk.locator('.desk-actions .main.primary');
  await thumb.filter({ hasText: /^open$/ }).waitFor();
  const place = await thumb.boundingBox();

  const asked: string[] = [];
  let presses = 0;
  let last: string | undefined;
  const press = async (what: RegExp): Promise<void> => {
    await thumb.filter({ hasText: what }).click();
    presses += 1;
  };
  for (;;) {
    await press(/^(open|next .+)$/);
    await desk.locator('.desk-actions .main', { hasText: /^close$/ }).waitFor();
    const name = await everyoneWrites(last, asked.length + 1);
    last = students[0]?.common()?.ask;
    asked.push(name);
    // All hands are in: the press turns to ink before its time.
    await press(/^close$/);
    await press(/^show$/);
    const on = await thumb.filter({ hasText: /^(next .+|new vamp)$/ }).innerText();
    if (on.startsWith('new vamp')) break;
  }
  expect(asked).toEqual([
    'tempo 0',
    'steadiness 0',
    'count 0',
    'direction 1',
    'quality 0',
    'root 0',
    'distance 1',
    'quality 1',
    'numeral 0',
    'one-or-several 0',
    'keys 0',
    'settler 0',
    'settler 1',
    'settler 2',
    'settler 3',
    'home 0',
  ]);
  expect(presses).toBe(3 * asked.length);
  expect(await thumb.boundingBox()).toEqual(place);
  expect(room.faults).toEqual([]);
});

/** All students write the right answer to the question opened after `last`; names it by kind and target. */
async function everyoneWrites(last: string | undefined, counter: number): Promise<string> {
  const [first] = students;
  const { ask, asking } = await until(() => {
    const now = first?.common();
    return now?.phase === 'open' && now.ask !== last && now;
  }, 'an open question');
  if (!asking || ask === undefined) throw new Error('no question is open');
  const { kind, target } = asking;
  const answer = kind === 'settler' ? await settled() : (RIGHT[`${kind} ${target}`] ?? RIGHT[kind]);
  for (const student of students) {
    const reply = await student.send({ type: 'WriteAnswer', ask, counter, answer, heldMs: 0 });
    expect(reply).toMatchObject({ ok: true });
  }
  return `${kind} ${target}`;
}

/** The key that a settler leaves, as the desk says it: G where it holds C, D where it holds C sharp. */
async function settled(): Promise<readonly string[]> {
  const right = await room.desk.getByText(/^right: [DG]$/).innerText();
  return right.endsWith('G') ? ['7M'] : ['2M'];
}

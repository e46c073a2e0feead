import { expect, test } from 'vitest';
import { createAnswering, type AnsweringState } from '../../../client/student/answering.ts';
import { createKeep } from '../../../client/shared/storage.ts';
import type { Command, Reply } from '../../../server/protocol/messages.ts';

type Written = Extract<Command, { type: 'WriteAnswer' }>;

/** A phone whose line, clocks and storage the test holds. */
function phone(stored = new Map<string, string>()) {
  const sent: { readonly command: Written; readonly answer: (reply: Reply | null) => Promise<void> }[] = [];
  const waiting: (() => void)[] = [];
  const clock = { now: 1000, wall: 50_000 };
  let state: Partial<AnsweringState> = {};
  const store = {
    getItem: (name: string) => stored.get(name) ?? null,
    setItem: (name: string, value: string) => void stored.set(name, value),
    removeItem: (name: string) => void stored.delete(name),
  };
  const answering = createAnswering({
    send: (command) =>
      new Promise((resolve) => {
        sent.push({
          command: command as Written,
          answer: async (reply) => {
            resolve(reply);
            await new Promise((settled) => setTimeout(settled));
          },
        });
      }),
    keep: createKeep(() => store),
    room: 'WAKUR',
    tell: (part) => (state = { ...state, ...part }),
    now: () => clock.now,
    wall: () => clock.wall,
    later: (act) => waiting.push(act),
  });
  const pass = (ms: number): void => {
    clock.now += ms;
    clock.wall += ms;
    for (const act of waiting.splice(0)) act();
  };
  return { answering, sent, stored, clock, pass, state: () => state, last: () => sent[sent.length - 1] };
}

test('it is in only once it is acknowledged', async () => {
  const { answering, last, state, stored } = phone();
  answering.write('a1', 'up');
  expect(state().outcome).toBeUndefined();
  expect(stored.size).toBe(1);
  await last()?.answer({ ok: true });
  expect(state()).toMatchObject({ pending: null, outcome: { ask: 'a1', answer: 'up', refusal: null }, slow: false });
  expect(stored.size).toBe(0);
});

test('taps without a line leave one answer, the last', async () => {
  const { answering, sent, last, pass } = phone();
  answering.write('a1', 'up');
  for (const answer of ['down', 'same', 'up', 'down']) answering.write('a1', answer);
  expect(sent).toHaveLength(1);
  await last()?.answer(null);
  // The first was for an answer that no longer stands: the last goes out at once, and alone.
  expect(sent.map(({ command }) => command.answer)).toEqual(['up', 'down']);
  await last()?.answer(null);
  answering.flush();
  answering.flush();
  pass(1000);
  expect(sent).toHaveLength(3);
  await last()?.answer({ ok: true });
  pass(1000);
  answering.flush();
  expect(sent).toHaveLength(3);
});

test('the same answer goes out again under the same id and counter, held for as long as it was', async () => {
  const { answering, sent, last, pass } = phone();
  answering.write('a1', 'up');
  await last()?.answer(null);
  pass(4000);
  const [first, second] = sent.map(({ command }) => command);
  expect(second).toEqual({ ...first, heldMs: 4000 });
  expect(first?.heldMs).toBe(0);
});

test('the counter rises from the higher of phone and server', async () => {
  const { answering, sent, last } = phone();
  answering.countFrom(7);
  answering.write('a1', 'up');
  await last()?.answer({ ok: true });
  answering.countFrom(3);
  answering.write('a1', 'down');
  expect(sent.map(({ command }) => command.counter)).toEqual([8, 9]);
});

test('an answer survives a reload, with its id, and tells by the wall clock how long it was held', async () => {
  const before = phone();
  before.answering.write('a1', { string: 6, fret: 3 });
  const after = phone(before.stored);
  after.clock.now = 5;
  after.clock.wall = before.clock.wall + 9000;
  expect(after.state().pending).toMatchObject({ ask: 'a1', counter: 1 });
  after.answering.flush();
  expect(after.sent[0]?.command).toEqual({ ...before.sent[0]?.command, heldMs: 9000 });
  after.answering.write('a1', { string: 6, fret: 4 });
  await after.last()?.answer({ ok: true });
  expect(after.last()?.command.counter).toBe(2);
});

test('a wall clock that was set back never makes the time negative', () => {
  const before = phone();
  before.answering.write('a1', 'up');
  const after = phone(before.stored);
  after.clock.wall = 0;
  after.answering.flush();
  expect(after.sent[0]?.command.heldMs).toBe(0);
});

test.each([
  ['says nothing of what counts', undefined, { ask: 'a1', answer: 'up', refusal: null }],
  ['says that it counts', { counter: 1, answer: 'up' }, { ask: 'a1', answer: 'up', refusal: null }],
  ['names another of the same number', { counter: 1, answer: 'down' }, { ask: 'a1', answer: 'down', refusal: null }],
  ['names a later one', { counter: 4, answer: 'down' }, { ask: 'a1', answer: 'down', refusal: null }],
  ['names one taken back later', { counter: 4, answer: null }, { ask: 'a1', answer: null, refusal: null }],
  ['tells only that there is a later one', { counter: 4 }, null],
])('an acknowledgement that %s', async (_, value, outcome) => {
  const { answering, last, state } = phone();
  answering.write('a1', 'up');
  await last()?.answer({ ok: true, value });
  expect(state()).toMatchObject({ pending: null });
  expect(state().outcome).toEqual(outcome);
  answering.write('a1', 'same');
  expect(last()?.command.counter).toBe((value?.counter ?? 1) + 1);
});

test('a tab removes no answer that another tab keeps', async () => {
  const one = phone();
  const other = phone(one.stored);
  one.answering.write('a1', 'up');
  other.answering.write('a1', 'down');
  await one.last()?.answer({ ok: true });
  expect(one.state().pending).toBeNull();
  expect(JSON.parse(one.stored.get('hearsay:WAKUR:pending') ?? '{}')).toMatchObject({ answer: 'down' });
  await other.last()?.answer({ ok: true });
  expect(one.stored.size).toBe(0);
});

test('a refusal settles the answer and is told', async () => {
  const { answering, last, state, stored } = phone();
  answering.write('a1', 'up');
  await last()?.answer({ ok: false, reason: 'too-late', detail: { n: 1 } });
  expect(state()).toMatchObject({
    pending: null,
    outcome: { answer: 'up', refusal: { reason: 'too-late', detail: { n: 1 } } },
  });
  expect(stored.size).toBe(0);
});

test.each(['not-saved', 'too-many-messages'] as const)(
  '%s passes: the same answer is offered again',
  async (reason) => {
    const { answering, sent, last, pass, state } = phone();
    answering.write('a1', 'up');
    await last()?.answer({ ok: false, reason });
    expect(state().pending).not.toBeNull();
    pass(1000);
    expect(sent.map(({ command }) => command.id)).toEqual([sent[0]?.command.id, sent[0]?.command.id]);
  },
);

test.each(['{', '3', '{"id":1}', 'null'])('what is stored but no answer (%s) is left alone', (text) => {
  const { answering, sent } = phone(new Map([['hearsay:WAKUR:pending', text]]));
  answering.flush();
  expect(sent).toHaveLength(0);
});

import type { RoomState } from '../../../server/rooms/state.ts';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join as joinPath } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Command, Reply, SoundOrder } from '../../../server/protocol/messages.ts';
import type { Caller, Keeper, KeeperOptions, RoomChange } from '../../../server/keeper/keeper.ts';
import { createKeeper } from '../../../server/keeper/keeper.ts';
import { createReplies } from '../../../server/keeper/shelf.ts';
import { hashToken } from '../../../server/keeper/token.ts';
import type { EventStore } from '../../../server/store/event-store.ts';
import type { Memory } from '../../../server/store/memory-store.ts';
import { emptyMemory, memoryStore } from '../../../server/store/memory-store.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { studentCommon } from '../../../server/rooms/view.ts';
import { HANDS, SETTINGS } from '../../support/given.ts';

const DESK: Caller = { role: 'desk', session: 'desk-1' };
const page = (session: string): Caller => ({ role: 'host', session });
const phone = (token: string): Caller => ({
  role: 'student',
  session: `socket of ${token}`,
  tokenHash: hashToken(token),
});
const join = (name: string, id = 'join'): Command => ({ type: 'Join', id, name, ...HANDS });
const write = (answer: unknown, counter: number, ask = 'a1', heldMs = 0): Command => ({
  type: 'WriteAnswer',
  id: `w${counter}`,
  ask,
  counter,
  answer,
  heldMs,
});
const guitar = (id: string, after = 0): Command => ({
  type: 'StartGuitarRound',
  id,
  after,
  chords: 'Em D',
  groove: null,
  tempo: null,
  directions: null,
});
/** Answers that stand on any sheet. */
const written = ({ sheets }: RoomState): number =>
  [...sheets.values()].reduce((sum, { answers }) => sum + answers.size, 0);
const open = (question: string, round = 'r1'): Command => ({
  type: 'OpenQuestion',
  id: `open ${question}`,
  round,
  question,
  how: 'phones',
});

/** A keeper over a store, with clocks and chance that are the same each time. */
function kept(store: EventStore, boot = 'boot-1') {
  const changes: RoomChange[] = [];
  const orders: [string, string, SoundOrder][] = [];
  const faults: [string, unknown][] = [];
  const erased: [string, string][] = [];
  const waiting: (() => void)[] = [];
  const clock = { ms: 0 };
  let drawn = boot === 'boot-1' ? 0 : 7;
  const options: KeeperOptions = {
    store,
    clock: { wall: () => 1_700_000_000_000 + clock.ms, mono: () => clock.ms, boot },
    chance: {
      hex: (bytes) => {
        drawn += 1;
        return drawn.toString(16).padStart(bytes * 2, '0');
      },
      below: (n) => {
        drawn += 1;
        return (drawn * 7) % n;
      },
    },
    changed: (change) => changes.push(change),
    erased: (...gone) => erased.push(gone),
    order: (...order) => orders.push(order),
    fault: (...fault) => faults.push(fault),
    later: (act) => {
      waiting.push(act);
      return () => void waiting.splice(waiting.indexOf(act), 1);
    },
  };
  return { keeper: createKeeper(options), options, changes, orders, faults, erased, clock, waiting };
}

async function lesson(keeper: Keeper): Promise<string> {
  const room = await keeper.open('class-1', SETTINGS);
  await keeper.submit(room, phone('ana'), join('Ana'));
  await keeper.submit(room, DESK, guitar('start'));
  await keeper.submit(room, DESK, open('direction-1'));
  return room;
}

const types = (memory: Memory, room: string) => memory.rooms.get(room)?.rows.map(({ type }) => type);

describe('the keeper', () => {
  test('R49 answers and tells only after the commit', async () => {
    const memory = emptyMemory();
    const store = memoryStore(memory);
    const steps: string[] = [];
    let release = (): void => {};
    let writing = (): void => {};
    const begun = new Promise<void>((done) => {
      writing = done;
    });
    const slow: EventStore = {
      ...store,
      append: async (appends) => {
        if (appends[0]?.rows[0]?.type !== 'RoomOpened') {
          steps.push('writing');
          await new Promise<void>((done) => {
            release = done;
            writing();
          });
        }
        return store.append(appends);
      },
    };
    const { keeper, changes } = kept(slow);
    const room = await keeper.open('class-1', SETTINGS);
    const joining = keeper.submit(room, phone('ana'), join('Ana')).then(() => steps.push('answered'));
    const looking = keeper.look(room, ({ state }) => steps.push(`looked at ${state.students.size}`));
    await begun;
    // The look came before the tick: it saw the room without the student, not one that was not stored yet.
    const during = keeper.look(room, ({ state }) => steps.push(`looked at ${state.students.size}`));
    // What would answer too early would have done so by now: nothing but turns of the loop stands in its way.
    for (let turn = 0; turn < 20; turn += 1) await new Promise<void>((next) => setImmediate(next));
    expect(steps).toEqual(['looked at 0', 'writing']);
    expect(changes).toEqual([]);
    release();
    await Promise.all([joining, looking, during]);
    expect(steps.slice(2).toSorted()).toEqual(['answered', 'looked at 1']);
    expect(changes).toHaveLength(1);
  });

  test('R50 commands of one tick see each other and share one commit', async () => {
    const memory = emptyMemory();
    const store = memoryStore(memory);
    let commits = 0;
    const counted: EventStore = { ...store, append: (appends) => ((commits += 1), store.append(appends)) };
    const { keeper, changes } = kept(counted);
    const [one, other] = [await keeper.open('class-1', SETTINGS), await keeper.open('class-1', SETTINGS)];
    commits = 0;
    const replies = await Promise.all([
      keeper.submit(one, phone('ana'), join('Ana')),
      keeper.submit(one, DESK, guitar('start')),
      keeper.submit(one, DESK, open('direction-1')),
      keeper.submit(one, phone('ana'), write('up', 1)),
      keeper.submit(one, DESK, { type: 'CloseQuestion', id: 'close', ask: 'a1' }),
      keeper.submit(one, phone('ana'), write('down', 2)),
      keeper.submit(other, phone('bo'), join('Bo')),
    ]);
    expect(replies.map(({ ok }) => ok)).toEqual([true, true, true, true, true, true, true]);
    expect(commits).toBe(1);
    expect(types(memory, one)).toEqual([
      'RoomOpened',
      'StudentJoined',
      'RoundStarted',
      'QuestionOpened',
      'AnswerWritten',
      'QuestionClosed',
      'AnswerWritten',
    ]);
    expect(memory.rooms.get(one)?.rows.map(({ seq }) => seq)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(changes.map(({ room, turned, students }) => [room, turned, students.size])).toEqual([
      [one, true, 1],
      [other, false, 1],
    ]);
  });

  test('R50 the log holds no name; the people table holds no token', async () => {
    const memory = emptyMemory();
    const { keeper } = kept(memoryStore(memory));
    const room = await lesson(keeper);
    expect(JSON.stringify(memory.rooms.get(room)?.rows)).not.toContain('Ana');
    const people = [...(memory.rooms.get(room)?.people.values() ?? [])];
    expect(people).toEqual([
      {
        student: expect.any(String) as string,
        name: 'Ana',
        tokenHash: hashToken('ana'),
        settings: JSON.stringify(HANDS),
      },
    ]);
    expect(memory.rooms.get(room)?.rows[1]?.student).toBe(people[0]?.student);
  });

  test('R51 a command that is sent again is answered the same and applied once', async () => {
    const memory = emptyMemory();
    const { keeper, changes } = kept(memoryStore(memory));
    const room = await keeper.open('class-1', SETTINGS);
    const stranger: Caller = { role: 'student', session: 'socket-1', tokenHash: null };
    const joins = await Promise.all([1, 2, 3].map(() => keeper.submit(room, stranger, join('Ana'))));
    joins.push(await keeper.submit(room, stranger, join('Ana')));
    expect(joins[0]).toEqual({
      ok: true,
      value: { student: expect.any(String), token: expect.stringMatching(/^[0-9a-f]{32}$/) },
    });
    for (const reply of joins) expect(reply).toEqual(joins[0]);
    // The same id from another phone is another command.
    const other = await keeper.submit(room, { ...stranger, session: 'socket-2' }, join('Ana'));
    expect(other).not.toEqual(joins[0]);
    for (const id of ['start', 'start', 'again']) await keeper.submit(room, DESK, guitar(id));
    for (let count = 0; count < 2; count += 1) await keeper.submit(room, DESK, open('direction-1'));
    const mine: Caller = { ...stranger, tokenHash: hashToken((joins[0] as { value: { token: string } }).value.token) };
    const told = changes.length;
    const answers = await Promise.all([1, 2, 3, 4].map(() => keeper.submit(room, mine, write('up', 1))));
    expect(answers).toEqual(Array.from({ length: 4 }, () => ({ ok: true, value: { counter: 1, answer: 'up' } })));
    await keeper.submit(room, mine, write('up', 1));
    expect(changes).toHaveLength(told + 1);
    expect(types(memory, room)).toEqual([
      'RoomOpened',
      'StudentJoined',
      'StudentJoined',
      'RoundStarted',
      'QuestionOpened',
      'AnswerWritten',
    ]);
  });

  test('R8 R51 a join with a token of the phone is the same student, also with another id and after a restart', async () => {
    const memory = emptyMemory();
    const first = kept(memoryStore(memory));
    const room = await first.keeper.open('class-1', SETTINGS);
    const replies = await Promise.all([
      first.keeper.submit(room, phone('ana'), join('Ana', 'one')),
      first.keeper.submit(room, phone('ana'), join('Ana', 'two')),
    ]);
    const second = kept(memoryStore(memory), 'boot-2');
    replies.push(await second.keeper.submit(room, phone('ana'), join('Ana', 'one')));
    expect(new Set(replies.map((reply) => JSON.stringify(reply))).size).toBe(1);
    expect(types(memory, room)).toEqual(['RoomOpened', 'StudentJoined']);
  });

  test('R51 remembered replies are bounded', () => {
    const replies = createReplies(2);
    for (const key of ['a', 'b', 'c']) replies.keep(key, { ok: true, value: key });
    expect(['a', 'b', 'c'].map((key) => replies.get(key)?.ok)).toEqual([undefined, true, true]);
  });

  test('R52 another writer: the room is read anew and tried once more, others do not notice', async () => {
    const memory = emptyMemory();
    const here = kept(memoryStore(memory));
    const room = await lesson(here.keeper);
    const quiet = await here.keeper.open('class-1', SETTINGS);
    const there = kept(memoryStore(memory), 'boot-2');
    await there.keeper.submit(room, DESK, { type: 'CloseQuestion', id: 'close', ask: 'a1' });
    const replies = await Promise.all([
      here.keeper.submit(room, DESK, { type: 'CloseQuestion', id: 'close here', ask: 'a1' }),
      here.keeper.submit(room, DESK, { type: 'ShowSpread', id: 'spread', ask: 'a1' }),
      here.keeper.submit(quiet, phone('bo'), join('Bo')),
    ]);
    expect(replies.every(({ ok }) => ok)).toBe(true);
    expect(types(memory, room)?.slice(-3)).toEqual(['QuestionOpened', 'QuestionClosed', 'SpreadShown']);
    expect(here.faults).toEqual([]);
  });

  test('R52 who collides twice is refused', async () => {
    const store = memoryStore();
    const { keeper } = kept(store);
    const room = await keeper.open('class-1', SETTINGS);
    let tries = 0;
    const stubborn = kept({ ...store, append: async () => ((tries += 1), ['collided']) }, 'boot-2');
    expect(await stubborn.keeper.submit(room, phone('ana'), join('Ana'))).toEqual({ ok: false, reason: 'not-saved' });
    expect(tries).toBe(2);
    expect(stubborn.changes).toEqual([]);
  });

  test('R53 nothing stored: refused, nobody hears, the room is as it was', async () => {
    const store = memoryStore();
    let full = false;
    const failing: EventStore = {
      ...store,
      append: async (appends) => {
        if (full) throw new Error('database or disk is full');
        return store.append(appends);
      },
    };
    const { keeper, changes, faults } = kept(failing);
    const room = await lesson(keeper);
    const told = changes.length;
    full = true;
    const replies = await Promise.all([
      keeper.submit(room, phone('ana'), write('up', 1)),
      keeper.submit(room, phone('ana'), write('up', 1)),
      keeper.submit(room, DESK, { type: 'CloseQuestion', id: 'close', ask: 'a1' }),
    ]);
    for (const reply of replies) expect(reply).toEqual({ ok: false, reason: 'not-saved' });
    expect(changes).toHaveLength(told);
    expect(faults).toEqual([[room, expect.any(Error)]]);
    full = false;
    expect(await keeper.look(room, ({ state }) => [state.open?.ask, written(state)])).toEqual(['a1', 0]);
    expect(await keeper.submit(room, phone('ana'), write('up', 1))).toEqual({
      ok: true,
      value: { counter: 1, answer: 'up' },
    });
  });

  test('R54 a log that cannot be read hurts its own room alone', async () => {
    const memory = emptyMemory();
    const { keeper } = kept(memoryStore(memory));
    const [bad, gap, good] = [await lesson(keeper), await lesson(keeper), await lesson(keeper)];
    const rows = memory.rooms.get(bad)?.rows ?? [];
    rows[1] = { ...(rows[1] as NonNullable<(typeof rows)[0]>), body: '{"type":"StudentJoined","version":99}' };
    memory.rooms.get(gap)?.rows.splice(1, 1);
    const later = kept(memoryStore(memory), 'boot-2');
    const replies = await Promise.all(
      [bad, gap, good].map((room) => later.keeper.submit(room, phone('ana'), write('up', 1))),
    );
    expect(replies.map(({ ok }) => ok)).toEqual([false, false, true]);
    expect(later.faults.map(([room, error]) => [room, String(error)])).toEqual([
      [bad, 'UnreadableEventError: the log holds StudentJoined of version 99; this version reads 1 to 1'],
      [gap, 'RangeError: the log goes from event 1 to 3'],
    ]);
    expect(await later.keeper.look(bad, () => 1)).toBeNull();
    expect(await Promise.all([bad, gap, good, 'NOPAL'].map(later.keeper.find))).toEqual([
      'failed',
      'failed',
      'here',
      'absent',
    ]);
    expect(await later.keeper.look(good, ({ state }) => written(state))).toBe(1);
  });

  test('R60 a write that the store cannot take hurts its own room alone', async () => {
    const store = memoryStore();
    let refused = '';
    const { keeper, changes, faults } = kept({
      ...store,
      append: async (appends) => {
        const fine = [...(await store.append(appends.filter(({ room }) => room !== refused)))];
        const failed = { failed: new Error('no such value') };
        return appends.map(({ room }) => (room === refused ? failed : (fine.shift() ?? failed)));
      },
    });
    const [bad, good] = [await lesson(keeper), await lesson(keeper)];
    const told = changes.length;
    refused = bad;
    const replies = await Promise.all([bad, good].map((room) => keeper.submit(room, phone('ana'), write('up', 1))));
    expect(replies).toMatchObject([
      { ok: false, reason: 'not-saved' },
      { ok: true, value: { counter: 1 } },
    ]);
    expect(faults.map(([room, error]) => [room, String(error)])).toEqual([[bad, 'Error: no such value']]);
    expect(changes.slice(told).map(({ room }) => room)).toEqual([good]);
    expect(await keeper.look(bad, ({ state }) => written(state))).toBe(0);
  });

  test('R60 a room that cannot be stored is not opened', async () => {
    const { keeper } = kept({ ...memoryStore(), append: async () => [{ failed: new Error('no such value') }] });
    await expect(keeper.open('class-1', SETTINGS)).rejects.toThrow('no such value');
  });

  test('R54 a command on which the rules stumble is refused alone', async () => {
    const { keeper, faults } = kept(memoryStore());
    const room = await lesson(keeper);
    const monster = { type: 'Join', id: 'c', name: null, ...HANDS } as unknown as Command;
    const replies = await Promise.all([
      keeper.submit(room, phone('bo'), monster),
      keeper.submit(room, phone('ana'), write('up', 1)),
    ]);
    expect(replies).toEqual([
      { ok: false, reason: 'not-saved' },
      { ok: true, value: { counter: 1, answer: 'up' } },
    ]);
    expect(faults).toHaveLength(1);
  });

  test('R54 a room that breaks while folding is thrown out and read anew', async () => {
    const { keeper, faults } = kept(memoryStore());
    const [room, other] = [await lesson(keeper), await lesson(keeper)];
    await keeper.look(room, ({ state }) => {
      state.students.set = () => {
        throw new Error('out of memory');
      };
    });
    const replies = await Promise.all([
      keeper.submit(room, phone('bo'), join('Bo')),
      keeper.submit(other, phone('bo'), join('Bo')),
    ]);
    expect(replies.map(({ ok }) => ok)).toEqual([false, true]);
    expect(faults.map(([where, error]) => [where, String(error)])).toEqual([[room, 'Error: out of memory']]);
    expect(await keeper.submit(room, phone('bo'), join('Bo'))).toMatchObject({ ok: true });
  });

  test('a listener that throws does not stop the lesson', async () => {
    const { options, faults } = kept(memoryStore());
    const keeper = createKeeper({
      ...options,
      changed: () => {
        throw new Error('listener');
      },
    });
    await lesson(keeper);
    expect(faults.map(([, error]) => String(error))).toEqual(['Error: listener', 'Error: listener', 'Error: listener']);
  });

  test('an unknown room is named', async () => {
    const { keeper } = kept(memoryStore());
    expect(await keeper.submit('NOPAL', DESK, guitar('start'))).toEqual({
      ok: false,
      reason: 'room-not-found',
      detail: { room: 'NOPAL' },
    });
    expect(await keeper.look('NOPAL', () => 1)).toBeNull();
  });

  test('R55 after a restart an open question is open, and answers and tokens hold', async () => {
    const memory = emptyMemory();
    const before = kept(memoryStore(memory));
    const room = await lesson(before.keeper);
    await before.keeper.submit(room, phone('ana'), write('up', 1));
    const after = kept(memoryStore(memory), 'boot-2');
    const common = (keeper: Keeper) => keeper.look(room, ({ state }) => JSON.stringify(studentCommon(state)));
    expect(await common(after.keeper)).toBe(await common(before.keeper));
    expect(await after.keeper.submit(room, phone('ana'), write('up', 1))).toEqual({
      ok: true,
      value: { counter: 1, answer: 'up' },
    });
    expect(await after.keeper.submit(room, phone('ana'), write('down', 2))).toMatchObject({ ok: true });
    await after.keeper.submit(room, DESK, { type: 'CloseQuestion', id: 'close', ask: 'a1' });
    expect((await after.keeper.rooms()).map((each) => [each.room, each.status])).toEqual([[room, 'round']]);
  });

  test('R13 erasing leaves the room as if the student had never come', async () => {
    const memory = emptyMemory();
    const { keeper, erased } = kept(memoryStore(memory));
    const room = await lesson(keeper);
    await keeper.submit(room, phone('bo'), join('Ana'));
    await keeper.submit(room, phone('ana'), write('up', 1));
    await keeper.submit(room, phone('bo'), write('same', 1));
    const ana = await keeper.look(room, ({ people }) => people.byToken.get(hashToken('ana')) ?? '');
    const erase: Command = { type: 'EraseStudent', id: 'erase', student: ana ?? '' };
    const replies = await Promise.all([
      keeper.submit(room, DESK, erase),
      keeper.submit(room, phone('ana'), write('down', 2)),
      keeper.submit(room, DESK, erase),
      keeper.submit(room, DESK, { ...erase, id: 'erase again' }),
      keeper.submit(room, phone('bo'), write('down', 2)),
    ]);
    expect(replies).toEqual([
      { ok: true },
      { ok: false, reason: 'not-joined' },
      { ok: true },
      { ok: false, reason: 'student-unknown' },
      { ok: true, value: { counter: 2, answer: 'down' } },
    ]);
    expect(types(memory, room)).toEqual([
      'RoomOpened',
      'Erased',
      'RoundStarted',
      'QuestionOpened',
      'StudentJoined',
      'Erased',
      'AnswerWritten',
      'Erased',
      'AnswerWritten',
    ]);
    expect(JSON.stringify([...(memory.rooms.get(room)?.rows ?? [])])).not.toContain(ana);
    expect(erased).toEqual([[room, ana]]);
    // Who is left keeps seat and number; the name is plain now.
    const left = await keeper.look(room, ({ state, people, seq }) => ({
      seats: [...state.students.values()].map(({ seat }) => seat),
      names: [...people.shown.values()],
      seq,
    }));
    expect(left).toEqual({ seats: [2], names: ['Ana'], seq: 9 });
  });

  test('R13 R52 erasing collides and fails as other commands do', async () => {
    const memory = emptyMemory();
    const store = memoryStore(memory);
    let mode: 'collide' | 'fail' = 'collide';
    const { keeper, faults } = kept({
      ...store,
      erase: async () => {
        if (mode === 'fail') throw new Error('disk');
        return 'collided';
      },
    });
    const room = await lesson(keeper);
    const student = await keeper.look(room, ({ state }) => [...state.students.keys()][0] ?? '');
    const erase = (id: string): Command => ({ type: 'EraseStudent', id, student: student ?? '' });
    expect(await keeper.submit(room, DESK, erase('one'))).toEqual({ ok: false, reason: 'not-saved' });
    mode = 'fail';
    expect(await keeper.submit(room, DESK, erase('two'))).toEqual({ ok: false, reason: 'not-saved' });
    expect(faults).toHaveLength(1);
    expect(await keeper.look(room, ({ state }) => state.students.size)).toBe(1);
  });

  test('R61 what fails after an erasure leaves the student erased and everybody told', async () => {
    const memory = emptyMemory();
    const store = memoryStore(memory);
    let [busy, unreadable, scrubs] = [false, false, 0];
    const { keeper, erased, faults, changes, waiting } = kept({
      ...store,
      read: async (room) => {
        if (unreadable) throw new Error('input and output');
        return store.read(room);
      },
      scrub: async () => {
        scrubs += 1;
        if (busy) throw new Error('still in the log');
      },
    });
    const room = await lesson(keeper);
    await keeper.submit(room, phone('bo'), join('Bo'));
    const [ana = '', bo = ''] = (await keeper.look(room, ({ state }) => [...state.students.keys()])) ?? [];
    // What an earlier run left is scrubbed at the start.
    expect(scrubs).toBe(1);
    busy = true;
    const told = changes.length;
    expect(await keeper.submit(room, DESK, { type: 'EraseStudent', id: 'one', student: ana })).toEqual({ ok: true });
    expect(erased).toEqual([[room, ana]]);
    expect(changes).toHaveLength(told + 1);
    expect(await keeper.look(room, ({ state }) => [...state.students.keys()])).toEqual([bo]);
    // Tried again later, until it is done.
    for (const tries of [3, 4]) {
      expect(waiting).toHaveLength(1);
      busy = tries < 4;
      waiting.shift()?.();
      await new Promise<void>((next) => setImmediate(next));
      expect(scrubs).toBe(tries);
    }
    expect(waiting).toEqual([]);
    unreadable = true;
    expect(await keeper.submit(room, DESK, { type: 'EraseStudent', id: 'two', student: bo })).toEqual({ ok: true });
    expect(erased).toEqual([
      [room, ana],
      [room, bo],
    ]);
    unreadable = false;
    expect(await keeper.look(room, ({ state }) => state.students.size)).toBe(0);
    expect(new Set(faults.map(([, error]) => String(error)))).toEqual(
      new Set(['Error: still in the log', 'Error: input and output']),
    );
    await keeper.close();
  });

  test('R31 R57 the sound is held by one page, and by none when it is gone', async () => {
    const { keeper, orders, changes } = kept(memoryStore());
    const room = await keeper.open('class-1', SETTINGS);
    const hold = (takeOver: boolean, id = `hold ${takeOver}`): Command => ({ type: 'HoldSound', id, takeOver });
    const holder = () => keeper.look(room, ({ soundHolder }) => soundHolder);
    expect(await keeper.submit(room, page('page-1'), hold(false))).toEqual({ ok: true });
    expect(await keeper.submit(room, page('page-2'), hold(false))).toEqual({
      ok: false,
      reason: 'sound-held-elsewhere',
    });
    expect(await holder()).toBe('page-1');
    await keeper.submit(room, page('page-2'), hold(true));
    expect(orders).toEqual([[room, 'page-1', { order: 'stop' }]]);
    expect(changes).toHaveLength(2);
    await keeper.submit(room, DESK, { type: 'RequestStop', id: 'stop' });
    await keeper.submit(room, DESK, { type: 'RequestStop', id: 'stop' });
    expect(orders.slice(1)).toEqual([[room, 'page-2', { order: 'stop' }]]);
    keeper.pageLeft(room, 'page-1');
    expect(await holder()).toBe('page-2');
    keeper.pageLeft(room, 'page-2');
    expect(await holder()).toBeNull();
    expect(changes).toHaveLength(3);
  });

  test('R56 two rooms never have one code, whoever opened the first', async () => {
    const memory = emptyMemory();
    const codes = new Set<string>();
    for (const boot of ['boot-1', 'boot-1', 'boot-1'])
      codes.add(await kept(memoryStore(memory), boot).keeper.open('class-1', SETTINGS));
    expect(codes.size).toBe(3);
    expect(memory.rooms.size).toBe(3);
  });

  test('R2 a room does not open with settings that cannot hold', async () => {
    const { keeper } = kept(memoryStore());
    await expect(keeper.open('class-1', { ...SETTINGS, qualities: [] })).rejects.toThrow(RangeError);
  });

  test('a room that nobody used leaves memory and comes back from its log', async () => {
    const memory = emptyMemory();
    const store = memoryStore(memory);
    let reads = 0;
    const { keeper, clock } = kept({ ...store, read: (room) => ((reads += 1), store.read(room)) });
    const [idle, busy] = [await lesson(keeper), await lesson(keeper)];
    await keeper.submit(busy, page('page-1'), { type: 'HoldSound', id: 'hold', takeOver: false });
    clock.ms += 31 * 60_000;
    await keeper.submit(busy, phone('ana'), write('up', 1));
    expect(reads).toBe(0);
    expect(await keeper.submit(idle, phone('ana'), write('up', 1))).toMatchObject({ ok: true });
    expect(reads).toBe(1);
  });

  test('many looks at a room that is not in memory read it once', async () => {
    const memory = emptyMemory();
    const room = await lesson(kept(memoryStore(memory)).keeper);
    const store = memoryStore(memory);
    let reads = 0;
    const { keeper } = kept({ ...store, read: (name) => ((reads += 1), store.read(name)) }, 'boot-2');
    const replies: Promise<Reply>[] = [keeper.submit(room, phone('ana'), write('up', 1))];
    const looks = Array.from({ length: 20 }, () => keeper.look(room, ({ state }) => state.students.size));
    expect(new Set(await Promise.all(looks))).toEqual(new Set([1]));
    expect((await Promise.all(replies))[0]).toMatchObject({ ok: true });
    expect(reads).toBe(1);
    expect(await keeper.look(room, ({ state }) => written(state))).toBe(1);
  });

  test('R55 the same over a file: what was acknowledged is there after the process is gone', async () => {
    const folder = mkdtempSync(joinPath(tmpdir(), 'hearsay-keeper-'));
    const file = joinPath(folder, 'rooms.db');
    const first = openSqliteStore(file);
    const before = kept(first);
    const room = await lesson(before.keeper);
    const students = Array.from({ length: 30 }, (_, number) => phone(`token ${number}`));
    await Promise.all(students.map((caller) => before.keeper.submit(room, caller, join('Ana'))));
    await Promise.all(students.map((caller) => before.keeper.submit(room, caller, write('up', 1))));
    const gone = await before.keeper.look(room, ({ people }) => people.byToken.get(hashToken('token 7')) ?? '');
    await before.keeper.submit(room, DESK, { type: 'EraseStudent', id: 'erase', student: gone ?? '' });
    const left = await before.keeper.look(room, ({ state, people }) => structuredClone([state, people]));
    // Not closed: a process that is killed closes nothing.
    const second = openSqliteStore(file);
    const after = kept(second, 'boot-2');
    expect(await after.keeper.look(room, ({ state, people }) => structuredClone([state, people]))).toEqual(left);
    await first.close();
    await second.close();
    rmSync(folder, { recursive: true });
  });

  test('R58 a closed keeper finishes what was sent and refuses what comes later', async () => {
    const { keeper } = kept(memoryStore());
    const room = await lesson(keeper);
    const sent = keeper.submit(room, phone('ana'), write('up', 1));
    const closing = keeper.close();
    expect(await keeper.submit(room, phone('ana'), write('down', 2))).toEqual({ ok: false, reason: 'not-saved' });
    expect(await sent).toMatchObject({ ok: true });
    await closing;
  });
});

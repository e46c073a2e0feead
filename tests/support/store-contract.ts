import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { EventStore, KeyStore, LogRow, PersonRow } from '../../server/store/event-store.ts';

export type StoreUnderTest = {
  readonly open: () => Promise<EventStore>;
  /** Opens the same log a second time while the first is open, as another process would. */
  readonly openAgain: () => Promise<EventStore>;
  readonly cleanUp: () => Promise<void>;
};

export function row(seq: number, change: Partial<LogRow> = {}): LogRow {
  return {
    seq,
    at: 1_700_000_000_000 + seq,
    mono: seq * 1.5,
    boot: 'boot-1',
    student: null,
    type: 'RoundStarted',
    body: JSON.stringify({ type: 'RoundStarted', version: 1, seq }),
    ...change,
  };
}

export function person(student: string, change: Partial<PersonRow> = {}): PersonRow {
  return { student, name: `Name of ${student}`, tokenHash: `hash-${student}`, settings: '{"pair":false}', ...change };
}

/** What every event store must do, whatever it is made of. */
export function storeContract(name: string, under: () => StoreUnderTest): void {
  describe(`event store: ${name}`, () => {
    let subject: StoreUnderTest;
    let store: EventStore;
    beforeEach(async () => {
      subject = under();
      store = await subject.open();
    });
    afterEach(async () => {
      await store.close();
      await subject.cleanUp();
    });

    test('gives back what was appended, in order, with the people', async () => {
      const rows = [row(1), row(2, { student: 's1', type: 'AnswerWritten' })];
      expect(await store.append([{ room: 'WAKUR', rows, people: [person('s1')] }])).toEqual(['stored']);
      expect(await store.append([{ room: 'WAKUR', rows: [row(3)], people: [] }])).toEqual(['stored']);
      expect(await store.read('WAKUR')).toEqual({ rows: [...rows, row(3)], people: [person('s1')] });
    });

    test('an unknown room is null', async () => {
      expect(await store.read('NOPAL')).toBeNull();
    });

    test('keeps rooms apart in one commit', async () => {
      await store.append([
        { room: 'WAKUR', rows: [row(1)], people: [person('s1')] },
        { room: 'BIFOD', rows: [row(1), row(2)], people: [person('s1', { name: 'Other' })] },
      ]);
      expect((await store.read('WAKUR'))?.rows).toHaveLength(1);
      expect((await store.read('BIFOD'))?.rows).toHaveLength(2);
      expect((await store.read('BIFOD'))?.people).toEqual([person('s1', { name: 'Other' })]);
    });

    test('a collision hurts its own room alone, people included', async () => {
      await store.append([{ room: 'BIFOD', rows: [row(1)], people: [person('s1')] }]);
      const outcomes = await store.append([
        { room: 'WAKUR', rows: [row(1)], people: [] },
        { room: 'BIFOD', rows: [row(1, { boot: 'late' })], people: [person('s1', { name: 'Late' }), person('s2')] },
        { room: 'DOKUF', rows: [row(1)], people: [] },
      ]);
      expect(outcomes).toEqual(['stored', 'collided', 'stored']);
      expect(await store.read('BIFOD')).toEqual({ rows: [row(1)], people: [person('s1')] });
      expect(await store.read('WAKUR')).not.toBeNull();
      expect(await store.read('DOKUF')).not.toBeNull();
    });

    test('a gap after the stored rows collides, also in a new room', async () => {
      await store.append([{ room: 'WAKUR', rows: [row(1)], people: [] }]);
      expect(await store.append([{ room: 'WAKUR', rows: [row(3)], people: [] }])).toEqual(['collided']);
      expect(await store.append([{ room: 'NOPAL', rows: [row(2)], people: [] }])).toEqual(['collided']);
      expect(await store.read('NOPAL')).toBeNull();
    });

    test('two writers of one log: the second collides and reads what the first wrote', async () => {
      const other = await subject.openAgain();
      await store.append([{ room: 'WAKUR', rows: [row(1)], people: [] }]);
      expect(await other.append([{ room: 'WAKUR', rows: [row(1, { boot: 'b' })], people: [] }])).toEqual(['collided']);
      expect((await other.read('WAKUR'))?.rows).toEqual([row(1)]);
      expect(await other.append([{ room: 'WAKUR', rows: [row(2, { boot: 'b' })], people: [] }])).toEqual(['stored']);
      expect(await store.append([{ room: 'WAKUR', rows: [row(2)], people: [] }])).toEqual(['collided']);
      await other.close();
    });

    test('a person is replaced by a later write of the same room and student', async () => {
      await store.append([{ room: 'WAKUR', rows: [row(1)], people: [person('s1')] }]);
      await store.append([{ room: 'WAKUR', rows: [row(2)], people: [person('s1', { name: 'Zoë ♭ علی‌رضا 👩‍👩‍👧' })] }]);
      expect((await store.read('WAKUR'))?.people).toEqual([person('s1', { name: 'Zoë ♭ علی‌رضا 👩‍👩‍👧' })]);
    });

    test.each<[string, Partial<LogRow>]>([
      ['NaN as time', { at: Number.NaN }],
      ['infinity as time', { mono: Number.POSITIVE_INFINITY }],
      ['undefined as body', { body: undefined as unknown as string }],
      ['a boolean as type', { type: true as unknown as string }],
      ['an object as boot', { boot: {} as unknown as string }],
      ['a cut character', { boot: '\ud800' }],
      ['NUL', { boot: 'a\0b' }],
    ])('refuses %s and stores nothing of that room; the others are stored', async (_what, change) => {
      const bad = { room: 'WAKUR', rows: [row(1), row(2, change)], people: [] };
      const good = (room: string) => ({ room, rows: [row(1)], people: [] });
      expect(await store.append([good('BIFOD'), bad, good('DOKUF')])).toEqual([
        'stored',
        { failed: expect.any(TypeError) as TypeError },
        'stored',
      ]);
      expect(await store.read('WAKUR')).toBeNull();
      expect((await store.read('BIFOD'))?.rows).toHaveLength(1);
      expect((await store.read('DOKUF'))?.rows).toHaveLength(1);
      expect(await store.append([{ room: 'WAKUR', rows: [row(1)], people: [] }])).toEqual(['stored']);
    });

    test('refuses an append without rows, or with a gap inside', async () => {
      for (const rows of [[], [row(1), row(3)]]) {
        const [outcome] = await store.append([{ room: 'WAKUR', rows, people: [] }]);
        expect(outcome).toEqual({ failed: expect.any(RangeError) as RangeError });
      }
      expect(await store.read('WAKUR')).toBeNull();
    });

    test('lists rooms newest first with the last event among the types asked for', async () => {
      const at = (time: number, type: string, seq = 1) => row(seq, { at: time, type });
      await store.append([
        { room: 'WAKUR', rows: [at(10, 'RoomOpened'), at(50, 'LessonEnded', 2), at(60, 'Other', 3)], people: [] },
        { room: 'BIFOD', rows: [at(30, 'RoomOpened')], people: [] },
        { room: 'DOKUF', rows: [at(20, 'RoomOpened'), at(21, 'LessonEnded', 2), at(22, 'RoomClosed', 3)], people: [] },
        { room: 'NOPAL', rows: [at(99, 'Other')], people: [] },
      ]);
      expect(await store.rooms(['RoomOpened', 'LessonEnded', 'RoomClosed'])).toEqual([
        { room: 'BIFOD', openedAt: 30, mark: 'RoomOpened' },
        { room: 'DOKUF', openedAt: 20, mark: 'RoomClosed' },
        { room: 'WAKUR', openedAt: 10, mark: 'LessonEnded' },
      ]);
      expect(await store.rooms([])).toEqual([]);
    });

    test('erases one student: rows blanked in place, person gone, one row appended', async () => {
      const blank = { type: 'Erased', body: '{"type":"Erased","version":1}' };
      await store.append([
        {
          room: 'WAKUR',
          rows: [row(1), row(2, { student: 's1' }), row(3, { student: 's2' }), row(4, { student: 's1' })],
          people: [person('s1'), person('s2')],
        },
        { room: 'BIFOD', rows: [row(1, { student: 's1' })], people: [person('s1')] },
      ]);
      const erasure = { room: 'WAKUR', student: 's1', blank, row: row(5, { type: 'StudentErased' }) };
      expect(await store.erase({ ...erasure, row: row(4) })).toBe('collided');
      expect((await store.read('WAKUR'))?.people).toHaveLength(2);
      expect(await store.erase(erasure)).toBe('stored');
      await store.scrub();
      expect(await store.read('WAKUR')).toEqual({
        rows: [row(1), row(2, blank), row(3, { student: 's2' }), row(4, blank), erasure.row],
        people: [person('s2')],
      });
      expect((await store.read('BIFOD'))?.people).toEqual([person('s1')]);
    });

    test('keeps classes and replaces one of the same id', async () => {
      await store.putClass({ id: 'b', name: 'Tuesday', settings: '{}' });
      await store.putClass({ id: 'a', name: 'Monday', settings: '{}' });
      await store.putClass({ id: 'b', name: 'Friday', settings: '{"policy":"relatives"}' });
      expect(await store.classes()).toEqual([
        { id: 'b', name: 'Friday', settings: '{"policy":"relatives"}' },
        { id: 'a', name: 'Monday', settings: '{}' },
      ]);
    });

    test('changes the settings of a class with the events of its room, or not at all', async () => {
      await store.putClass({ id: 'a', name: 'Monday', settings: '{"capo":0}' });
      const classChange = { id: 'a', change: (settings: string) => settings.replace('0', '2') };
      const settings = async () => (await store.classes()).map((each) => each.settings);
      const outcomes = await store.append([
        { room: 'WAKUR', rows: [row(1)], people: [], classChange: { ...classChange, id: 'unknown' } },
        { room: 'BIFOD', rows: [row(2)], people: [], classChange },
      ]);
      expect(outcomes).toEqual(['stored', 'collided']);
      expect(await settings()).toEqual(['{"capo":0}']);
      await store.append([{ room: 'BIFOD', rows: [row(1)], people: [], classChange }]);
      expect(await settings()).toEqual(['{"capo":2}']);
      const [unstored] = await store.append([
        { room: 'BIFOD', rows: [row(2)], people: [person('\0')], classChange: { id: 'a', change: () => '{}' } },
      ]);
      expect(unstored).toHaveProperty('failed');
      expect(await store.classes()).toEqual([{ id: 'a', name: 'Monday', settings: '{"capo":2}' }]);
    });

    test('writes many rooms with many rows in one commit', async () => {
      const appends = Array.from({ length: 40 }, (_, index) => ({
        room: `R${index}`,
        rows: Array.from({ length: 50 }, (_, place) => row(place + 1, { student: `s${place}` })),
        people: Array.from({ length: 50 }, (_, place) => person(`s${place}`)),
      }));
      expect(new Set(await store.append(appends))).toEqual(new Set(['stored']));
      expect((await store.read('R39'))?.rows).toEqual(appends[39]?.rows);
    });
  });
}

/** What every key store must do. */
export function keyContract(name: string, open: () => Promise<KeyStore & { close: () => Promise<void> }>): void {
  describe(`key store: ${name}`, () => {
    test('knows the keys that were put, and forgets the old ones', async () => {
      const store = await open();
      await store.putTeacherKey('aa', 100);
      await store.putTeacherKey('bb', 200);
      expect([await store.hasTeacherKey('aa'), await store.hasTeacherKey('cc')]).toEqual([true, false]);
      await store.dropTeacherKeys(200);
      expect([await store.hasTeacherKey('aa'), await store.hasTeacherKey('bb')]).toEqual([false, true]);
      await store.close();
    });
  });
}

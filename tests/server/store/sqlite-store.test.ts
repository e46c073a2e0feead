import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { isOfOneWrite, openConnection } from '../../../server/store/database.ts';
import { lockFolder } from '../../../server/store/folder-lock.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { keyContract, person, row, storeContract } from '../../support/store-contract.ts';

const folders: string[] = [];
function freshFolder(): string {
  // A user's name may hold any letter; so may the path to the store.
  const folder = mkdtempSync(join(tmpdir(), 'Zoë Müller ♭ '));
  folders.push(folder);
  return folder;
}
afterEach(() => folders.splice(0).forEach((folder) => rmSync(folder, { recursive: true })));

storeContract('SQLite', () => {
  const file = join(freshFolder(), 'hearsay.db');
  const open = async () => openSqliteStore(file);
  return { open, openAgain: open, cleanUp: async () => {} };
});
keyContract('SQLite', async () => openSqliteStore(join(freshFolder(), 'hearsay.db')));

describe('SQLite file', () => {
  test('is one file again after closing', async () => {
    const folder = freshFolder();
    const file = join(folder, 'hearsay.db');
    const store = openSqliteStore(file);
    await store.append([{ room: 'WAKUR', rows: [row(1)], people: [] }]);
    expect(readdirSync(folder)).toContain('hearsay.db-wal');
    await store.close();
    expect(readdirSync(folder)).toEqual(['hearsay.db']);
    const again = openSqliteStore(file);
    expect((await again.read('WAKUR'))?.rows).toEqual([row(1)]);
    await again.close();
  });

  test('another process that reads it keeps closing from failing', async () => {
    const file = join(freshFolder(), 'hearsay.db');
    const store = openSqliteStore(file);
    const reader = openConnection(file);
    expect(['journal_mode', 'synchronous', 'foreign_keys', 'secure_delete'].map(reader.pragma)).toEqual([
      'wal',
      2,
      1,
      1,
    ]);
    await store.append([{ room: 'WAKUR', rows: [row(1)], people: [] }]);
    await store.close();
    expect(reader.prepare('SELECT room FROM events').all()).toEqual([{ room: 'WAKUR' }]);
    reader.close();
  });

  test('holds no byte of an erased student, in no file', async () => {
    const folder = freshFolder();
    const file = join(folder, 'hearsay.db');
    const store = openSqliteStore(file);
    const secret = 'Quetzalcoatl';
    const body = JSON.stringify({
      type: 'AnswerWritten',
      version: 1,
      student: 'studentsevenseven',
      answer: 'answereleven',
    });
    // Enough around it that pages split and free cells are left behind.
    for (let seq = 1; seq <= 300; seq += 1) {
      const mine = seq % 3 === 0;
      const change = mine ? { student: 'studentsevenseven', type: 'AnswerWritten', body } : { student: `other${seq}` };
      const people = mine ? [person('studentsevenseven', { name: secret, tokenHash: `tokenhash${seq}` })] : [];
      await store.append([{ room: 'WAKUR', rows: [row(seq, change)], people }]);
    }
    const bytes = () =>
      readdirSync(folder)
        .map((name) => readFileSync(join(folder, name), 'latin1'))
        .join('');
    expect(bytes()).toContain(secret);
    await store.erase({
      room: 'WAKUR',
      student: 'studentsevenseven',
      blank: { type: 'Erased', body: '{"type":"Erased","version":1}' },
      row: row(301, { type: 'StudentErased' }),
    });
    await store.scrub();
    for (const gone of [secret, 'studentsevenseven', 'answereleven', 'tokenhash']) expect(bytes()).not.toContain(gone);
    expect((await store.read('WAKUR'))?.rows).toHaveLength(301);
    await store.close();
  });

  test('R61 bytes that another process keeps in the log are scrubbed once it is gone, also by the next run', async () => {
    const folder = freshFolder();
    const file = join(folder, 'hearsay.db');
    const erasure = (seq: number) => ({
      room: 'WAKUR',
      student: 's1',
      blank: { type: 'Erased', body: '{"type":"Erased","version":1}' },
      row: row(seq),
    });
    const store = openSqliteStore(file);
    const bytes = () =>
      readdirSync(folder)
        .map((name) => readFileSync(join(folder, name), 'latin1'))
        .join('');
    await store.append([
      { room: 'WAKUR', rows: [row(1, { student: 's1' })], people: [person('s1', { name: 'Quetzalcoatl' })] },
    ]);
    const reader = openConnection(file);
    reader.exec('BEGIN');
    expect(reader.prepare('SELECT name FROM people').all()).toHaveLength(1);
    expect(await store.erase(erasure(2))).toBe('stored');
    await expect(store.scrub()).rejects.toThrow(/still in its write-ahead log/);
    expect((await store.read('WAKUR'))?.people).toEqual([]);
    expect(bytes()).toContain('Quetzalcoatl');
    reader.exec('COMMIT');
    reader.close();
    // The process that erased was killed; the next one knows that something is left to do.
    const next = openSqliteStore(file);
    await next.scrub();
    expect(bytes()).not.toContain('Quetzalcoatl');
    await next.close();
    await store.close();
  });

  test('of the first version is brought up to date', async () => {
    const file = join(freshFolder(), 'hearsay.db');
    await openSqliteStore(file).close();
    const old = openConnection(file);
    old.exec('DROP TABLE unscrubbed; PRAGMA user_version = 1');
    old.close();
    const store = openSqliteStore(file);
    await store.scrub();
    expect(await store.append([{ room: 'WAKUR', rows: [row(1)], people: [] }])).toEqual(['stored']);
    await store.close();
  });

  test('R60 what the database itself refuses hurts its own room alone', async () => {
    const store = openSqliteStore(join(freshFolder(), 'hearsay.db'));
    const good = (room: string, seq = 1) => ({ room, rows: [row(seq)], people: [person('s1')] });
    const bad = { room: 'WAKUR', rows: [row(1)], people: [person('s1'), person('s2', { settings: 'no json' })] };
    expect(await store.append([good('BIFOD'), bad, good('DOKUF')])).toEqual([
      'stored',
      { failed: expect.objectContaining({ code: expect.stringMatching(/^SQLITE_CONSTRAINT/) as string }) as Error },
      'stored',
    ]);
    expect(await store.read('WAKUR')).toBeNull();
    expect(await store.append([good('BIFOD', 2), good('WAKUR')])).toEqual(['stored', 'stored']);
    await store.close();
  });

  test('is refused where it is no database, or of a later version, and stays as it was', () => {
    const file = join(freshFolder(), 'hearsay.db');
    writeFileSync(file, 'no database at all '.repeat(200));
    const before = readFileSync(file);
    expect(() => openSqliteStore(file)).toThrow(/not a database/);
    expect(readFileSync(file)).toEqual(before);

    const later = join(freshFolder(), 'hearsay.db');
    const connection = openConnection(later);
    connection.exec('PRAGMA user_version = 900');
    connection.close();
    expect(() => openSqliteStore(later)).toThrow(RangeError);
  });

  test('a full disk refuses the commit whole, and the store goes on when there is room again', async () => {
    const file = join(freshFolder(), 'hearsay.db');
    const store = openSqliteStore(file);
    await store.append([{ room: 'WAKUR', rows: [row(1)], people: [] }]);
    await store.close();
    const connection = openConnection(file);
    connection.exec('PRAGMA max_page_count = 12');
    const insert = connection.prepare("INSERT INTO people VALUES ('R', ?, ?, 'h', '{}')");
    const fill = () =>
      connection.transaction(() => {
        for (let index = 0; index < 500; index += 1) insert.run(`s${index}`, 'x'.repeat(500));
      });
    expect(fill).toThrow(/full/);
    expect(connection.prepare('SELECT count(*) AS n FROM people').all()).toEqual([{ n: 0 }]);
    connection.exec('PRAGMA max_page_count = 100000');
    fill();
    expect(connection.prepare('SELECT count(*) AS n FROM people').all()).toEqual([{ n: 500 }]);
    connection.close();
  });

  // Result codes: https://www.sqlite.org/rescode.html
  test.each([
    ['SQLITE_CONSTRAINT_CHECK', true],
    ['SQLITE_MISMATCH', true],
    ['SQLITE_TOOBIG', true],
    ['SQLITE_FULL', false],
    ['SQLITE_IOERR_WRITE', false],
    ['SQLITE_READONLY', false],
    ['SQLITE_BUSY', false],
    ['SQLITE_CORRUPT', false],
    ['', false],
  ])('R60 %s is the fault of one write: %s', (code, one) => {
    expect(isOfOneWrite(Object.assign(new Error('driver'), { code }))).toBe(one);
  });

  test('values are counted, so that nothing of an earlier call is bound again', () => {
    const connection = openConnection(join(freshFolder(), 'x.db'));
    connection.exec('CREATE TABLE t (a, b)');
    const insert = connection.prepare('INSERT INTO t VALUES (?, ?)');
    insert.run('one', 'two');
    expect(() => insert.run('three')).toThrow(RangeError);
    expect(() => insert.run('three', 'four', 'five')).toThrow(RangeError);
    connection.close();
  });
});

describe('data folder', () => {
  test('is held by one server at a time, which says where it answers', () => {
    const folder = freshFolder();
    const lock = lockFolder(folder);
    if ('heldBy' in lock) throw new Error('a fresh folder is free');
    expect(lockFolder(folder)).toEqual({ heldBy: '' });
    lock.announce('http://192.168.1.23:4600');
    expect(lockFolder(folder)).toEqual({ heldBy: 'http://192.168.1.23:4600' });
    lock.release();
    const next = lockFolder(folder);
    expect(next).not.toHaveProperty('heldBy');
    if ('release' in next) next.release();
  });
});

import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { openConnection } from '../../../server/store/database.ts';
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
    for (const gone of [secret, 'studentsevenseven', 'answereleven', 'tokenhash']) expect(bytes()).not.toContain(gone);
    expect((await store.read('WAKUR'))?.rows).toHaveLength(301);
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

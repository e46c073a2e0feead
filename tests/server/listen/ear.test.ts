import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { earIn } from '../../../server/listen/ear.ts';

const folder = mkdtempSync(join(tmpdir(), 'hearsay-ear-'));
afterAll(() => rmSync(folder, { recursive: true }));

const program = (text: string) => writeFileSync(join(folder, 'hear.mjs'), text);

test('without a transcriber it says where to name one', () => {
  expect(() => earIn(undefined)).toThrow('--ear FOLDER or in LISTENER_HOME');
  expect(() => earIn('')).toThrow('--ear FOLDER or in LISTENER_HOME');
  expect(() => earIn(folder)).toThrow(`"${folder}" is no folder with a transcriber: it holds no hear.mjs`);
});

test('the program is given the file and its notes are read', async () => {
  program(
    'console.log(JSON.stringify({ notes: [{ midi: process.argv[2].length, start: 0, end: 1, amplitude: 0.5 }] }))',
  );
  await expect(earIn(folder)('seven.w')).resolves.toEqual([{ midi: 7, start: 0, end: 1, amplitude: 0.5 }]);
});

test('one that stops or prints something else is named, with what it said', async () => {
  program('console.error("no network"); process.exit(3)');
  await expect(earIn(folder)('a.wav')).rejects.toThrow('hear.mjs stopped: no network');
  program('console.log("hello")');
  await expect(earIn(folder)('a.wav')).rejects.toThrow('must print JSON with notes');
  program('console.log(JSON.stringify({ notes: [{ midi: "C" }] }))');
  await expect(earIn(folder)('a.wav')).rejects.toThrow('must print JSON with notes');
});

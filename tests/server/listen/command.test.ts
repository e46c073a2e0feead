import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'hearsay-listen-'));
afterAll(() => rmSync(folder, { recursive: true }));
writeFileSync(join(folder, 'hear.mjs'), 'console.log(JSON.stringify({ notes: [] }));');

/** Runs the command as `npm run listen` does, with nothing known of a transcriber but what is said here. */
function listen(args: readonly string[], home?: string) {
  const { LISTENER_HOME: _, ...environment } = process.env;
  const run = spawnSync(process.execPath, ['--import', 'tsx', 'server/listen/command.ts', ...args], {
    encoding: 'utf8',
    env: home === undefined ? environment : { ...environment, LISTENER_HOME: home },
  });
  return { status: run.status, out: run.stdout, error: run.stderr };
}

test('called wrongly it says how, in one line', () => {
  const { status, error } = listen(['--count', '0'], folder);
  expect({ status, lines: error.trim().split('\n').length }).toEqual({ status: 2, lines: 1 });
  expect(error).toContain('count');
});

test('an ear that hears nothing fails the listening; its table and its files tell what was played', () => {
  const kept = join(folder, 'kept');
  const { status, out, error } = listen(['--ear', folder, '--count', '2', '--keep', kept]);
  expect({ status, error }).toEqual({ status: 1, error: '' });
  expect(out).toContain('bass note: 0 of 2');
  expect(out.split('\n')[0]).toMatch(/chord +shape +voice +groove +bass +quality/);
  expect(readdirSync(kept)).toEqual(['1.wav']);
  expect(readFileSync(join(kept, '1.wav')).toString('latin1', 0, 4)).toBe('RIFF');
});

test('as JSON each strum stands with what was heard of it', () => {
  const heard = JSON.parse(listen(['--count', '2', '--json'], folder).out) as unknown[];
  expect(heard).toHaveLength(2);
  expect(heard[0]).toMatchObject({ voice: 'steel', heard: { bass: null, quality: null }, bassRight: false });
});

import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { consoleWords } from '../../server/protocol/words/en.ts';
import { failedStart } from '../support/start-server.ts';

test('a laptop without the database driver is told what to run, in one sentence, and no data is made', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'hearsay-driver-'));
  const data = join(folder, 'data');
  // As an install that left out the part for this machine: the driver is there, its binary is not.
  const without = join(folder, 'without-driver.cjs');
  writeFileSync(
    without,
    `const Module = require('node:module');
     const resolve = Module._resolveFilename;
     Module._resolveFilename = function (request, ...rest) {
       if (request.startsWith('@libsql/') && !/neon-load|detect-libc/.test(request)) {
         throw Object.assign(new Error("Cannot find module '" + request + "'"), { code: 'MODULE_NOT_FOUND' });
       }
       return resolve.call(this, request, ...rest);
     };`,
  );
  try {
    const { code, output } = await failedStart({ data, environment: { NODE_OPTIONS: `--require ${without}` } });
    expect(code).toBe(1);
    expect(output.trim()).toBe(consoleWords.server.driverMissing);
    expect(readdirSync(folder)).toEqual(['without-driver.cjs']);
  } finally {
    rmSync(folder, { recursive: true });
  }
});

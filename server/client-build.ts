import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { consoleWords } from './protocol/words/en.ts';
import { fill } from './protocol/words/fill.ts';
import { StartError } from './settings.ts';
import { lockFolder } from './store/folder-lock.ts';
import { PAGES } from './web/pages.ts';

/** What the pages are made of. */
const SOURCES = ['client', 'shared-theory', 'server/protocol', 'package-lock.json'];
const WAIT_MS = 200;

/**
 * Builds the pages into `.build/client` if they are missing or older than their sources, and returns that folder.
 * `say` is told when it takes a moment. Two servers that start at once build once. Throws StartError with the builder's words.
 */
export async function buildClient(root: string, say: (sentence: string) => void): Promise<string> {
  const built = join(root, '.build', 'client');
  if (isFresh(root, built)) return built;
  say(consoleWords.server.building);
  mkdirSync(join(root, '.build'), { recursive: true });
  let lock = lockFolder(join(root, '.build'));
  while ('heldBy' in lock) {
    await new Promise((resolve) => void setTimeout(resolve, WAIT_MS));
    lock = lockFolder(join(root, '.build'));
  }
  try {
    if (!isFresh(root, built)) await runBuilder(root);
  } finally {
    lock.release();
  }
  return built;
}

/** Whether every page was built after the last change of any source. */
export function isFresh(root: string, built: string): boolean {
  const pages = PAGES.map((page) => join(built, `${page}.html`));
  if (!pages.every(existsSync)) return false;
  const oldestPage = Math.min(...pages.map((page) => statSync(page).mtimeMs));
  return SOURCES.every((source) => newest(join(root, source)) < oldestPage);
}

function newest(path: string): number {
  if (!existsSync(path)) return 0;
  const { mtimeMs } = statSync(path);
  if (!statSync(path).isDirectory()) return mtimeMs;
  // A folder's own time tells of files that were taken away.
  return readdirSync(path).reduce((time, name) => Math.max(time, newest(join(path, name))), mtimeMs);
}

/** In a process of its own: the builder's memory and its output stay there. */
function runBuilder(root: string): Promise<void> {
  const vite = join(dirname(createRequire(import.meta.url).resolve('vite/package.json')), 'bin', 'vite.js');
  const builder = spawn(process.execPath, [vite, 'build', '--config', 'client/vite.config.ts', '--logLevel', 'error'], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  for (const stream of [builder.stdout, builder.stderr]) stream.on('data', (part) => (output += String(part)));
  return new Promise((resolve, reject) => {
    const fail = (why: string) => reject(new StartError(fill(consoleWords.server.buildFailed, { why })));
    builder.once('error', (error) => fail(error.message));
    builder.once('close', (code) => (code === 0 ? resolve() : fail(output.trim() || `exit ${code}`)));
  });
}

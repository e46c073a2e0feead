import { spawn, type ChildProcess } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const ROOT = join(import.meta.dirname, '..', '..');
const START_WITHIN_MS = 40_000;

/** A server in a process of its own, as `npm start` starts it. */
export type RunningServer = {
  readonly url: string;
  readonly port: number;
  readonly teacherLink: string;
  readonly key: string;
  readonly data: string;
  readonly process: ChildProcess;
  /** All that it printed so far. */
  readonly output: () => string;
  /** Sends a signal and waits for the end; gives the exit code, null where the signal ended it. */
  readonly kill: (signal?: NodeJS.Signals) => Promise<number | null>;
  /** Kills what still runs and removes the data folder that was made for it. */
  readonly cleanUp: () => Promise<void>;
};

export type StartOptions = {
  /** Data of an earlier run; otherwise a fresh folder. */
  readonly data?: string;
  /** Fixed port; otherwise any free one. */
  readonly port?: number;
  /** Build and serve the real pages; otherwise empty ones stand in their place. */
  readonly pages?: 'built';
  readonly environment?: Readonly<Record<string, string>>;
};

/** Starts `server/main.ts` and waits until it answers. Rejects with what it printed where it ends before. */
export async function startServer(options: StartOptions = {}): Promise<RunningServer> {
  const fresh = options.data === undefined ? mkdtempSync(join(tmpdir(), 'hearsay-data-')) : null;
  const data = options.data ?? fresh ?? '';
  const child = spawnServer({ ...options, data });
  const output = collect(child);
  const exited = exitOf(child);
  const cleanUp = async (): Promise<void> => {
    if (child.exitCode === null && child.signalCode === null) child.kill('SIGKILL');
    await exited;
    if (fresh !== null) rmSync(fresh, { recursive: true, force: true });
  };
  let link: RegExpExecArray | null = null;
  try {
    link = await waitFor(() => /http:\/\/localhost:(\d+)\/teacher\?key=([\w-]+)/.exec(output()), exited, output);
  } catch (error) {
    await cleanUp();
    throw error;
  }
  const [teacherLink = '', port = '', key = ''] = link;
  return {
    url: `http://127.0.0.1:${port}`,
    port: Number(port),
    teacherLink,
    key,
    data,
    process: child,
    output,
    kill: (signal = 'SIGKILL') => {
      child.kill(signal);
      return exited;
    },
    cleanUp,
  };
}

/** Starts a server that is expected to give up; gives its exit code and what it printed. */
export async function failedStart(
  options: StartOptions,
): Promise<{ readonly code: number | null; readonly output: string }> {
  const child = spawnServer(options);
  const output = collect(child);
  const code = await exitOf(child);
  return { code, output: output() };
}

/** Four pages without content, for tests that are not about pages. */
export function emptyClient(): string {
  const folder = mkdtempSync(join(tmpdir(), 'hearsay-client-'));
  mkdirSync(join(folder, 'assets'));
  for (const page of ['student', 'host', 'desk', 'pair'])
    writeFileSync(join(folder, `${page}.html`), `<title>${page}</title>`);
  writeFileSync(join(folder, 'assets', 'page-1a2b3c.js'), 'export {};');
  return folder;
}

let client: string | null = null;

function spawnServer({ data, port = 0, pages, environment = {} }: StartOptions): ChildProcess {
  if (client === null) {
    const folder = emptyClient();
    client = folder;
    process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  }
  return spawn(process.execPath, ['--import', 'tsx', join('server', 'main.ts')], {
    cwd: ROOT,
    env: {
      ...process.env,
      PORT: String(port),
      ...(data !== undefined && { HEARSAY_DATA: data }),
      ...(pages === undefined && { HEARSAY_CLIENT: client }),
      ...environment,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}

function collect(child: ChildProcess): () => string {
  let text = '';
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (part) => (text += String(part)));
  return () => text;
}

function exitOf(child: ChildProcess): Promise<number | null> {
  return new Promise((resolve) => void child.once('close', resolve));
}

async function waitFor<T>(look: () => T | null, exited: Promise<unknown>, output: () => string): Promise<T> {
  let ended = false;
  void exited.then(() => (ended = true));
  for (const until = Date.now() + START_WITHIN_MS; Date.now() < until;) {
    const found = look();
    if (found !== null) return found;
    if (ended) break;
    await new Promise((resolve) => void setTimeout(resolve, 20));
  }
  throw new Error(`the server did not start:\n${output()}`);
}

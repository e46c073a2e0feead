import { fork, type ForkOptions } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { SoundJob } from './sound-file.ts';

/** Renders sound files beside the room: nobody's answer waits for them. */
export type WavMaker = {
  /**
   * The file of a performance. One is made after the other; rejects where that fails or takes too long, where `signal` says that
   * nobody waits for it any more, or once the maker is closed.
   */
  readonly make: (job: SoundJob, signal?: AbortSignal) => Promise<Uint8Array>;
  /** Ends what is being made. */
  readonly close: () => void;
};

const SOURCE = fileURLToPath(new URL('./worker.ts', import.meta.url));
/** Where the packages are found that it needs. */
const HOUSE = fileURLToPath(new URL('../..', import.meta.url));

const PROCESS: ForkOptions = {
  cwd: HOUSE,
  execArgv: ['--import', 'tsx'],
  serialization: 'advanced',
  silent: true,
};

/** The longest sound is made in a fraction of this, also on a slow machine: what takes longer hangs, and others wait behind it. */
const PATIENCE_MS = 300_000;

/** Rendering takes a second or more of a processor and some hundred megabytes: one process at a time, and none is kept. */
export function createWavMaker(patienceMs = PATIENCE_MS): WavMaker {
  let last: Promise<unknown> = Promise.resolve();
  const closing = new AbortController();
  return {
    make: (job, wanted) => {
      const signal = wanted ? AbortSignal.any([wanted, closing.signal]) : closing.signal;
      const made = last.then(() => rendered(job, signal, patienceMs));
      last = made.catch(() => undefined);
      return made;
    },
    close: () => closing.abort(new Error('No sound is made any more: the server stops.')),
  };
}

/** One sound, made in a process that ends with it. */
async function rendered(job: SoundJob, signal: AbortSignal, patienceMs: number): Promise<Uint8Array> {
  signal.throwIfAborted();
  const worker = fork(SOURCE, PROCESS);
  // A process that is asked kindly may hang all the same.
  const end = () => worker.kill('SIGKILL');
  const patience = setTimeout(end, patienceMs);
  signal.addEventListener('abort', end);
  try {
    return await new Promise<Uint8Array>((resolve, reject) => {
      let said = '';
      worker.stderr?.on('data', (chunk: Buffer) => (said += chunk.toString()));
      worker.once('message', (bytes) => resolve(bytes as Uint8Array));
      worker.on('error', reject);
      worker.once('close', (code, by) => {
        const how = code === null ? `by ${by}` : `with status ${code}`;
        reject(new Error(`The process that made a sound ended ${how} before it was done. ${said}`));
      });
      worker.send(job);
    });
  } catch (error) {
    signal.throwIfAborted();
    throw error;
  } finally {
    clearTimeout(patience);
    signal.removeEventListener('abort', end);
  }
}

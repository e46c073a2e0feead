import { fork, type ChildProcess, type ForkOptions } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { SoundJob } from './sound-file.ts';

/** Renders sound files beside the room: nobody's answer waits for them. */
export type WavMaker = {
  /** The file of a performance. One is made after the other; rejects where that fails, or once the maker is closed. */
  readonly make: (job: SoundJob) => Promise<Uint8Array>;
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

/** Rendering takes a second or more of a processor and some hundred megabytes: one process at a time, and none is kept. */
export function createWavMaker(): WavMaker {
  let last: Promise<unknown> = Promise.resolve();
  let running: ChildProcess | null = null;
  let closed = false;
  const run = (job: SoundJob) =>
    new Promise<Uint8Array>((resolve, reject) => {
      if (closed) return reject(new Error('No sound is made any more: the server stops.'));
      const worker = fork(SOURCE, PROCESS);
      running = worker;
      let said = '';
      worker.stderr?.on('data', (chunk: Buffer) => (said += chunk.toString()));
      worker.once('message', (bytes) => resolve(bytes as Uint8Array));
      worker.once('error', reject);
      worker.once('close', (code) => {
        running = null;
        reject(new Error(`The process that made a sound ended with status ${code} before it was done. ${said}`));
      });
      worker.send(job);
    });
  return {
    make: (job) => {
      const made = last.then(() => run(job));
      last = made.catch(() => undefined);
      return made;
    },
    close: () => {
      closed = true;
      running?.kill();
    },
  };
}

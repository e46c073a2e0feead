import { setPriority } from 'node:os';
import { soundFile, type SoundJob } from './sound-file.ts';

/** A room that answers matters more than a file: below the usual priority, on a scale of -20 (first) to 19 (last). */
const PRIORITY = 10;

try {
  setPriority(PRIORITY);
} catch {
  // Where the system grants no priorities, the file is made at the usual one.
}

/** Renders the one sound that it is sent, hands its bytes over and ends. */
process.once('message', (job) => {
  process.send?.(soundFile(job as SoundJob), () => process.disconnect());
});

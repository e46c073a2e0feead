import { accessSync, constants, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { consoleWords } from '../protocol/words/en.ts';
import { fill } from '../protocol/words/fill.ts';
import { StartError } from '../settings.ts';
import type { EventStore, KeyStore } from './event-store.ts';
import { lockFolder, type FolderLock } from './folder-lock.ts';
import { openSqliteStore } from './sqlite-store.ts';

const words = consoleWords.server;

/** Takes the data folder for this process, makes it where it is missing, and opens the store in it. Throws StartError with the sentence that helps. */
export function openData(folder: string): { readonly store: EventStore & KeyStore; readonly lock: FolderLock } {
  const lock = takeFolder(folder);
  const file = join(folder, 'hearsay.db');
  try {
    return { store: openSqliteStore(file), lock };
  } catch (error) {
    lock.release();
    const sentence = error instanceof RangeError ? words.storeTooNew : words.storeNotReadable;
    throw new StartError(fill(sentence, { file }), { cause: error });
  }
}

function takeFolder(folder: string): FolderLock {
  let lock: ReturnType<typeof lockFolder>;
  try {
    mkdirSync(folder, { recursive: true });
    accessSync(folder, constants.W_OK);
    lock = lockFolder(folder);
  } catch (error) {
    throw new StartError(fill(words.folderNotWritable, { folder }), { cause: error });
  }
  if (!('heldBy' in lock)) return lock;
  const sentence = lock.heldBy === '' ? words.alreadyStarting : words.alreadyRunning;
  throw new StartError(fill(sentence, { folder, url: lock.heldBy }));
}

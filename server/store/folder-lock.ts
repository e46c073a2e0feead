import { join } from 'node:path';
import { isBusy, openConnection } from './database.ts';

export type FolderLock = {
  /** Tells a later server where this one answers. */
  readonly announce: (url: string) => void;
  readonly release: () => void;
};

/**
 * Takes a data folder for this process, or says where the server answers that has it (empty while it starts).
 * The lock is SQLite's own on a file beside the store: the system frees it however the process ends.
 */
export function lockFolder(folder: string): FolderLock | { readonly heldBy: string } {
  const connection = openConnection(join(folder, 'running.db'), { waitMs: 0, journal: 'DELETE' });
  const hold = () => connection.exec('BEGIN IMMEDIATE');
  try {
    hold();
    connection.exec('CREATE TABLE IF NOT EXISTS running (url TEXT NOT NULL)');
    connection.exec('COMMIT');
    hold();
  } catch (error) {
    if (!isBusy(error)) throw error;
    const made = connection.prepare("SELECT name FROM sqlite_master WHERE name = 'running'").all().length > 0;
    const rows = made ? connection.prepare<{ url: string }>('SELECT url FROM running').all() : [];
    connection.close();
    return { heldBy: rows[0]?.url ?? '' };
  }
  return {
    announce: (url) => {
      connection.exec('DELETE FROM running');
      connection.prepare('INSERT INTO running (url) VALUES (?)').run(url);
      connection.exec('COMMIT');
      // Readers may read beside this lock, so that the address can be told.
      hold();
    },
    release: () => {
      connection.exec('ROLLBACK');
      connection.close();
    },
  };
}

import { homedir } from 'node:os';
import { isAbsolute, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { consoleWords } from './protocol/words/en.ts';
import { fill } from './protocol/words/fill.ts';

/** A start that cannot go on, with the sentence that says why and what to do. */
export class StartError extends Error {
  override readonly name = 'StartError';
}

export type Settings = {
  /** 0 takes any free port. */
  readonly port: number;
  /** Folder of the store. */
  readonly data: string;
  /** Address to print and to put into the QR code, where the teacher fixed one. */
  readonly host: string | undefined;
  /** Further names by which this server may be called. */
  readonly hosts: readonly string[];
  /** Folder of pages that were built elsewhere; otherwise they are built here when needed. */
  readonly client: string | undefined;
  /** Print every address of this machine. */
  readonly allAddresses: boolean;
};

const DEFAULT_PORT = 4600;
const words = consoleWords.server;

/** Reads settings from the environment and the command line. Throws StartError with the sentence for what is wrong. */
export function readSettings(
  environment: NodeJS.ProcessEnv,
  commandLine: readonly string[],
  platform: NodeJS.Platform = process.platform,
  home: string = homedir(),
): Settings {
  const host = environment['HEARSAY_HOST']?.trim() || undefined;
  if (host !== undefined && !/^[a-z0-9.:_-]+$/i.test(host))
    throw new StartError(fill(words.hostWrong, { found: host }));
  const listed = (environment['HEARSAY_HOSTS'] ?? '').split(',').map((name) => name.trim());
  const data = environment['HEARSAY_DATA']?.trim();
  return {
    port: readPort(environment['PORT']),
    data: data ? resolve(data) : dataFolder(environment, platform, home),
    host,
    hosts: [...listed, host ?? ''].filter((name) => name !== ''),
    client: environment['HEARSAY_CLIENT'] || undefined,
    allAddresses: readOptions(commandLine),
  };
}

/** Where this system keeps a user's data. */
function dataFolder(environment: NodeJS.ProcessEnv, platform: NodeJS.Platform, home: string): string {
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Hearsay');
  if (platform === 'win32') return join(environment['LOCALAPPDATA'] || join(home, 'AppData', 'Local'), 'Hearsay');
  const base = environment['XDG_DATA_HOME'];
  // A relative path there must be ignored (XDG Base Directory Specification).
  return join(base && isAbsolute(base) ? base : join(home, '.local', 'share'), 'hearsay');
}

function readPort(text: string | undefined): number {
  if (text === undefined || text.trim() === '') return DEFAULT_PORT;
  const port = /^\d{1,5}$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (!(port <= 65_535)) throw new StartError(fill(words.portWrong, { found: text }));
  return port;
}

function readOptions(commandLine: readonly string[]): boolean {
  try {
    return parseArgs({ args: [...commandLine], options: { addresses: { type: 'boolean' } } }).values.addresses ?? false;
  } catch {
    throw new StartError(fill(words.optionWrong, { found: commandLine.join(' ') }));
  }
}

import { greeting } from './console.ts';
import { consoleWords } from './protocol/words/en.ts';
import { fill } from './protocol/words/fill.ts';
import { StartError, type Settings } from './settings.ts';
import { openData } from './store/open-data.ts';
import { startApp, type AppParts } from './web/app.ts';
import { hasCode } from './web/listen.ts';

const words = consoleWords.server;
/** A stop that takes longer than this is cut short. */
const STOP_WITHIN_MS = 4000;

/** Starts the server on its data, says where it is, and stops it on the signals of terminal and system. Rejects with StartError where it cannot start. */
export async function start(settings: Settings, client: AppParts['client']): Promise<void> {
  const { data, port, host, hosts } = settings;
  const { store, lock } = openData(data);
  let app;
  try {
    app = await startApp({ store, port, host, hosts, client, fault });
  } catch (error) {
    await store.close();
    lock.release();
    throw portError(error, port) ?? error;
  }
  const { addresses, more } = app.addresses();
  lock.announce(addresses[0] ?? `http://localhost:${app.port}`);
  // Whoever reads the output may leave before the lesson ends.
  for (const stream of [process.stdout, process.stderr]) stream.on('error', () => {});
  // A fault that nobody caught must not end everybody's lesson; what is acknowledged is on disk.
  process.on('uncaughtException', (error) => fault('process', error));
  // Before anything is said: whoever reads it may stop the server at once.
  stopOnSignals(async () => {
    await app.close();
    lock.release();
  });
  console.log(
    greeting({
      teacherLink: app.teacherLink,
      phones: addresses,
      more,
      showMore: settings.allAddresses,
      folder: data,
      terminal: process.stdout.isTTY,
    }),
  );
}

function stopOnSignals(stop: () => Promise<void>): void {
  let stopping = false;
  const onSignal = (): void => {
    // Whoever presses again does not want to wait.
    if (stopping) process.exit(1);
    stopping = true;
    console.log(words.stopping);
    setTimeout(() => process.exit(1), STOP_WITHIN_MS).unref();
    stop().then(
      () => process.exit(0),
      (error: unknown) => {
        fault('stop', error);
        process.exit(1);
      },
    );
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, onSignal);
}

function portError(error: unknown, port: number): StartError | null {
  if (hasCode(error, ['EADDRINUSE'])) return new StartError(fill(words.portTaken, { port, next: port + 1 }));
  if (hasCode(error, ['EACCES', 'EPERM'])) return new StartError(fill(words.portForbidden, { port }));
  return null;
}

function fault(where: string, error: unknown): void {
  console.error(fill(words.fault, { why: `${where}: ${String(error)}` }));
}

import { rmSync } from 'node:fs';
import { emptyMemory, memoryStore } from '../../server/store/memory-store.ts';
import type { EventStore, KeyStore } from '../../server/store/event-store.ts';
import { startApp } from '../../server/web/app.ts';
import { builtPages } from '../../server/web/pages.ts';
import { emptyClient } from './start-server.ts';
import { openRoom, teacherCookie } from './socket-client.ts';

export type TestApp = {
  readonly url: string;
  readonly port: number;
  readonly key: string;
  readonly cookie: string;
  readonly faults: readonly unknown[];
  /** Opens a room and gives its code. */
  readonly room: () => Promise<string>;
  readonly close: () => Promise<void>;
};

/** The whole server in this process, on a free port, with a store in memory unless another is given. */
export async function startTestApp(store: EventStore & KeyStore = memoryStore(emptyMemory())): Promise<TestApp> {
  const faults: unknown[] = [];
  const built = emptyClient();
  const app = await startApp({
    store,
    port: 0,
    host: undefined,
    hosts: ['house.test'],
    client: { built, pages: builtPages(built) },
    fault: (_where, error) => faults.push(error),
  });
  const url = `http://127.0.0.1:${app.port}`;
  const key = new URL(app.teacherLink).searchParams.get('key') ?? '';
  const cookie = await teacherCookie(url, key);
  return {
    url,
    port: app.port,
    key,
    cookie,
    faults,
    room: () => openRoom(url, cookie),
    close: async () => {
      await app.close();
      rmSync(built, { recursive: true });
    },
  };
}

import { randomBytes, randomInt } from 'node:crypto';
import { createServer, type Server } from 'node:http';
import type { RequestHandler } from 'express';
import { createKeeper } from '../keeper/keeper.ts';
import type { EventStore, KeyStore } from '../store/event-store.ts';
import { createWavMaker } from '../wav/maker.ts';
import { ownAddresses, pageUrl } from './addresses.ts';
import { ensureClass } from './classes.ts';
import { cribOf, tableOf } from './files.ts';
import { createHttp } from './http.ts';
import { listen } from './listen.ts';
import type { PageSource } from './pages.ts';
import { roundFile } from './round-files.ts';
import { hostNames } from './security.ts';
import { createSessions } from './sessions.ts';
import { createSockets } from './sockets.ts';
import { createVisitors } from './visitors.ts';

/** Connections that have not ended by themselves after this long are cut. */
const PATIENCE_MS = 1500;

export type AppParts = {
  readonly store: EventStore & KeyStore;
  /** 0 takes any free port. */
  readonly port: number;
  readonly host: string | undefined;
  readonly hosts: readonly string[];
  /** Folder of the built pages, or what serves them while they are being developed. */
  readonly client:
    | { readonly built: string; readonly pages: PageSource }
    | {
        readonly built: null;
        readonly serve: (http: Server) => Promise<{ readonly pages: PageSource; readonly files: RequestHandler }>;
      };
  readonly fault: (where: string, error: unknown) => void;
};

export type App = {
  readonly port: number;
  readonly teacherLink: string;
  /** Addresses for phones now: the likely ones, best first, and the rest. */
  readonly addresses: () => { readonly addresses: readonly string[]; readonly more: readonly string[] };
  /** Ends connections, waits for what was sent to be stored, closes the store. */
  readonly close: () => Promise<void>;
};

/** Wires store, rooms, http and sockets, and listens. Rejects with the system's error where the port cannot be had. */
export async function startApp(parts: AppParts): Promise<App> {
  const { store, fault } = parts;
  const http = createServer();
  const served =
    parts.client.built === null ? await parts.client.serve(http) : { pages: parts.client.pages, files: null };
  let port = parts.port;

  const addresses = () => {
    const { likely, more } = ownAddresses(parts.host);
    const urls = (hosts: readonly string[]) => hosts.map((host) => pageUrl(host, port, ''));
    return { addresses: urls(likely), more: urls(more) };
  };
  const hosts = hostNames(parts.hosts);
  const sessions = createSessions(store, () => `hearsay-teacher-${port}`);
  const visitors = createVisitors(() => sockets.refresh());
  const wav = createWavMaker();
  await ensureClass(store);
  const keeper = createKeeper({
    store,
    clock: { wall: () => Date.now(), mono: () => performance.now(), boot: randomBytes(8).toString('hex') },
    chance: { hex: (bytes) => randomBytes(bytes).toString('hex'), below: (n) => randomInt(n) },
    changed: (change, look) => sockets.changed(change, look),
    erased: (code, student) => sockets.erased(code, student),
    order: (code, page, order) => sockets.order(code, page, order),
    fault,
  });
  const app = createHttp({
    sessions,
    hosts,
    pages: served.pages,
    built: parts.client.built,
    files: served.files,
    rooms: {
      open: async () => {
        const { id, settings } = await ensureClass(store);
        return keeper.open(id, settings);
      },
      list: keeper.rooms,
      roundFile: (code, round, kind, signal) => roundFile({ keeper, wav }, code, round, kind, signal),
      table: (code) => tableOf(keeper, code),
      crib: (code, round, query) => cribOf(keeper, code, round, query),
    },
    addresses,
    visited: visitors.visited,
    fault: (error) => fault('http', error),
  });
  // Before the sockets, which pass on only to those who listen already.
  http.on('request', (request, response) => void app(request, response));
  const sockets = createSockets({
    http,
    keeper,
    sessions,
    hosts,
    addresses: () => addresses().addresses,
    visited: visitors.visited,
    visitors: visitors.count,
    fault: (error) => fault('socket', error),
  });
  port = await listen(http, parts.port);

  return {
    port,
    teacherLink: pageUrl('localhost', port, `/teacher?key=${sessions.linkKey}`),
    addresses,
    close: async () => {
      const cut = setTimeout(() => http.closeAllConnections(), PATIENCE_MS);
      await sockets.close();
      clearTimeout(cut);
      wav.close();
      await keeper.close();
      await store.close();
    },
  };
}

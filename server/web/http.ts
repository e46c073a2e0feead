import { join } from 'node:path';
import express, {
  type ErrorRequestHandler,
  type Express,
  type Request,
  type RequestHandler,
  type Response,
} from 'express';
import { inShell } from '../crib/shell.ts';
import type { SheetPage, SheetQuery } from '../crib/sheet-page.ts';
import type { Reason } from '../protocol/messages.ts';
import { parsePairing } from '../protocol/parsers.ts';
import { pageWords } from '../protocol/words/en.ts';
import type { Refusal } from '../rooms/commands.ts';
import type { RoomFile } from './files.ts';
import { plainPage, type PageName, type PageSource } from './pages.ts';
import { ROUND_FILES, type RoundFileKind } from './round-files.ts';
import { sameOrigin, securityHeaders, type HostNames } from './security.ts';
import type { Sessions } from './sessions.ts';

/** What http needs of the house. */
export type HttpParts = {
  readonly sessions: Sessions;
  readonly hosts: HostNames;
  readonly pages: PageSource;
  /** Folder of the built client; null where the development server serves its files. */
  readonly built: string | null;
  /** Serves the client's files in the place of that folder. */
  readonly files: RequestHandler | null;
  readonly rooms: {
    readonly open: () => Promise<string>;
    readonly list: () => Promise<
      readonly { readonly room: string; readonly status: string; readonly openedAt: number }[]
    >;
    /** Rejects where `signal` says that nobody waits for the file any more. */
    readonly roundFile: (
      room: string,
      round: number,
      kind: RoundFileKind,
      signal: AbortSignal,
    ) => Promise<RoomFile | Refusal>;
    readonly table: (room: string) => Promise<RoomFile | Refusal>;
    readonly crib: (
      room: string,
      round: number | null,
      query: SheetQuery,
    ) => Promise<({ readonly ok: true } & SheetPage) | Refusal>;
  };
  readonly addresses: () => { readonly addresses: readonly string[]; readonly more: readonly string[] };
  /** Called with the peer of every request for a page. */
  readonly visited: (peer: string) => void;
  readonly fault: (error: unknown) => void;
};

const MOST_BODY = '4kb';
const ROOM = '[A-Za-z]{3,12}';

/** Everything that is asked for by http: pages, files, and the few questions of a desk that are not about one room. */
export function createHttp(parts: HttpParts): Express {
  const { sessions, hosts, rooms } = parts;
  const app = express();
  app.disable('x-powered-by');
  app.use(securityHeaders({ dev: parts.built === null }));
  app.use((request, response, next) => {
    if (hosts.allows(request.headers.host)) next();
    else plain(response, 403, pageWords.wrongHost);
  });
  app.use((request, response, next) => {
    if (request.method === 'GET' || request.method === 'HEAD' || sameOrigin(request)) next();
    else refuse(response, 403, 'not-teacher');
  });
  const teacherOnly: RequestHandler = async (request, response, next) => {
    if (await sessions.isTeacher(request.headers.cookie)) next();
    else if (request.path.startsWith('/api/')) refuse(response, 403, 'not-teacher');
    else plain(response, 403, pageWords.notTeacher);
  };
  const page =
    (name: PageName): RequestHandler =>
    async (request, response) => {
      parts.visited(request.socket.remoteAddress ?? '');
      response
        .set('Cache-Control', 'no-cache')
        .type('html')
        .send(await parts.pages(name, request.originalUrl));
    };

  app.get('/healthz', (_request, response) => {
    response.set('Cache-Control', 'no-store').json({ ok: true });
  });
  app.get('/teacher', async (request, response) => {
    response.set('Cache-Control', 'no-store');
    const key = await sessions.openLink(request.query['key']);
    if (key !== null) response.set('Set-Cookie', sessions.setCookie(key)).redirect(303, '/desk');
    // The link of an earlier start, on a device that was let in: nothing to refuse.
    else if (await sessions.isTeacher(request.headers.cookie)) response.redirect(303, '/desk');
    else plain(response, 403, pageWords.wrongKey);
  });

  app.use('/api', (_request, response, next) => {
    response.set('Cache-Control', 'no-store');
    next();
  });
  app.use('/api', express.json({ limit: MOST_BODY }));
  app.post('/api/rooms', teacherOnly, async (_request, response) => {
    response.json({ room: await rooms.open() });
  });
  app.get('/api/rooms', teacherOnly, async (_request, response) => {
    response.json({ rooms: await rooms.list() });
  });
  for (const kind of ROUND_FILES) {
    const path = new RegExp(`^/api/rooms/(${ROOM})/rounds/(\\d{1,6})[.]${kind}$`);
    app.get(path, teacherOnly, async (request, response) => {
      const [room, number] = [request.params['0'], request.params['1']];
      const left = new AbortController();
      response.once('close', () => left.abort());
      try {
        sendFile(response, await rooms.roundFile(String(room).toUpperCase(), Number(number), kind, left.signal));
      } catch (error) {
        // Who has gone needs no answer.
        if (!left.signal.aborted) throw error;
      }
    });
  }
  app.get(new RegExp(`^/api/rooms/(${ROOM})/lesson[.]csv$`), teacherOnly, async (request, response) => {
    sendFile(response, await rooms.table(String(request.params['0']).toUpperCase()));
  });
  app.get('/api/addresses', teacherOnly, (_request, response) => {
    response.json(parts.addresses());
  });
  app.post('/api/pairing', teacherOnly, (_request, response) => {
    response.json(sessions.newPairingCode());
  });
  app.post('/api/pair', async (request, response) => {
    const parsed = parsePairing(request.body);
    const outcome = parsed.ok ? await sessions.pair(parsed.value.code) : parsed;
    if (outcome.ok) response.set('Set-Cookie', sessions.setCookie(outcome.key)).json({ ok: true });
    else
      refuse(
        response,
        outcome.reason === 'pairing-code-wrong' ? 403 : outcome.reason === 'too-many-codes' ? 429 : 400,
        outcome.reason,
      );
  });

  if (parts.built !== null) app.use(files(parts.built));
  if (parts.files !== null) app.use(parts.files);
  app.get('/pair', page('pair'));
  app.get(new RegExp(`^/desk(/${ROOM})?/?$`), teacherOnly, page('desk'));
  app.get(new RegExp(`^/desk/(${ROOM})/crib(?:/(\\d{1,6}))?/?$`), teacherOnly, async (request, response) => {
    const [room, number] = [request.params['0'], request.params['1']];
    const sheet = await rooms.crib(
      String(room).toUpperCase(),
      number === undefined ? null : Number(number),
      textsOf(request.query),
    );
    if (!sheet.ok) return plain(response, sheet.reason === 'not-saved' ? 503 : 404, pageWords.notFound);
    const shell = await parts.pages('crib', request.originalUrl);
    response.set('Cache-Control', 'no-store').status(sheet.status).type('html').send(inShell(shell, sheet));
  });
  app.get(new RegExp(`^/host/${ROOM}/?$`), teacherOnly, page('host'));
  app.get(new RegExp(`^/(${ROOM})?/?$`), page('student'));

  app.use((request, response) => {
    if (wantsPage(request)) plain(response, 404, pageWords.notFound);
    else closed(response, 404, { ok: false, reason: 'not-found' });
  });
  app.use(errors(parts.fault));
  return app;
}

/** Built files. A name with a hash in it never changes; a missing one is an error and never a page. */
function files(folder: string): RequestHandler {
  const router = express.Router();
  router.use(
    '/assets',
    express.static(join(folder, 'assets'), { immutable: true, maxAge: '1y', index: false, redirect: false }),
  );
  router.use(
    express.static(folder, {
      index: false,
      redirect: false,
      extensions: false,
      setHeaders: (response) => response.setHeader('Cache-Control', 'no-cache'),
    }),
  );
  return router;
}

/** Errors as JSON with a reason; what happened inside stays inside. */
function errors(fault: (error: unknown) => void): ErrorRequestHandler {
  // Four parameters tell express that this is the handler of errors.
  return (error: unknown, request, response, _next) => {
    if (response.headersSent) {
      response.destroy();
      return fault(error);
    }
    const status = statusOf(error);
    if (status === 413) return refuse(response, 413, 'message-too-large', { most: MOST_BODY });
    if (status < 500) return refuse(response, status, 'message-not-readable');
    fault(error);
    if (wantsPage(request)) return plain(response, 500, pageWords.fault);
    closed(response, 500, { ok: false, reason: 'fault' });
  };
}

function statusOf(error: unknown): number {
  const status = typeof error === 'object' && error !== null && 'status' in error ? Number(error.status) : 500;
  return status >= 400 && status < 600 ? status : 500;
}

/** The fields of an address that are given once, as text. */
function textsOf(query: Request['query']): SheetQuery {
  const texts = Object.entries(query).flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : []));
  return Object.fromEntries(texts) as SheetQuery;
}

function sendFile(response: Response, file: RoomFile | Refusal): void {
  if (file.ok) response.attachment(file.name).send(Buffer.from(file.bytes));
  else refuse(response, file.reason === 'not-saved' ? 503 : 404, file.reason, file.detail);
}

function refuse(
  response: Response,
  status: number,
  reason: Reason,
  detail?: Readonly<Record<string, string | number>>,
): void {
  closed(response, status, { ok: false, reason, ...(detail && { detail }) });
}

function closed(response: Response, status: number, body: { readonly ok: false; readonly reason: string }): void {
  response.status(status).set('Cache-Control', 'no-store').json(body);
}

function plain(response: Response, status: number, sentence: string): void {
  response.status(status).set('Cache-Control', 'no-store').type('html').send(plainPage(sentence));
}

/** A person who types an address, not a script or a tag that asks for a file. */
function wantsPage(request: Request): boolean {
  return request.method === 'GET' && !/^\/(api|assets)\//.test(request.path) && Boolean(request.accepts('html'));
}

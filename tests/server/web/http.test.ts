import { request } from 'node:http';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { refusals } from '../../../server/protocol/words/refusals.ts';
import { startTestApp, type TestApp } from '../../support/test-app.ts';

let app: TestApp;
beforeAll(async () => {
  app = await startTestApp();
});
afterAll(() => app.close());

type Answer = {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
};

/** fetch may not set Host or Origin; this may. */
function ask(
  path: string,
  {
    method = 'GET',
    headers = {},
    body = '',
  }: { method?: string; headers?: Record<string, string>; body?: string } = {},
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const asking = request({ host: '127.0.0.1', port: app.port, path, method, headers }, (answer) => {
      let text = '';
      answer.on('data', (part) => (text += String(part)));
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body: text }));
    });
    asking.on('error', reject);
    asking.end(body);
  });
}
const json = (body: unknown, headers: Record<string, string> = {}) => ({
  method: 'POST',
  headers: { 'content-type': 'application/json', ...headers },
  body: typeof body === 'string' ? body : JSON.stringify(body),
});

describe('pages', () => {
  test.each([
    ['/', 'student'],
    ['/WAKUR', 'student'],
    ['/wakur', 'student'],
    ['/wakur/', 'student'],
    ['/?from=qr', 'student'],
    ['/pair', 'pair'],
  ])('%s is the %s page, never kept by a cache unasked', async (path, page) => {
    const { status, headers, body } = await ask(path);
    expect([status, body]).toEqual([200, `<title>${page}</title>`]);
    expect(headers['cache-control']).toBe('no-cache');
    expect(headers['content-type']).toContain('text/html');
  });
  test.each([
    ['/desk', 'desk'],
    ['/desk/wakur', 'desk'],
    ['/host/WAKUR', 'host'],
  ])('%s is for the teacher alone', async (path, page) => {
    const refused = await ask(path);
    expect(refused.status).toBe(403);
    expect(refused.body).toContain('teacher link');
    expect(refused.body).not.toContain(`<title>${page}</title>`);
    expect((await ask(path, { headers: { cookie: app.cookie } })).body).toBe(`<title>${page}</title>`);
  });
  test('a place that is none is a plain page for people and JSON for programs', async () => {
    const page = await ask('/no/such/place', { headers: { accept: 'text/html' } });
    expect([page.status, page.headers['content-type']]).toEqual([404, 'text/html; charset=utf-8']);
    const data = await ask('/api/none');
    expect([data.status, JSON.parse(data.body)]).toEqual([404, { ok: false, reason: 'not-found' }]);
  });
  test('built files are kept for ever; a missing one is no page', async () => {
    expect((await ask('/assets/page-1a2b3c.js')).headers['cache-control']).toMatch(/max-age=31536000.*immutable/);
    const missing = await ask('/assets/none.js', { headers: { accept: 'text/html,*/*' } });
    expect([missing.status, missing.headers['content-type']]).toEqual([404, 'application/json; charset=utf-8']);
    expect(missing.headers['cache-control']).toBe('no-store');
  });
  test.each(['/assets/../../package.json', '/assets/%2e%2e/%2e%2e/package.json', '/..%2f..%2fpackage.json', '/.env'])(
    '%s leads out of nothing',
    async (path) => {
      const { status, body } = await ask(path);
      expect(status).toBeGreaterThanOrEqual(400);
      expect(body).not.toContain('dependencies');
    },
  );
});

describe('headers on plain http', () => {
  test('let only this server run, show and be spoken to, and demand no https', async () => {
    const { headers } = await ask('/', { headers: { host: '192.168.1.5:4600' } });
    const policy = String(headers['content-security-policy']);
    const of = (name: string) =>
      policy
        .split(';')
        .find((part) => part.trim().startsWith(`${name} `))
        ?.trim();
    expect(of('default-src')).toBe("default-src 'self'");
    expect(of('script-src')).toBe("script-src 'self'");
    expect(of('style-src')).toBe("style-src 'self'");
    expect(of('worker-src')).toBe("worker-src 'self' blob:");
    expect(of('connect-src')).toBe("connect-src 'self' ws://192.168.1.5:4600 wss://192.168.1.5:4600");
    expect(policy).not.toContain('upgrade-insecure-requests');
    expect(headers).not.toHaveProperty('strict-transport-security');
    expect(headers).not.toHaveProperty('x-powered-by');
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers).not.toHaveProperty('access-control-allow-origin');
  });
  test.each(['evil.test', "evil.test; script-src 'unsafe-inline'", '127.0.0.1.evil.test'])(
    'a request for %s is turned away: the name may point here from anywhere',
    async (host) => {
      const { status, headers } = await ask('/', { headers: { host } });
      expect(status).toBe(403);
      expect(String(headers['content-security-policy'])).not.toContain('unsafe-inline');
    },
  );
  test('a listed name is served', async () => {
    expect((await ask('/', { headers: { host: `house.test:${app.port}` } })).status).toBe(200);
  });
});

describe('the teacher link', () => {
  test('sets a cookie that scripts cannot read and leaves no key in the address', async () => {
    const { status, headers } = await ask(`/teacher?key=${app.key}`);
    expect([status, headers['location']]).toEqual([303, '/desk']);
    expect(String(headers['set-cookie'])).toMatch(
      new RegExp(`^hearsay-teacher-${app.port}=[\\w-]{22,}; .*HttpOnly; SameSite=Lax$`),
    );
    expect(String(headers['set-cookie'])).not.toContain(app.key);
  });
  test.each(['/teacher', '/teacher?key=', '/teacher?key=wrong', '/teacher?key=a&key=b', '/teacher?key[a]=b'])(
    '%s is a plain page and lets nobody in',
    async (path) => {
      const { status, headers, body } = await ask(path);
      expect([status, headers['set-cookie']]).toEqual([403, undefined]);
      expect(body).toContain('not valid any more');
    },
  );
  test('of an earlier start does no harm on a device that was let in', async () => {
    const { status, headers } = await ask('/teacher?key=old', { headers: { cookie: app.cookie } });
    expect([status, headers['location']]).toEqual([303, '/desk']);
  });
});

describe('questions of a desk', () => {
  test('a room is opened and listed, newest first', async () => {
    const first = (JSON.parse((await ask('/api/rooms', json({}, { cookie: app.cookie }))).body) as { room: string })
      .room;
    const second = await app.room();
    expect(first).toMatch(/^[A-Z]{5}$/);
    const { rooms } = JSON.parse((await ask('/api/rooms', { headers: { cookie: app.cookie } })).body) as {
      rooms: { room: string; status: string; openedAt: number }[];
    };
    expect(rooms.map(({ room }) => room)).toEqual(expect.arrayContaining([first, second]));
    expect(
      rooms.every(({ status, openedAt }) => status === 'register' && Math.abs(Date.now() - openedAt) < 60_000),
    ).toBe(true);
  });
  test.each([
    ['POST', '/api/rooms'],
    ['GET', '/api/rooms'],
    ['GET', '/api/addresses'],
    ['POST', '/api/pairing'],
  ])('%s %s is refused to everybody else, and to pages of other sites', async (method, path) => {
    const nobody = await ask(path, { method });
    expect([nobody.status, JSON.parse(nobody.body)]).toEqual([403, { ok: false, reason: 'not-teacher' }]);
    const wrong = await ask(path, { method, headers: { cookie: `hearsay-teacher-${app.port}=guess` } });
    expect(wrong.status).toBe(403);
    if (method === 'POST') {
      const foreign = { cookie: app.cookie, origin: 'http://evil.test' };
      expect((await ask(path, { method, headers: foreign })).status).toBe(403);
      const own = { cookie: app.cookie, origin: `http://127.0.0.1:${app.port}`, host: `127.0.0.1:${app.port}` };
      expect((await ask(path, { method, headers: own })).status).toBe(200);
    }
  });
  test('addresses are whole, with http and port', async () => {
    const answer = JSON.parse((await ask('/api/addresses', { headers: { cookie: app.cookie } })).body) as Record<
      string,
      string[]
    >;
    for (const list of [answer['addresses'], answer['more']]) {
      for (const address of list ?? ['missing']) expect(address).toMatch(new RegExp(`^http://[^/]+:${app.port}$`));
    }
  });
  test('a second device is paired by the code, once', async () => {
    const { code } = JSON.parse((await ask('/api/pairing', json({}, { cookie: app.cookie }))).body) as { code: string };
    const spoken = `${code.slice(0, 3)} ${code.slice(3)}`.toLowerCase();
    const paired = await ask('/api/pair', json({ code: spoken }));
    expect([paired.status, JSON.parse(paired.body)]).toEqual([200, { ok: true }]);
    const cookie = String(paired.headers['set-cookie']).split(';')[0] ?? '';
    expect((await ask('/api/rooms', { headers: { cookie } })).status).toBe(200);
    const again = await ask('/api/pair', json({ code }));
    expect([again.status, JSON.parse(again.body)]).toEqual([403, { ok: false, reason: 'pairing-code-wrong' }]);
  });
  test('R63 too many codes at once are told so in their own words, and the right one lets in', async () => {
    const { code } = JSON.parse((await ask('/api/pairing', json({}, { cookie: app.cookie }))).body) as { code: string };
    const guesses = Promise.all(Array.from({ length: 40 }, () => ask('/api/pair', json({ code: '000000' }))));
    expect((await ask('/api/pair', json({ code }))).status).toBe(200);
    const answers = await guesses;
    const held = answers.filter(({ status }) => status === 429);
    expect(held.length).toBeGreaterThan(0);
    for (const { body } of held) expect(JSON.parse(body)).toEqual({ ok: false, reason: 'too-many-codes' });
    expect(refusals['too-many-codes']).not.toBe(refusals['pairing-code-wrong']);
  });
});

describe('what cannot be read', () => {
  const noStack = /at .*\.(js|ts):\d+|node_modules/;
  test.each([
    ['no JSON', '{"code":', 400, 'message-not-readable'],
    ['another shape', { code: 5 }, 400, 'message-not-readable'],
    ['a list', [1], 400, 'message-not-readable'],
    ['nothing', '', 400, 'message-not-readable'],
    ['too much', { code: 'x'.repeat(10_000) }, 413, 'message-too-large'],
  ])('%s is answered with a reason and never with a stack', async (_what, body, status, reason) => {
    const answer = await ask('/api/pair', json(body));
    expect([answer.status, (JSON.parse(answer.body) as { reason: string }).reason]).toEqual([status, reason]);
    expect(answer.body).not.toMatch(noStack);
  });
  test.each(['/%E0%A4%A', '/%', '/WAKUR%00', `/${'a'.repeat(9000)}`])(
    '%s gets an answer without a stack',
    async (path) => {
      const answer = await ask(path, { headers: { accept: 'text/html' } });
      expect(answer.status).toBeGreaterThanOrEqual(400);
      expect(answer.status).toBeLessThan(500);
      expect(answer.body).not.toMatch(noStack);
    },
  );
  test.each([
    '/healthz',
    '/api/pair',
    '/live/WAKUR/?EIO=4&transport=polling',
    '/live/WAKUR/?EIO=4&transport=websocket',
  ])('R64 %s refuses a Host that cannot be, whatever the Origin', async (path) => {
    for (const host of ['localhost:99999', '1.2.3.999', '[::::]']) {
      for (const origin of ['http://localhost:99999', 'http://evil.test', '%']) {
        const upgrade = {
          connection: 'upgrade',
          upgrade: 'websocket',
          'sec-websocket-version': '13',
          'sec-websocket-key': 'dGhlIHNhbXBsZSBub25jZQ==',
        };
        const headers = { host, origin, ...(path.endsWith('websocket') && upgrade) };
        const { status, body } = await ask(path, {
          ...(path === '/api/pair' ? json({ code: 'ABCDEF' }) : {}),
          headers,
        });
        expect([400, 403]).toContain(status);
        expect(body).not.toMatch(noStack);
      }
    }
  });
  test('none of it was a fault of the server', () => expect(app.faults).toEqual([]));
});

test('health is told to anybody', async () => {
  expect([(await ask('/healthz')).status, (await ask('/healthz')).body]).toEqual([200, '{"ok":true}']);
});

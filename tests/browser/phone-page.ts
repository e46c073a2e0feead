import type { RequestListener } from 'node:http';
import type { Browser, BrowserContext, BrowserContextOptions, CDPSession, Page } from 'playwright-core';
import type { StudentCommon, StudentOwn } from '../../server/protocol/views.ts';
import { roomServer, type RoomServer } from '../client/shared/room-server.ts';
import { buildPages, bytesOf } from '../support/built-pages.ts';
import { launchChromium } from '../support/chromium.ts';

/** A host name that is no secure context, mapped to loopback: no traffic leaves the machine. */
const HOST = 'hearsay.test';

const TYPES: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  css: 'text/css; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  ttf: 'font/ttf',
  woff2: 'font/woff2',
};

/** The built page of the phones in a real browser, in a room that says what a test wants. */
export type PhonePages = {
  readonly browser: Browser;
  readonly server: RoomServer;
  /** Opens a seated phone, in the middle of a question. */
  readonly open: (
    common: StudentCommon,
    own?: Partial<StudentOwn>,
    options?: BrowserContextOptions,
  ) => Promise<OpenPhone>;
  readonly end: () => Promise<void>;
};

export type OpenPhone = {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly session: CDPSession;
  /** Says to the phone what the room says. */
  readonly say: (common: StudentCommon, own?: Partial<StudentOwn>) => void;
};

const SEATED: StudentOwn = { v: 1, name: 'Nele', leftHanded: false, pair: false, leftThumb: false, counter: 0 };

export async function phonePages(): Promise<PhonePages> {
  const files = new Map((await buildPages('student')).map((file) => [file.fileName, bytesOf(file)]));
  const serve: RequestListener = (request, response) => {
    const path = (request.url ?? '/').slice(1);
    const name = files.has(path) ? path : /^[A-Z]{5}$/.test(path) ? 'student.html' : null;
    const body = name === null ? undefined : files.get(name);
    response.writeHead(body ? 200 : 404, { 'content-type': TYPES[name?.split('.').pop() ?? ''] ?? 'text/plain' });
    response.end(body);
  };
  const server = await roomServer('WAKUR', serve);
  const browser = await launchChromium([HOST]);
  const open: PhonePages['open'] = async (common, own = {}, options = {}) => {
    const says = { common, own: { ...SEATED, ...own } };
    server.desk.greet = (socket) => {
      socket.emit('common', says.common);
      socket.emit('own', says.own);
    };
    const context = await browser.newContext({
      viewport: { width: 360, height: 740 },
      hasTouch: true,
      isMobile: true,
      ...options,
    });
    const page = await context.newPage();
    await page.goto(`http://${HOST}:${new URL(server.url).port}/WAKUR`);
    const session = await context.newCDPSession(page);
    return {
      context,
      page,
      session,
      say: (common, own = {}) => {
        says.common = common;
        says.own = { ...says.own, ...own };
        server.io.emit('common', says.common);
        server.io.emit('own', says.own);
      },
    };
  };
  return {
    browser,
    server,
    open,
    end: async () => {
      await browser.close();
      await server.close();
    },
  };
}

import type { Browser, BrowserContext, Page } from 'playwright-core';
import { launchChromium } from '../support/chromium.ts';
import { startServer, type RunningServer } from '../support/start-server.ts';

/** A host name that is no secure context, mapped to loopback: no traffic leaves the machine. */
const HOST = 'hearsay.test';

export type Phone = { readonly name: string; readonly page: Page };

export type ClassRoom = {
  readonly server: RunningServer;
  readonly browser: Browser;
  readonly origin: string;
  readonly teacher: BrowserContext;
  readonly desk: Page;
  readonly room: string;
  /** Errors and refused requests of all pages, as they happen. */
  readonly faults: string[];
  readonly openHost: (size?: { width: number; height: number }) => Promise<Page>;
  readonly openPhone: (name: string, options?: PhoneOptions) => Promise<Phone>;
  readonly end: () => Promise<void>;
};

type PhoneOptions = {
  readonly size?: { readonly width: number; readonly height: number };
  readonly leftHanded?: boolean;
  /** A name that is tried first and must be refused with a sentence. */
  readonly first?: string;
};

/** A teacher with a real server, a real browser and an open room, on plain http under a name of its own. */
export async function openClassRoom(deskSize = { width: 390, height: 844 }): Promise<ClassRoom> {
  const server = await startServer({ pages: 'built', environment: { HEARSAY_HOSTS: HOST } });
  const browser = await launchChromium([HOST]);
  const origin = `http://${HOST}:${server.port}`;
  const faults: string[] = [];
  const watch = (who: string, page: Page): Page => {
    page.on('pageerror', (error) => faults.push(`${who}: ${error.message}`));
    page.on('console', (message) => {
      if (message.type() === 'error') faults.push(`${who}: ${message.text()}`);
    });
    page.on('request', (request) => {
      if (!request.url().startsWith(origin) && !request.url().startsWith('blob:') && !request.url().startsWith('data:'))
        faults.push(`${who} asked for ${request.url()}`);
    });
    return page;
  };
  const teacher = await browser.newContext({ viewport: deskSize });
  const desk = watch('desk', await teacher.newPage());
  await desk.goto(`${origin}/teacher?key=${server.key}`);
  await desk.getByRole('button', { name: 'open a room' }).click();
  await desk.waitForURL(/\/desk\/[A-Z]{5}$/);
  const room = desk.url().slice(-5);
  return {
    server,
    browser,
    origin,
    teacher,
    desk,
    room,
    faults,
    openHost: async (size = { width: 1920, height: 1080 }) => {
      const page = watch('host', await teacher.newPage());
      await page.setViewportSize(size);
      await page.goto(`${origin}/host/${room}`);
      return page;
    },
    openPhone: async (name, { size = { width: 360, height: 740 }, leftHanded = false, first } = {}) => {
      const context = await browser.newContext({ viewport: size, hasTouch: true, isMobile: true });
      const page = watch(name, await context.newPage());
      await page.goto(`${origin}/${room}`);
      if (first !== undefined) {
        await page.getByRole('textbox').fill(first);
        await page.getByRole('button', { name: 'take a seat' }).click();
        await page.getByRole('alert').filter({ hasText: 'ordinary letters' }).waitFor();
      }
      await page.getByRole('textbox').fill(name);
      if (leftHanded) await page.getByText('left-handed').click();
      await page.getByRole('button', { name: 'take a seat' }).click();
      await page.getByRole('heading', { name: 'Listen.' }).waitFor();
      return { name, page };
    },
    end: async () => {
      await browser.close();
      await server.cleanUp();
    },
  };
}

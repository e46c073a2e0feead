import axe from 'axe-core';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openClassRoom, type ClassRoom, type Phone } from './class-room.ts';

/** Its types name a default that its module does not have under Node. */
const jsQR = createRequire(import.meta.url)('jsqr') as (
  data: Uint8ClampedArray,
  width: number,
  height: number,
) => { readonly data: string } | null;

/** One lesson from joining to its end: a host, a desk and three phones in a real browser, on an insecure origin. */

let room: ClassRoom;
let host: Page;
let nele: Phone;
let oda: Phone;
let jory: Phone;

beforeAll(async () => {
  room = await openClassRoom();
});

afterAll(async () => {
  await room.end();
});

const press = (page: Page, name: string): Promise<void> => page.getByRole('button', { name, exact: true }).click();

/** Turns to a question in the desk's row, opens it, lets each phone act, closes it. */
async function ask(step: string, prompt: string, ...acts: readonly (() => Promise<void>)[]): Promise<void> {
  await press(room.desk, `${step}, not asked yet`);
  await press(room.desk, 'open');
  await host.getByRole('heading', { name: prompt }).waitFor();
  for (const act of acts) await act();
  await press(room.desk, 'close');
}

async function write(phone: Phone, ...options: readonly string[]): Promise<void> {
  for (const option of options) await phone.page.getByRole('button', { name: option, exact: true }).click();
  await press(phone.page, 'write it');
  await phone.page.getByText('It is in.').waitFor();
}

async function notSure(phone: Phone): Promise<void> {
  await press(phone.page, 'not sure');
  await phone.page.getByText('Not sure: it is in.').waitFor();
}

const reveal = (): Promise<void> => press(room.desk, 'show');

const pageText = (page: Page): Promise<string> => page.locator('body').innerText();

/** Waits until the bar of the level meter has grown from nothing: a busy machine takes its time to make the first sound. */
async function soundLeaves(page: Page): Promise<void> {
  const bar = page.locator('.meter-bar').first();
  await bar.waitFor({ state: 'attached' });
  const share = () => bar.evaluate((path) => new DOMMatrix(getComputedStyle(path).transform).a);
  await expect.poll(share, { interval: 50, timeout: 20_000 }).toBeGreaterThan(0);
}

test('the pages come on plain http with production headers and ask nothing of any other server', async () => {
  const answer = await room.teacher.request.get(`${room.origin}/${room.room}`).catch(() => null);
  // The request context resolves names itself; the page's own answer carries the same headers.
  const page = await room.teacher.newPage();
  const loaded = answer ?? (await page.goto(`${room.origin}/${room.room}`));
  const headers = loaded?.headers() ?? {};
  await page.close();
  expect(headers['content-security-policy']).toContain("default-src 'self'");
  expect(headers['content-security-policy']).not.toContain('unsafe-inline');
  expect(headers['content-security-policy']).not.toContain('upgrade-insecure-requests');
  expect(headers['strict-transport-security']).toBeUndefined();
  expect(await room.desk.evaluate(() => window.isSecureContext)).toBe(false);
});

test('the host screen shows an address that can be scanned, and three students take a seat', async () => {
  host = await room.openHost();
  await host.getByText(room.room, { exact: true }).first().waitFor();
  const drawn = await host.locator('svg.qr').first().screenshot();
  const picture = await host.evaluate(async (png) => {
    const image = new Image();
    image.src = `data:image/png;base64,${png}`;
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [240, 240];
    const context = canvas.getContext('2d');
    if (!context) throw new Error('no canvas');
    context.drawImage(image, 0, 0, 240, 240);
    const { width, height, data } = context.getImageData(0, 0, 240, 240);
    return { width, height, data: [...data] };
  }, drawn.toString('base64'));
  const code = jsQR(Uint8ClampedArray.from(picture.data), picture.width, picture.height);
  expect(code?.data).toMatch(new RegExp(`^http://[^/]+:${room.server.port}/${room.room}$`));

  nele = await room.openPhone('Nele');
  oda = await room.openPhone('Oda', { size: { width: 320, height: 568 } });
  jory = await room.openPhone('Jory', { leftHanded: true });
  await host.getByText('3 seats taken.').waitFor();
  expect(await pageText(host)).not.toContain('Nele');
});

test('a name that is markup is refused with a sentence; one that looks like code is shown as text; erasing takes it away', async () => {
  const phone = await room.openPhone('Ida "a<3" {x}', { first: '<img src=x onerror=window.x=1>'.slice(0, 24) });
  await press(room.desk, 'roll');
  await room.desk.getByText('Ida "a<3"').waitFor();
  expect(await room.desk.evaluate(() => 'x' in window)).toBe(false);
  await phone.page.context().close();
  await room.desk
    .getByRole('listitem')
    .filter({ hasText: 'a<3' })
    .getByRole('button', { name: 'rename or erase' })
    .click();
  await press(room.desk, 'erase');
  await room.desk.getByRole('button', { name: /press again/ }).click();
  await room.desk.getByText('Ida "a<3"').waitFor({ state: 'detached' });
  await press(room.desk, 'round');
});

test('sound is off until a press, then runs, and the vamp plays in time with its sweep', async () => {
  expect(await pageText(host)).toContain('Press for sound');
  await press(host, 'Press for sound');
  await press(host, 'Start quietly');
  await host.getByText('Sound is on.').waitFor();

  await room.desk.locator('input[name=beat-level][value="5"]').click({ force: true });
  await room.desk.locator('input[name=beat-level][value="5"]:checked').waitFor({ state: 'attached' });
  await room.desk.locator('input[name=level][value="6"]').check({ force: true });
  // Not every groove of the beat level is all downs or down and up by turns.
  await room.desk.locator('select[name=level-groove]').selectOption('relaxed-alternate');
  await press(room.desk, 'play level 6');
  await room.desk.getByText('a minute').waitFor();
  await room.desk.getByRole('button', { name: 'stop', exact: true }).waitFor();
  await soundLeaves(host);

  // A control takes effect on a bar line; the desk rings it when the host reports that it did.
  await press(room.desk, 'bass alone');
  await room.desk.getByRole('button', { name: 'bass alone', pressed: true }).waitFor();
  await press(room.desk, 'full');
  await room.desk.getByRole('button', { name: 'full', pressed: true }).waitFor();
});

test('an answer written before a reload is still there after it, and can be changed until the close', async () => {
  await ask(
    'strokes',
    'All downs, or down and up?',
    () => write(nele, 'all downs'),
    async () => {
      await nele.page.reload();
      await nele.page.getByText('It is in.').waitFor();
      await nele.page.getByRole('button', { name: 'all downs', pressed: true }).waitFor();
    },
    async () => {
      await write(oda, 'all downs');
      await press(oda.page, 'change');
      await write(oda, 'down and up');
    },
    () => notSure(jory),
  );
  await room.desk.getByText('one not sure').waitFor();
  // The spread is the teacher's until the press, and carries no mark of the right one before the reveal.
  expect(await host.locator('svg.spread').count()).toBe(0);
  // One of three is for the neighbours: before their talk the press asks first.
  await press(room.desk, 'spread');
  await press(room.desk, 'spread all the same');
  await host.locator('svg.spread').waitFor();
  expect(await host.locator('svg.spread .line-brass, svg.spread .fill-brass').count()).toBe(0);
  await reveal();
  await nele.page.getByText(/^(Right|Not this one)\.$/).waitFor();
});

test('the desk and the host come back after a reload as they were', async () => {
  await room.desk.reload();
  await host.reload();
  await host.getByText('The vamp was playing: press, and it goes on.').waitFor();
  await host.getByRole('alert').getByRole('button', { name: 'Press for sound' }).click();
  await soundLeaves(host);
  await press(room.desk, 'stop');
  await room.desk.getByRole('button', { name: 'play', exact: true }).waitFor();
});

test('a round on the teacher’s own guitar is asked, marked and shown from the typed chords', async () => {
  await press(room.desk, 'new vamp');
  await room.desk.getByRole('textbox', { name: 'chords' }).fill('Em D');
  await room.desk.locator('select[name=groove]').selectOption('relaxed-alternate');
  await press(room.desk, 'ask about my guitar');

  await ask(
    'strokes',
    'All downs, or down and up?',
    () => write(nele, 'down and up'),
    () => write(oda, 'all downs'),
  );
  await room.desk.getByText('One of 2 heard it.').waitFor();
  await reveal();

  // E on the open sixth string, D on the open fourth: up.
  await ask(
    'bass',
    'From home to the next chord, where did the bass go?',
    () => write(nele, 'up'),
    () => write(oda, 'down'),
    () => write(jory, 'up'),
  );
  await room.desk.getByText('Two of 3 heard it.').waitFor();
  await room.desk.getByText('right: up').waitFor();
  await reveal();

  await ask(
    'quality Em',
    'First chord: major or minor?',
    () => write(nele, 'minor'),
    () => write(oda, 'minor'),
    () => write(jory, 'minor'),
  );
  await room.desk.getByText('Three of 3 heard it.').waitFor();
  await reveal();

  // The seventh fret of the fifth string is an E too.
  await ask(
    'root',
    'First chord: where is its root?',
    () => write(nele, 'string 6, open'),
    () => write(jory, 'string 5, fret 7'),
    () => write(oda, 'string 5, fret 2'),
  );
  await room.desk.getByText('Two of 3 heard it.').waitFor();
  await room.desk.getByText('One heard B.').waitFor();
  await reveal();
  await host.getByRole('heading', { name: 'The root is E.' }).waitFor();

  await ask(
    'quality D',
    'Next chord: major or minor?',
    () => write(nele, 'major'),
    () => notSure(oda),
  );
  await reveal();

  await ask(
    'keys',
    'Which major keys own all of these chords?',
    () => write(nele, 'G major', 'D major'),
    () => write(oda, 'G major'),
    () => write(jory, 'no key owns all'),
  );
  await room.desk.getByText('One of 3 heard it.').waitFor();
  await reveal();
  await host.getByRole('heading', { name: 'Two keys own Em and D.' }).waitFor();
  const shown = await pageText(host);
  expect(shown).toContain('C♯ says D');
  expect(shown).toContain('C says G');
  await nele.page.getByText('Right.', { exact: true }).waitFor();
  await oda.page.getByText('Partly right.').waitFor();
});

test('the lesson ends with how every question went, no names on the host, and each student’s own count', async () => {
  await press(room.desk, 'room');
  await press(room.desk, 'end the lesson');
  await room.desk.getByRole('button', { name: /^press again/ }).click();
  await host.getByRole('heading', { name: 'How the answers fell' }).waitFor();
  const text = await pageText(host);
  for (const name of ['Nele', 'Oda', 'Jory']) expect(text).not.toContain(name);
  await room.desk.getByRole('heading', { name: 'How it went' }).waitFor();
  await room.desk.getByText('2 right, 0 partly, 1 wrong, 0 not sure').first().waitFor();
  await nele.page.getByText('That was the lesson.').waitFor();
  await nele.page.getByText(/^\d of \d heard right\.$/).waitFor();
});

test('no page had an error, and none asked any other server', () => {
  expect(room.faults).toEqual([]);
});

test('the pages meet WCAG 2.2 AA as far as a program can tell', async () => {
  for (const page of [room.desk, host, nele.page]) {
    // Through the debugger: the page's own policy allows no script but its own.
    await page.evaluate(axe.source);
    const found = await page.evaluate(async () => {
      const { axe: runner } = window as unknown as { axe: typeof axe };
      const result = await runner.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'] });
      return result.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
    });
    expect(found).toEqual([]);
  }
});

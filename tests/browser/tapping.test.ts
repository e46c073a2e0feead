import { setTimeout as sleep } from 'node:timers/promises';
import type { CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { analyseTaps } from '../../shared-theory/taps/analysis.ts';
import { readTaps, type Taps } from '../../shared-theory/taps/taps.ts';
import { openClassRoom } from './class-room.ts';
import { phonePages, type OpenPhone, type PhonePages } from './phone-page.ts';

/** What the page itself saw, noted by a listener of the test's own in front of the page's. */
type Seen = { readonly type: string; readonly stamp: number; readonly heard: number };

let pages: PhonePages;
beforeAll(async () => {
  pages = await phonePages();
});
afterAll(() => pages.end());

const question = (ask: string, kind = 'tempo') => ({ v: 1, phase: 'open' as const, ask, asking: { kind, target: 0 } });

/** A phone with the strings on it, and a note of each contact that the page hears of. */
async function openStrings(ask: string, kind?: string): Promise<OpenPhone & { readonly seen: () => Promise<Seen[]> }> {
  const phone = await pages.open(question(ask, kind));
  await phone.page.getByRole('button', { name: 'tap here' }).waitFor();
  await phone.page.evaluate(() => {
    const seen: Seen[] = ((window as unknown as { seen: Seen[] }).seen = []);
    for (const type of ['pointerdown', 'keydown'])
      window.addEventListener(
        type,
        (event) => seen.push({ type, stamp: event.timeStamp, heard: performance.now() }),
        true,
      );
  });
  return { ...phone, seen: () => phone.page.evaluate(() => (window as unknown as { seen: Seen[] }).seen) };
}

/** Calls `tap` so many times, `step` ms apart, each with its time in seconds since the epoch. */
async function inTime(count: number, step: number, tap: (seconds: number, index: number) => Promise<unknown>) {
  const first = Date.now() + 200;
  for (let index = 0; index < count; index += 1) {
    const at = first + index * step;
    await sleep(Math.max(0, at - Date.now()));
    await tap(at / 1000, index);
  }
}

/** One finger, down and up; where it lands differs a little from tap to tap. */
async function touch(session: CDPSession, timestamp: number, index: number): Promise<void> {
  const touchPoints = [{ x: 150 + (index % 3) * 25, y: 480 + (index % 4) * 20 }];
  await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints, timestamp });
  await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [], timestamp: timestamp + 0.06 });
}

async function press(session: CDPSession, pointerType: 'mouse' | 'pen', timestamp: number): Promise<void> {
  const at = { x: 180, y: 500, button: 'left', clickCount: 1, pointerType, timestamp } as const;
  await session.send('Input.dispatchMouseEvent', { ...at, type: 'mousePressed' });
  await session.send('Input.dispatchMouseEvent', { ...at, type: 'mouseReleased' });
}

/** Presses "write it" and gives the taps that came to the room. */
async function written(page: Page, ask: string): Promise<Taps> {
  await page.getByRole('button', { name: 'write it' }).tap();
  const came = () =>
    pages.server.commands.flatMap((command) =>
      command.type === 'WriteAnswer' && command.ask === ask ? [command.answer] : [],
    );
  for (let tries = 0; came().length === 0 && tries < 100; tries += 1) await sleep(50);
  const taps = readTaps(came().at(-1));
  if (!taps) throw new Error(`No readable taps came: ${JSON.stringify(came())}`);
  return taps;
}

/** Tempo of the taps in beats a minute, as it is marked. */
const tempoOf = (taps: Taps): number => analyseTaps(taps)?.tempo ?? 0;

/** Whether the page stands as it was opened: not zoomed, not scrolled, nothing selected. */
const stance = (page: Page) =>
  page.evaluate(() => ({
    scale: visualViewport?.scale,
    left: visualViewport?.pageLeft,
    top: visualViewport?.pageTop,
    scrolled: [scrollX, scrollY, document.querySelector('.question-page')?.scrollTop],
    selected: String(getSelection()),
  }));
const STILL = { scale: 1, left: 0, top: 0, scrolled: [0, 0, 0], selected: '' };

test.each([
  ['80', 750],
  ['132', 60_000 / 132],
])('touches at %s a minute are that tempo to one percent, at once and as the page saw them', async (bpm, step) => {
  const { page, session, seen, context } = await openStrings(`touch-${bpm}`);
  await inTime(12, step, (seconds, index) => touch(session, seconds, index));
  const taps = await written(page, `touch-${bpm}`);
  const contacts = (await seen()).filter(({ type }) => type === 'pointerdown').slice(0, 12);
  const [first] = contacts;
  expect(taps).toHaveLength(12);
  expect(Math.abs(tempoOf(taps) / Number(bpm) - 1)).toBeLessThan(0.01);
  for (const [index, tap] of taps.entries()) {
    expect(Math.abs(tap - ((contacts[index]?.stamp ?? 0) - (first?.stamp ?? 0)))).toBeLessThan(0.11);
  }
  // A browser that waited for a second tap would come 300 ms later.
  const waits = contacts.map(({ stamp, heard }) => heard - stamp).toSorted((one, other) => one - other);
  expect(waits[6]).toBeLessThan(150);
  expect(await stance(page)).toEqual(STILL);
  await context.close();
});

test.each(['pen', 'mouse'] as const)('a %s taps as a finger does', async (pointerType) => {
  const { page, session, context } = await openStrings(pointerType);
  await inTime(9, 600, (seconds) => press(session, pointerType, seconds));
  const taps = await written(page, pointerType);
  expect(taps).toHaveLength(9);
  expect(Math.abs(tempoOf(taps) / 100 - 1)).toBeLessThan(0.01);
  await context.close();
});

test('keys tap, and a held key taps once', async () => {
  const { page, session, context } = await openStrings('keys');
  await page.keyboard.press('Tab');
  await page.getByRole('button', { name: 'tap here' }).focus();
  await inTime(9, 600, async (timestamp, index) => {
    const key =
      index % 2 === 0
        ? { key: ' ', code: 'Space', text: ' ', windowsVirtualKeyCode: 32 }
        : { key: 'Enter', code: 'Enter', text: '\r', windowsVirtualKeyCode: 13 };
    await session.send('Input.dispatchKeyEvent', { type: 'keyDown', ...key, timestamp });
    await session.send('Input.dispatchKeyEvent', {
      type: 'keyDown',
      ...key,
      autoRepeat: true,
      timestamp: timestamp + 0.2,
    });
    await session.send('Input.dispatchKeyEvent', { type: 'keyUp', ...key, timestamp: timestamp + 0.25 });
  });
  const taps = await written(page, 'keys');
  expect(taps).toHaveLength(9);
  expect(Math.abs(tempoOf(taps) / 100 - 1)).toBeLessThan(0.01);
  expect(await stance(page)).toEqual(STILL);
  await context.close();
});

test('double taps, drags, a long press and a second finger neither zoom nor scroll nor select', async () => {
  const { page, session, seen, context } = await openStrings('still');
  // Playwright's own taps come without a time: as fast as the browser takes them.
  for (let pair = 0; pair < 3; pair += 1) {
    await page.touchscreen.tap(180, 500);
    await page.touchscreen.tap(180, 500);
    await sleep(350);
  }
  expect(await stance(page)).toEqual(STILL);
  const one = { x: 100, y: 500, id: 1 };
  const drag = async (dx: number, dy: number): Promise<void> => {
    await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [one] });
    for (let step = 1; step <= 6; step += 1) {
      const touchPoints = [{ ...one, x: one.x + step * dx, y: one.y + step * dy }];
      await session.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints });
    }
    await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  };
  await drag(0, -40);
  await drag(30, 0);
  expect(await stance(page)).toEqual(STILL);
  // Held for a second, as for a menu; meanwhile a second finger taps.
  await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [one] });
  await sleep(900);
  const two = { x: 260, y: 520, id: 2 };
  await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [one, two] });
  await session.send('Input.dispatchTouchEvent', {
    type: 'touchMove',
    touchPoints: [
      { ...one, x: 60 },
      { ...two, x: 320 },
    ],
  });
  await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  expect(await stance(page)).toEqual(STILL);
  // Six of the pairs, two drags, the held finger and the second one: each contact is one tap.
  expect(await seen()).toHaveLength(10);
  expect(await page.locator('.pad svg path.line-ink').count()).toBe(10);
  await context.close();
});

test('the strings stay where they are when the line over them is a shorter one', async () => {
  const { page, context } = await openStrings('stays', 'drop-out');
  const pad = page.getByRole('button', { name: 'tap here' });
  const line = page.locator('.pages').getByRole('status');
  const before = await line.innerText();
  const box = await pad.boundingBox();
  for (let tap = 0; tap < 8; tap += 1) await pad.tap();
  await page.getByText('It falls silent soon').waitFor();
  expect((await line.innerText()).length).toBeLessThan(before.length);
  expect(await pad.boundingBox()).toEqual(box);
  await context.close();
});

test('in a class: the tempo of a phone is that of the desk and of the mark, to one percent', async () => {
  const room = await openClassRoom();
  try {
    const host = await room.openHost();
    const { page } = await room.openPhone('Nele');
    const session = await page.context().newCDPSession(page);
    const press = (on: Page, name: string): Promise<void> => on.getByRole('button', { name, exact: true }).click();
    await press(host, 'Press for sound');
    await press(host, 'Start quietly');
    await press(room.desk, 'round');
    await room.desk.locator('[name=level][value="3"]').click({ force: true });
    await press(room.desk, 'play level 3');
    await room.desk.getByRole('button', { name: 'stop', exact: true }).waitFor();
    const [, tempo] = /(\d+) a minute/.exec(await room.desk.locator('body').innerText()) ?? [];
    const right = Number(tempo);
    expect(right).toBeGreaterThan(30);
    await room.desk
      .locator('.desk-step', { hasText: /^tempo/ })
      .first()
      .click();
    await press(room.desk, 'open');
    await page.getByRole('button', { name: 'tap here' }).waitFor();
    await inTime(12, 60_000 / right, (seconds, index) => touch(session, seconds, index));
    await page.getByRole('button', { name: 'write it' }).tap();
    await page.getByText('It is in.').waitFor();
    await press(room.desk, 'close');
    await press(room.desk, 'hand by hand');
    const cell = await room.desk.getByRole('row', { name: /Nele/ }).getByRole('cell').first().innerText();
    expect(Math.abs(Number.parseFloat(cell) / right - 1)).toBeLessThan(0.01);
    // What the roll says of the taps has the width of the page: they are more words than an answer.
    await press(room.desk, 'roll');
    const inRoll = async (part: string) => {
      const box = await room.desk.locator(`.roll-line ${part}`).first().boundingBox();
      return box ?? { x: NaN, y: NaN, width: NaN, height: NaN };
    };
    const [name, state, link] = [await inRoll('.roll-name'), await inRoll('.roll-state'), await inRoll('.desk-link')];
    expect(state.width).toBeGreaterThan(330);
    expect(state.y).toBeGreaterThanOrEqual(name.y + name.height);
    expect(name.x).toBe(state.x);
    expect(link.x).toBeGreaterThanOrEqual(name.x + name.width);
    await press(room.desk, 'round');
    await press(room.desk, 'show');
    await page.getByText('Right.', { exact: true }).waitFor();
    const [, own = '', sounded = ''] =
      /You tapped about (\d+); it was (\d+)\./.exec(await page.locator('body').innerText()) ?? [];
    expect(Number(sounded)).toBe(right);
    // Told without a decimal.
    expect(Math.abs(Number(own) - right)).toBeLessThanOrEqual(1);
    expect(room.faults).toEqual([]);
  } finally {
    await room.end();
  }
});

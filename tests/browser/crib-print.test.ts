import axe from 'axe-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { BrowserContext, Page } from 'playwright-core';
import { openClassRoom, type ClassRoom } from './class-room.ts';

let school: ClassRoom;
let teacher: BrowserContext;
let page: Page;

beforeAll(async () => {
  school = await openClassRoom();
  // What is printed needs no script: the teacher's cookie in a browser that runs none.
  teacher = await school.browser.newContext({
    javaScriptEnabled: false,
    storageState: await school.teacher.storageState(),
    viewport: { width: 900, height: 1100 },
  });
  page = await teacher.newPage();
}, 120_000);

afterAll(() => school?.end());

const sheet = (chords: string, more: Readonly<Record<string, string>> = {}) =>
  page.goto(`${school.origin}/desk/${school.room}/crib?${new URLSearchParams({ chords, ...more }).toString()}`);

/** Between the margins of a letter page, in pixels, and the part of it that a sheet uses at least. */
const LETTER_WIDTH = 733;
const LETTER_HEIGHT = 980;
const LEAST_USED = 0.86;

/** Pages of a PDF, by its own page objects. */
async function printedPages(format: 'A4' | 'Letter'): Promise<number> {
  const pdf = await page.pdf({ format, preferCSSPageSize: false });
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

describe('the printed crib', () => {
  test.each([
    ['two chords', 'Em D', 'majors', '0'],
    ['two chords in all modes, under a capo', 'C Am', 'modes', '3'],
    ['four chords', 'C Am F G', 'relatives', '0'],
    ['four chords in two keys, one twice', 'D Bm D G', 'relatives', '2'],
    ['four chords with sevenths and a slash', 'Am7 D7 Gmaj7 C/E', 'raised-seventh', '0'],
    ['three candidate keys', 'F Dm', 'majors', '0'],
    ['three candidate keys with relatives', 'F Dm', 'relatives', '5'],
    ['bare fifths, which many keys own', 'C5 G5', 'modes', '0'],
    ['no key, and keys with visitors', 'Em A Dm A', 'majors', '0'],
    ['six chords in two rows', 'Am C E7 G/B Dm7 F', 'raised-seventh', '0'],
  ])('%s: one page on A4 and on letter', async (_name, chords, policy, capo) => {
    const response = await sheet(chords, { policy, capo });
    expect(response?.status()).toBe(200);
    expect(await printedPages('A4')).toBe(1);
    expect(await printedPages('Letter')).toBe(1);
    // As large as it can be: most of the shorter page is used, or the type is at its largest.
    await page.setViewportSize({ width: LETTER_WIDTH, height: 900 });
    await page.emulateMedia({ media: 'print' });
    const sheetOf = page.locator('.sheet');
    const { height } = (await sheetOf.boundingBox()) ?? { height: 0 };
    const isLargest = (await sheetOf.getAttribute('data-density')) === 'loose';
    expect(isLargest || height > LEAST_USED * LETTER_HEIGHT).toBe(true);
    await page.emulateMedia({ media: null });
  });

  test('is set in its own faces, shows nothing of the screen in print, and holds to contrast', async () => {
    await sheet('F Dm', { capo: '3' });
    expect(await page.locator('.box').count()).toBe(2);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('nav.choices').isVisible()).toBe(false);
    expect(await page.locator('.sheet').isVisible()).toBe(true);
    await page.emulateMedia({ media: null });
    const live = await school.teacher.newPage();
    await live.goto(page.url());
    expect(
      await live.evaluate(async () => (await document.fonts.ready, document.fonts.check('600 12px "Besley Variable"'))),
    ).toBe(true);
    await live.evaluate(axe.source);
    const faults = await live.evaluate(async () => {
      const { axe: runner } = window as unknown as { axe: typeof axe };
      const { violations } = await runner.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa'] });
      return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
    });
    expect(faults).toEqual([]);
    await live.close();
  });

  test('turns its boxes round for a left hand', async () => {
    await sheet('Em D');
    const silent = () =>
      page
        .locator('figure', { has: page.locator('.box-silent') })
        .locator('.box-silent')
        .evaluateAll((marks) => marks.map((mark) => mark.getAttribute('d')));
    const before = await silent();
    await page.getByRole('link', { name: 'left-handed boxes' }).click();
    const after = await silent();
    expect(after).toHaveLength(before.length);
    expect(after).not.toEqual(before);
    await page.getByRole('link', { name: 'right-handed boxes' }).click();
    expect(await silent()).toEqual(before);
  });

  test('is the teacher’s alone, and says what it cannot read', async () => {
    const stranger = await school.browser.newPage();
    const closed = await stranger.goto(`${school.origin}/desk/${school.room}/crib?chords=Em`);
    expect(closed?.status()).toBe(403);
    await stranger.close();
    const wrong = await sheet('Em Xyz');
    expect(wrong?.status()).toBe(400);
    expect(await page.getByRole('alert').textContent()).toContain('Xyz');
    expect((await page.goto(`${school.origin}/desk/${school.room}/crib/99`))?.status()).toBe(404);
  });
});

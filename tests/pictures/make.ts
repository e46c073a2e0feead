import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { openClassRoom, type ClassRoom } from '../browser/class-room.ts';
import { joinedStudent, type StudentClient } from '../support/socket-client.ts';

/** Makes the README's pictures from a real room: a host, a desk, a phone in a browser, and a class on sockets behind them. */

const FOLDER = join(import.meta.dirname, '..', '..', '.github', 'pictures');
/** An invented class. */
const NAMES = [
  'Oda',
  'Jory',
  'Pim',
  'Ilse',
  'Bram',
  'Tove',
  'Mato',
  'Zoë',
  'Runa',
  'Emil',
  'Kaja',
  'Levi',
  'Noor',
  'Sef',
  'Alma',
  'Idris',
  'Wim',
  'Una',
  'Taro',
  'Fenna',
  'Joos',
  'Mila',
  'Arvo',
];

mkdirSync(FOLDER, { recursive: true });
const room = await openClassRoom();
const host = await room.openHost();
const { page: phone } = await room.openPhone('Nele');
const others: StudentClient[] = [];
let writing = 0;
for (const name of NAMES) others.push(await joinedStudent(room.server.url, room.room, name));

const press = (page: Page, name: string): Promise<void> => page.getByRole('button', { name, exact: true }).click();
const shoot = async (page: Page, name: string): Promise<void> => {
  await page.waitForTimeout(700);
  await page.screenshot({ path: join(FOLDER, `${name}.png`) });
};

await press(host, 'Press for sound');
await press(host, 'Start quietly');
await host.getByText('Sound is on.').waitFor();
await shoot(host, 'host-register');

await press(room.desk, 'round');
await room.desk.locator('input[name=beat-level][value="5"]').click({ force: true });
await room.desk.locator('input[name=beat-level][value="5"]:checked').waitFor({ state: 'attached' });
await room.desk.locator('input[name=level][value="6"]').check({ force: true });
await press(room.desk, 'play level 6');
await room.desk.getByRole('button', { name: 'stop', exact: true }).waitFor();
await pickStep(room, 'bass');
await press(room.desk, 'open');
await answerAll((seat) => (seat < 12 ? 'up' : 'down'), 17);
await host.waitForTimeout(3200);
await shoot(host, 'host-open');
await press(phone, 'up');
await shoot(phone, 'phone-direction');
await press(phone, 'write it');
await press(room.desk, 'close');
await press(room.desk, 'show');

await press(room.desk, 'stop');
await pickStep(room, 'strokes');
await press(room.desk, 'new vamp');
await room.desk.getByRole('textbox', { name: 'chords' }).fill('D G');
await press(room.desk, 'ask about my guitar');

await pickStep(room, 'root');
await press(room.desk, 'open');
await press(phone, 'string 5, fret 5');
await shoot(phone, 'phone-root');
await press(phone, 'write it');
const places = [
  { string: 5, fret: 5 },
  { string: 5, fret: 5 },
  { string: 6, fret: 5 },
  { string: 5, fret: 0 },
  { string: 6, fret: 10 },
];
await answerAll((seat) => places[seat % places.length], 21);
await press(room.desk, 'close');
await shoot(room.desk, 'desk-closed');
await press(room.desk, 'spread');
const asked = room.desk.getByRole('button', { name: 'spread all the same', exact: true });
if (await asked.isVisible()) await asked.click();
await shoot(host, 'host-root');
await press(room.desk, 'show');

await pickStep(room, 'keys');
await press(room.desk, 'open');
await press(phone, 'G major');
await press(phone, 'D major');
await shoot(phone, 'phone-keys');
await press(phone, 'write it');
await answerAll((seat) => (seat % 3 === 0 ? ['2M'] : seat % 7 === 1 ? ['2M', '9M'] : ['2M', '7M']), 22);
await press(room.desk, 'close');
await press(room.desk, 'show');
await shoot(host, 'host-keys');

for (const other of others) other.close();
await room.end();

/** The first so many of the class write what their seat gives; the rest stay silent. */
async function answerAll(answer: (seat: number) => unknown, hands: number): Promise<void> {
  writing += 1;
  const replies = await Promise.all(
    others.slice(0, hands).map((other, seat) => {
      const ask = other.common()?.ask ?? '';
      return other.send({ type: 'WriteAnswer', ask, counter: writing, answer: answer(seat), heldMs: 0 });
    }),
  );
  const refused = replies.find((reply) => !reply.ok);
  if (refused) throw new Error(`An answer was refused: ${JSON.stringify(refused)}`);
}

async function pickStep({ desk }: ClassRoom, name: string): Promise<void> {
  await desk
    .getByRole('group', { name: 'Questions of this round' })
    .getByRole('button', { name: new RegExp(`^${name}[, ]`) })
    .first()
    .click();
}

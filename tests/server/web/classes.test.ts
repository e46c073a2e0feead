import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { GROOVES, grooveLine, parseGroove } from '../../../shared-theory/grooves.ts';
import { MOST_GROOVES } from '../../../server/protocol/messages.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { DEFAULT_SETTINGS } from '../../../server/rooms/settings.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { ensureClass } from '../../../server/web/classes.ts';
import { connectWatcher, openRoom, teacherCookie, type WatcherClient } from '../../support/socket-client.ts';
import { startTestApp, type TestApp } from '../../support/test-app.ts';

const LINE = grooveLine(
  parseGroove('ours, Ours | E8 | 4/4 | 60-120 | r=1 / strk D-D-DUDU / zone A.A.AHAH / tch o.o.oooo / acc 30203121'),
);
const other = LINE.replace('ours', 'theirs');

let folder: string;
let app: TestApp;
const file = () => join(folder, 'hearsay.db');
const start = async () => {
  app = await startTestApp(openSqliteStore(file()));
};
const desks: WatcherClient<DeskView>[] = [];
const desk = async (room: string) => {
  const client = await connectWatcher(app.url, room, 'desk', { cookie: app.cookie });
  desks.push(client);
  return client;
};
const stop = async () => {
  for (const client of desks.splice(0)) client.close();
  await app.close();
};

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hearsay-classes-'));
  await start();
});
afterEach(async () => {
  await stop();
  rmSync(folder, { recursive: true });
});

describe('R89 a class keeps what its rooms change', () => {
  test('the next room opens with it, also after a restart; one that is open keeps its own', async () => {
    const [room, beside] = [await app.room(), await app.room()];
    const first = await desk(room);
    const changed = {
      pitch: 442,
      voice: 'nylon',
      smallSpeaker: true,
      band: { kit: true, bass: false },
      capo: 2,
    } as const;
    expect(await first.send({ type: 'ChangeSettings', settings: changed })).toEqual({ ok: true });
    expect(await first.send({ type: 'SaveGroove', text: LINE })).toEqual({ ok: true, value: { groove: 'ours' } });
    const kept = { ...DEFAULT_SETTINGS, ...changed, grooves: [LINE] };
    expect((await desk(await app.room())).view().settings).toEqual(kept);
    expect((await desk(beside)).view().settings).toEqual(DEFAULT_SETTINGS);
    await stop();
    await start();
    const later = await desk(await app.room());
    expect(later.view().settings).toEqual(kept);
    expect(later.view().grooves).toHaveLength(GROOVES.length + 1);
    // The room itself has it from its log.
    expect((await desk(room)).view().settings).toEqual(kept);
    const round = { type: 'StartRound', after: 0, level: 7, item: null, groove: 'ours', contrast: null } as const;
    expect(await later.send(round)).toMatchObject({ ok: true });
    await expect.poll(() => later.view().vamp?.grooveText).toMatch(/^ours, Ours/);
    expect(await later.send({ type: 'EraseGroove', groove: 'ours' })).toEqual({ ok: true });
    expect((await desk(await app.room())).view().settings.grooves).toEqual([]);
  });

  test('two rooms at once: what one changes takes nothing of the other’s from the class', async () => {
    const [one, another] = [await desk(await app.room()), await desk(await app.room())];
    await one.send({ type: 'SaveGroove', text: LINE });
    await another.send({ type: 'SaveGroove', text: other });
    await one.send({ type: 'ChangeSettings', settings: { naming: 'german' } });
    await another.send({ type: 'ChangeSettings', settings: { policy: 'modes' } });
    await expect.poll(() => another.view().settings.grooves).toEqual([other]);
    const next = await desk(await app.room());
    expect(next.view().settings).toEqual({
      ...DEFAULT_SETTINGS,
      naming: 'german',
      policy: 'modes',
      grooves: [LINE, other],
    });
  });

  test('what is refused changes nothing', async () => {
    const client = await desk(await app.room());
    expect(await client.raw({ type: 'ChangeSettings', id: 'x', settings: { pitch: 500 } })).toMatchObject({
      ok: false,
    });
    expect(await client.send({ type: 'SaveGroove', text: 'no groove' })).toMatchObject({
      ok: false,
      reason: 'groove-not-readable',
    });
    expect((await desk(await app.room())).view().settings).toEqual(DEFAULT_SETTINGS);
  });

  test('settings that came later than the class take their first value; a groove that cannot be read stays out', async () => {
    await stop();
    const store = openSqliteStore(file());
    await store.putClass({
      id: 'class-1',
      name: 'Monday',
      settings: JSON.stringify({ policy: 'relatives', grooves: ['waltz, Of the catalogue by now | …', LINE] }),
    });
    expect(await ensureClass(store)).toEqual({
      id: 'class-1',
      settings: { ...DEFAULT_SETTINGS, policy: 'relatives', grooves: [LINE] },
    });
    await store.close();
    await start();
    const client = await desk(await app.room());
    await client.send({ type: 'ChangeSettings', settings: { capo: 3 } });
    await stop();
    const after = openSqliteStore(file());
    const [found] = await after.classes();
    expect(found?.name).toBe('Monday');
    expect(JSON.parse(found?.settings ?? '')).toMatchObject({
      capo: 3,
      grooves: [expect.stringMatching(/^waltz/), LINE],
    });
    await after.close();
    await start();
  });

  test('a class to which several rooms have saved more than one room may have still opens rooms, with the newest', async () => {
    await stop();
    const store = openSqliteStore(file());
    const grooves = Array.from({ length: MOST_GROOVES + 2 }, (_, index) => LINE.replace('ours', `ours-${index}`));
    await store.putClass({ id: 'class-1', name: 'Monday', settings: JSON.stringify({ grooves }) });
    await store.close();
    await start();
    const client = await desk(await app.room());
    expect(client.view().settings.grooves).toEqual(grooves.slice(2));
    // The class has room again once some are erased.
    expect(await client.send({ type: 'EraseGroove', groove: 'ours-9' })).toEqual({ ok: true });
    expect((await desk(await app.room())).view().settings.grooves).not.toContain(grooves[9]);
  });

  test('a second device that opens a room finds the class as it is', async () => {
    const client = await desk(await app.room());
    await client.send({ type: 'ChangeSettings', settings: { smallSpeaker: true } });
    const cookie = await teacherCookie(app.url, app.key);
    const room = await openRoom(app.url, cookie);
    expect((await desk(room)).view().settings.smallSpeaker).toBe(true);
  });
});

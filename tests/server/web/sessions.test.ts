import { describe, expect, test } from 'vitest';
import { emptyMemory, memoryStore } from '../../../server/store/memory-store.ts';
import { createSessions } from '../../../server/web/sessions.ts';

function fixture(memory = emptyMemory()) {
  let time = 0;
  const waits: number[] = [];
  const sleep = async (ms: number) => void waits.push(ms);
  const sessions = createSessions(
    memoryStore(memory),
    () => 'hearsay-teacher-4600',
    () => time,
    sleep,
  );
  return { sessions, memory, waits, wait: (ms: number) => (time += ms) };
}
const cookie = (key: string | null) => `theme=dark; hearsay-teacher-4600=${key ?? ''}; other=1`;

describe('the teacher link', () => {
  test('has at least 128 bits, and another key at each start', () => {
    const keys = Array.from({ length: 20 }, () => fixture().sessions.linkKey);
    expect(new Set(keys).size).toBe(20);
    for (const key of keys) expect(Buffer.from(key, 'base64url').length).toBeGreaterThanOrEqual(16);
  });

  test('lets a device in, over restarts too, while the old link does not', async () => {
    const { sessions, memory } = fixture();
    const key = await sessions.openLink(sessions.linkKey);
    expect(await sessions.isTeacher(cookie(key))).toBe(true);
    const next = fixture(memory).sessions;
    expect(await next.isTeacher(cookie(key))).toBe(true);
    expect(await next.openLink(sessions.linkKey)).toBeNull();
  });

  test.each([undefined, '', 'x', ['a', 'b'], { a: 1 }])('%j is not its key', async (key) => {
    expect(await fixture().sessions.openLink(key)).toBeNull();
  });

  test('neither the link nor its key opens as a cookie, nor does a cookie of another port', async () => {
    const { sessions } = fixture();
    const key = await sessions.openLink(sessions.linkKey);
    expect(await sessions.isTeacher(cookie(sessions.linkKey))).toBe(false);
    expect(await sessions.isTeacher(`hearsay-teacher-4601=${key}`)).toBe(false);
    expect(await sessions.isTeacher(undefined)).toBe(false);
    expect(await sessions.isTeacher('hearsay-teacher-4600')).toBe(false);
  });

  test('is stored hashed, and the cookie cannot be read by scripts', async () => {
    const { sessions, memory } = fixture();
    const key = (await sessions.openLink(sessions.linkKey)) ?? '';
    expect([...memory.keys.keys()].every((hash) => /^[0-9a-f]{64}$/.test(hash) && !hash.includes(key))).toBe(true);
    expect(sessions.setCookie(key)).toMatch(
      /^hearsay-teacher-4600=[\w-]+; Path=\/; Max-Age=\d+; HttpOnly; SameSite=Lax$/,
    );
  });
});

describe('pairing a second device', () => {
  test('works once, within a minute', async () => {
    const { sessions, wait } = fixture();
    const { code, seconds } = sessions.newPairingCode();
    expect(code).toMatch(/^[A-Z0-9]{6}$/);
    expect(seconds).toBe(60);
    wait(59_000);
    const first = await sessions.pair(code);
    expect(first.ok && (await sessions.isTeacher(cookie(first.key)))).toBe(true);
    expect(await sessions.pair(code)).toEqual({ ok: false, reason: 'pairing-code-wrong' });
  });

  test('a code is void after a minute, and when a newer one is shown', async () => {
    const { sessions, wait } = fixture();
    const old = sessions.newPairingCode().code;
    wait(60_000);
    expect((await sessions.pair(old)).ok).toBe(false);
    const first = sessions.newPairingCode().code;
    const second = sessions.newPairingCode().code;
    expect((await sessions.pair(first)).ok).toBe(false);
    expect((await sessions.pair(second)).ok).toBe(true);
  });

  test('without a code nothing pairs', async () => {
    expect(await fixture().sessions.pair('AAAAAA')).toEqual({ ok: false, reason: 'pairing-code-wrong' });
  });

  test('guessing is slowed more and more, forgiven later, and never delays the right code', async () => {
    const { sessions, waits, wait } = fixture();
    const { code } = sessions.newPairingCode();
    for (let guess = 0; guess < 30; guess += 1) await sessions.pair('000000');
    expect(waits).toEqual(waits.toSorted((left, right) => left - right));
    expect(waits.at(-1)).toBeGreaterThanOrEqual(1000);
    const before = waits.length;
    expect((await sessions.pair(code)).ok).toBe(true);
    expect(waits.length).toBe(before);
    wait(120_000);
    await sessions.pair('000000');
    expect(waits.at(-1)).toBeLessThan(1000);
  });

  test('R63 few guesses may wait at once, and none of them keeps the right code out', async () => {
    const never = () => new Promise<void>(() => {});
    const sessions = createSessions(
      memoryStore(),
      () => 'c',
      () => 0,
      never,
    );
    const { code } = sessions.newPairingCode();
    for (let guess = 0; guess < 20; guess += 1) void sessions.pair('000000');
    for (let guess = 0; guess < 200; guess += 1)
      expect(await sessions.pair('000000')).toEqual({ ok: false, reason: 'too-many-codes' });
    expect((await sessions.pair(code)).ok).toBe(true);
  });

  test('R63 a hundred wrong tries make a code void, not the next one', async () => {
    const { sessions } = fixture();
    const first = sessions.newPairingCode().code;
    for (let guess = 0; guess < 99; guess += 1) await sessions.pair('000000');
    expect((await sessions.pair(first)).ok).toBe(true);
    const second = sessions.newPairingCode().code;
    for (let guess = 0; guess < 100; guess += 1) await sessions.pair('000000');
    expect(await sessions.pair(second)).toEqual({ ok: false, reason: 'pairing-code-wrong' });
    expect((await sessions.pair(sessions.newPairingCode().code)).ok).toBe(true);
  });
});

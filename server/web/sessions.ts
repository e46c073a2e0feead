import { createHash, randomBytes, randomInt, timingSafeEqual } from 'node:crypto';
import type { KeyStore } from '../store/event-store.ts';

/** How long a device stays let in. */
const KEPT_DAYS = 400;
const KEPT_MS = KEPT_DAYS * 24 * 60 * 60 * 1000;
const KEY_BYTES = 24;

const CODE_SECONDS = 60;
const CODE_LETTERS = 'ABCDEFGHJKMNPRSTUWXYZ23456789';
const CODE_LENGTH = 6;

/** So many wrong tries and the code is void: of 600 million codes a guesser sees a hundred. */
const MOST_TRIES = 100;
/** Each wrong code is answered later than the one before, and few may wait at once. */
const SLOWEST_MS = 2000;
const SLOWER_BY_MS = 100;
const FORGIVEN_AFTER_MS = 60_000;
const MOST_WAITING = 20;

type Pairing =
  | { readonly ok: true; readonly key: string }
  | { readonly ok: false; readonly reason: 'pairing-code-wrong' | 'too-many-codes' };

/** Who is let in as the teacher: by the link of this start, or by a one-time code from a desk. */
export type Sessions = {
  /** Secret of the teacher link; new at each start. */
  readonly linkKey: string;
  /** A key for the device's cookie; null where the link's key is wrong. */
  readonly openLink: (key: unknown) => Promise<string | null>;
  /** Whether the request's Cookie header holds a key that was given out. */
  readonly isTeacher: (cookieHeader: string | undefined) => Promise<boolean>;
  /** A new one-time code; the one before it is void. */
  readonly newPairingCode: () => { readonly code: string; readonly seconds: number };
  readonly pair: (code: string) => Promise<Pairing>;
  readonly setCookie: (key: string) => string;
};

/** `cookie`: name of the cookie, with the port in it, since cookies know no ports. */
export function createSessions(
  keys: KeyStore,
  cookie: () => string,
  clock: () => number = () => performance.now(),
  sleep: (ms: number) => Promise<unknown> = (ms) => new Promise((resolve) => void setTimeout(resolve, ms).unref()),
): Sessions {
  const linkKey = newKey();
  let pairing: { readonly code: string; readonly until: number; tries: number } | null = null;
  let wrong = 0;
  let lastWrong = 0;
  let waiting = 0;

  const letIn = async (): Promise<string> => {
    const key = newKey();
    const now = Date.now();
    await keys.dropTeacherKeys(now - KEPT_MS);
    await keys.putTeacherKey(hashOf(key), now);
    return key;
  };

  return {
    linkKey,
    openLink: async (key) => (typeof key === 'string' && same(key, linkKey) ? letIn() : null),
    isTeacher: async (cookieHeader) => {
      const key = cookieOf(cookieHeader, cookie());
      return key !== null && keys.hasTeacherKey(hashOf(key));
    },
    newPairingCode: () => {
      const code = Array.from({ length: CODE_LENGTH }, () => CODE_LETTERS[randomInt(CODE_LETTERS.length)]).join('');
      pairing = { code, until: clock() + CODE_SECONDS * 1000, tries: 0 };
      return { code, seconds: CODE_SECONDS };
    },
    pair: async (code) => {
      const now = clock();
      if (pairing && now < pairing.until && same(code, pairing.code)) {
        pairing = null;
        return { ok: true, key: await letIn() };
      }
      // A try that is turned away is not heard: else a flood of them would void the code at once.
      if (waiting >= MOST_WAITING) return { ok: false, reason: 'too-many-codes' };
      if (pairing && (pairing.tries += 1) >= MOST_TRIES) pairing = null;
      if (now - lastWrong > FORGIVEN_AFTER_MS) wrong = 0;
      wrong += 1;
      lastWrong = now;
      waiting += 1;
      await sleep(Math.min(SLOWEST_MS, wrong * SLOWER_BY_MS));
      waiting -= 1;
      return { ok: false, reason: 'pairing-code-wrong' };
    },
    // No `Secure`: on plain http the browser would drop it.
    setCookie: (key) => `${cookie()}=${key}; Path=/; Max-Age=${KEPT_DAYS * 24 * 60 * 60}; HttpOnly; SameSite=Lax`,
  };
}

function newKey(): string {
  return randomBytes(KEY_BYTES).toString('base64url');
}

/** The form in which secrets are kept. */
function hashOf(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}

/** Compares in a time that tells nothing about where two secrets differ. */
function same(left: string, right: string): boolean {
  return timingSafeEqual(createHash('sha256').update(left).digest(), createHash('sha256').update(right).digest());
}

function cookieOf(header: string | undefined, name: string): string | null {
  for (const part of (header ?? '').split(';')) {
    const [key = '', value = ''] = part.trim().split('=', 2);
    if (key === name) return value;
  }
  return null;
}

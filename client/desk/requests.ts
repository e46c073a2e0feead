/** What the desk asks over http; null where the server did not answer or refused. */

export type OpenRoom = { readonly room: string; readonly status: string; readonly openedAt: number };

function ask(method: 'GET' | 'POST', path: string, body?: unknown): Promise<Response> {
  return fetch(path, {
    method,
    ...(method === 'POST' && { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body ?? {}) }),
  });
}

async function request<T>(method: 'GET' | 'POST', path: string, body?: unknown): Promise<T | null> {
  try {
    const answer = await ask(method, path, body);
    return answer.ok ? ((await answer.json()) as T) : null;
  } catch {
    // No network: the page says so.
    return null;
  }
}

/** Rooms that have not been closed, newest first. */
export async function listRooms(): Promise<readonly OpenRoom[] | null> {
  const answer = await request<{ rooms: readonly OpenRoom[] }>('GET', '/api/rooms');
  return answer?.rooms.filter((room) => room.status !== 'room-ended') ?? null;
}

/** Opens a room and returns its code. */
export async function openRoom(): Promise<string | null> {
  return (await request<{ room: string }>('POST', '/api/rooms'))?.room ?? null;
}

/** A one-time code that lets another device in, and for how many seconds. */
export function newPairingCode(): Promise<{ readonly code: string; readonly seconds: number } | null> {
  return request('POST', '/api/pairing');
}

/** Lets this device in by the code; says whether it did, or whether so many try codes just now that this one was not heard. */
export async function pairBy(code: string): Promise<'paired' | 'too-many-codes' | 'pairing-code-wrong'> {
  const answer = await ask('POST', '/api/pair', { code }).catch(() => null);
  if (answer?.ok) return 'paired';
  return answer?.status === 429 ? 'too-many-codes' : 'pairing-code-wrong';
}

/** What the desk asks over http; null where the server did not answer or refused. */

export type OpenRoom = { readonly room: string; readonly status: string; readonly openedAt: number };

async function request<T>(method: 'GET' | 'POST', path: string, body?: unknown): Promise<T | null> {
  try {
    const answer = await fetch(path, {
      method,
      ...(method === 'POST' && { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body ?? {}) }),
    });
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

/** Lets this device in by the code. */
export async function pairBy(code: string): Promise<boolean> {
  return (await request<{ ok: true }>('POST', '/api/pair', { code })) !== null;
}

import type { Keeper } from '../keeper/keeper.ts';
import { hashToken } from '../keeper/token.ts';
import { parseHandshake, type Parsed } from '../protocol/parsers.ts';
import type { LiveSocket, SocketData } from './live.ts';
import type { Sessions } from './sessions.ts';

/** Reads from a handshake who wants in, or why the door stays shut. Students need only the room; host and desk the teacher's cookie. */
export async function admit(
  handshake: Pick<LiveSocket['handshake'], 'auth' | 'headers'>,
  connection: string,
  keeper: Pick<Keeper, 'find'>,
  sessions: Sessions,
): Promise<Parsed<SocketData>> {
  const parsed = parseHandshake(handshake.auth);
  if (!parsed.ok) return parsed;
  const { value } = parsed;
  const { role, room } = value;
  if (role !== 'student' && !(await sessions.isTeacher(handshake.headers.cookie))) {
    return { ok: false, reason: 'not-teacher' };
  }
  const found = await keeper.find(room);
  if (found === 'absent') return { ok: false, reason: 'room-not-found', detail: { room } };
  // The room may be there: the page keeps its address and tries again.
  if (found === 'failed') return { ok: false, reason: 'not-saved' };
  return {
    ok: true,
    value: {
      role,
      room,
      tokenHash: value.role === 'student' ? hashOf(value.token) : null,
      student: null,
      session: value.role === 'host' ? (value.page ?? connection) : connection,
    },
  };
}

/** A token of another shape was not made by our page: whoever brings it stands at the door without one. */
function hashOf(token: string | undefined): string | null {
  return token !== undefined && /^[0-9a-f]{32}$/.test(token) ? hashToken(token) : null;
}

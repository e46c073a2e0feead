import type { Command, Reply } from '../protocol/messages.ts';
import type { Allowed, Context, Decision, Sender } from '../rooms/commands.ts';
import { refuse } from '../rooms/commands.ts';
import { decide } from '../rooms/decide.ts';
import type { Stamp } from '../rooms/events.ts';
import type { People } from '../rooms/people.ts';
import { putPerson } from '../rooms/people.ts';
import { evolve } from '../rooms/evolve.ts';
import { isSettingsEvent } from '../rooms/settings.ts';
import type { SettingsEvent } from '../rooms/settings.ts';
import type { LogRow, PersonRow } from '../store/event-store.ts';
import type { Aside } from './shelf.ts';
import type { HeldRoom } from './room-log.ts';
import { nextRow, personRow } from './room-log.ts';
import { hashToken } from './token.ts';

/** Who sends a command, as the edge knows them; `session` names one connection or page. */
export type Caller =
  | { readonly role: 'student'; readonly session: string; readonly tokenHash: string | null }
  | { readonly role: 'host' | 'desk'; readonly session: string };

/** A source of chance: bytes in lower-case hex, and integers from 0 to n - 1. */
export type Chance = { readonly hex: (bytes: number) => string; readonly below: (n: number) => number };

/** A command on its way. */
export type Errand = {
  readonly room: string;
  readonly caller: Caller;
  readonly command: Command;
  readonly stamp: Stamp;
  readonly reply: (reply: Reply) => void;
  /** It met a collision once. */
  retried: boolean;
};

/** What one room does in one commit. */
export type Batch = {
  readonly room: string;
  /** The room's turn before it. */
  readonly turn: number;
  readonly rows: readonly LogRow[];
  readonly people: readonly PersonRow[];
  /** What of it changes settings, and with the room's those of its class. */
  readonly settings: readonly SettingsEvent[];
  /** Students of whom something was written. */
  readonly students: ReadonlySet<string>;
  readonly decided: readonly { readonly errand: Errand; readonly decision: Decision }[];
  /** To be decided after this commit. */
  readonly left: readonly Errand[];
};

/**
 * Decides errands of one room one after the other, each upon what the one before it did, and folds what happens into `held`.
 * `fault` hears of a command that the rules stumbled over: it alone is refused.
 */
export function decideBatch(
  room: string,
  held: HeldRoom,
  aside: Aside,
  errands: readonly Errand[],
  chance: Chance,
  fault: (error: unknown) => void,
): Batch {
  const rows: LogRow[] = [];
  const people: PersonRow[] = [];
  const settings: SettingsEvent[] = [];
  const students = new Set<string>();
  const decided: { errand: Errand; decision: Decision }[] = [];
  const first = new Map<string, Decision>();
  const turn = held.state.turn;

  const happen = (decision: Allowed, stamp: Stamp): void => {
    for (const event of decision.events) {
      const { row, event: written } = nextRow(held, event, stamp);
      evolve(held.state, written, stamp);
      held.seq = row.seq;
      rows.push(row);
      if (row.student !== null) students.add(row.student);
      if (isSettingsEvent(written)) settings.push(written);
    }
    for (const person of decision.people ?? []) {
      putPerson(held.people, person);
      people.push(personRow(person));
    }
  };

  for (const [index, errand] of errands.entries()) {
    const key = memoryKey(errand);
    const known = key === null ? undefined : (first.get(key) ?? remembered(aside, key));
    const decision = known ?? decideSafely(held, aside, errand, chance, fault);
    decided.push({ errand, decision });
    if (known !== undefined || !decision.ok) continue;
    happen(decision, errand.stamp);
    if (key !== null) first.set(key, { ok: true, events: [], value: decision.value });
    // What comes after an erasure is decided upon the room without that student.
    if (erasedBy(decision) !== null) {
      return { room, turn, rows, people, settings, students, decided, left: errands.slice(index + 1) };
    }
  }
  return { room, turn, rows, people, settings, students, decided, left: [] };
}

/** Ids that our pages make are 32 hex digits. */
const UNGUESSABLE_LENGTH = 32;

/** Under what the reply to an errand is remembered; null for commands that carry their own memory: an answer has its counter. */
export function memoryKey({ caller, command: { type, id } }: Errand): string | null {
  if (type === 'WriteAnswer' || type === 'CannotHear') return null;
  // A phone without a token may come back on another connection before it hears that it has joined. An id that nobody can
  // guess is then enough to find its seat again.
  const anywhere = caller.role === 'student' && id.length >= UNGUESSABLE_LENGTH ? '' : caller.session;
  const sender = caller.role === 'student' ? (caller.tokenHash ?? anywhere) : caller.session;
  return `${caller.role} ${sender} ${id}`;
}

/** The student whom a decision erases. */
export function erasedBy({ effects }: Allowed): string | null {
  const effect = effects?.find(({ kind }) => kind === 'erase');
  return effect?.kind === 'erase' ? effect.student : null;
}

function remembered({ replies }: Aside, key: string): Decision | undefined {
  const reply = replies.get(key);
  return reply?.ok === true ? { ok: true, events: [], value: reply.value } : undefined;
}

function decideSafely(
  { state, people }: HeldRoom,
  { holder }: Aside,
  { caller, command, stamp }: Errand,
  chance: Chance,
  fault: (error: unknown) => void,
): Decision {
  const makesRound = command.type === 'StartRound' || command.type === 'StartGuitarRound';
  try {
    return decide(state, command, {
      sender: senderOf(caller, people),
      now: stamp,
      people,
      fresh: freshFor(caller, command, chance),
      seed: makesRound ? chance.below(2 ** 31) : 0,
      soundHolder: holder,
    });
  } catch (error) {
    fault(error);
    return refuse('not-saved');
  }
}

function senderOf(caller: Caller, people: People): Sender {
  switch (caller.role) {
    case 'desk':
      return { role: 'desk' };
    case 'host':
      return { role: 'host', page: caller.session };
    case 'student': {
      const { tokenHash } = caller;
      return { role: 'student', student: tokenHash === null ? null : (people.byToken.get(tokenHash) ?? null) };
    }
  }
}

/** A token that the phone brought and nobody has yet becomes its own, so that a join that is sent again finds the first. */
function freshFor(caller: Caller, command: Command, chance: Chance): Context['fresh'] {
  if (command.type !== 'Join' || caller.role !== 'student') return { student: '', tokenHash: '', token: null };
  const student = chance.hex(8);
  if (caller.tokenHash !== null) return { student, tokenHash: caller.tokenHash, token: null };
  const token = chance.hex(16);
  return { student, tokenHash: hashToken(token), token };
}

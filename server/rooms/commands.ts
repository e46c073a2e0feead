import type { Command, Reason, SoundOrder } from '../protocol/messages.ts';
import type { NewEvent, Stamp } from './events.ts';
import type { People, Person } from './people.ts';

export type CommandType = Command['type'];
export type CommandOf<Type extends CommandType> = Extract<Command, { type: Type }>;

/** Who sends a command, as the server knows them. */
export type Sender =
  /** `student` is null until the student has joined. */
  | { readonly role: 'student'; readonly student: string | null }
  /** `page` names one open host page. */
  | { readonly role: 'host'; readonly page: string }
  | { readonly role: 'desk' };

/** All that a decision needs beside the room: time, chance and what is not in the log come in here. */
export type Context = {
  readonly sender: Sender;
  readonly now: Stamp;
  readonly people: People;
  /** For a student who joins: an id, the hash of the token, and the token where the server made it. */
  readonly fresh: { readonly student: string; readonly tokenHash: string; readonly token: string | null };
  /** For a round to generate: a whole number. */
  readonly seed: number;
  /** Host page that holds the sound. */
  readonly soundHolder: string | null;
};

/** What shall happen outside the log once the events are stored. */
export type Effect =
  | { readonly kind: 'order'; readonly order: SoundOrder }
  | { readonly kind: 'hold-sound'; readonly page: string }
  | { readonly kind: 'erase'; readonly student: string };

export type Refusal = {
  readonly ok: false;
  readonly reason: Reason;
  readonly detail?: Readonly<Record<string, string | number>>;
};

export type Allowed = {
  readonly ok: true;
  readonly events: readonly NewEvent[];
  readonly people?: readonly Person[];
  readonly effects?: readonly Effect[];
  /** Goes to the sender with the acknowledgement. */
  readonly value?: unknown;
};

export type Decision = Allowed | Refusal;

/** Refuses, with what fills the blanks of the sentence. */
export function refuse(reason: Reason, detail?: Refusal['detail']): Refusal {
  return detail === undefined ? { ok: false, reason } : { ok: false, reason, detail };
}

/** Lets the events happen. */
export function happens(events: readonly NewEvent[], value?: unknown): Allowed {
  return value === undefined ? { ok: true, events } : { ok: true, events, value };
}

/** Answers a repeat: what it asks for has happened already. */
export function already(value?: unknown): Allowed {
  return happens([], value);
}

import { signal, type ReadonlySignal } from '@preact/signals';
import type { Command, Reply } from '../../server/protocol/messages.ts';
import { newId } from '../shared/ids.ts';
import type { Keep } from '../shared/storage.ts';

/** An answer on its way: kept here and in the phone's storage until the server says that it is on disk. */
export type Pending = {
  readonly id: string;
  readonly ask: string;
  readonly counter: number;
  readonly answer: unknown;
  /** Wall time of writing: used only after a reload, when the monotonic clock has begun anew. */
  readonly wall: number;
};

/** `outcome` of the last answer that was settled, by its ask. */
export type Outcome =
  | { readonly kind: 'in'; readonly ask: string; readonly answer: unknown }
  | {
      readonly kind: 'refused';
      readonly ask: string;
      readonly answer: unknown;
      readonly reason: string;
      readonly detail: Readonly<Record<string, string | number>>;
    };

export type Answering = {
  readonly pending: ReadonlySignal<Pending | null>;
  readonly outcome: ReadonlySignal<Outcome | null>;
  /** True from a sending that was not acknowledged until one is. */
  readonly slow: ReadonlySignal<boolean>;
  /** Keeps the answer (null takes it back) and sends it if the line is live. */
  readonly write: (ask: string, answer: unknown) => void;
  /** Sends what is kept, once; called whenever the line has come back. */
  readonly flush: () => void;
  /** The server's counter: the next answer counts on from the higher of both. */
  readonly countFrom: (counter: number) => void;
};

type Edges = {
  readonly send: (command: Command) => Promise<Reply | null>;
  readonly keep: Keep;
  readonly room: string;
  /** Monotonic milliseconds. */
  readonly now: () => number;
  /** Wall milliseconds. */
  readonly wall: () => number;
  readonly later: (act: () => void, ms: number) => void;
};

/** Refusals that pass: the same answer is offered again. */
const PASSING: readonly string[] = ['not-saved', 'too-many-messages'];
const AGAIN_MS = 1000;

/** Keeps one answer pending, sends it until it is acknowledged, never two at once. */
export function createAnswering({ send, keep, room, now, wall, later }: Edges): Answering {
  const place = `hearsay:${room}:pending`;
  const pending = signal<Pending | null>(readPending(keep.get(place)));
  const outcome = signal<Outcome | null>(null);
  const slow = signal(false);
  let counter = pending.peek()?.counter ?? 0;
  let underway = false;
  let waiting = false;
  // Known only for what was written since this page was loaded.
  let written: { readonly id: string; readonly at: number } | null = null;

  const heldMs = (answer: Pending): number =>
    Math.max(0, Math.round(written?.id === answer.id ? now() - written.at : wall() - answer.wall));

  const settle = (answer: Pending, result: Outcome): void => {
    outcome.value = result;
    if (pending.peek()?.id !== answer.id) return;
    pending.value = null;
    keep.remove(place);
  };

  const flush = (): void => {
    const answer = pending.peek();
    if (!answer || underway) return;
    underway = true;
    const { id, ask, counter } = answer;
    const command: Command = { type: 'WriteAnswer', id, ask, counter, answer: answer.answer, heldMs: heldMs(answer) };
    void send(command).then((reply) => {
      underway = false;
      slow.value = !reply?.ok;
      if (reply?.ok) settle(answer, { kind: 'in', ask, answer: answer.answer });
      else if (reply && !PASSING.includes(reply.reason)) {
        const { reason, detail = {} } = reply;
        settle(answer, { kind: 'refused', ask, answer: answer.answer, reason, detail });
      }
      const rest = pending.peek();
      if (!rest) return;
      // Written meanwhile: at once. The same one, unacknowledged: after a pause, with the same id.
      if (rest.id === answer.id) tryAgain();
      else flush();
    });
  };

  const tryAgain = (): void => {
    if (waiting) return;
    waiting = true;
    later(() => {
      waiting = false;
      flush();
    }, AGAIN_MS);
  };

  return {
    pending,
    outcome,
    slow,
    write: (ask, answer) => {
      counter += 1;
      const next: Pending = { id: newId(), ask, counter, answer, wall: wall() };
      written = { id: next.id, at: now() };
      pending.value = next;
      keep.set(place, JSON.stringify(next));
      flush();
    },
    flush,
    countFrom: (known) => {
      counter = Math.max(counter, known);
    },
  };
}

/** What an earlier visit left; null where there is nothing or nothing that can be read. */
function readPending(text: string | null): Pending | null {
  if (text === null) return null;
  try {
    const { id, ask, counter, answer = null, wall } = JSON.parse(text) as Partial<Pending>;
    const whole = typeof id === 'string' && typeof ask === 'string' && typeof counter === 'number';
    return whole && typeof wall === 'number' ? { id, ask, counter, answer, wall } : null;
  } catch {
    // Not ours or cut off: there is no answer to save in it.
    return null;
  }
}

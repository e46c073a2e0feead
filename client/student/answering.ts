import type { Command, Reply } from '../../server/protocol/messages.ts';
import { newId } from '../shared/ids.ts';
import { AGAIN_MS, passes } from '../shared/passing.ts';
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

/** What became of the last answer that was settled. */
export type Outcome = {
  readonly ask: string;
  readonly answer: unknown;
  /** null: it is in. */
  readonly refusal: { readonly reason: string; readonly detail: Readonly<Record<string, string | number>> } | null;
};

export type AnsweringState = {
  readonly pending: Pending | null;
  readonly outcome: Outcome | null;
  /** True from a sending that was not acknowledged until one is. */
  readonly slow: boolean;
};

export type Answering = {
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
  /** Hears each change. */
  readonly tell: (state: Partial<AnsweringState>) => void;
  /** Monotonic milliseconds. */
  readonly now: () => number;
  /** Wall milliseconds. */
  readonly wall: () => number;
  readonly later: (act: () => void, ms: number) => void;
};

/** Keeps one answer pending, sends it until it is acknowledged, never two at once. */
export function createAnswering({ send, keep, room, tell, now, wall, later }: Edges): Answering {
  const place = `hearsay:${room}:pending`;
  let pending = readPending(keep.get(place));
  let counter = pending?.counter ?? 0;
  let underway = false;
  let waiting = false;
  // Known only for what was written since this page was loaded.
  let written: { readonly id: string; readonly at: number } | null = null;
  if (pending) tell({ pending });

  const heldMs = (answer: Pending): number =>
    Math.max(0, Math.round(written?.id === answer.id ? now() - written.at : wall() - answer.wall));

  const countFrom = (known: number): void => {
    counter = Math.max(counter, known);
  };

  const settle = ({ id }: Pending, outcome: Outcome | null): void => {
    if (pending?.id === id) pending = null;
    // All tabs of a student share the place: what another one keeps there is not ours to remove.
    if (readPending(keep.get(place))?.id === id) keep.remove(place);
    tell({ pending, outcome });
  };

  const flush = (): void => {
    if (!pending || underway) return;
    underway = true;
    const sent = pending;
    const { id, ask, counter, answer } = sent;
    void send({ type: 'WriteAnswer', id, ask, counter, answer, heldMs: heldMs(sent) }).then((reply) => {
      underway = false;
      tell({ slow: !reply?.ok });
      if (reply?.ok) {
        const counts = (reply.value ?? {}) as Counts;
        countFrom(counts.counter ?? 0);
        settle(sent, inOf(sent, counts));
      } else if (reply && !passes(reply.reason)) {
        settle(sent, { ask, answer, refusal: { reason: reply.reason, detail: reply.detail ?? {} } });
      }
      // Written meanwhile: at once. The same one, unacknowledged: after a pause, with the same id.
      if (pending?.id === id) tryAgain();
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
    write: (ask, answer) => {
      counter += 1;
      pending = { id: newId(), ask, counter, answer, wall: wall() };
      written = { id: pending.id, at: now() };
      keep.set(place, JSON.stringify(pending));
      tell({ pending });
      flush();
    },
    flush,
    countFrom,
  };
}

/** What counts for a question, as the server says with its acknowledgement. */
type Counts = { readonly counter?: number; readonly answer?: unknown };

/** What is in after an acknowledgement: another tab may have written later, or under the same number before. null: not told. */
function inOf({ ask, counter, answer }: Pending, counts: Counts): Outcome | null {
  if (counts.answer !== undefined) return { ask, answer: counts.answer, refusal: null };
  return (counts.counter ?? 0) > counter ? null : { ask, answer, refusal: null };
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

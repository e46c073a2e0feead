import type { HostCommand, Reply } from '../../server/protocol/messages.ts';
import { newId } from '../shared/ids.ts';
import { AGAIN_MS, passes } from '../shared/passing.ts';

/** A command without the id that is made here. */
type Fact = HostCommand extends infer Each ? (Each extends { id: string } ? Omit<Each, 'id'> : never) : never;
type Told = { readonly command: HostCommand; readonly answered: (reply: Reply) => void };

/** Tells the room what sounded, in order, each once, and again until the room has answered for good. */
export type Facts = {
  /** `answered` hears what the room says to it, once. */
  readonly tell: (fact: Fact, answered?: (reply: Reply) => void) => void;
  /** The connection is back: what was not acknowledged goes again under its old id. */
  readonly resume: () => void;
};

export function createFacts(send: (command: HostCommand) => Promise<Reply | null>): Facts {
  const waiting: Told[] = [];
  let sending = false;
  let again: ReturnType<typeof setTimeout> | undefined;

  const flush = async (): Promise<void> => {
    if (sending) return;
    sending = true;
    clearTimeout(again);
    for (let next = waiting[0]; next; next = waiting[0]) {
      const reply = await send(next.command);
      if (reply === null || (!reply.ok && passes(reply.reason))) {
        again = setTimeout(() => void flush(), AGAIN_MS);
        break;
      }
      // Another refusal is an answer too: the room knows better (a round that is over, a sound taken over).
      waiting.shift();
      next.answered(reply);
    }
    sending = false;
  };

  return {
    tell: (fact, answered = () => undefined) => {
      waiting.push({ command: { ...fact, id: newId() }, answered });
      void flush();
    },
    resume: () => void flush(),
  };
}

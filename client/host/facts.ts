import type { HostCommand, Reply } from '../../server/protocol/messages.ts';
import { newId } from '../shared/ids.ts';

/** A command without the id that is made here. */
type Fact = HostCommand extends infer Each ? (Each extends { id: string } ? Omit<Each, 'id'> : never) : never;

/** Tells the room what sounded, in order, each once, and again after a lost connection. */
export type Facts = {
  readonly tell: (fact: Fact) => void;
  /** The connection is back: what was not acknowledged goes again under its old id. */
  readonly resume: () => void;
};

export function createFacts(send: (command: HostCommand) => Promise<Reply | null>): Facts {
  const waiting: HostCommand[] = [];
  let sending = false;

  const flush = async (): Promise<void> => {
    if (sending) return;
    sending = true;
    for (let next = waiting[0]; next; next = waiting[0]) {
      // A refusal is an answer too: the room knows better (a round that is over, a sound taken over).
      if ((await send(next)) === null) break;
      waiting.shift();
    }
    sending = false;
  };

  return {
    tell: (fact) => {
      waiting.push({ ...fact, id: newId() });
      void flush();
    },
    resume: () => void flush(),
  };
}

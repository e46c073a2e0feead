import type { Reply } from '../../server/protocol/messages.ts';
import { deskWords, refusals } from '../../server/protocol/words/en.ts';
import { fill } from '../../server/protocol/words/fill.ts';

/** What went wrong, as a sentence; no reply at all means that the server did not confirm in time. */
export function refusalSentence(reply: Reply | null): string {
  if (!reply) return deskWords.unconfirmed;
  return reply.ok ? '' : fill(refusals[reply.reason], reply.detail);
}

/** `one hand`, `two hands`: a count in words up to twelve where words read better than figures. */
export function counted(count: number, words: { readonly one: string; readonly many: string }): string {
  return fill(count === 1 ? words.one : words.many, { n: count });
}

import type { Reason } from '../../server/protocol/messages.ts';
import { refusals } from '../../server/protocol/words/refusals.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import { studentWords } from '../../server/protocol/words/student.ts';
import type { Refusal } from './student-state.ts';

/** The catalogue's sentence for a refusal; without any reply, what to do about the network. */
export function sentenceOf({ reason, detail }: Refusal): string {
  if (reason === 'no-network') return studentWords.nobodyThere;
  return fill(refusals[reason as Reason] ?? reason, detail);
}

import type { WireAsking } from '../../server/protocol/views.ts';
import { MOST_HOMES } from '../../shared-theory/questions/home/ask.ts';

/** How many chords a question offers as home: those of the loop where everyone knows how many, else as many as a pad has. */
export const homesAsked = ({ loop, chords = MOST_HOMES }: Pick<WireAsking, 'loop' | 'chords'>): number =>
  loop === 'one' ? 1 : loop === 'two' ? 2 : Math.min(MOST_HOMES, chords);

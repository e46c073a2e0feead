import type { WireAsking } from '../../server/protocol/views.ts';
import { MOST_HOMES } from '../../shared-theory/questions/home/ask.ts';

const OF_LOOP: Readonly<Record<string, number>> = { one: 1, two: 2 };

/** How many chords a question offers as home: those of the loop where everyone knows how many, else as many as a pad has. */
export function homesAsked({ loop, chords }: Pick<WireAsking, 'loop' | 'chords'>): number {
  return Math.min(MOST_HOMES, chords ?? OF_LOOP[loop ?? ''] ?? MOST_HOMES);
}

import type { WireStep } from '../../server/protocol/views.ts';
import { RHYTHM_KINDS, type Kind } from '../../shared-theory/questions/question.ts';

/** What a class does beside a round's questions, whenever the teacher likes. */
const DONE_TOGETHER = new Set<string>(['drop-out', 'together']);
/** Questions beside which taps on the numbers are a question of the round, and not only its warm-up. */
const OF_TAPPING = new Set<string>([...DONE_TOGETHER, 'tempo', 'steadiness']);

/**
 * Whether a question comes up by itself: where a groove has a tempo it can always be tapped along with, and a round that asks something
 * else about its groove does not begin with that each time.
 */
export function comesUp(steps: readonly WireStep[], { kind }: Pick<WireStep, 'kind'>): boolean {
  if (DONE_TOGETHER.has(kind)) return false;
  return kind !== 'tempo' || steps.every((step) => !RHYTHM_KINDS.has(step.kind as Kind) || OF_TAPPING.has(step.kind));
}

import { refuse } from '../commands.ts';
import type { HeardRound } from '../events.ts';
import type { RoomState, RoundRecord } from '../state.ts';
import { currentRound } from '../state.ts';

/** The round that a command names, where it is the one that runs. */
export function runningRound(state: RoomState, round: string): RoundRecord | ReturnType<typeof refuse> {
  const running = currentRound(state);
  if (running === null || state.status !== 'round') return refuse('no-round');
  return running.heard.id === round ? running : refuse('round-unknown');
}

/** Whether a round has that question, as the round is known by now. */
export function asksQuestion({ questions }: HeardRound, question: string): boolean {
  return questions.some(({ id }) => id === question);
}

import { refuse } from '../commands.ts';
import type { RoomState, RoundRecord } from '../state.ts';
import { currentRound } from '../state.ts';

/** The round that a command names, where it is the one that runs. */
export function runningRound(state: RoomState, round: string): RoundRecord | ReturnType<typeof refuse> {
  const running = currentRound(state);
  if (running === null || state.status !== 'round') return refuse('no-round');
  return running.heard.id === round ? running : refuse('round-unknown');
}

import { BEAT_LEVELS } from '../../shared-theory/beat-levels.ts';
import type { Refusal } from './commands.ts';
import { refuse } from './commands.ts';

/** Why a number is no beat level; null where it is one. */
export function beatLevelFault(found: number): Refusal | null {
  const numbers = BEAT_LEVELS.map(({ level }) => level);
  if (numbers.includes(found)) return null;
  return refuse('beat-level-unknown', { found, low: Math.min(...numbers), high: Math.max(...numbers) });
}

import { BEAT_LEVELS } from '../../shared-theory/beat-levels.ts';
import type { Kind } from '../../shared-theory/questions/question.ts';
import type { Refusal } from './commands.ts';
import { refuse } from './commands.ts';

/** Why a number is no beat level; null where it is one. */
export function beatLevelFault(found: number): Refusal | null {
  const numbers = BEAT_LEVELS.map(({ level }) => level);
  if (numbers.includes(found)) return null;
  return refuse('beat-level-unknown', { found, low: Math.min(...numbers), high: Math.max(...numbers) });
}

/** What a beat level asks, of whatever groove. */
export function beatKinds(beat: number): readonly Kind[] {
  return BEAT_LEVELS.find(({ level }) => level === beat)?.kinds ?? [];
}

/**
 * What a beat level asks of a groove of which `askable` can be asked: its own kinds, or where it has none of them those of the next lower
 * level that has some, or else of the next higher one.
 */
export function kindsOfBeat(beat: number, askable: ReadonlySet<Kind>): readonly Kind[] {
  const lower = BEAT_LEVELS.filter(({ level }) => level <= beat).toReversed();
  const higher = BEAT_LEVELS.filter(({ level }) => level > beat);
  const asked = [...lower, ...higher].map(({ kinds }) => kinds.filter((kind) => askable.has(kind)));
  return asked.find((kinds) => kinds.length > 0) ?? [];
}

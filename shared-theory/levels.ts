import { kindsToBeat } from './beat-levels.ts';
import type { Level } from './level.ts';
import { LONGER_LEVELS } from './levels/longer-levels.ts';
import { TWO_CHORD_LEVELS } from './levels/two-chord-levels.ts';
import { KINDS, TAPPED_KINDS, type Kind } from './questions/question.ts';

export { LEVELS_THAT_STAND, type Level } from './level.ts';

/** From telling one chord from two to naming the home of a loop that no key owns. */
export const LEVELS: readonly Level[] = [...TWO_CHORD_LEVELS, ...LONGER_LEVELS];

/** The level of that number. Throws `RangeError` naming the levels there are. */
export function levelOf(number: number): Level {
  const level = LEVELS.find((known) => known.level === number);
  if (!level) throw new RangeError(`There is no level ${number}: levels go from 1 to ${LEVELS.length}.`);
  return level;
}

/**
 * Every kind that a round of a level can ask, in the order of a round: its own, and how many chords there are. With a beat level, of
 * the groove what that and those below it ask as well, and what can be tapped to any groove. Throws `RangeError` for a level of either that
 * there is not.
 */
export function kindsOfLevel(number: number, beat?: number): readonly Kind[] {
  const { questions } = levelOf(number);
  const rhythm = beat === undefined ? [] : [...kindsToBeat(beat), ...TAPPED_KINDS];
  return KINDS.filter((kind) => kind === 'count' || questions.includes(kind) || rhythm.includes(kind));
}

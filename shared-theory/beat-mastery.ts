import { beatLevelOf } from './beat-levels.ts';
import type { MasteryEvidence } from './mastery.ts';
import type { Kind } from './questions/question.ts';

/** When what a beat level asks has been heard: so many of the last answers to its kinds are right. */
export type BeatRule = {
  readonly kinds: readonly Kind[];
  readonly right: number;
  readonly outOf: number;
  /** A filled grid counts as right from this credit on; default where it is exact. */
  readonly fromCredit?: number;
  /** Each of these was the right answer at least once: who always says one has heard nothing. */
  readonly sides?: readonly string[];
};

const FIVE_OF_SIX = { right: 5, outOf: 6 } as const;
/** One stroke of sixteen astray, no more: of eight slots every one is right. */
const NEARLY_ALL = 0.85;

/** When each beat level has been heard: five of six (starting values). */
export const BEAT_RULES: Readonly<Record<number, BeatRule>> = {
  1: { kinds: ['tempo', 'steadiness'], ...FIVE_OF_SIX },
  2: { kinds: ['bar-count'], ...FIVE_OF_SIX, sides: ['3', '4'] },
  3: { kinds: ['accents'], ...FIVE_OF_SIX, fromCredit: NEARLY_ALL },
  4: { kinds: ['roles', 'opened'], ...FIVE_OF_SIX, fromCredit: NEARLY_ALL },
  5: { kinds: ['drive', 'strokes', 'pendulum', 'stroke-grid'], ...FIVE_OF_SIX, fromCredit: NEARLY_ALL },
  6: { kinds: ['threes', 'half-time', 'swing'], ...FIVE_OF_SIX },
  7: { kinds: ['change-place', 'accents'], ...FIVE_OF_SIX, fromCredit: NEARLY_ALL },
  8: { kinds: ['accents', 'stroke-grid'], ...FIVE_OF_SIX, fromCredit: NEARLY_ALL },
};

/** Where a student stands on a beat level. `of` is how many of the last answers count, `needs` how many must be right of how many. */
export type BeatStanding = {
  readonly right: number;
  readonly of: number;
  readonly needs: readonly [number, number];
  readonly played: boolean;
  /** Heard, and played through live: hearing without the hand is not rhythm. */
  readonly met: boolean;
};

/**
 * Where a student stands on a beat level by marked answers, oldest first, and by whether the teacher has ticked a live play-through.
 * Only the last answers to its kinds count; who was not sure said nothing. Throws `RangeError` for a beat level that there is not.
 */
export function beatStanding(
  beat: number,
  evidence: readonly Pick<MasteryEvidence, 'kind' | 'right' | 'credit' | 'truth'>[],
  played: boolean,
): BeatStanding {
  const { level } = beatLevelOf(beat);
  const rule = BEAT_RULES[level];
  if (rule === undefined) throw new RangeError(`No rule says when beat level ${level} has been heard.`);
  const { kinds, outOf, fromCredit = 1, sides = [] } = rule;
  const last = evidence.filter(({ kind }) => kinds.includes(kind)).slice(-outOf);
  const right = last.filter((answer) => answer.right || answer.credit >= fromCredit).length;
  const bothSides = sides.every((side) => last.some(({ truth }) => truth === side));
  const met = played && last.length === outOf && right >= rule.right && bothSides;
  return { right, of: last.length, needs: [rule.right, outOf], played, met };
}

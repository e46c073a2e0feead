import { analyseTaps } from '../../taps/analyse.ts';
import { CLOSE, isWithin, levelAt, NEAR, tempoError, type TempoLevel } from '../../taps/level.ts';
import type { ErrorKind } from '../error-kinds.ts';
import { needed, notRight, RIGHT } from '../marks.ts';
import { grooveToTap, heardOfTaps, onTheBeat } from '../on-the-beat.ts';
import type { Judge, Mark } from '../question.ts';

/** Credit of taps that are no further away than twice what is exact. */
const NEAR_CREDIT = 0.6;

/** What taps at another level of the beat earn where they are exact, and what they show. */
const OTHER_LEVELS: Readonly<Record<Exclude<TempoLevel, 'same' | 'lawful' | 'other'>, readonly [number, ErrorKind]>> = {
  double: [0.7, 'taps-twice-as-fast'],
  half: [0.7, 'taps-half-as-fast'],
  'three-against-two': [0, 'taps-three-against-two'],
};

function markAt(tempo: number, truth: number, counts: readonly number[]): Mark {
  const { level, factor } = levelAt(tempo, truth, counts);
  if (level === 'other') return notRight(0, null);
  const away = tempoError(tempo, truth * factor);
  const close = isWithin(away, CLOSE);
  if (level === 'same' || level === 'lawful') {
    const mark = close ? RIGHT : notRight(isWithin(away, NEAR) ? NEAR_CREDIT : 0, null);
    return level === 'lawful' ? { ...mark, note: 'other-lawful-count' } : mark;
  }
  const [credit, error] = OTHER_LEVELS[level];
  return notRight(close ? credit : credit * NEAR_CREDIT, error);
}

/**
 * The tempo that sounds, by taps along with it: exact within 4 percent of it or of another lawful count, part within 8. Twice or half as
 * fast is the right pulse at another level, and earns most. How even the taps are is asked elsewhere.
 */
export const tempoJudge: Judge<'tempo'> = {
  kind: 'tempo',
  truth: ({ truth }) => {
    const groove = grooveToTap(truth);
    return groove && onTheBeat(groove.tempo);
  },
  mark: (taps, { truth, target }) => {
    const { tempo, counts } = needed(grooveToTap(truth), 'tempo', target);
    const read = analyseTaps(taps);
    return read === null ? notRight(0, null) : markAt(read.tempo, tempo, counts);
  },
  also: ({ truth }) => {
    const groove = grooveToTap(truth);
    if (groove === null) return [];
    return groove.counts.filter((factor) => factor !== 1).map((factor) => onTheBeat(groove.tempo * factor));
  },
  heard: heardOfTaps,
  // A window of 8 percent, somewhere in the two octaves and a half in which people tap by themselves.
  chance: () => 0.03,
};

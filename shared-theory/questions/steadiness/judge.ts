import { analyseTaps, type TapAnalysis } from '../../taps/analyse.ts';
import { EVEN } from '../../taps/even.ts';
import { rushesOrDrags } from '../../taps/holding.ts';
import { heldCredit, linear } from '../held-credit.ts';
import { firstShown, needed, notRight, RIGHT } from '../marks.ts';
import { grooveToTap, heardOfTaps, onTheBeat } from '../on-the-beat.ts';
import type { Judge, Mark } from '../question.ts';

/** Unevenness that is called by its name, and that earns nothing: common practice. */
const UNEVEN = 0.08;
const SCATTERED = 0.12;

function markOf({ unevenness, drift }: TapAnalysis): Mark {
  // A drift is told of where it is there beyond doubt alone: few taps could be anything.
  const change = drift === null ? null : rushesOrDrags(drift);
  const held = drift === null || change === null ? 1 : heldCredit(drift);
  const credit = Math.min(held, linear(unevenness, EVEN, SCATTERED));
  if (credit === 1) return RIGHT;
  // Who runs has uneven intervals by that alone: the way it goes is named first.
  const shown = firstShown([
    ['rushes', change === 'rushes'],
    ['drags', change === 'drags'],
    ['taps-unevenly', unevenness > UNEVEN],
  ]);
  return notRight(credit, shown);
}

/** How steadily somebody taps, at whatever tempo: by the unevenness of the intervals, and by the way that the tempo goes. */
export const steadinessJudge: Judge<'steadiness'> = {
  kind: 'steadiness',
  truth: ({ truth }) => {
    const groove = grooveToTap(truth);
    return groove && onTheBeat(groove.tempo);
  },
  mark: (taps, { truth, target }) => {
    needed(grooveToTap(truth), 'steadiness', target);
    const read = analyseTaps(taps);
    return read === null ? notRight(0, 'taps-unevenly') : markOf(read);
  },
  also: () => [],
  heard: heardOfTaps,
  // Nobody taps evenly by not listening to the own hand.
  chance: () => 0,
};

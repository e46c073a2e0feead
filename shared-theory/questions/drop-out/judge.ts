import { heldTempo, rushesOrDrags } from '../../taps/holding.ts';
import { heldCredit } from '../held-credit.ts';
import { firstShown, needed, notRight, RIGHT } from '../marks.ts';
import { grooveToTap, heardOfTaps, onTheBeat } from '../on-the-beat.ts';
import type { Judge } from '../question.ts';

/**
 * Whether the tempo is kept through a silence of two bars: by the last two bars that were tapped against the groove, at the level of the
 * beat at which the hand was. When the phone heard of the silence makes no difference.
 */
export const dropOutJudge: Judge<'drop-out'> = {
  kind: 'drop-out',
  truth: ({ truth }) => {
    const groove = grooveToTap(truth);
    return groove && { taps: onTheBeat(groove.tempo), silentFrom: null };
  },
  mark: ({ taps }, { truth, target }) => {
    const groove = needed(grooveToTap(truth), 'drop-out', target);
    const change = heldTempo(taps, groove);
    if (change === null) return notRight(0, null);
    const credit = heldCredit(change);
    if (credit === 1) return RIGHT;
    // Who was never with the groove did not run away from it.
    const told = change.level === 'other' ? null : rushesOrDrags(change);
    return notRight(
      credit,
      firstShown([
        ['rushes', told === 'rushes'],
        ['drags', told === 'drags'],
      ]),
    );
  },
  also: () => [],
  heard: ({ taps }, mark) => heardOfTaps(taps, mark),
  chance: () => 0,
};

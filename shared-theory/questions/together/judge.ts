import { heardOfTaps } from '../on-the-beat.ts';
import type { Judge } from '../question.ts';

/** Clapping along with the room has no right answer: how far it lies apart is shown, and nobody is marked. */
export const togetherJudge: Judge<'together'> = {
  kind: 'together',
  truth: () => null,
  mark: () => {
    throw new RangeError('How a room claps together is collected and never marked: show the spread of all instead.');
  },
  also: () => [],
  heard: heardOfTaps,
  chance: () => 0,
};

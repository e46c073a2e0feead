import { ofRhythm, pairJudge } from '../pair-judge.ts';

/** Whether the bar is felt in full time or in half time. */
export const halfTimeJudge = pairJudge(
  'half-time',
  ofRhythm(({ halfTime }) => halfTime),
  () => 'swaps-full-and-half-time',
);

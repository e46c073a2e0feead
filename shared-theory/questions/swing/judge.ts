import { ofRhythm, pairJudge } from '../pair-judge.ts';

/** Straight or swung. */
export const swingJudge = pairJudge(
  'swing',
  ofRhythm(({ swing }) => swing),
  () => 'swaps-straight-and-swung',
);

import { ofRhythm, pairJudge } from '../pair-judge.ts';

/** Driving or relaxed. */
export const driveJudge = pairJudge(
  'drive',
  ofRhythm(({ drive }) => drive),
  () => 'swaps-driving-and-relaxed',
);

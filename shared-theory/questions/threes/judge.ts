import { ofRhythm, pairJudge } from '../pair-judge.ts';

/** Two threes or three twos in six equal slots. */
export const threesJudge = pairJudge(
  'threes',
  ofRhythm(({ threes }) => threes),
  () => 'swaps-threes-and-twos',
);

import { ofRhythm, pairJudge } from '../pair-judge.ts';

/** Where the next chord comes in. */
export const changePlaceJudge = pairJudge(
  'change-place',
  ofRhythm(({ changePlace }) => changePlace),
  (right) => (right === 'pushed' ? 'puts-the-change-on-one' : 'hears-a-push-where-there-is-none'),
);

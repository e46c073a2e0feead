import { pairJudge } from '../pair-judge.ts';

/** Whether the strokes that sound are all downs or go down and up. */
export const strokesJudge = pairJudge(
  'strokes',
  ({ strokes }) => strokes,
  (right) => (right === 'all-downs' ? 'hears-down-up-where-all-are-down' : 'hears-all-downs-where-they-alternate'),
);

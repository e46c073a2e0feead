import type { Judge } from '../question.ts';

/** Where a loop would stop is an opinion: no answer is right, and none is marked. */
export const homeJudge: Judge<'home'> = {
  kind: 'home',
  truth: () => null,
  mark: () => {
    throw new RangeError('Where a loop would stop is collected and never marked: show both crowds instead.');
  },
  also: () => [],
  heard: (answer) => String(answer),
  chance: () => 0,
};

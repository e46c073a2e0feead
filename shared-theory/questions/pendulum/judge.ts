import { ofRhythm, pairJudge } from '../pair-judge.ts';

/** Whether a hand that never stops, down on the numbers and up between, could play it. */
export const pendulumJudge = pairJudge(
  'pendulum',
  ofRhythm(({ pendulum }) => pendulum),
  (right) => (right === 'keeps' ? 'stops-the-pendulum' : 'keeps-the-pendulum-where-it-breaks'),
);

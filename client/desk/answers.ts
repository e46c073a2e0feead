/** What the round shows of answers: while they come, and once they are in. */
export { ClassTaps } from './screens/class-taps.tsx';
export { FallenAnswers } from './screens/fallen-answers.tsx';

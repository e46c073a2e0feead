import { countReadings } from './both/count.ts';
import { orderReadings } from './both/order.ts';
import { keysReadings, settlerReadings } from './both/keys.ts';
import { directionReadings, distanceReadings } from './both/moves.ts';
import { numeralReadings } from './both/numeral.ts';
import { bassReadings, qualityReadings, rootReadings, seventhReadings } from './both/one-chord.ts';
import type { BothReadings } from './both/readings.ts';
import { asks } from './questions/asks.ts';
import { partsOf } from './questions/keys/ask.ts';
import { judgeOf } from './questions/judges.ts';
import type { Answer, AnswerOf, AskedOf, Kind, Target } from './questions/question.ts';
import type { VoicedVamp } from './vamps.ts';

export type { BothReadings } from './both/readings.ts';

type Make<Given> = (vamp: VoicedVamp, answer: Given, asked: AskedOf) => BothReadings | null;

/** Readings of the wrong answers to a kind of question; null for a right answer and for none. */
function ofWrong<K extends Kind>(kind: K, make: Make<AnswerOf<K>>): Make<Answer> {
  return (vamp, given, asked) => {
    const judge = judgeOf(kind);
    const answer = asks[kind].read(given, asked.settings);
    const truth = judge.truth(asked);
    if (answer === null || truth === null) return null;
    const right = [truth, ...judge.also(asked)].map((each) => judge.heard(each));
    return right.includes(judge.heard(answer)) ? null : make(vamp, answer, asked);
  };
}

const NONE: Make<Answer> = () => null;

const READINGS: Readonly<Record<Kind, Make<Answer>>> = {
  // Both readings keep one groove.
  tempo: NONE,
  steadiness: NONE,
  'drop-out': NONE,
  together: NONE,
  'bar-count': NONE,
  threes: NONE,
  'half-time': NONE,
  swing: NONE,
  drive: NONE,
  strokes: NONE,
  pendulum: NONE,
  'change-place': NONE,
  accents: NONE,
  'stroke-grid': NONE,
  roles: NONE,
  opened: NONE,
  // Whether one key owns the loop is no sound of its own.
  'one-or-several': NONE,
  // Where a loop would stop is no error.
  home: NONE,
  count: ofWrong('count', (vamp, answer, { settings }) => countReadings(vamp, answer, settings)),
  order: ofWrong('order', (vamp, answer, { settings }) => orderReadings(vamp, answer, settings)),
  direction: ofWrong('direction', (vamp, answer, { target }) => directionReadings(vamp, target, answer)),
  bass: ofWrong('bass', (vamp, answer, { target }) => bassReadings(vamp, target, answer)),
  quality: ofWrong('quality', (vamp, answer, { target }) => qualityReadings(vamp, target, answer)),
  root: ofWrong('root', (vamp, answer, { target }) => rootReadings(vamp, target, answer)),
  seventh: ofWrong('seventh', (vamp, answer, { target }) => seventhReadings(vamp, target, answer)),
  distance: ofWrong('distance', (vamp, answer, { target }) => distanceReadings(vamp, target, answer)),
  numeral: ofWrong('numeral', numeralReadings),
  // A home is no chord that could be added.
  keys: ofWrong('keys', (vamp, answer) => keysReadings(vamp, [...partsOf(answer).keys])),
  settler: ofWrong('settler', (vamp, answer, { truth, target }) => settlerReadings(vamp, truth, target, answer)),
};

/**
 * A wrong answer to a question as it would sound, and what sounds, each a short loop in the vamp's groove. Null where the
 * answer is right or none of the question's, where nothing playable sounds as it says, or where its kind has no reading.
 */
export function playBoth(
  vamp: VoicedVamp,
  { kind, target }: { readonly kind: Kind; readonly target: Target },
  wrong: Answer,
  context: Omit<AskedOf, 'target'>,
): BothReadings | null {
  return READINGS[kind](vamp, wrong, { ...context, target });
}

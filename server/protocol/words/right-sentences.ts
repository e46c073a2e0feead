import type { RoomSettings } from '../messages.ts';
import { capital, listed, numberWord } from './counting.ts';
import { fill } from './fill.ts';
import { rightWords as right } from './right-words.ts';

type Policy = RoomSettings['policy'];

const NONE: Readonly<Record<Policy, string>> = {
  majors: right.keysNoneMajors,
  relatives: right.keysNoneRelatives,
  'raised-seventh': right.keysNoneRaised,
  modes: right.scalesNone,
};

/**
 * The right answer of a keys question: `Two keys own D and G.`; under `modes` `count` is that of the parent scales. `chords` as the
 * printer writes them.
 */
export function keysSentence(policy: Policy, count: number, chords: readonly string[]): string {
  const [one, some] = policy === 'modes' ? [right.scalesOne, right.scalesSome] : [right.keysOne, right.keysSome];
  const sentence = count === 0 ? NONE[policy] : count === 1 ? one : some;
  return fill(sentence, { Number: capital(numberWord(count)), chords: listed(chords) });
}

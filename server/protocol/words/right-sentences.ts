import { fill } from './fill.ts';
import { capital, listed, numberWord } from './questions.ts';
import { rightWords } from './right-words.ts';

/** The right answer of a keys question: `Two keys own D and G.`; `chords` as the printer writes them. */
export function keysSentence(policy: 'majors' | 'relatives', count: number, chords: readonly string[]): string {
  const right = rightWords;
  const none = policy === 'majors' ? right.keysNoneMajors : right.keysNoneRelatives;
  const sentence = count === 0 ? none : count === 1 ? right.keysOne : right.keysSome;
  return fill(sentence, { Number: capital(numberWord(count)), chords: listed(chords) });
}

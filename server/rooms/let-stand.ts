import { answerKey } from '../../shared-theory/questions/asks.ts';
import { judgeOf } from '../../shared-theory/questions/judges.ts';
import type { Kind } from '../../shared-theory/questions/question.ts';
import type { RoundQuestion } from '../../shared-theory/questions/round-questions.ts';
import { bassPitchClass, chordSuffix, readSymbol } from '../../shared-theory/chords.ts';
import { pitchClass } from '../../shared-theory/pitch.ts';
import type { HeardRound } from './events.ts';
import type { RoomState } from './state.ts';

const NONE: ReadonlySet<string> = new Set();

/**
 * The answers to a question, by their key, that the teacher let stand: in this round, whatever it is corrected to, and in others of
 * the room where the same chords sound in the same order and the same is right as when he said so.
 */
export function letStandOn(state: RoomState, heard: HeardRound, question: RoundQuestion): ReadonlySet<string> {
  const said = state.letStand.filter((each) => each.question === question.id);
  if (said.length === 0) return NONE;
  const here = likeness(heard, question);
  const keys = new Set<string>();
  for (const { heard: then, answer, stands } of said) {
    if (then.id !== heard.id && likeness(then, question) !== here) continue;
    const key = answerKey<Kind>(question.kind, answer);
    if (stands) keys.add(key);
    else keys.delete(key);
  }
  return keys;
}

/** One text for all rounds in which a question is the same question. */
function likeness({ truth, settings }: HeardRound, { kind, target }: RoundQuestion): string {
  const right = judgeOf<Kind>(kind).truth({ truth, settings, target });
  const chords = truth.chords
    .map(readSymbol)
    .map((chord) => `${pitchClass(chord.root)}${chordSuffix(chord)} ${bassPitchClass(chord)}`);
  return `${chords.join(', ')}: ${right === null ? '' : answerKey<Kind>(kind, right)}`;
}

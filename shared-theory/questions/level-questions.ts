import { parseKeyName } from '../keys.ts';
import { modulo, pitchClass } from '../pitch.ts';
import type { Truth } from '../truth.ts';
import { askableQuestions } from './judges.ts';
import type { Kind, QuestionSettings, Target } from './question.ts';
import type { RoundQuestion } from './round-questions.ts';

/** Third chords of a level's round: one to each side, or one that settles nothing and one that does. */
const CHORDS = 2;
/** Semitones of a fifth. */
const FIFTH = 7;

/** The questions of a round made for a level: those of its kinds, of settlers no more than `levelSettlers`. */
export function levelQuestions(
  truth: Truth,
  settings: QuestionSettings,
  kinds: readonly Kind[],
): readonly RoundQuestion[] {
  const settlers = levelSettlers(truth);
  return askableQuestions(truth, settings).filter(
    ({ kind, target }) => kinds.includes(kind) && (kind !== 'settler' || settlers.includes(target)),
  );
}

/**
 * The settlers that a level's round asks about, three at most, by their places: two third chords, the one that settles nothing among
 * them where there is one, then one sung note. Which of the notes it is hangs on the loop's keys and not on the chords before it, so
 * that no place tells which side stays.
 */
export function levelSettlers({ settlers, keys: { majors } }: Truth): readonly Target[] {
  const places = settlers.map((_, place) => place);
  const chords = places.filter((place) => settlers[place]?.note === null);
  const notes = places.filter((place) => settlers[place]?.note !== null);
  const idle = chords.filter((place) => settlers[place]?.keys.majors.length === majors.length);
  const settling = chords.filter((place) => !idle.includes(place));
  const asked = [...idle, ...settling].slice(0, CHORDS).toSorted((one, other) => one - other);
  const [first] = majors;
  const onCircle = first === undefined ? 0 : modulo(pitchClass(parseKeyName(first).tonic) * FIFTH, 12);
  return [...asked, ...notes.slice(onCircle % Math.max(1, notes.length)).slice(0, 1)];
}

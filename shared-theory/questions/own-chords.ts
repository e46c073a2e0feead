import type { Chord } from '../chords.ts';
import { readSymbol, soundsAs } from '../chords.ts';
import { usualKey } from '../keys.ts';
import type { PitchClass } from '../pitch.ts';
import { modulo } from '../pitch.ts';
import type { Truth } from '../truth.ts';
import { ownAnswer } from './marks.ts';
import type { Kind, MarkingContext, QuestionId } from './question.ts';
import type { RoundQuestion } from './round-questions.ts';

/** The chords of a loop, by slot. */
export function chordsOf({ chords }: Pick<Truth, 'chords'>): readonly Chord[] {
  return chords.map(readSymbol);
}

/** The slots where a chord sounds for the first time. */
export function firstSlots(chords: readonly Chord[]): readonly number[] {
  return chords.flatMap((chord, slot) => (chords.findIndex((other) => soundsAs(chord, other)) === slot ? [slot] : []));
}

/**
 * The different chords of the loop as the student's own answers have them, from a root for the first: its quality, and distance
 * and quality of each further one. Null where one of those answers is missing.
 */
export function ownChords(context: MarkingContext, home: PitchClass): readonly Chord[] | null {
  const chords = firstSlots(chordsOf(context.truth)).map((slot): Chord | null => {
    const quality = ownAnswer(context, 'quality', slot);
    const distance = slot === 0 ? 0 : ownAnswer(context, 'distance', slot);
    if (quality === null || distance === null) return null;
    return { root: usualKey(`${modulo(home + distance, 12)}M`).tonic, quality };
  });
  const known = chords.filter((chord) => chord !== null);
  return known.length === chords.length && known.length > 0 ? known : null;
}

/** The questions of a round that are of one of the kinds. */
export function questionsOfKinds(questions: readonly RoundQuestion[], kinds: readonly Kind[]): readonly QuestionId[] {
  return questions.filter(({ kind }) => kinds.includes(kind)).map(({ id }) => id);
}

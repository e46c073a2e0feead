import type { Chord, Quality } from '../chords.ts';
import { bassPitchClass, qualityAdditions, readSymbol } from '../chords.ts';
import { differentSlots } from '../different-chords.ts';
import { usualKey } from '../keys.ts';
import type { PitchClass } from '../pitch.ts';
import { modulo, pitchClass } from '../pitch.ts';
import { seventhOf } from '../truth.ts';
import type { Truth } from '../truth.ts';
import { ownAnswer } from './marks.ts';
import type { AskedSeventh, Kind, MarkingContext, QuestionId } from './question.ts';
import type { RoundQuestion } from './round-questions.ts';

/** The chords of a loop, by slot. */
export function chordsOf({ chords }: Pick<Truth, 'chords'>): readonly Chord[] {
  return chords.map(readSymbol);
}

/**
 * The different chords of the loop as the student's own answers have them, from a root for the first: its quality, and distance
 * and quality of each further one. Null where one of those answers is missing. A seventh that the student was not asked about is
 * the one that sounded, as far as the quality can have it, and a slash bass is as far from the root as it sounded.
 */
export function ownChords(context: MarkingContext, home: PitchClass): readonly Chord[] | null {
  const all = chordsOf(context.truth);
  const chords = differentSlots(all).map((slot): Chord | null => {
    const quality = ownAnswer(context, 'quality', slot);
    const distance = slot === 0 ? 0 : ownAnswer(context, 'distance', slot);
    if (quality === null || distance === null) return null;
    const root = modulo(home + distance, 12);
    const sounded = all[slot];
    return {
      root: nameOf(root),
      quality,
      ...additionOf(quality, sounded, ownAnswer(context, 'seventh', slot)),
      ...bassOver(root, sounded),
    };
  });
  const known = chords.filter((chord) => chord !== null);
  return known.length === chords.length && known.length > 0 ? known : null;
}

function nameOf(sound: PitchClass): string {
  return usualKey(`${sound}M`).tonic;
}

function additionOf(
  quality: Quality,
  sounded: Chord | undefined,
  seventh: AskedSeventh | null,
): Pick<Chord, 'addition'> {
  const heard = sounded?.addition;
  // Sixths and ninths are not asked about: who says that there is no seventh says nothing of them.
  const isSeventh = sounded !== undefined && seventhOf(sounded) !== 'none';
  const addition = seventh === null || (seventh === 'none' && !isSeventh) ? heard : seventh;
  if (addition === undefined || addition === 'none' || !qualityAdditions(quality).includes(addition)) return {};
  return { addition };
}

function bassOver(root: PitchClass, sounded: Chord | undefined): Pick<Chord, 'bass'> {
  if (sounded?.bass === undefined) return {};
  return { bass: nameOf(modulo(root + bassPitchClass(sounded) - pitchClass(sounded.root), 12)) };
}

/** The questions of a round that are of one of the kinds. */
export function questionsOfKinds(questions: readonly RoundQuestion[], kinds: readonly Kind[]): readonly QuestionId[] {
  return questions.filter(({ kind }) => kinds.includes(kind)).map(({ id }) => id);
}

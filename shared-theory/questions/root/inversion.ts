import type { Chord } from '../../chords.ts';
import { pitchClass } from '../../pitch.ts';
import { ownAnswer } from '../marks.ts';
import { chordsOf } from '../own-chords.ts';
import type { MarkingContext } from '../question.ts';
import { inversionsOfSound } from '../same-sound.ts';
import { pitchClassAt } from './places.ts';

/** The chord of which the one asked about is an inversion by the student's own root: of C6, from A, Am7; null where it is none. */
export function inversionOnOwnRoot(context: MarkingContext): Chord | null {
  const written = chordsOf(context.truth)[context.target];
  const place = ownAnswer(context, 'root', context.target);
  if (written === undefined || place === null) return null;
  const sound = pitchClassAt(place);
  return inversionsOfSound(written).find(({ root }) => pitchClass(root) === sound) ?? null;
}

import { soundsAs, soundsAsOverBass } from '../chords.ts';
import type { Chord } from '../chords.ts';
import type { Truth } from '../truth.ts';
import { chordsOf } from './own-chords.ts';
import type { QuestionSettings } from './question.ts';

/**
 * By slot, the index of its chord among the different ones in order of their first sounding. A chord over another bass is the same
 * one, unless the class counts it as another.
 */
export function chordIndices(
  truth: Pick<Truth, 'chords'>,
  { slashIsNew = false }: QuestionSettings,
): readonly number[] {
  const isSame = slashIsNew ? soundsAsOverBass : soundsAs;
  const different: Chord[] = [];
  return chordsOf(truth).map((chord) => {
    const known = different.findIndex((other) => isSame(chord, other));
    return known >= 0 ? known : different.push(chord) - 1;
  });
}

import type { Quality } from '../chords.ts';
import { pitchClass } from '../pitch.ts';
import type { Truth } from '../truth.ts';
import type { RoundQuestion } from './round-questions.ts';

/**
 * What a mark may read beside the right answer to its own question. What may not be told, or is not known, is missing: then
 * the mark is the one that what has been shown gives by itself.
 */
export type Beside = {
  /** By slot; null where it may not be told. */
  readonly qualities: readonly (Quality | null)[];
  /** MIDI note of each slot's bass; empty where it may not be told. */
  readonly bass: readonly number[];
  /** MIDI note of each slot's highest string; empty where it is not known or may not be told. */
  readonly top: readonly number[];
  /** Beats a minute; null where nobody named one, where it was changed while the round ran, or may not be told. */
  readonly tempo: number | null;
};

/** All that sounded, for the teacher. `steady` is false once the tempo was changed: then no answer is blamed on it. */
export function besideAll({ qualities, bass, top, tempo }: Truth, steady = true): Beside {
  return { qualities, bass, top, tempo: steady ? tempo : null };
}

/**
 * What a student may be told beside the answer: the qualities of the chords that have been shown, by their own question or with
 * the keys, which are shown with all the chords they own. No question shows tempo, register or top note.
 */
export function besideShown(truth: Truth, shown: readonly Pick<RoundQuestion, 'kind' | 'target'>[]): Beside {
  const chord = (slot: number) => `${pitchClass(truth.roots[slot] ?? 'C')} ${truth.qualities[slot]}`;
  const all = shown.some(({ kind }) => kind === 'keys');
  const told = new Set(shown.flatMap(({ kind, target }) => (kind === 'quality' ? [chord(target)] : [])));
  const qualities = truth.qualities.map((quality, slot) => (all || told.has(chord(slot)) ? quality : null));
  return { qualities, bass: [], top: [], tempo: null };
}

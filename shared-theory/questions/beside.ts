import { bassPitchClass, chordSuffix } from '../chords.ts';
import type { Chord, Quality } from '../chords.ts';
import { chordIndices, differentChords } from '../different-chords.ts';
import { pitchClass } from '../pitch.ts';
import type { PitchClass } from '../pitch.ts';
import type { Policy, Seventh, Truth } from '../truth.ts';
import { placeOnLine } from './distance/place.ts';
import { chordsOf } from './own-chords.ts';
import type { Kind } from './question.ts';
import type { RoundQuestion } from './round-questions.ts';

/**
 * What a mark may read beside the right answer to its own question. What may not be told, or is not known, is missing: then
 * the mark is the one that what has been shown gives by itself.
 */
export type Beside = {
  /** By slot; null where it may not be told. */
  readonly qualities: readonly (Quality | null)[];
  /** By slot; null where it may not be told. */
  readonly roots: readonly (PitchClass | null)[];
  /** By slot; null where it may not be told. */
  readonly sevenths: readonly (Seventh | null)[];
  /** Pitch class of each slot's lowest note; null where it may not be told. */
  readonly basses: readonly (PitchClass | null)[];
  /** Semitones from home on the distance line, by slot; null at home, where the line has no place and where it may not be told. */
  readonly distances: readonly (number | null)[];
  /** MIDI note of each slot's bass; empty where it may not be told. */
  readonly bass: readonly number[];
  /** MIDI note of each slot's highest string; empty where it is not known or may not be told. */
  readonly top: readonly number[];
  /** How many chords the loop has, each counted as often as it comes; null where it may not be told. */
  readonly slots: number | null;
  /** The different chords in order of their first sounding; empty where they may not be told. */
  readonly chords: readonly Chord[];
  /**
   * Whether one chord sounds in two ways: over two basses by turns, or coming back with another bass or another note on top. False
   * where it may not be told.
   */
  readonly sameChordVaries: boolean;
  /** Keys that own the loop, by name; empty where they may not be told. */
  readonly keys: Readonly<Record<Policy, readonly string[]>>;
  /** Whether the loop had come home before the question was opened; null where nobody knows, or it may not be told. */
  readonly returned: boolean | null;
  /** Beats a minute; null where nobody named one, where it was changed while the round ran, or may not be told. */
  readonly tempo: number | null;
};

const NO_KEYS: Beside['keys'] = { majors: [], relatives: [], 'raised-seventh': [], modes: [] };

/** How a round went, as far as marks depend on it. */
export type RoundFacts = {
  /** False once the tempo was changed: then no answer is blamed on it. */
  readonly steady?: boolean;
  readonly returned?: boolean | null;
};

/** All that sounded, for the teacher. */
export function besideAll(truth: Truth, { steady = true, returned = null }: RoundFacts = {}): Beside {
  const { qualities, sevenths, bass, top, tempo } = truth;
  return {
    qualities,
    roots: truth.roots.map(pitchClass),
    sevenths,
    basses: chordsOf(truth).map(bassPitchClass),
    distances: truth.roots.map((_, slot) => placeOnLine(truth, slot)),
    bass,
    top,
    slots: truth.roots.length,
    chords: differentChords(chordsOf(truth)),
    sameChordVaries: sameChordVaries(truth),
    keys: truth.keys,
    returned,
    tempo: steady ? tempo : null,
  };
}

function sameChordVaries(truth: Truth): boolean {
  const { bass, top, bassAlternates = false } = truth;
  const indices = chordIndices(chordsOf(truth));
  return (
    bassAlternates ||
    indices.some((index, slot) => {
      const first = indices.indexOf(index);
      return bass[slot] !== bass[first] || top[slot] !== top[first];
    })
  );
}

/**
 * What a student may be told beside the answer: what of the chords has been shown, root, quality, seventh and bass each by its own
 * question or all with the keys, which are shown with all the chords they own; the distances that have been shown. No question shows
 * tempo, register or top note.
 */
export function besideShown(truth: Truth, shown: readonly Pick<RoundQuestion, 'kind' | 'target'>[]): Beside {
  const chords = chordsOf(truth);
  const names = chords.map((chord) => `${pitchClass(chord.root)} ${chordSuffix(chord)}`);
  const namesOverBass = names.map((name, slot) => {
    const chord = chords[slot];
    return `${name}/${chord === undefined ? '' : bassPitchClass(chord)}`;
  });
  const all = shown.some(({ kind }) => kind === 'keys');
  const told = (asked: Kind) => new Set(shown.flatMap(({ kind, target }) => (kind === asked ? [target] : [])));
  const toldBy = (asked: Kind, by: readonly string[]) => {
    const slots = told(asked);
    const heard = new Set(by.filter((_, slot) => slots.has(slot)));
    return (slot: number) => all || heard.has(by[slot] ?? '');
  };
  const [hasQuality, hasRoot, hasSeventh] = [toldBy('quality', names), toldBy('root', names), toldBy('seventh', names)];
  const hasBass = toldBy('bass', namesOverBass);
  const distances = told('distance');
  return {
    qualities: truth.qualities.map((quality, slot) => (hasQuality(slot) ? quality : null)),
    roots: truth.roots.map((root, slot) => (hasRoot(slot) ? pitchClass(root) : null)),
    sevenths: truth.sevenths.map((seventh, slot) => (hasSeventh(slot) ? seventh : null)),
    basses: chords.map((chord, slot) => (hasBass(slot) ? bassPitchClass(chord) : null)),
    distances: truth.roots.map((_, slot) => (distances.has(slot) ? placeOnLine(truth, slot) : null)),
    bass: [],
    top: [],
    slots: null,
    chords: all ? differentChords(chords) : [],
    sameChordVaries: false,
    keys: all ? truth.keys : NO_KEYS,
    returned: null,
    tempo: null,
  };
}

import { soundsAs } from '../chords.ts';
import type { Chord, Quality } from '../chords.ts';
import { pitchClass } from '../pitch.ts';
import type { PitchClass } from '../pitch.ts';
import type { Truth } from '../truth.ts';
import { placeOnLine } from './distance/place.ts';
import { chordsOf, firstSlots } from './own-chords.ts';
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
  /** Majors that own the loop, by name; empty where they may not be told. */
  readonly owners: readonly string[];
  /** Whether the loop had come home before the question was opened; null where nobody knows, or it may not be told. */
  readonly returned: boolean | null;
  /** Beats a minute; null where nobody named one, where it was changed while the round ran, or may not be told. */
  readonly tempo: number | null;
};

/** How a round went, as far as marks depend on it. */
export type RoundFacts = {
  /** False once the tempo was changed: then no answer is blamed on it. */
  readonly steady?: boolean;
  readonly returned?: boolean | null;
};

/** All that sounded, for the teacher. */
export function besideAll(truth: Truth, { steady = true, returned = null }: RoundFacts = {}): Beside {
  const { qualities, bass, top, tempo } = truth;
  return {
    qualities,
    roots: truth.roots.map(pitchClass),
    distances: truth.roots.map((_, slot) => placeOnLine(truth, slot)),
    bass,
    top,
    slots: truth.roots.length,
    chords: differentChords(truth),
    sameChordVaries: sameChordVaries(truth),
    owners: truth.keys.majors,
    returned,
    tempo: steady ? tempo : null,
  };
}

function differentChords(truth: Truth): readonly Chord[] {
  const chords = chordsOf(truth);
  return firstSlots(chords).flatMap((slot) => chords[slot] ?? []);
}

function sameChordVaries(truth: Truth): boolean {
  const { bass, top, bassAlternates = false } = truth;
  const chords = chordsOf(truth);
  const first = (chord: Chord) => chords.findIndex((other) => soundsAs(chord, other));
  return (
    bassAlternates || chords.some((chord, slot) => bass[slot] !== bass[first(chord)] || top[slot] !== top[first(chord)])
  );
}

/**
 * What a student may be told beside the answer: the roots and qualities of the chords that have been shown, by their own
 * questions or with the keys, which are shown with all the chords they own; the distances that have been shown. No question shows
 * tempo, register or top note.
 */
export function besideShown(truth: Truth, shown: readonly Pick<RoundQuestion, 'kind' | 'target'>[]): Beside {
  const chord = (slot: number) => `${pitchClass(truth.roots[slot] ?? 'C')} ${truth.qualities[slot]}`;
  const all = shown.some(({ kind }) => kind === 'keys');
  const told = (asked: Kind) => new Set(shown.flatMap(({ kind, target }) => (kind === asked ? [target] : [])));
  const ofChord = (asked: Kind) => {
    const chords = new Set([...told(asked)].map(chord));
    return (slot: number) => all || chords.has(chord(slot));
  };
  const [hasQuality, hasRoot, distances] = [ofChord('quality'), ofChord('root'), told('distance')];
  return {
    qualities: truth.qualities.map((quality, slot) => (hasQuality(slot) ? quality : null)),
    roots: truth.roots.map((root, slot) => (hasRoot(slot) ? pitchClass(root) : null)),
    distances: truth.roots.map((_, slot) => (distances.has(slot) ? placeOnLine(truth, slot) : null)),
    bass: [],
    top: [],
    slots: null,
    chords: all ? differentChords(truth) : [],
    sameChordVaries: false,
    owners: all ? truth.keys.majors : [],
    returned: null,
    tempo: null,
  };
}

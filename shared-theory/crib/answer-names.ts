import type { Chord } from '../chords.ts';
import { chordNotes, chordSymbol } from '../chords.ts';
import type { CandidateKey } from '../candidates.ts';
import type { Distance } from '../distance-line.ts';
import { lineNumber } from '../distance-line.ts';
import type { DrawnKind } from '../grid-text.ts';
import type { Grid } from '../groove-grid.ts';
import { itemAt } from '../items.ts';
import { isModal, keyName, parentKey, scaleNotes, usualKey } from '../keys.ts';
import { fifthsFromC, pitchClass } from '../pitch.ts';
import type { NoteName, PitchClass } from '../pitch.ts';
import { needed } from '../questions/marks.ts';
import { GRID_KINDS, TAPPED_KINDS } from '../questions/question.ts';
import type { Answer, Answers, Kind, NeckPlace } from '../questions/question.ts';
import { pitchClassAt } from '../questions/root/places.ts';
import { tappedTempo } from '../taps/taps.ts';
import type { Taps } from '../taps/taps.ts';
import type { Direction } from '../truth.ts';
import { directionOf } from '../truth.ts';

/**
 * An answer by names in ASCII: a note for a place on the neck, key names for keys, number and way for a distance, beats a minute for taps,
 * what is drawn with its grid; all others as they are.
 */
export type NamedAnswer =
  | string
  | number
  | readonly string[]
  | readonly number[]
  | { readonly number: Distance | '8'; readonly way: Direction }
  | { readonly kind: DrawnKind; readonly grid: Grid; readonly drawn: DrawnAnswer };

/** What is drawn on a grid, slot by slot; of `opened` the slots. */
type DrawnAnswer = Answers[DrawnKind];

/** What answers to a vamp are named by. */
export type Names = {
  readonly chords: readonly Chord[];
  readonly keys: readonly CandidateKey[];
  /** The grid of its groove; null where none is known. */
  readonly grid: Grid | null;
};

/** The names of an answer to a question about a vamp. */
export function namedAnswer(kind: Kind, answer: Answer, names: Names): NamedAnswer {
  if (typeof answer === 'object' && 'fret' in answer) return noteAt(answer, names);
  if (typeof answer === 'object' && 'taps' in answer) return tappedTempo(answer.taps);
  if (TAPPED_KINDS.has(kind)) return tappedTempo(answer as Taps);
  if (isDrawn(kind)) return { kind, grid: needed(names.grid, kind, 0), drawn: answer as DrawnAnswer };
  if (kind === 'distance' && typeof answer === 'number')
    return { number: lineNumber(answer), way: directionOf(0, answer) };
  if ((kind === 'keys' || kind === 'settler') && Array.isArray(answer)) return keysNamed(answer.map(String), names);
  return answer;
}

function isDrawn(kind: Kind): kind is DrawnKind {
  return GRID_KINDS.has(kind);
}

function noteAt(place: NeckPlace, names: Names): NoteName {
  return spelled(pitchClassAt(place), names);
}

/** A sound as the vamp's chords write it, else as the keys that own them do, else by the name nearest to the first root by fifths. */
function spelled(sound: PitchClass, { chords, keys }: Names): NoteName {
  const written = [...chords.flatMap(chordNotes), ...keys.flatMap(scaleNotes)];
  const found = written.find((note) => pitchClass(note) === sound);
  if (found !== undefined) return found;
  const home = fifthsFromC(itemAt(chords, 0).root);
  const names = USUAL_NOTES.filter((note) => pitchClass(note) === sound);
  const far = (note: NoteName) => Math.abs(fifthsFromC(note) - home);
  return itemAt(
    names.toSorted((one, other) => far(one) - far(other)),
    0,
  );
}

/** Notes of the line of fifths that have one sign at most. */
const USUAL_NOTES = 'Gb Db Ab Eb Bb F C G D A E B F# C# G# D# A#'.split(' ');

/** Keys by their names, candidates in their order before others; a scale by its major key, a home among the answers by its chord. */
function keysNamed(ids: readonly string[], { chords, keys }: Names): readonly string[] {
  const candidates = keys.filter(({ id }) => ids.includes(id));
  const others = ids.filter((id) => !candidates.some((key) => key.id === id));
  const named = [
    ...candidates.map((key) => (isModal(key.mode) ? keyName(parentKey(key)) : key.name)),
    ...others.map((id) => homeNamed(id, chords) ?? keyName(usualKey(id))),
  ];
  return [...new Set(named)];
}

/** `h1` by the second of the different chords; null for what names no home. */
function homeNamed(id: string, chords: readonly Chord[]): string | null {
  const place = /^h(\d)$/.exec(id)?.[1];
  return place === undefined ? null : chordSymbol(itemAt(chords, Number(place)));
}

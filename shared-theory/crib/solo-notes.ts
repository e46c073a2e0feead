import { bluesOf } from '../blues.ts';
import type { CandidateKey } from '../candidates.ts';
import type { Chord } from '../chords.ts';
import { chordNotes, chordPitchClasses, chordSymbol, readSymbol } from '../chords.ts';
import { spelledScale } from '../degrees.ts';
import { itemAt } from '../items.ts';
import type { Key } from '../keys.ts';
import { parseKeyName, scaleNotes } from '../keys.ts';
import { pitchClass, transpose } from '../pitch.ts';
import type { Interval, NoteName } from '../pitch.ts';
import { visitedKeys } from '../visited-keys.ts';
import type { VisitedKey } from '../visited-keys.ts';
import { sharedNotes, upFrom } from './shared-notes.ts';

/** What the notes to solo on are of, where they are not those that all keys share. Keys, notes and chords in ASCII. */
export type SoloSource =
  /** A minor key with its natural seventh; over some chords the raised one stands in its place. */
  | {
      readonly source: 'raised-seventh';
      readonly key: string;
      readonly natural: NoteName;
      readonly raised: NoteName;
      readonly over: readonly string[];
    }
  /** A key without the notes that its visitors alter. */
  | {
      readonly source: 'visited-key';
      readonly key: string;
      readonly without: readonly NoteName[];
      readonly visitors: readonly string[];
    }
  /** The minor pentatonic of a blues. */
  | { readonly source: 'blues'; readonly tonic: NoteName };

/** Notes to solo on, from the first chord's root up; none where no scale goes with all chords. */
export type SoloNotes = { readonly notes: readonly NoteName[]; readonly of: SoloSource | null };

/**
 * Notes that go with a whole vamp: those that all keys of the class share. Where none of these keys owns the vamp, those of the
 * likeliest that does but for a visitor, less what the visitor alters; of a minor with a raised seventh all, with that seventh named
 * over the chords that have it; over a blues the minor pentatonic of its tonic (common practice). RangeError without chords.
 */
export function soloNotes(chords: readonly Chord[], keys: readonly CandidateKey[]): SoloNotes {
  if (keys.length > 0) return { notes: sharedNotes(chords, keys), of: null };
  const blues = bluesOf(chords);
  if (blues) {
    const notes = MINOR_PENTATONIC.map((interval) => transpose(blues.tonic, interval));
    return { notes, of: { source: 'blues', tonic: blues.tonic } };
  }
  const [likeliest] = visitedKeys(chords);
  if (likeliest === undefined) return { notes: [], of: null };
  const key = parseKeyName(likeliest.key);
  return likeliest.visitors.every(({ visit }) => visit === 'raised-seventh')
    ? ofRaised(chords, key, likeliest)
    : ofVisited(chords, key, likeliest);
}

const MINOR_PENTATONIC: readonly Interval[] = [
  { steps: 0, semitones: 0 },
  { steps: 2, semitones: 3 },
  { steps: 3, semitones: 5 },
  { steps: 4, semitones: 7 },
  { steps: 6, semitones: 10 },
];
const LEADING_DEGREE = 6;

function ofRaised(chords: readonly Chord[], key: Key, { key: name }: VisitedKey): SoloNotes {
  const raised = itemAt(spelledScale(key, true), LEADING_DEGREE);
  const over = chords.filter((chord) => chordPitchClasses(chord).includes(pitchClass(raised))).map(chordSymbol);
  const natural = itemAt(scaleNotes(key), LEADING_DEGREE);
  return {
    notes: upFrom(chords, scaleNotes(key)),
    of: { source: 'raised-seventh', key: name, natural, raised, over: [...new Set(over)] },
  };
}

/** A visitor alters a note of the key where it has the same letter one fret off. */
function ofVisited(chords: readonly Chord[], key: Key, { key: name, visitors }: VisitedKey): SoloNotes {
  const symbols = visitors.map(({ chord }) => chord);
  const visiting = symbols.flatMap((symbol) => chordNotes(readSymbol(symbol)));
  const scale = scaleNotes(key);
  const without = scale.filter((note) =>
    visiting.some((other) => other !== note && other.charAt(0) === note.charAt(0)),
  );
  return {
    notes: upFrom(
      chords,
      scale.filter((note) => !without.includes(note)),
    ),
    of: { source: 'visited-key', key: name, without, visitors: symbols },
  };
}

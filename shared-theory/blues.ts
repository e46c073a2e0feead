import type { Chord } from './chords.ts';
import { numeralOn } from './degrees.ts';
import type { Key } from './keys.ts';
import { modulo, pitchClass } from './pitch.ts';
import type { NoteName } from './pitch.ts';

/** A blues: its home, and the numerals of a vamp's chords on it. */
type Blues = { readonly tonic: NoteName; readonly numerals: readonly string[] };

/** Degree of a blues' chords by semitones from home. */
const DEGREES: ReadonlyMap<number, number> = new Map([
  [0, 0],
  [5, 3],
  [7, 4],
]);

/**
 * The blues on a vamp's first chord: I, IV and V, two of them at least, major with or without a seventh, of which IV has one or
 * all have one. No major key owns it: a seventh on I or IV leans nowhere there, it is at home. Null for any other vamp.
 */
export function bluesOf(chords: readonly Chord[]): Blues | null {
  const [home] = chords;
  return home ? bluesOn(home.root, chords) : null;
}

/** The blues of a vamp's chords on a note; null where they are none. */
export function bluesOn(tonic: NoteName, chords: readonly Chord[]): Blues | null {
  const degrees = chords.map(({ root }) => DEGREES.get(modulo(pitchClass(root) - pitchClass(tonic), 12)));
  const major = chords.every(({ quality, addition }) => {
    return quality === 'major' && (addition === undefined || addition === 'seventh');
  });
  if (!major || new Set(degrees).size < 2) return null;
  const leans = chords.map(({ addition }) => addition === 'seventh');
  if (!leans.every(Boolean) && !chords.some((_, slot) => degrees[slot] === 3 && leans[slot])) return null;
  const key: Key = { tonic, mode: 'major' };
  const numerals = chords.flatMap((chord, slot) => {
    const degree = degrees[slot];
    return degree === undefined ? [] : [numeralOn({ key, degree, raised: false }, chord)];
  });
  return numerals.length === chords.length ? { tonic, numerals } : null;
}

import type { CandidateKey } from './candidates.ts';
import { seventhsUnder } from './candidates.ts';
import { keyHolds, spelledScale } from './degrees.ts';
import type { Key } from './keys.ts';
import { fifthsFromC, pitchClass } from './pitch.ts';
import type { NoteName, PitchClass } from './pitch.ts';
import type { Policy } from './truth.ts';

/** A note that throws keys out, and the names of the keys it leaves. */
export type Decider = { readonly note: NoteName; readonly leaves: readonly string[] };

/** Whether a key has a note of its own under a policy: of a minor key its raised seventh as well, where that counts. */
export function holdsUnder(key: Key, sound: PitchClass, policy: Policy): boolean {
  return keyHolds(key, sound, seventhsUnder(policy));
}

/**
 * The notes that throw some of the keys out and not all, spelled by the first key that they leave. Two neighbours on the circle
 * differ in one letter: the flat side's fourth degree is the sharp side's seventh, one fret lower. So letters stand together,
 * the flat side's first, and of each letter the lower note, which leaves the keys up to the flat side, before the higher.
 */
export function decidersOf(keys: readonly CandidateKey[], policy: Policy): readonly Decider[] {
  const found = Array.from({ length: 12 }, (_, sound) => sound).flatMap((sound) => {
    const left = keys.filter((key) => holdsUnder(key, sound, policy));
    const [first] = left;
    if (first === undefined || left.length === keys.length) return [];
    return [{ note: spelledBy(first, sound), leaves: left.map(({ name }) => name) }];
  });
  const byFifths = found.toSorted((one, other) => fifthsFromC(one.note) - fifthsFromC(other.note));
  const letters = [...new Set(byFifths.map(({ note }) => note.charAt(0)))];
  return letters.flatMap((letter) => byFifths.filter(({ note }) => note.startsWith(letter)));
}

/** A note as a key writes it: of its scale, else its raised seventh. RangeError where it has no such note. */
export function spelledBy(key: Key, sound: PitchClass): NoteName {
  const notes = [...spelledScale(key, false), ...(key.mode === 'minor' ? spelledScale(key, true) : [])];
  const found = notes.find((note) => pitchClass(note) === sound);
  if (found === undefined) throw new RangeError(`${key.tonic} ${key.mode} has no note of pitch class ${sound}.`);
  return found;
}

import type { Quality } from './chords.ts';
import { itemAt } from './items.ts';
import { fifthsFromC, modulo, pitchClass, transpose } from './pitch.ts';
import type { NoteName, PitchClass } from './pitch.ts';
import type { KeyId } from './questions/question.ts';

/**
 * The modes that a chord of a vamp can be home of, in the order of the degrees of their parent scale. The seventh has a
 * diminished home chord, on which nothing rests.
 */
export const HOME_MODES = ['ionian', 'dorian', 'phrygian', 'lydian', 'mixolydian', 'aeolian'] as const;
export type HomeMode = (typeof HOME_MODES)[number];
export type Mode = 'major' | 'minor' | HomeMode;

/** A key as musicians write it: a spelled tonic and its mode. Minor is the natural minor. */
export type Key = { readonly tonic: NoteName; readonly mode: Mode };

/** The fifteen major tonics by fifths, from seven flats to seven sharps. */
const MAJOR_TONICS = ['Cb', 'Gb', 'Db', 'Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#'] as const;
/** Their relative minors in the same order. */
const MINOR_TONICS = ['Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#', 'G#', 'D#', 'A#'] as const;
const FLATTEST = -7;

const MAJOR_SCALE = [0, 2, 4, 5, 7, 9, 11] as const;
const MAJOR_TRIADS = ['major', 'minor', 'minor', 'major', 'major', 'minor', 'diminished'] as const;

/** Degree of the parent major scale, from 0, on which a mode stands. */
const STANDS_ON: Readonly<Record<Mode, number>> = {
  major: 0,
  minor: 5,
  ionian: 0,
  dorian: 1,
  phrygian: 2,
  lydian: 3,
  mixolydian: 4,
  aeolian: 5,
};

/** Something by degree of the major scale, counted from the degree that a mode stands on. */
function fromDegree<T>(ofMajor: readonly T[], mode: Mode): readonly T[] {
  const start = STANDS_ON[mode];
  return [...ofMajor.slice(start), ...ofMajor.slice(0, start)];
}

/** Each mode's scale is asked for thousands of times. */
const scales = new Map<Mode, readonly number[]>();

/** Semitones of each degree above the tonic, ascending from 0. */
export function modeScale(mode: Mode): readonly number[] {
  const start = itemAt(MAJOR_SCALE, STANDS_ON[mode]);
  const scale = scales.get(mode) ?? fromDegree(MAJOR_SCALE, mode).map((semitones) => modulo(semitones - start, 12));
  scales.set(mode, scale);
  return scale;
}

/** The triad on each degree. */
export function modeTriads(mode: Mode): readonly Quality[] {
  return fromDegree<Quality>(MAJOR_TRIADS, mode);
}

/** Sharps (positive) or flats (negative) of the key signature, -7 to 7. RangeError for a key beyond seven. */
export function keySignature({ tonic, mode }: Key): number {
  // The degrees of a major scale lie one by one on the line of fifths, from the fourth to the seventh.
  const signature = fifthsFromC(tonic) - itemAt([0, 2, 4, -1, 1, 3], STANDS_ON[mode]);
  if (Math.abs(signature) > -FLATTEST)
    throw new RangeError(`No key of ${tonic} ${mode}: its signature would have more than seven signs.`);
  return signature;
}

/** The major key with the same notes: G major for E minor and A dorian. */
export function parentKey(key: Key): Key {
  return { tonic: itemAt(MAJOR_TONICS, keySignature(key) - FLATTEST), mode: 'major' };
}

/** The key of the other mode with the same notes: E minor for G major. Of any other mode, its parent's minor. */
export function relativeKey(key: Key): Key {
  if (key.mode === 'minor') return parentKey(key);
  return { tonic: itemAt(MINOR_TONICS, keySignature(key) - FLATTEST), mode: 'minor' };
}

/** Whether a key is named by a mode: then its parent scale and its home are two things to hear. */
export function isModal(mode: Mode): mode is HomeMode {
  return HOME_MODES.some((home) => home === mode);
}

/** Name of a key in ASCII: `Gb major`, `F# minor`. */
export function keyName({ tonic, mode }: Key): string {
  return `${tonic} ${mode}`;
}

const MODES: readonly Mode[] = ['major', 'minor', ...HOME_MODES];

/** Reads the name of a key, `Gb major`, `A dorian`. RangeError where it is none. */
export function parseKeyName(name: string): Key {
  const [tonic = '', named, ...rest] = name.split(' ');
  const mode = MODES.find((known) => known === named);
  if (mode === undefined || rest.length > 0) {
    throw new RangeError(`Not the name of a key: ${JSON.stringify(name)}. Write such as Gb major.`);
  }
  const key: Key = { tonic, mode };
  keySignature(key);
  return key;
}

/** A key as an answer, one for each sound: `7M` is G major, `4m` E minor; of a mode its parent, `7M` for A dorian. */
export function keyId(key: Key): KeyId {
  if (isModal(key.mode)) return keyId(parentKey(key));
  return `${pitchClass(key.tonic)}${key.mode === 'major' ? 'M' : 'm'}`;
}

/** The major key of a signature; one that nobody writes (more than seven signs) is written on the other side. */
export function majorOf(signature: number): Key {
  const written = signature > 7 ? signature - 12 : signature < FLATTEST ? signature + 12 : signature;
  return { tonic: itemAt(MAJOR_TONICS, written - FLATTEST), mode: 'major' };
}

/** The usual spelling of a key by its id: the fewest signs, F# major and D# minor where six stand against six. */
export function usualKey(id: KeyId): Key {
  if (!/^([0-9]|1[01])[Mm]$/.test(id)) {
    throw new RangeError(`Not a key: ${JSON.stringify(id)}. Write 0M to 11M or 0m to 11m.`);
  }
  const sound = Number.parseInt(id, 10);
  // Six sharps stand before six flats: on guitars F# is the commoner name.
  const usual = (major: PitchClass) => {
    const place = (major * 7) % 12;
    return majorOf(place > 6 ? place - 12 : place);
  };
  return id.endsWith('M') ? usual(sound) : relativeKey(usual(sound + 3));
}

/** The scales of the keys that were asked for: no more than there are keys. */
const spelled = new Map<string, readonly NoteName[]>();

/** The seven notes of a key, spelled, from the tonic up. RangeError for a key beyond seven signs. */
export function scaleNotes(key: Key): readonly NoteName[] {
  const name = keyName(key);
  const known = spelled.get(name);
  if (known !== undefined) return known;
  keySignature(key);
  const notes = modeScale(key.mode).map((semitones, steps) => transpose(key.tonic, { steps, semitones }));
  spelled.set(name, notes);
  return notes;
}

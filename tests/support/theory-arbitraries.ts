import * as fc from 'fast-check';
import { QUALITIES } from '../../shared-theory/chords.ts';
import type { Chord } from '../../shared-theory/chords.ts';

/** The 21 roots that a chord may be written on: seven letters, plain, sharp and flat. */
export const ROOTS: readonly string[] = Array.from('CDEFGAB').flatMap((letter) => [letter, `${letter}#`, `${letter}b`]);

/** The fifteen major keys by fifths, from seven flats to seven sharps. */
export const MAJOR_TONICS = ['Cb', 'Gb', 'Db', 'Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#'];

export const anyRoot = fc.constantFrom(...ROOTS);
export const anyChord: fc.Arbitrary<Chord> = fc.record({ root: anyRoot, quality: fc.constantFrom(...QUALITIES) });
export const anyVamp = fc.array(anyChord, { minLength: 1, maxLength: 4 });

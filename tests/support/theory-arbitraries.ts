import * as fc from 'fast-check';
import { chordNotes, QUALITIES, SUFFIXES } from '../../shared-theory/chords.ts';
import type { Chord } from '../../shared-theory/chords.ts';

/** The 21 roots that a chord may be written on: seven letters, plain, sharp and flat. */
export const ROOTS: readonly string[] = Array.from('CDEFGAB').flatMap((letter) => [letter, `${letter}#`, `${letter}b`]);

/** The fifteen major keys by fifths, from seven flats to seven sharps. */
export const MAJOR_TONICS = ['Cb', 'Gb', 'Db', 'Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#'];

export const anyRoot = fc.constantFrom(...ROOTS);
const anyChord: fc.Arbitrary<Chord> = fc.record({ root: anyRoot, quality: fc.constantFrom(...QUALITIES) });
export const anyVamp = fc.array(anyChord, { minLength: 1, maxLength: 4 });

/** Roots as a guitarist meets them, with the other spelling of each that is written. */
export const RESPELLED: Readonly<Record<string, string>> = {
  'C#': 'Db',
  Db: 'C#',
  'D#': 'Eb',
  Eb: 'D#',
  'F#': 'Gb',
  Gb: 'F#',
  'G#': 'Ab',
  Ab: 'G#',
  'A#': 'Bb',
  Bb: 'A#',
  B: 'Cb',
  Cb: 'B',
};

const usualRoot = fc.constantFrom('C', 'C#', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'Gb', 'G', 'G#', 'Ab', 'A', 'Bb', 'B');

/** Any chord that has a symbol, over its root or over another of its notes. */
export const anySymbolChord: fc.Arbitrary<Chord> = fc
  .record({ root: usualRoot, kind: fc.constantFrom(...SUFFIXES), inversion: fc.nat(5) })
  .map(({ root, kind: { quality, addition }, inversion }) => {
    const chord: Chord = { root, quality, ...(addition === null ? {} : { addition }) };
    // Five in six stand on their root or, for chords of few notes, on none of their own.
    const bass = inversion < 3 ? undefined : chordNotes(chord)[inversion - 2];
    return bass === undefined ? chord : { ...chord, bass };
  });

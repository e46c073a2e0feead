import * as fc from 'fast-check';
import teoria from 'teoria';
import { Chord as TonalChord } from 'tonal';
import { describe, expect, test } from 'vitest';
import {
  chordNotes,
  chordPitchClasses,
  chordSymbol,
  parseChord,
  QUALITIES,
  qualitySemitones,
  qualitySuffix,
  soundsAs,
} from '../../shared-theory/chords.ts';
import { pitchClass } from '../../shared-theory/pitch.ts';
import { ReadingError } from '../../shared-theory/vamps.ts';
import { anyChord, ROOTS } from '../support/theory-arbitraries.ts';

const ALL_CHORDS = ROOTS.flatMap((root) => QUALITIES.map((quality) => ({ root, quality })));

describe('the seven qualities', () => {
  // Semitones of major, minor, diminished and augmented: Open Music Theory, page “Triads and seventh chords”;
  // of sus and power chords: the quality table of mir_eval (MIT licence).
  test.each([
    ['major', '', [0, 4, 7]],
    ['minor', 'm', [0, 3, 7]],
    ['power', '5', [0, 7]],
    ['suspended-fourth', 'sus4', [0, 5, 7]],
    ['diminished', 'dim', [0, 3, 6]],
    ['augmented', 'aug', [0, 4, 8]],
    ['suspended-second', 'sus2', [0, 2, 7]],
  ] as const)('%s is written %j and built of %j', (quality, suffix, semitones) => {
    expect(qualitySuffix(quality)).toBe(suffix);
    expect(qualitySemitones(quality)).toEqual(semitones);
  });

  test.each([
    ['C#', 'C# E# G#'],
    ['Gb', 'Gb Bb Db'],
    ['Cb', 'Cb Eb Gb'],
    ['Bdim', 'B D F'],
    ['Cdim', 'C Eb Gb'],
    ['G#m', 'G# B D#'],
    ['Abm', 'Ab Cb Eb'],
    ['D#', 'D# F## A#'],
    ['B#aug', 'B# D## F###'],
    ['Csus4', 'C F G'],
    ['F#sus2', 'F# G# C#'],
    ['Cb5', 'Cb Gb'],
  ])('%s is spelled %s', (symbol, notes) => {
    expect(chordNotes(parseChord(symbol)).join(' ')).toBe(notes);
  });

  test('all 147 chords are spelled as tonal 6.4.3 spells them', () => {
    for (const chord of ALL_CHORDS) expect(chordNotes(chord)).toEqual(TonalChord.get(chordSymbol(chord)).notes);
  });

  test('all chords are spelled as teoria 2.5.0 spells them, save those with three accidentals, which it cannot write', () => {
    for (const chord of ALL_CHORDS) {
      const ours = chordNotes(chord).map((note) => note.toLowerCase().replace('##', 'x'));
      if (!ours.some((note) => note.length > 3 || note.includes('x#'))) {
        expect(teoria.chord(chordSymbol(chord)).simple()).toEqual(ours);
      }
    }
  });

  test('pitch classes are those of the notes', () => {
    for (const chord of ALL_CHORDS) expect(chordPitchClasses(chord)).toEqual(chordNotes(chord).map(pitchClass));
  });

  test('chords that sound alike', () => {
    expect(soundsAs(parseChord('F#'), parseChord('Gb'))).toBe(true);
    expect(soundsAs(parseChord('F#'), parseChord('F#m'))).toBe(false);
    expect(soundsAs(parseChord('F#'), parseChord('F'))).toBe(false);
  });
});

describe('chords as they are typed', () => {
  test.each([
    ['C', 'C'],
    ['CM', 'C'],
    ['Cmaj', 'C'],
    ['Cm', 'Cm'],
    ['Cmin', 'Cm'],
    ['Cmi', 'Cm'],
    ['C-', 'Cm'],
    ['C−', 'Cm'],
    ['Cdim', 'Cdim'],
    ['C°', 'Cdim'],
    ['Cº', 'Cdim'],
    ['Caug', 'Caug'],
    ['C+', 'Caug'],
    ['C5', 'C5'],
    ['Csus', 'Csus4'],
    ['Csus4', 'Csus4'],
    ['Csus2', 'Csus2'],
    ['C♯m', 'C#m'],
    ['B♭', 'Bb'],
    ['Bb', 'Bb'],
    ['B♭°', 'Bbdim'],
    ['E#m', 'E#m'],
    ['Cb', 'Cb'],
    // A flat that belongs to the root: C flat with its fifth, not C with a flat fifth.
    ['Cb5', 'Cb5'],
    ['  Em  ', 'Em'],
  ])('%j is %s', (text, expected) => {
    expect(chordSymbol(parseChord(text))).toBe(expected);
  });

  test('every chord reads back from its symbol', () => {
    fc.assert(
      fc.property(anyChord, (chord) => {
        expect(parseChord(chordSymbol(chord))).toEqual(chord);
      }),
    );
  });

  // What is wrong, where, and what to write instead. Rows that other libraries answer wrongly without a word
  // (“Do” as D diminished, “b7” as B7, “bb” as B flat) must be refused here.
  test.each([
    ['', 'nothing', 0, ''],
    ['   ', 'nothing', 3, ''],
    ['H', 'german-h', 0, 'B'],
    ['Hm', 'german-h', 0, 'Bm'],
    ['H7', 'german-h', 0, 'B'],
    ['h', 'german-h', 0, 'B'],
    ['Do', 'syllable-name', 0, 'C'],
    ['Dom', 'syllable-name', 0, 'Cm'],
    ['DO', 'syllable-name', 0, 'C'],
    ['Ré', 'syllable-name', 0, 'D'],
    ['mi', 'syllable-name', 0, 'E'],
    ['Fa#m', 'syllable-name', 0, 'F#m'],
    ['Sib', 'syllable-name', 0, 'Bb'],
    ['La♭', 'syllable-name', 0, 'Ab'],
    ['Sol-', 'syllable-name', 0, 'Gm'],
    ['e', 'lower-case-root', 0, 'E or Em'],
    ['em', 'lower-case-root', 0, 'Em'],
    ['bb', 'lower-case-root', 0, 'Bb'],
    ['b7', 'lower-case-root', 0, 'B'],
    ['#C', 'no-letter', 0, 'C#'],
    ['bG', 'no-letter', 0, 'Gb'],
    ['X', 'no-letter', 0, 'Em'],
    ['N.C.', 'no-letter', 0, 'Em'],
    ['%', 'no-letter', 0, 'Em'],
    ['<b>', 'no-letter', 0, 'Em'],
    ['F##', 'double-accidental', 1, 'G'],
    ['F𝄪m', 'double-accidental', 1, 'Gm'],
    ['Bbb', 'double-accidental', 1, 'A'],
    ['Cbb', 'double-accidental', 1, 'Bb'],
    ['C#b', 'double-accidental', 1, 'C'],
    ['G7', 'seventh-or-more', 1, 'G'],
    ['F#7', 'seventh-or-more', 2, 'F#'],
    ['Cmaj7', 'seventh-or-more', 1, 'C'],
    ['CMaj7', 'seventh-or-more', 1, 'C'],
    ['CMAJ7', 'seventh-or-more', 1, 'C'],
    ['CΔ7', 'seventh-or-more', 1, 'C'],
    ['C△', 'seventh-or-more', 1, 'C'],
    ['Am7', 'seventh-or-more', 1, 'Am'],
    ['A-7', 'seventh-or-more', 1, 'Am'],
    ['CmM7', 'seventh-or-more', 1, 'Cm'],
    ['Cm(maj7)', 'seventh-or-more', 1, 'Cm'],
    ['Bm7b5', 'seventh-or-more', 1, 'Bdim'],
    ['Bø', 'seventh-or-more', 1, 'Bdim'],
    ['Bø7', 'seventh-or-more', 1, 'Bdim'],
    ['B°7', 'seventh-or-more', 1, 'Bdim'],
    ['Bdim7', 'seventh-or-more', 1, 'Bdim'],
    ['C6', 'seventh-or-more', 1, 'C'],
    ['Cadd9', 'seventh-or-more', 1, 'C'],
    ['Fadd9', 'seventh-or-more', 1, 'F'],
    ['C2', 'seventh-or-more', 1, 'Csus2'],
    ['C4', 'seventh-or-more', 1, 'Csus4'],
    ['C7sus4', 'seventh-or-more', 1, 'Csus4'],
    ['C+7', 'seventh-or-more', 1, 'Caug'],
    ['C7#5', 'seventh-or-more', 1, 'Caug'],
    ['C11', 'seventh-or-more', 1, 'C'],
    ['C/E', 'slash-bass', 1, 'C'],
    ['C/E/G', 'slash-bass', 1, 'C'],
    ['Am/C', 'slash-bass', 2, 'Am'],
    ['D/F♯', 'slash-bass', 1, 'D'],
    ['G7/F', 'slash-bass', 2, 'G'],
    ['Co', 'unknown-suffix', 1, 'Cdim'],
    ['CMI', 'unknown-suffix', 1, 'Cm'],
    ['CMin', 'unknown-suffix', 1, 'Cm'],
    ['CDIM', 'unknown-suffix', 1, 'Cdim'],
    ['Cminor', 'unknown-suffix', 1, 'Cm'],
    ['Cmajor', 'unknown-suffix', 1, 'C'],
    ['Cmb5', 'unknown-suffix', 1, 'Cdim'],
    ['Csus2sus4', 'unknown-suffix', 1, 'Csus2'],
    ['C♮', 'unknown-suffix', 1, 'C'],
    ['Calt', 'seventh-or-more', 1, 'C'],
    ['  G7', 'seventh-or-more', 3, 'G'],
    ['Cconstructor', 'unknown-suffix', 1, 'C'],
    ['CtoString', 'unknown-suffix', 1, 'C'],
  ])('%j is refused: %s at %i, write %s', (text, fault, place, right) => {
    const error = refusal(text);
    expect(error).toMatchObject({ name: 'ReadingError', fault, place, right, found: text.trim() });
    expect(error.suggestion).toContain(right);
    expect(error.message).toContain(error.suggestion);
  });

  test('what is suggested can be read, whatever was typed', () => {
    const typed = fc.stringMatching(/^[A-Ha-h♯♭#bmsu2457+°/ -]{1,6}$/);
    fc.assert(
      fc.property(fc.oneof(typed, fc.string({ maxLength: 8 })), (text) => {
        let error: unknown;
        try {
          parseChord(text);
        } catch (thrown) {
          error = thrown;
        }
        if (error === undefined) return;
        expect(error).toBeInstanceOf(ReadingError);
        const { right, place } = error as ReadingError;
        for (const symbol of right.split(' or ').filter((each) => each !== '')) parseChord(symbol);
        expect(place).toBeLessThanOrEqual(text.length);
      }),
    );
  });
});

function refusal(text: string): ReadingError {
  try {
    parseChord(text);
  } catch (error) {
    if (error instanceof ReadingError) return error;
    throw error;
  }
  throw new Error(`${JSON.stringify(text)} was read`);
}

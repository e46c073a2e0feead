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
import { ROOTS } from '../support/theory-arbitraries.ts';

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

import { Chord as TonalChord } from 'tonal';
import { describe, expect, test } from 'vitest';
import { parseChord } from '../../../shared-theory/chord-reading.ts';
import {
  bassNote,
  chordNotes,
  chordPitchClasses,
  chordSymbol,
  soundsAs,
  soundsAsOverBass,
} from '../../../shared-theory/chords.ts';
import type { Chord } from '../../../shared-theory/chords.ts';
import { namesOf } from '../../../shared-theory/namings/names-of.ts';
import { pitchClass } from '../../../shared-theory/pitch.ts';
import { printChord } from '../../../shared-theory/printer.ts';
import type { Naming } from '../../../shared-theory/printer.ts';
import { ReadingError } from '../../../shared-theory/reading-error.ts';

/*
 * Chord symbols on which tonal 6.4.3, which our tests use beside ours, answers otherwise than a guitar teacher would, or not at
 * all. Beside each stands what it gives, so that nobody takes it for a source there, and what is right (common practice).
 */
const theirs = (symbol: string) => TonalChord.get(symbol).notes.join(' ');
const ours = (text: string, naming?: Naming) => chordNotes(parseChord(text, naming)).join(' ');
const refused = (text: string, naming?: Naming) => {
  try {
    return chordSymbol(parseChord(text, naming));
  } catch (error) {
    if (error instanceof ReadingError) return `${error.fault}: ${error.right}`;
    throw error;
  }
};

describe('symbols that they cannot read and people type', () => {
  test.each([
    ['B♭', 'Bb D F'],
    ['B♭maj7', 'Bb D F A'],
    ['C♯m', 'C# E G#'],
    ['B𝄫', 'Bbb Db Fb'],
    ['F𝄪dim', 'F## A# C#'],
    ['CMAJ7', 'C E G B'],
    ['CΔ7', 'C E G B'],
    ['C△7', 'C E G B'],
    ['C△', 'C E G B'],
    ['Cj7', 'C E G B'],
    ['C7M', 'C E G B'],
    ['Cmi', 'C Eb G'],
    ['CMI', 'C Eb G'],
    ['CMI7', 'C Eb G Bb'],
    ['CMin7', 'C Eb G Bb'],
    ['Cm(maj7)', 'C Eb G B'],
    ['Cmmaj7', 'C Eb G B'],
    ['Cø7', 'C Eb Gb Bb'],
    ['C(add9)', 'C E G D'],
    ['Cmb5', 'C Eb Gb'],
    ['Cno3', 'C G'],
    ['C / E', 'C E G'],
    ['Dm7 ', 'D F A C'],
    [' Dm7', 'D F A C'],
  ])('%j is %s, not nothing', (text, notes) => {
    expect(theirs(text)).toBe('');
    expect(ours(text)).toBe(notes);
  });

  test('over a bass with a real sign', () => {
    expect(theirs('D/F♯')).toBe('');
    expect(parseChord('D/F♯')).toEqual({ root: 'D', quality: 'major', bass: 'F#' });
  });
});

describe('symbols that both read alike, as regressions', () => {
  test.each([
    ['Cmaj7', 'C E G B'],
    ['CMaj7', 'C E G B'],
    ['CM7', 'C E G B'],
    ['Cma7', 'C E G B'],
    ['CΔ', 'C E G B'],
    ['C^7', 'C E G B'],
    ['C-', 'C Eb G'],
    ['C-7', 'C Eb G Bb'],
    ['Cm7', 'C Eb G Bb'],
    ['Cmi7', 'C Eb G Bb'],
    ['Cmin7', 'C Eb G Bb'],
    ['CmM7', 'C Eb G B'],
    ['Cm/maj7', 'C Eb G B'],
    ['Co', 'C Eb Gb'],
    ['C°', 'C Eb Gb'],
    ['Cdim', 'C Eb Gb'],
    // Its seventh is B double flat; A would be another chord's letter.
    ['Co7', 'C Eb Gb Bbb'],
    ['C°7', 'C Eb Gb Bbb'],
    ['Cdim7', 'C Eb Gb Bbb'],
    ['Cø', 'C Eb Gb Bb'],
    // A flat beside the letter is the root's.
    ['Cb5', 'Cb Gb'],
    ['Cb7', 'Cb Eb Gb Bbb'],
  ])('%s is %s', (text, notes) => {
    expect(theirs(text)).toBe(notes);
    expect(ours(text)).toBe(notes);
  });

  test('two spellings of one suffix are one chord: chords are compared as read, never as text', () => {
    expect(parseChord('CMaj7')).toEqual(parseChord('Cmaj7'));
    expect(chordSymbol(parseChord('CMaj7'))).toBe('Cmaj7');
  });
});

describe('symbols that they read as something else', () => {
  test.each([
    // A seventh of a scale, a flat, a syllable: none is a chord.
    ['b7', 'B D# F# A', 'lower-case-root: B7'],
    ['bb', 'Bb D F', 'lower-case-root: Bb'],
    ['Do', 'D F Ab', 'syllable-name: C or Ddim'],
    // A note with its octave, to others a chord of fourths.
    ['C4', 'C F Bb Eb', 'not-ours: Csus4'],
    // Chords that are none of ours are named with their nearest.
    ['C11', 'C G Bb D F', 'not-ours: C7'],
    ['C13', 'C E G Bb D A', 'not-ours: C7'],
    // A third part is no bass.
    ['C/E/G', 'E G C', 'slash-bass: C/E'],
  ])('%s is not %s but refused: %s', (text, wrong, right) => {
    expect(theirs(text)).toBe(wrong);
    expect(refused(text)).toBe(right);
  });

  test('C2 is C with a ninth, Csus2 has no third', () => {
    expect([theirs('C2'), theirs('Csus2')]).toEqual(['C E G D', 'C D G']);
    expect([ours('C2'), ours('Csus2')]).toEqual(['C E G D', 'C D G']);
    expect([chordSymbol(parseChord('C2')), chordSymbol(parseChord('Csus2'))]).toEqual(['Cadd9', 'Csus2']);
  });

  test.each([
    ['C7(b9)', 'not-ours: C7'],
    ['C(b5)', 'not-ours: C'],
    ['Calt', 'not-ours: C7'],
    ['N.C.', 'no-chord: '],
    ['%', 'same-again: Em Em'],
    ['C/', 'slash-bass: C/G'],
    ['H', 'german-h: B'],
    ['H7', 'german-h: B7'],
    ['Hm', 'german-h: Bm'],
  ])('%s is refused in words, not by silence: %s', (text, right) => {
    expect(theirs(text)).toBe('');
    expect(refused(text)).toBe(right);
  });

  test('a class that says H or Do is read as it means it', () => {
    expect([ours('H7', 'german'), ours('Hm', 'mixed'), ours('Do', 'fixed-do')]).toEqual([
      'B D# F# A',
      'B D F#',
      'C E G',
    ]);
  });
});

describe('what a chord is made of', () => {
  test('a seventh does not change the triad, and tells it from the triad all the same', () => {
    expect(TonalChord.get('G7').quality).toBe('Major');
    expect(parseChord('G7')).toEqual({ root: 'G', quality: 'major', addition: 'seventh' });
    expect(soundsAs(parseChord('G7'), parseChord('G'))).toBe(false);
  });

  test.each([
    ['Csus4', 'suspended-fourth', 'C sus four'],
    ['C5', 'power', 'C power chord'],
  ])('%s has a name that can be said', (symbol, quality, spoken) => {
    expect(TonalChord.get(symbol).quality).toBe('Unknown');
    expect([parseChord(symbol).quality, printChord(symbol).spoken]).toEqual([quality, spoken]);
  });

  test.each([
    ['C/E', 'E G C', 'C E G'],
    ['Am/C', 'C E A', 'A C E'],
    ['G7/F', 'F G B D', 'G B D F'],
  ])(
    '%s: the bass comes first there; here the notes keep their order and the bass is said apart',
    (text, wrong, notes) => {
      expect(theirs(text)).toBe(wrong);
      const chord = parseChord(text);
      expect([chordNotes(chord).join(' '), bassNote(chord)]).toEqual([notes, text.split('/')[1]]);
    },
  );

  test.each([
    ['Am/G', 'A', 'G', 'A C E G'],
    ['C/D', 'C', 'D', 'C E G D'],
    ['C/Bb', 'C', 'Bb', 'C E G Bb'],
  ])('%s: over a foreign bass the chord keeps its root', (text, root, bass, notes) => {
    expect(TonalChord.get(text).root).toBe('');
    const chord = parseChord(text);
    expect([chord.root, bassNote(chord), chordNotes(chord).join(' ')]).toEqual([root, bass, notes]);
    expect(new Set(chordPitchClasses(chord)).size).toBe(chordPitchClasses(chord).length);
  });
});

describe('a chord is what was played, not what its notes are called first', () => {
  test.each([
    ['C6', 'Am7/C', ['C', 'E', 'G', 'A'], 'C6'],
    ['Dm6', 'Bm7b5/D', ['D', 'F', 'A', 'B'], 'Dm6'],
    ['Csus4', 'Fsus2/C', ['C', 'F', 'G'], 'Csus4'],
    ['Fsus2', 'Csus4/F', ['F', 'G', 'C'], 'Fsus2'],
  ])('%s and %s have the same notes and stay two chords', (one, other, notes, first) => {
    expect(TonalChord.detect(notes)).toEqual([first, other]);
    const chords: readonly Chord[] = [parseChord(one), parseChord(other)];
    const sounds = (chord?: Chord) => chord && [...chordPitchClasses(chord)].toSorted((a, b) => a - b);
    expect(sounds(chords[0])).toEqual(notes.map(pitchClass).toSorted((a, b) => a - b));
    expect(sounds(chords[1])).toEqual(sounds(chords[0]));
    const [left, right] = chords;
    expect(left && right && (soundsAs(left, right) || soundsAsOverBass(left, right))).toBe(false);
  });

  test('two notes are a chord only where they are a root and its fifth', () => {
    expect(TonalChord.detect(['C', 'E'])).toEqual([]);
    expect(ours('C5')).toBe('C G');
    expect(refused('Cno5')).toBe('not-ours: C');
  });
});

test('what is printed can be read again, half diminished too', () => {
  expect(theirs('Bø7')).toBe('');
  for (const naming of ['english', 'german', 'mixed', 'dutch', 'fixed-do'] as const) {
    const { text } = printChord('Bm7b5', namesOf(naming));
    expect(text).toMatch(/ø7$/);
    expect(chordSymbol(parseChord(text, naming))).toBe('Bm7b5');
  }
});

import { describe, expect, test } from 'vitest';
import { chordSymbol, SUFFIXES } from '../../shared-theory/chords.ts';
import type { Chord } from '../../shared-theory/chords.ts';
import { diatonicChart, numeralIn, keyOwns } from '../../shared-theory/degrees.ts';
import { HOME_MODES, keyName, relativeKey, scaleNotes } from '../../shared-theory/keys.ts';
import type { Key } from '../../shared-theory/keys.ts';
import { printChord, printDistance, printKey, printNote, printNumeral } from '../../shared-theory/printer.ts';
import { MAJOR_TONICS, ROOTS } from '../support/theory-arbitraries.ts';

describe('notes and chords', () => {
  test.each([
    ['C', 'C', 'C'],
    ['Bb', 'B♭', 'B flat'],
    ['F#', 'F♯', 'F sharp'],
    ['F##', 'F𝄪', 'F double sharp'],
    ['Bbb', 'B𝄫', 'B double flat'],
    ['F###', 'F♯𝄪', 'F triple sharp'],
    ['Cbbb', 'C♭𝄫', 'C triple flat'],
  ])('the note %s is printed %s and spoken “%s”', (name, text, spoken) => {
    expect(printNote(name)).toMatchObject({ text, spoken, suffix: '' });
  });

  test.each([
    ['F#m', { letter: 'F', sign: '♯', suffix: 'm', text: 'F♯m', spoken: 'F sharp minor' }],
    ['C', { letter: 'C', sign: '', suffix: '', text: 'C', spoken: 'C' }],
    ['Bb', { letter: 'B', sign: '♭', suffix: '', text: 'B♭', spoken: 'B flat' }],
    ['Bdim', { letter: 'B', sign: '', suffix: '°', text: 'B°', spoken: 'B diminished' }],
    ['Bbdim', { letter: 'B', sign: '♭', suffix: '°', text: 'B♭°', spoken: 'B flat diminished' }],
    ['Caug', { letter: 'C', sign: '', suffix: '+', text: 'C+', spoken: 'C augmented' }],
    ['C5', { letter: 'C', sign: '', suffix: '5', text: 'C5', spoken: 'C power chord' }],
    ['Csus2', { letter: 'C', sign: '', suffix: 'sus2', text: 'Csus2', spoken: 'C sus two' }],
    ['Am7', { letter: 'A', sign: '', suffix: 'm7', text: 'Am7', spoken: 'A minor seven' }],
    ['Bbmaj7', { letter: 'B', sign: '♭', suffix: 'maj7', text: 'B♭maj7', spoken: 'B flat major seven' }],
    ['Bm7b5', { letter: 'B', sign: '', suffix: 'ø7', text: 'Bø7', spoken: 'B half diminished seven' }],
    ['G#dim7', { letter: 'G', sign: '♯', suffix: '°7', text: 'G♯°7', spoken: 'G sharp diminished seven' }],
    ['Cm(maj7)', { letter: 'C', sign: '', suffix: 'm(maj7)', text: 'Cm(maj7)', spoken: 'C minor major seven' }],
    ['C6', { letter: 'C', sign: '', suffix: '6', text: 'C6', spoken: 'C six' }],
    ['Cm6', { letter: 'C', sign: '', suffix: 'm6', text: 'Cm6', spoken: 'C minor six' }],
    ['Cadd9', { letter: 'C', sign: '', suffix: 'add9', text: 'Cadd9', spoken: 'C add nine' }],
    // The bass is part of what is set small behind the root.
    ['D/F#', { letter: 'D', sign: '', suffix: '/F♯', text: 'D/F♯', spoken: 'D over F sharp' }],
    ['Am7/G', { letter: 'A', sign: '', suffix: 'm7/G', text: 'Am7/G', spoken: 'A minor seven over G' }],
    ['Ebsus4', { letter: 'E', sign: '♭', suffix: 'sus4', text: 'E♭sus4', spoken: 'E flat sus four' }],
  ])('the chord %s', (symbol, printed) => {
    expect(printChord(symbol)).toEqual(printed);
  });

  test('every chord that can be built is printed from its parts, without ASCII accidentals', () => {
    for (const root of ROOTS) {
      for (const { suffix: ascii } of SUFFIXES) {
        const { letter, sign, suffix, text, spoken } = printChord(root + ascii);
        expect(letter + sign + suffix).toBe(text);
        expect(text).not.toMatch(/#|[A-G]b|7b5|dim|aug/);
        // All is said in words.
        expect(spoken).toMatch(/^[A-G]( (sharp|flat))?( [a-z]+)*$/);
      }
    }
  });

  test.each(['', 'H', 'Cmaj9', 'em', 'C/', 'C/E/G', 'C/e', 'F♯m', 'C°', 'Cadd6', 'Cconstructor'])(
    '%j is no chord symbol of ours',
    (symbol) => {
      expect(() => printChord(symbol)).toThrow(RangeError);
    },
  );
});

describe('keys', () => {
  test.each([
    ['G major', { letter: 'G', sign: '', suffix: ' major', text: 'G major', spoken: 'G major' }],
    ['F# minor', { letter: 'F', sign: '♯', suffix: ' minor', text: 'F♯ minor', spoken: 'F sharp minor' }],
    ['Gb major', { letter: 'G', sign: '♭', suffix: ' major', text: 'G♭ major', spoken: 'G flat major' }],
  ])('%s', (name, printed) => {
    expect(printKey(name)).toEqual(printed);
  });

  test.each([
    ['A dorian', 'A dorian'],
    ['Bb mixolydian', 'B♭ mixolydian'],
    ['F# aeolian', 'F♯ aeolian'],
  ])('the mode %s is %s', (name, text) => expect(printKey(name).text).toBe(text));

  test('every mode that a key can have is printed', () => {
    for (const mode of HOME_MODES)
      expect(printKey(`C ${mode}`)).toMatchObject({ text: `C ${mode}`, spoken: `C ${mode}` });
  });

  test.each(['', 'G', 'G Major', 'G locrian', 'Gmajor', 'major', 'G major or so'])('%j is no name of a key', (name) => {
    expect(() => printKey(name)).toThrow(RangeError);
  });
});

describe('numerals and distances', () => {
  test.each([
    ['I', 'I', 'one'],
    ['ii', 'ii', 'two minor'],
    ['IV', 'IV', 'four'],
    ['viio', 'vii°', 'seven diminished'],
    ['iio', 'ii°', 'two diminished'],
    ['III+', 'III+', 'three augmented'],
    ['bVII', '♭VII', 'flat seven'],
    ['#iv', '♯iv', 'sharp four minor'],
    ['ii5', 'ii5', 'two power chord'],
    ['Vsus4', 'Vsus4', 'five sus four'],
    ['visus2', 'visus2', 'six sus two'],
    ['V7', 'V7', 'five seven'],
    ['ii7', 'ii7', 'two minor seven'],
    ['Imaj7', 'Imaj7', 'one major seven'],
    ['imaj7', 'imaj7', 'one minor major seven'],
    ['viim7b5', 'viiø7', 'seven half diminished seven'],
    ['viio7', 'vii°7', 'seven diminished seven'],
    ['Iadd9', 'Iadd9', 'one add nine'],
    ['Iadd6', 'Iadd6', 'one add six'],
    ['iiadd6', 'iiadd6', 'two minor add six'],
  ])('the numeral %s is printed %s and spoken “%s”', (numeral, text, spoken) => {
    const printed = printNumeral(numeral);
    expect(printed).toMatchObject({ text, spoken });
    expect(printed.sign + printed.degree + printed.suffix).toBe(text);
  });

  test.each([
    '',
    'VIII',
    'Vi',
    'IIII',
    'viidim',
    'vi ',
    '5',
    'b',
    'N6',
    'bb7',
    'viim7',
    'I64',
    'iiaug',
    'IIII7',
    'viiø7',
  ])('%j is no numeral', (numeral) => {
    expect(() => printNumeral(numeral)).toThrow(RangeError);
  });

  test.each([
    ['1', '1', 'one'],
    ['b2', '♭2', 'flat two'],
    ['#4', '♯4', 'sharp four'],
    ['5', '5', 'five'],
    ['b7', '♭7', 'flat seven'],
    ['8', '8', 'eight'],
  ])('the distance %s is printed %s and spoken “%s”', (distance, text, spoken) => {
    expect(printDistance(distance)).toMatchObject({ text, spoken, suffix: '' });
  });

  test.each(['', '0', '9', 'b', 'b8', '7b', '12', 'VII'])('%j is no distance', (distance) => {
    expect(() => printDistance(distance)).toThrow(RangeError);
  });
});

test('everything that a key can show can be printed', () => {
  for (const major of MAJOR_TONICS.map((tonic): Key => ({ tonic, mode: 'major' }))) {
    for (const key of [major, relativeKey(major)]) {
      expect(printKey(keyName(key)).spoken).toContain(key.mode);
      for (const note of scaleNotes(key)) {
        const chords = SUFFIXES.map(({ quality, addition }): Chord => ({
          root: note,
          quality,
          ...(addition === null ? {} : { addition }),
        }));
        for (const chord of chords.filter((each) => keyOwns(key, each))) {
          expect(printChord(chordSymbol(chord)).letter).toBe(note[0]);
          expect(printNumeral(numeralIn(chord, key)).text).not.toMatch(/o|b5/);
        }
      }
      expect(
        diatonicChart(key)
          .map(({ numeral }) => printNumeral(numeral).spoken)
          .filter((spoken) => spoken.endsWith('diminished')),
      ).toHaveLength(1);
    }
  }
});

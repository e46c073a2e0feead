import { describe, expect, test } from 'vitest';
import { chordSymbol, QUALITIES } from '../../shared-theory/chords.ts';
import { diatonicChart, numeralIn, keyOwns } from '../../shared-theory/degrees.ts';
import { keyName, relativeKey, scaleNotes } from '../../shared-theory/keys.ts';
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
    ['C5', { letter: 'C', sign: '', suffix: '5', text: 'C5', spoken: 'C five' }],
    ['Csus2', { letter: 'C', sign: '', suffix: 'sus2', text: 'Csus2', spoken: 'C sus two' }],
    ['Ebsus4', { letter: 'E', sign: '♭', suffix: 'sus4', text: 'E♭sus4', spoken: 'E flat sus four' }],
  ])('the chord %s', (symbol, printed) => {
    expect(printChord(symbol)).toEqual(printed);
  });

  test('every chord that can be built is printed from its parts, without ASCII accidentals', () => {
    for (const root of ROOTS) {
      for (const quality of QUALITIES) {
        const { letter, sign, suffix, text, spoken } = printChord(chordSymbol({ root, quality }));
        expect(letter + sign + suffix).toBe(text);
        expect(text).not.toMatch(/#|[A-G]b|dim|aug/);
        expect(spoken).toMatch(/^[A-G]( (sharp|flat))?( (minor|five|sus four|diminished|augmented|sus two))?$/);
      }
    }
  });

  test.each(['', 'H', 'Cmaj7', 'em', 'C/E', 'F♯m', 'Cconstructor'])('%j is no chord symbol of ours', (symbol) => {
    expect(() => printChord(symbol)).toThrow(RangeError);
  });
});

describe('keys', () => {
  test.each([
    ['G major', { letter: 'G', sign: '', suffix: ' major', text: 'G major', spoken: 'G major' }],
    ['F# minor', { letter: 'F', sign: '♯', suffix: ' minor', text: 'F♯ minor', spoken: 'F sharp minor' }],
    ['Gb major', { letter: 'G', sign: '♭', suffix: ' major', text: 'G♭ major', spoken: 'G flat major' }],
  ])('%s', (name, printed) => {
    expect(printKey(name)).toEqual(printed);
  });

  test.each(['', 'G', 'G Major', 'major', 'G major or so'])('%j is no name of a key', (name) => {
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
  ])('the numeral %s is printed %s and spoken “%s”', (numeral, text, spoken) => {
    const printed = printNumeral(numeral);
    expect(printed).toMatchObject({ text, spoken });
    expect(printed.sign + printed.degree + printed.suffix).toBe(text);
  });

  test.each(['', 'VIII', 'Vi', 'IIII', 'viidim', 'vi ', '5', 'b', 'N6', 'bb7'])('%j is no numeral', (numeral) => {
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
        for (const chord of QUALITIES.map((quality) => ({ root: note, quality })).filter((each) =>
          keyOwns(key, each),
        )) {
          expect(printChord(chordSymbol(chord)).letter).toBe(note[0]);
          expect(printNumeral(numeralIn(chord, key)).text).not.toContain('o');
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

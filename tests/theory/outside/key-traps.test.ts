import { Chord as TonalChord, Interval, Key as TonalKey, Note, Progression, RomanNumeral, Scale } from 'tonal';
import { describe, expect, test } from 'vitest';
import { candidateKeys } from '../../../shared-theory/candidates.ts';
import { parseChord } from '../../../shared-theory/chord-reading.ts';
import { bassNote, chordNotes, chordPitchClasses, chordSymbol } from '../../../shared-theory/chords.ts';
import { diatonicChart, keyOwns, numeralIn, spelledScale } from '../../../shared-theory/degrees.ts';
import { keySignature, majorOf, parseKeyName, scaleNotes } from '../../../shared-theory/keys.ts';
import { intervalName, intervalUp, midiPitchClass, pitchClass } from '../../../shared-theory/pitch.ts';
import { printNote, printNumeral } from '../../../shared-theory/printer.ts';

/*
 * Numerals, keys and notes on which tonal 6.4.3, which our tests use beside ours, answers otherwise than a guitar teacher would,
 * or in silence. Beside each stands what it gives and what is right (common practice). Numerals of plain triads: numeral-traps.
 */
const numerals = (chords: string, key: string, sevenths: 'natural' | 'raised-too' = 'natural') =>
  chords.split(' ').map((chord) => numeralIn(parseChord(chord), parseKeyName(key), sevenths));

describe('numerals', () => {
  test.each([
    ['C', 'C major', 'ii7 V7 Imaj7', 'D7 G7 Cmaj7', 'Dm7 G7 Cmaj7'],
    ['C', 'C major', 'vi7 ii7 V7 I', 'A7 D7 G7 C', 'Am7 Dm7 G7 C'],
    ['G', 'G major', 'iii7 IVmaj7', 'B7 Cmaj7', 'Bm7 Cmaj7'],
  ])('in %s: %s (%s) is not %s but %s', (tonic, key, numeral, wrong, right) => {
    expect(Progression.fromRomanNumerals(tonic, numeral.split(' ')).join(' ')).toBe(wrong);
    expect(numerals(right, key).join(' ')).toBe(numeral);
    const all = wrong.split(' ').every((chord) => keyOwns(parseKeyName(key), parseChord(chord)));
    expect(all).toBe(false);
  });

  test('a small numeral is minor', () => {
    expect(RomanNumeral.get('ii').chordType).toBe('');
    expect(printNumeral('ii').spoken).toBe('two minor');
  });

  test('vii°, and a flat seventh that is no degree of major', () => {
    for (const numeral of ['viidim', '♭VII']) expect(Progression.fromRomanNumerals('C', [numeral])).toEqual(['']);
    expect(numerals('Bdim Bm7b5', 'C major')).toEqual(['viio', 'viim7b5']);
    expect(keyOwns(parseKeyName('C major'), parseChord('Bb'))).toBe(false);
    expect(printNumeral('bVII').text).toBe('♭VII');
    // Where a scale has it, it is named: on the mixolydian home the flat seventh is a degree.
    const home = candidateKeys(
      ['C', 'Bb'].map((symbol) => parseChord(symbol)),
      'modes',
    ).find(({ name }) => name === 'C mixolydian');
    expect(home?.numerals).toEqual(['I', 'bVII']);
  });

  test('viiø7 names a chord that can be read', () => {
    const [named = ''] = Progression.fromRomanNumerals('C', ['viiø7']);
    expect([named, TonalChord.get(named).empty]).toEqual(['Bø7', true]);
    expect(printNumeral(numerals('Bm7b5', 'C major')[0] ?? '').text).toBe('viiø7');
    expect(chordSymbol(parseChord(named))).toBe('Bm7b5');
  });

  test('figures are no chords: I6 is no added sixth, which is written out', () => {
    expect(Progression.fromRomanNumerals('C', ['I6', 'I64'])).toEqual(['C6', 'C64']);
    expect(() => printNumeral('I6')).toThrow(RangeError);
    expect(() => printNumeral('I64')).toThrow(RangeError);
    expect(numerals('C6 C/E', 'C major')).toEqual(['Iadd6', 'I']);
  });

  test.each(['5', 'vi ', 'Vi', 'VIII', 'N6', ''])('%j is refused as a numeral', (text) => {
    expect(() => printNumeral(text)).toThrow(RangeError);
  });

  test('in a minor key they count from its own tonic; its raised seventh gives V7', () => {
    expect(Progression.toRomanNumerals('Am', ['Am', 'Dm', 'E7'])).toEqual(['m', 'm', '7']);
    expect(numerals('Am Dm Em', 'A minor')).toEqual(['i', 'iv', 'v']);
    expect(numerals('Am Dm E7', 'A minor', 'raised-too')).toEqual(['i', 'iv', 'V7']);
    expect(() => numerals('E7', 'A minor')).toThrow(RangeError);
  });

  test('what is no chord has no numeral', () => {
    expect(Progression.toRomanNumerals('C', ['H', 'B♭'])).toEqual(['H', 'VII♭']);
    expect(() => numerals('H', 'C major')).toThrow();
    // B flat is none of C major's, and is said to be none.
    expect(() => numerals('B♭', 'C major')).toThrow(/C major does not own Bb/);
  });

  test('a chord over its third keeps its numeral and its bass', () => {
    expect(Progression.toRomanNumerals('C', ['C/E', 'G/B'])).toEqual(['I', 'V']);
    expect(numerals('C/E G/B', 'C major')).toEqual(['I', 'V']);
    expect(['C/E', 'G/B'].map((symbol) => bassNote(parseChord(symbol)))).toEqual(['E', 'B']);
  });
});

describe('sevenths of minor keys', () => {
  test('with the raised seventh, degree by degree', () => {
    expect(TonalKey.minorKey('A').harmonic.chords).toEqual('AmMaj7 Bm7b5 C+maj7 Dm7 E7 Fmaj7 G#o7'.split(' '));
    // All but the third, an augmented chord with a seventh, which is none of ours.
    expect(numerals('AmMaj7 Bm7b5 Dm7 E7 Fmaj7 G#o7', 'A minor', 'raised-too')).toEqual([
      'imaj7',
      'iim7b5',
      'iv7',
      'V7',
      'VImaj7',
      'viio7',
    ]);
    expect(() => parseChord('C+maj7')).toThrow(/nearest is Caug/);
  });

  test('without it the fifth is minor, and no sixth stands for the seventh of the tonic', () => {
    expect(TonalKey.minorKey('A').natural.chords[4]).toBe('Em7');
    expect(numerals('Em7 Am7', 'A minor')).toEqual(['v7', 'i7']);
    expect(TonalKey.minorKey('A').melodic.chords[0]).toBe('Am6');
    expect(chordNotes(parseChord('AmMaj7')).join(' ')).toBe('A C E G#');
    expect(keyOwns(parseKeyName('A minor'), parseChord('Am6'), 'raised-too')).toBe(false);
  });

  test.each([
    ['D minor', 'Em7b5', 'Em7'],
    ['E minor', 'F#m7b5', 'F#m7'],
    ['A minor', 'Bm7b5', 'Bm7'],
  ])('the seventh chord on the second degree of %s is %s, not %s', (key, right, wrong) => {
    const second = TonalKey.minorKeyChords('A').filter(({ roles }) => roles.includes('ii/I'));
    const theirs = [...TonalKey.majorKey('C').secondaryDominantSupertonics, ...second.map(({ name }) => name)];
    expect(theirs).toContain(wrong);
    expect(numerals(right, key)).toEqual(['iim7b5']);
    expect(keyOwns(parseKeyName(key), parseChord(wrong), 'raised-too')).toBe(false);
  });

  test.each([
    ['F major', 'Gm7', 'Gm7b5'],
    ['G major', 'Am7', 'Am7b5'],
  ])('that of %s is %s, not %s', (key, right, wrong) => {
    expect(TonalKey.majorKey('C').secondaryDominantSupertonics).toContain(wrong);
    expect(numerals(right, key)).toEqual(['ii7']);
    expect(keyOwns(parseKeyName(key), parseChord(wrong))).toBe(false);
  });
});

describe('keys', () => {
  test.each(['Am', '', 'H', 'B♭'])(
    '%j is no tonic: it is refused, not a key of nothing that calls itself major',
    (tonic) => {
      expect(TonalKey.majorKey(tonic)).toMatchObject({ type: 'major', tonic: '' });
      expect(() => parseKeyName(`${tonic} major`)).toThrow(RangeError);
    },
  );

  test.each(['C maj', 'C  major', 'B♭ major', 'A natural minor', 'C'])(
    '%j is no name of a key, and is said to be none',
    (name) => {
      expect(Scale.get(name)).toMatchObject({ empty: true, notes: [] });
      expect(() => parseKeyName(name)).toThrow(RangeError);
    },
  );

  test.each([
    ['G#', 'major'],
    ['D#', 'major'],
    ['Db', 'minor'],
    ['Fb', 'major'],
  ])('nobody writes %s %s: it would need eight signs or more', (tonic, mode) => {
    const theirs = mode === 'major' ? TonalKey.majorKey(tonic) : TonalKey.minorKey(tonic);
    expect(Math.abs(theirs.alteration)).toBeGreaterThan(7);
    expect(() => parseKeyName(`${tonic} ${mode}`)).toThrow(/more than seven/);
  });

  test('the signature of C major is no sign, and leads back to it', () => {
    expect(TonalKey.majorKey('C').keySignature).toBe('');
    expect(TonalKey.majorTonicFromKeySignature('')).toBeNull();
    const signature = keySignature(parseKeyName('C major'));
    expect([signature, majorOf(signature)]).toEqual([0, { tonic: 'C', mode: 'major' }]);
  });

  test('every key up to seven signs: its chords can be read, and hold no note but its own', () => {
    for (let signature = -7; signature <= 7; signature += 1) {
      const major = majorOf(signature);
      for (const key of [major, parseKeyName(`${scaleNotes(major)[5]} minor`)]) {
        const own = scaleNotes(key);
        expect(new Set(own.map((note) => note[0])).size).toBe(7);
        for (const { chord } of diatonicChart(key)) {
          const read = parseChord(chordSymbol(chord));
          expect(chordNotes(read).filter((note) => !own.includes(note))).toEqual([]);
        }
        if (key.mode === 'minor') {
          // The leading note is the seventh letter raised, with two sharps where need be.
          const [leading = ''] = spelledScale(key, true).slice(6);
          expect(chordSymbol(parseChord(`${leading}dim7`))).toBe(`${leading}dim7`);
          expect(keyOwns(key, parseChord(`${leading}dim7`), 'raised-too')).toBe(true);
        }
      }
    }
  });
});

describe('notes', () => {
  test('the fourth degree of G flat is C flat, not B', () => {
    expect(Note.simplify('Cb')).toBe('B');
    expect(scaleNotes(parseKeyName('Gb major'))[3]).toBe('Cb');
    expect(diatonicChart(parseKeyName('Gb major'))[3]?.chord.root).toBe('Cb');
  });

  test.each([
    [61, 'Db4', 'D major', 'C#'],
    [63, 'Eb4', 'E major', 'D#'],
    [66, 'Gb4', 'D major', 'F#'],
    [70, 'Bb4', 'B major', 'A#'],
  ])('MIDI note %i is not always %s: in %s it is %s', (midi, theirs, key, right) => {
    expect(Note.fromMidi(midi)).toBe(theirs);
    expect(scaleNotes(parseKeyName(key)).find((note) => pitchClass(note) === midiPitchClass(midi))).toBe(right);
  });

  test.each([-1, 60.5, 128, Number.NaN])('%d is no MIDI note, not one with a name', (midi) => {
    expect(() => midiPitchClass(midi)).toThrow(RangeError);
  });
  test('what they call those', () => {
    expect([Note.fromMidi(60.5), Note.fromMidi(128)]).toEqual(['Db4', 'Ab9']);
  });

  test.each([
    ['Cb', 11],
    ['B#', 0],
    ['E#', 5],
    ['Fb', 4],
  ])('%s sounds as %i', (note, sound) => {
    expect(Note.get(note).chroma).toBe(sound);
    expect(pitchClass(note)).toBe(sound);
  });

  test.each(['B♭', 'H', 'do', 'c', 'C4'])('%s is no note of the inside: it is refused, never empty', (note) => {
    expect(() => pitchClass(note)).toThrow(RangeError);
    expect(() => printNote(note)).toThrow(RangeError);
  });

  test('a doubled note is counted once', () => {
    expect(Note.sortedUniqNames(['C4', 'B#3', 'C4'])).toEqual(['C4', 'B#3', 'C4']);
    for (const symbol of ['Am/C', 'C/B#', 'Am7/G', 'C/D']) {
      const sounds = chordPitchClasses(parseChord(symbol));
      expect(new Set(sounds).size).toBe(sounds.length);
    }
  });
});

describe('intervals', () => {
  test('six semitones are an augmented fourth or a diminished fifth, by their letters', () => {
    expect(Interval.fromSemitones(6)).toBe('5d');
    expect(intervalName(intervalUp('F', 'B'))).toBe('A4');
    expect(intervalName(intervalUp('B', 'F'))).toBe('d5');
  });

  test('C sharp and D flat are a second apart, not one note', () => {
    expect(Interval.distance('C#', 'Db')).toBe('2d');
    expect(intervalUp('C#', 'Db')).toEqual({ steps: 1, semitones: 0 });
    expect(intervalName(intervalUp('Ab', 'C'))).toBe('M3');
  });

  test('no name is made up for what is none', () => {
    expect(() => intervalName({ steps: 0, semitones: 5 })).toThrow(RangeError);
    expect(() => intervalName({ steps: 8, semitones: 14 })).toThrow(RangeError);
  });
});

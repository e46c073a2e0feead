import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chordSymbol, SUFFIXES } from '../../shared-theory/chords.ts';
import { namesOf } from '../../shared-theory/namings/names-of.ts';
import { NAMINGS } from '../../shared-theory/printer.ts';
import { parseVamp, ReadingError, reprintedVamp } from '../../shared-theory/vamps.ts';
import { anyRoot, anyVamp } from '../support/theory-arbitraries.ts';

const written = (text: string, beats = 4) =>
  parseVamp(text, beats)
    .map(({ chord, beats: length }) => `${chordSymbol(chord)} ${length}`)
    .join(', ');

const isRead = (text: string): boolean => {
  try {
    return parseVamp(text, 4).length > 0;
  } catch (error) {
    if (error instanceof ReadingError) return false;
    throw error;
  }
};

describe('a typed vamp', () => {
  test.each([
    ['Em D', 'Em 4, D 4'],
    ['  Em   D\n', 'Em 4, D 4'],
    ['Em, D', 'Em 4, D 4'],
    ['Em - D – G', 'Em 4, D 4, G 4'],
    ['C♯m B♭', 'C#m 4, Bb 4'],
    ['Am', 'Am 4'],
    // A chord written twice is two slots; a dot holds one slot.
    ['G G', 'G 4, G 4'],
    ['| G | . |', 'G 8'],
    ['| G . D . |', 'G 2, D 2'],
    ['| Am . F G |', 'Am 2, F 1, G 1'],
    ['| Am | F . G . |', 'Am 4, F 2, G 2'],
    ['Am | F', 'Am 4, F 4'],
    // What belongs to a chord may stand apart from it.
    ['C / E  Am7 / G F', 'C/E 4, Am7/G 4, F 4'],
    ['C over E F', 'C/E 4, F 4'],
    ['| C / E . F over A . |', 'C/E 2, F/A 2'],
    ['C major, A minor', 'C 4, Am 4'],
    ['A minor/C D-Dur', 'Am/C 4, D 4'],
    ['| Gm7 . C7 . |', 'Gm7 2, C7 2'],
    ['Dm7 G7 Cmaj7', 'Dm7 4, G7 4, Cmaj7 4'],
    ['Am | F ||', 'Am 4, F 4'],
    ['|Em|D|', 'Em 4, D 4'],
    ['| G . . D | . . C . |', 'G 3, D 3, C 2'],
    ['| G | . | D . . . |', 'G 8, D 4'],
  ])('%j is %s', (text, expected) => {
    expect(written(text)).toBe(expected);
  });

  test.each([
    ['german', 'e D-Dur H7 B', 'Em 4, D 4, B7 4, Bb 4'],
    ['german', '| a moll . Es . |', 'Am 2, Eb 2'],
    ['mixed', 'Bb H', 'Bb 4, B 4'],
    ['dutch', 'Bes Es As', 'Bb 4, Eb 4, Ab 4'],
    ['fixed-do', 'Do M, Lam, Fa / La, Sol7', 'C 4, Am 4, F/A 4, G7 4'],
    ['fixed-do', '| Ля . Соль . |', 'A 2, G 2'],
  ] as const)('under %s, %j is %s', (naming, text, expected) => {
    const slots = parseVamp(text, 4, naming);
    expect(slots.map(({ chord, beats }) => `${chordSymbol(chord)} ${beats}`).join(', ')).toBe(expected);
  });

  test.each([
    ['english', 'german', 'Bb, B7 | F#m', 'B, H7 | Fism'],
    ['german', 'english', '| e . D-Dur . | H7 | . | B |', '| Em . D . | B7 | . | B♭ |'],
    ['english', 'fixed-do', 'C / E -  Am7', 'Do/Mi -  Lam7'],
    ['fixed-do', 'dutch', 'Sib  Fa/La', 'Bes  F/A'],
    // What is no chord there stays: no page fails by it.
    ['english', 'german', 'Em ? B', 'Em ? H'],
  ] as const)('from %s to %s, %j is reprinted as %j', (from, to, text, expected) => {
    expect(reprintedVamp(text, from, namesOf(to))).toBe(expected);
  });

  test('reprinted in any naming it is read as the same', () => {
    const naming = fc.constantFrom(...NAMINGS);
    const suffix = fc.constantFrom(...SUFFIXES.map((each) => each.suffix));
    const chord = fc
      .tuple(anyRoot, suffix, fc.option(anyRoot))
      .map(([root, after, bass]) => root + after + (bass === null ? '' : `/${bass}`));
    const symbols = (text: string, to: (typeof NAMINGS)[number]) =>
      parseVamp(text, 4, to).map((slot) => chordSymbol(slot.chord));
    fc.assert(
      fc.property(fc.array(chord, { minLength: 1, maxLength: 4 }), naming, naming, (chords, from, to) => {
        const text = chords.join(' ');
        // Some need a note with three signs.
        fc.pre(isRead(text));
        const typed = reprintedVamp(text, 'english', namesOf(from));
        expect(symbols(reprintedVamp(typed, from, namesOf(to)), to)).toEqual(symbols(text, 'english'));
      }),
      { numRuns: 400 },
    );
  });

  test('chords are refused in the words of their naming', () => {
    expect(() => parseVamp('C F', 4, 'fixed-do')).toThrow(/Write Do\./);
    expect(() => parseVamp(' ', 4, 'fixed-do')).toThrow(/such as Mim Re\./);
    expect(() => parseVamp('| |', 4)).toThrow(/such as Em D\./);
    expect(() => parseVamp('Em B', 4, 'mixed')).toThrow(/Bb or H/);
  });

  test('beats of the bar come from the meter', () => {
    expect(written('Em D', 3)).toBe('Em 3, D 3');
    expect(written('| G . D | C |', 3)).toBe('G 2, D 1, C 3');
    expect(written('| G D |', 2)).toBe('G 1, D 1');
    expect(() => parseVamp('Em', 0)).toThrow(RangeError);
    // A bar of seven eighths has three and a half.
    expect(written('Em D', 3.5)).toBe('Em 3.5, D 3.5');
    expect(written('| G . . D . . . |', 3.5)).toBe('G 1.5, D 2');
    expect(() => parseVamp('Em', 3.3)).toThrow(RangeError);
  });

  test.each([
    ['', 'nothing', 0, ''],
    ['  , ', 'nothing', 0, ','],
    ['||', 'nothing', 0, '||'],
    ['| |', 'nothing', 0, '| |'],
    ['Em H', 'german-h', 3, 'H'],
    ['Em  G9', 'not-ours', 5, 'G9'],
    ['| Em . C/E/G . |', 'slash-bass', 10, 'C/E/G'],
    ['Em | N.C. |', 'no-chord', 5, 'N.C.'],
    ['| Em | % |', 'same-again', 7, '%'],
    ['C / E / G', 'beat-slash', 6, '/'],
    ['| G / D / |', 'beat-slash', 8, '/'],
    ['| G / / / |', 'beat-slash', 4, '/'],
    ['C m7', 'no-letter', 2, 'm7'],
    ['Am over', 'no-letter', 3, 'over'],
    ['Em - moll', 'no-letter', 3, '- moll'],
    ['Em .', 'dot-outside-bar', 3, '.'],
    ['| . G . . |', 'nothing-to-hold', 2, '.'],
    ['| G D |', 'bar-beats', 2, 'G D'],
    ['| G . D . C |', 'bar-beats', 2, 'G . D . C'],
    ['| G | | D |', 'bar-empty', 5, '|'],
    ['| | G |', 'bar-empty', 1, '|'],
    ['|: G D :|', 'repeat-sign', 0, '|:'],
    ['| G | D :|', 'repeat-sign', 8, ':|'],
  ])('%j is refused: %s at %i', (text, fault, place, found) => {
    expect(refusal(text)).toMatchObject({ fault, place, found });
  });

  test.each([
    ['| G D |', '| G . D . |'],
    ['| G D C |', '| G D C . |'],
    ['| G . D . C |', '| G D C . |'],
    ['| G . |', '| G . . . |'],
    ['| G D C F A |', '| G D C F |'],
    ['| . . |', '| . . . . |'],
  ])('the right bar for %j is %s', (text, right) => {
    expect(refusal(text).right).toBe(right);
  });

  test('an example for dots outside of bars fits the meter', () => {
    expect(refusal('G . D .').right).toBe('| G . D . |');
    expect(written(refusal('G . D .', 3).right, 3)).toBe('G 1, D 2');
    expect(written(refusal('G . D .', 1).right, 1)).toBe('G 1');
  });

  test('64 chords are the most', () => {
    expect(parseVamp('Em '.repeat(64), 4)).toHaveLength(64);
    expect(refusal('Em '.repeat(65))).toMatchObject({ fault: 'too-long', right: '64' });
  });

  test('what a vamp is written as reads back', () => {
    fc.assert(
      fc.property(anyVamp, fc.integer({ min: 1, max: 12 }), (chords, beats) => {
        const slots = chords.map((chord) => ({ chord, beats }));
        const symbols = chords.map(chordSymbol);
        expect(parseVamp(symbols.join(' '), beats)).toEqual(slots);
        expect(parseVamp(`| ${symbols.join(' | ')} |`, beats)).toEqual(slots);
        const dotted = symbols.map((symbol) => [symbol, ...Array.from({ length: beats - 1 }, () => '.')].join(' '));
        expect(parseVamp(`| ${dotted.join(' | ')} |`, beats)).toEqual(slots);
      }),
    );
  });

  test('any text is read or refused with its place', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[ABCEm|.: #-]{0,20}$/)), (text) => {
        let error: unknown;
        try {
          expect(parseVamp(text, 4).length).toBeGreaterThan(0);
        } catch (thrown) {
          error = thrown;
        }
        if (error === undefined) return;
        expect(error).toBeInstanceOf(ReadingError);
        const { place, found } = error as ReadingError;
        expect(place).toBeGreaterThanOrEqual(0);
        expect(place).toBeLessThanOrEqual(text.length);
        expect(text).toContain(found);
      }),
    );
  });
});

function refusal(text: string, beats = 4): ReadingError {
  try {
    parseVamp(text, beats);
  } catch (error) {
    if (error instanceof ReadingError) return error;
    throw error;
  }
  throw new Error(`${JSON.stringify(text)} was read`);
}

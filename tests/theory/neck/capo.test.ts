import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chordPitchClasses, chordSymbol, readSymbol } from '../../../shared-theory/chords.ts';
import { shapeUnderCapo } from '../../../shared-theory/neck/capo.ts';
import { anySymbolChord } from '../../support/theory-arbitraries.ts';

describe('a chord under a capo', () => {
  // Common practice.
  test.each([
    [3, 'F', 'D'],
    [2, 'A', 'G'],
    [2, 'Bm', 'Am'],
    [4, 'C#m', 'Am'],
    [1, 'Ab7', 'G7'],
    [5, 'Bbmaj7', 'Fmaj7'],
    [2, 'E/G#', 'D/F#'],
    [3, 'Bb/D', 'G/B'],
    [2, 'D/E', 'C/D'],
    [0, 'Gb', 'Gb'],
  ])('capo %d, sounding %s, is the shape %s', (capo, sounding, shape) => {
    expect(shapeUnderCapo(readSymbol(sounding), capo)).toEqual({ sounding, shape, capo });
  });

  test('the shape moved up by the capo is what sounds, whatever the chord', () => {
    fc.assert(
      fc.property(anySymbolChord, fc.integer({ min: 0, max: 9 }), (chord, capo) => {
        const { sounding, shape } = shapeUnderCapo(chord, capo);
        expect(sounding).toBe(chordSymbol(chord));
        const moved = chordPitchClasses(readSymbol(shape)).map((sound) => (sound + capo) % 12);
        expect(moved).toEqual(chordPitchClasses(chord));
      }),
    );
  });

  test.each([-1, 10, 2.5])('a capo sits on no fret %d', (capo) => {
    expect(() => shapeUnderCapo(readSymbol('C'), capo)).toThrow(RangeError);
  });
});

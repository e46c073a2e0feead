import { describe, expect, test } from 'vitest';
import { parseChord } from '../../../shared-theory/chords.ts';
import { differentChords } from '../../../shared-theory/different-chords.ts';
import { candidateKeys } from '../../../shared-theory/candidates.ts';
import { numeralsIn } from '../../../shared-theory/degrees.ts';
import { numeralAsk } from '../../../shared-theory/questions/numeral/ask.ts';
import { withAdditions } from '../../../shared-theory/questions/numeral/additions.ts';
import { SETTINGS } from './given.ts';

const different = (text: string) => differentChords(text.split(' ').map((symbol) => parseChord(symbol)));
const full = (text: string, numerals: string) => withAdditions(numerals.split(' '), different(text)).join(' ');

describe('numerals with what more their chords have', () => {
  // Common practice.
  test.each([
    ['Bm7b5 E7 Am', 'iio V i', 'iim7b5 V7 i'],
    ['Dm7 G7 Cmaj7', 'ii V I', 'ii7 V7 Imaj7'],
    ['G#dim7 Am', 'viio i', 'viio7 i'],
    ['Em D', 'vi V', 'vi V'],
    ['C/E F G7 C', 'I IV V', 'I IV V7'],
    ['Cadd9 F6', 'I IV', 'Iadd9 IVadd6'],
    // C6 read from A is no sixth chord.
    ['C6 F', 'vi IV', 'vi IV'],
    // One numeral for each bar: what stands behind the different chords is left alone.
    ['G7 C G7', 'V I V', 'V7 I V'],
  ])('%s: %s is %s', (text, numerals, expected) => {
    expect(full(text, numerals)).toBe(expected);
  });

  test('are those of a key that owns the chords, and read as the same answer', () => {
    for (const text of ['Dm7 G7 Cmaj7', 'Bm7b5 Em7 Am7', 'Fmaj7 G7 C', 'Am7 D7 G6']) {
      const chords = different(text);
      for (const key of candidateKeys(chords, 'relatives')) {
        const written = numeralsIn(chords, key);
        const plain = numeralAsk.read(written, SETTINGS);
        expect(withAdditions(plain ?? [], chords)).toEqual(written);
      }
    }
  });
});

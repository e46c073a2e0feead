import { describe, expect, test } from 'vitest';
import { hearChord, type HeardNote } from '../../../server/listen/hearing.ts';

const C3 = 48;

function note(midi: number, amplitude = 0.8, start = 1, end = 2): HeardNote {
  return { midi, start, end, amplitude };
}

/** Notes over C3 by semitones, all equally strong. */
const over = (...semitones: readonly number[]): readonly HeardNote[] => semitones.map((above) => note(C3 + above));

describe('the quality over the bass that was heard', () => {
  test.each([
    [[0, 7, 12, 16, 19], 'major'],
    [[0, 7, 12, 15, 19], 'minor'],
    [[0, 6, 12, 15], 'diminished'],
    [[0, 4, 8, 12], 'augmented'],
    [[0, 7, 12], 'power'],
    [[0, 7, 12, 17], 'suspended'],
    [[0, 7, 14], 'suspended'],
    // A seventh beside it leaves the third what it is.
    [[0, 7, 10, 16], 'major'],
    [[0, 7, 10, 15], 'minor'],
    [[0, 7, 11, 16], 'major'],
  ] as const)('%j semitones up: %s', (semitones, quality) => {
    expect(hearChord(over(...semitones), 1, 2)).toMatchObject({ bass: C3, quality });
  });

  test('a third of a quarter of the strongest note’s strength is a third; a trace of one is none', () => {
    const with3 = (amplitude: number) => hearChord([...over(0, 7, 12), note(C3 + 16, amplitude)], 1, 2).quality;
    expect(with3(0.2)).toBe('major');
    expect(with3(0.04)).toBe('power');
  });
});

describe('the bass', () => {
  test('a weak note under the lowest string struck is not the bass, a strong one is', () => {
    expect(hearChord([note(C3 - 5, 0.15), ...over(0, 4, 7)], 1, 2).bass).toBe(C3);
    expect(hearChord([note(C3 - 5, 0.4), ...over(0, 4, 7)], 1, 2).bass).toBe(C3 - 5);
  });

  test('under the guitar’s lowest note nothing is heard, however strong', () => {
    expect(hearChord([note(39, 0.9), note(40), note(47), note(56)], 1, 2)).toMatchObject({
      bass: 40,
      quality: 'major',
    });
  });

  test('what sounds before and after the slot does not count; a note that begins before it counts from there', () => {
    const before = note(40, 0.9, 0, 1);
    const after = note(41, 0.9, 2, 3);
    const into = note(45, 0.9, 0, 1.05);
    expect(hearChord([before, into, ...over(0, 3, 7), after], 1, 2)).toMatchObject({ bass: C3, quality: 'minor' });
  });

  test('nothing heard is nothing', () => {
    expect(hearChord([note(40, 0.9, 0, 1)], 1, 2)).toEqual({ bass: null, quality: null, sure: 0 });
  });
});

test('how sure it is grows with what tells the qualities apart', () => {
  const clear = hearChord(over(0, 4, 7), 1, 2).sure;
  const faint = hearChord([...over(0, 7), note(C3 + 4, 0.1)], 1, 2).sure;
  expect(clear).toBeGreaterThan(faint);
});

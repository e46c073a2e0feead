import * as fc from 'fast-check';
import teoria from 'teoria';
import { Interval as TonalInterval, Note } from 'tonal';
import { describe, expect, test } from 'vitest';
import {
  fifthsFromC,
  intervalName,
  intervalUp,
  invertInterval,
  midiFrequency,
  midiPitchClass,
  pitchClass,
  readNote,
  transpose,
  writeNote,
} from '../../shared-theory/pitch.ts';
import { anyRoot, ROOTS } from '../support/theory-arbitraries.ts';

describe('pitch classes of spelled notes', () => {
  // Gbb, G, G#, Cb and B# as in the chord tests of mir_eval (MIT licence); the rest arithmetic.
  test.each([
    ['Gbb', 5],
    ['G', 7],
    ['G#', 8],
    ['Cb', 11],
    ['B#', 0],
    ['E#', 5],
    ['Fb', 4],
    ['F##', 7],
    ['Bbb', 9],
    ['F###', 8],
  ])('%s is %i', (name, expected) => {
    expect(pitchClass(name)).toBe(expected);
  });

  test('the octave belongs to the letter: Cb4, B#3, B#4, E#4 and Fb4 are MIDI 59, 60, 72, 65 and 64 in tonal, and ours agree', () => {
    const notes = ['Cb4', 'B#3', 'B#4', 'E#4', 'Fb4'];
    expect(notes.map((name) => Note.midi(name))).toEqual([59, 60, 72, 65, 64]);
    expect(notes.map((name) => pitchClass(name.slice(0, -1)))).toEqual([59, 60, 72, 65, 64].map(midiPitchClass));
  });

  test('all written roots agree with tonal 6.4.3', () => {
    expect(ROOTS.map(pitchClass)).toEqual(ROOTS.map((root) => Note.chroma(root)));
  });

  test.each(['', 'H', 'do', 'c', 'bb', 'B♭', 'C4', 'C#b', 'C####', 'b7', ' C', 'C '])('%j is no note', (name) => {
    expect(() => pitchClass(name)).toThrow(RangeError);
    expect(() => pitchClass(name)).toThrow(/Not a note/);
  });

  test('a note is written as it was read, and three accidentals are the most', () => {
    for (const name of [...ROOTS, 'F##', 'Bbb', 'F###', 'Cbbb']) expect(writeNote(readNote(name))).toBe(name);
    expect(() => writeNote({ letter: 'C', alteration: 4 })).toThrow(RangeError);
    expect(() => writeNote({ letter: 'C', alteration: 0.5 })).toThrow(RangeError);
  });
});

/** Semitones and names of the intervals: Open Music Theory (Shaffer, Hughes, Moseley), page “Intervals and dyads”. */
const INTERVALS: readonly (readonly [number, readonly string[]])[] = [
  [0, ['P1', 'd2']],
  [1, ['m2', 'A1']],
  [2, ['M2', 'd3']],
  [3, ['m3', 'A2']],
  [4, ['M3', 'd4']],
  [5, ['P4', 'A3']],
  [6, ['A4', 'd5']],
  [7, ['P5', 'd6']],
  [8, ['m6', 'A5']],
  [9, ['M6', 'd7']],
  [10, ['m7', 'A6']],
  [11, ['M7', 'd8']],
  [12, ['P8', 'A7']],
];
const NAMED = INTERVALS.flatMap(([semitones, names]) =>
  names.map((name) => ({ name, semitones, steps: Number(name[1]) - 1 })),
);

describe('intervals', () => {
  test.each(NAMED)('$name has $semitones semitones', ({ name, semitones, steps }) => {
    expect(intervalName({ steps, semitones })).toBe(name);
    expect(TonalInterval.semitones(`${name[1]}${name[0]}`)).toBe(semitones);
  });

  test('an interval and its inversion add to 12 semitones and to the number 9; M turns to m, A to d, P stays (same page)', () => {
    const turned: Readonly<Record<string, string>> = { P: 'P', M: 'm', m: 'M', A: 'd', d: 'A' };
    for (const { name, semitones, steps } of NAMED) {
      const inversion = invertInterval({ steps, semitones });
      const inverted = intervalName(inversion);
      expect(semitones + inversion.semitones).toBe(12);
      expect(Number(name[1]) + Number(inverted[1])).toBe(9);
      expect(inverted[0]).toBe(turned[name[0] ?? '']);
    }
  });

  test.each([
    ['C', 'E', 'M3'],
    ['Ab', 'C', 'M3'],
    ['C#', 'Db', 'd2'],
    ['F', 'B', 'A4'],
    ['B', 'F', 'd5'],
    ['E', 'G#', 'M3'],
    ['A', 'Ab', 'd1'],
    ['G', 'G', 'P1'],
  ])('from %s up to %s is %s', (from, to, expected) => {
    expect(intervalName(intervalUp(from, to))).toBe(expected);
  });

  test('no name for six letters with no such width, nine letters, or none', () => {
    expect(() => intervalName({ steps: 5, semitones: 3 })).toThrow(RangeError);
    expect(() => intervalName({ steps: 8, semitones: 14 })).toThrow(RangeError);
    expect(() => intervalName({ steps: -1, semitones: -1 })).toThrow(RangeError);
    expect(() => intervalName({ steps: 0.5, semitones: 1 })).toThrow(RangeError);
    expect(() => invertInterval({ steps: 9, semitones: 16 })).toThrow(RangeError);
  });
});

describe('transposing keeps the letters right', () => {
  test.each([
    ['Gb', 3, 5, 'Cb'],
    ['E', 2, 4, 'G#'],
    ['C#', 2, 4, 'E#'],
    ['B', 6, 11, 'A#'],
    ['C', -1, -1, 'B'],
    ['C', -1, -2, 'Bb'],
    ['F', -3, -5, 'C'],
    ['A#', 6, 11, 'G##'],
    ['C', 7, 12, 'C'],
    ['C', 9, 16, 'E'],
  ])('%s by %i letters and %i semitones is %s', (name, steps, semitones, expected) => {
    expect(transpose(name, { steps, semitones })).toBe(expected);
  });

  test('any root by any named interval agrees with tonal 6.4.3 and back again', () => {
    fc.assert(
      fc.property(anyRoot, fc.constantFrom(...NAMED), (root, { name, semitones, steps }) => {
        const higher = transpose(root, { steps, semitones });
        expect(higher).toBe(Note.transpose(root, `${name[1]}${name[0]}`));
        expect(transpose(higher, { steps: -steps, semitones: -semitones })).toBe(root);
        expect(pitchClass(higher)).toBe((pitchClass(root) + semitones) % 12);
      }),
    );
  });

  test('nobody writes four accidentals, half a letter is none', () => {
    expect(() => transpose('B#', { steps: 0, semitones: 3 })).toThrow(RangeError);
    expect(() => transpose('C', { steps: 0.5, semitones: 1 })).toThrow(RangeError);
    expect(() => transpose('H', { steps: 1, semitones: 2 })).toThrow(RangeError);
  });
});

describe('the line of fifths', () => {
  test('the order of flats and sharps: B E A D G C F and F C G D A E B (Open Music Theory, “Key signatures”)', () => {
    expect(['Bb', 'Eb', 'Ab', 'Db', 'Gb', 'Cb', 'Fb'].map(fifthsFromC)).toEqual([-2, -3, -4, -5, -6, -7, -8]);
    expect(['F#', 'C#', 'G#', 'D#', 'A#', 'E#', 'B#'].map(fifthsFromC)).toEqual([6, 7, 8, 9, 10, 11, 12]);
  });

  test('a fifth up is one place on', () => {
    fc.assert(
      fc.property(anyRoot, (root) => {
        expect(fifthsFromC(transpose(root, { steps: 4, semitones: 7 }))).toBe(fifthsFromC(root) + 1);
      }),
    );
  });
});

describe('frequencies', () => {
  // ISO 16:1975, standard tuning frequency: A4 is 440 Hz. Guitar strings by equal temperament from it.
  test.each([
    ['A4', 69, 440],
    ['E2', 40, 82.4069],
    ['A2', 45, 110],
    ['D3', 50, 146.8324],
    ['G3', 55, 195.9977],
    ['B3', 59, 246.9417],
    ['E4', 64, 329.6276],
    ['F2', 41, 87.3071],
    ['G2', 43, 97.9989],
    ['C3', 48, 130.8128],
    ['C4', 60, 261.6256],
    ['E6', 88, 1318.5102],
  ])('%s, MIDI %i, is %f Hz, in tonal and teoria as here', (name, midi, hertz) => {
    expect(midiFrequency(midi)).toBeCloseTo(hertz, 4);
    expect(Note.midi(name)).toBe(midi);
    expect(midiFrequency(midi)).toBeCloseTo(Note.freq(name) ?? 0, 9);
    expect(midiFrequency(midi)).toBeCloseTo(teoria.note(name.toLowerCase()).fq(), 9);
  });

  test('an octave doubles, a hundredth is a cent', () => {
    expect(midiFrequency(52) / midiFrequency(40)).toBeCloseTo(2, 12);
    expect(1200 * Math.log2(midiFrequency(40.01) / midiFrequency(40))).toBeCloseTo(1, 9);
  });

  test.each([-1, 128, Number.NaN, Number.POSITIVE_INFINITY])('%d is no MIDI note', (midi) => {
    expect(() => midiFrequency(midi)).toThrow(RangeError);
    expect(() => midiPitchClass(midi)).toThrow(RangeError);
  });

  test('a pitch class needs a whole MIDI note', () => {
    expect(() => midiPitchClass(60.5)).toThrow(RangeError);
    expect([0, 11, 12, 127].map(midiPitchClass)).toEqual([0, 11, 0, 7]);
  });
});

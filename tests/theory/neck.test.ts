import { describe, expect, test } from 'vitest';
import {
  bassPitchClass,
  chordNotes,
  chordPitchClasses,
  chordSymbol,
  parseChord,
  readSymbol,
  SUFFIXES,
  type Chord,
} from '../../shared-theory/chords.ts';
import { bassOf, shapeNotes, shapesFor, shapesInPosition, usualShape, zoneNotes } from '../../shared-theory/neck.ts';
import { pitchClass } from '../../shared-theory/pitch.ts';
import type { Frets } from '../../shared-theory/vamps.ts';

const ROOTS = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
const CHORDS: readonly Chord[] = ROOTS.flatMap((root) =>
  SUFFIXES.map(({ quality, addition }) => ({ root, quality, ...(addition === null ? {} : { addition }) })),
);
/** Every triad over each of its other notes. */
const INVERSIONS: readonly Chord[] = CHORDS.filter(({ addition }) => addition === undefined).flatMap((chord) =>
  chordNotes(chord)
    .slice(1)
    .map((bass) => ({ ...chord, bass })),
);
const written = (frets: Frets) => frets.map((fret) => fret ?? 'x').join(' ');

describe('shapes on the neck', () => {
  // Common practice: the shapes of a first guitar book.
  test.each([
    ['E', '0 2 2 1 0 0'],
    ['Em', '0 2 2 0 0 0'],
    ['A', 'x 0 2 2 2 0'],
    ['Am', 'x 0 2 2 1 0'],
    ['D', 'x x 0 2 3 2'],
    ['Dm', 'x x 0 2 3 1'],
    ['G', '3 2 0 0 0 3'],
    ['C', 'x 3 2 0 1 0'],
    ['F', '1 3 3 2 1 1'],
    ['Bm', 'x 2 4 4 3 2'],
    ['F#m', '2 4 4 2 2 2'],
    ['Bb', 'x 1 3 3 3 1'],
    ['B', 'x 2 4 4 4 2'],
    ['Gm', '3 5 5 3 3 3'],
    ['C#m', 'x 4 6 6 5 4'],
    ['Eb', 'x 6 8 8 8 6'],
    ['Ab', '4 6 6 5 4 4'],
    ['E5', '0 2 2 x x x'],
    ['A5', 'x 0 2 2 x x'],
    ['Asus4', 'x 0 2 2 3 0'],
    ['Dsus2', 'x x 0 2 3 0'],
    ['Bdim', 'x 2 3 4 3 x'],
    ['Eaug', '0 3 2 1 1 0'],
  ])('%s is usually %s', (symbol, frets) => {
    expect(written(usualShape(parseChord(symbol)))).toBe(frets);
  });

  // MIDI notes that @tombatossals/chords-db 0.5.1 (MIT) lists for the same barre shapes.
  test.each([
    ['F', [41, 48, 53, 57, 60, 65]],
    ['Bb', [46, 53, 58, 62, 65]],
    ['C#m', [49, 56, 61, 64, 68]],
  ])('%s sounds %j', (symbol, midi) => {
    expect(shapeNotes(usualShape(parseChord(symbol))).map((note) => note.midi)).toEqual(midi);
  });

  test('every shape of every chord: its bass lowest, all its notes and no other, few and none twice', () => {
    for (const chord of CHORDS) {
      const wanted = chordPitchClasses(chord).toSorted((one, other) => one - other);
      const shapes = shapesFor(chord);
      expect([chordSymbol(chord), shapes.length > 0, shapes.length <= 8]).toEqual([chordSymbol(chord), true, true]);
      expect(new Set(shapes.map(written)).size).toBe(shapes.length);
      for (const frets of shapes) {
        const notes = shapeNotes(frets);
        const sounded = [...new Set(notes.map((note) => note.midi % 12))].toSorted((one, other) => one - other);
        expect([written(frets), sounded]).toEqual([written(frets), wanted]);
        expect(bassOf(frets) % 12).toBe(bassPitchClass(chord));
        expect(notes[0]?.midi).toBe(bassOf(frets));
      }
    }
  });

  test('a shape is solved once and stays the same object', () => {
    expect(shapesFor(readSymbol('Am7'))).toBe(shapesFor(readSymbol('Am7')));
    expect(usualShape(readSymbol('D/F#'))).toBe(usualShape(readSymbol('D/Gb')));
  });

  test('enharmonic roots share their shapes', () => {
    expect(shapesFor(parseChord('F#'))).toEqual(shapesFor(parseChord('Gb')));
    expect(shapesFor(parseChord('B'))).toEqual(shapesFor(parseChord('Cb')));
  });

  test('zones of a shape, low string first', () => {
    const strings = (symbol: string, zone: Parameters<typeof zoneNotes>[1]) =>
      zoneNotes(usualShape(parseChord(symbol)), zone).map((note) => note.string);
    expect(strings('G', 'all')).toEqual([6, 5, 4, 3, 2, 1]);
    expect(strings('G', 'root')).toEqual([6]);
    expect(strings('D', 'root')).toEqual([4]);
    expect(strings('D', 'other-bass')).toEqual([5]);
    expect(strings('G', 'low')).toEqual([6, 5, 4]);
    expect(strings('D', 'low')).toEqual([4, 3, 2]);
    expect(strings('C', 'high')).toEqual([3, 2, 1]);
    // Three strings of an open G hold no D, of Esus2 no F#.
    expect(strings('G', 'high')).toEqual([4, 3, 2, 1]);
    expect(strings('Esus2', 'high')).toEqual([4, 3, 2, 1]);
    expect(strings('D', 'high')).toEqual([3, 2, 1]);
    expect(strings('G', 'middle')).toEqual([5, 4, 3, 2]);
    expect(strings('E5', 'high')).toEqual([5, 4]);
    expect(strings('G', 'none')).toEqual([]);
  });

  // Common practice: the bass of a boom-chick goes from the root to the fifth below where a hand has it, else above.
  test.each([
    ['E', 5, 2],
    ['Am', 6, 0],
    ['D', 5, 0],
    ['G', 4, 0],
    ['C', 6, 3],
    ['F', 5, 3],
    ['Bm', 6, 2],
    ['G5', 5, 5],
    ['C7', 6, 3],
    ['Bm7b5', 6, 1],
    ['Bdim', 6, 1],
    ['Edim', 5, 1],
    ['Daug', 5, 1],
    ['Eaug', 5, 3],
  ])('the other bass of %s is string %d, fret %d', (symbol, string, fret) => {
    const [note, ...more] = zoneNotes(usualShape(readSymbol(symbol)), 'other-bass');
    expect([note?.string, note?.fret, more]).toEqual([string, fret, []]);
  });

  // Common practice: over another bass the foot goes to the root, or to the fifth where the hand does not reach that.
  test.each([
    ['C/E', 5, 3],
    ['C/G', 5, 3],
    ['D/F#', 4, 0],
    ['G/B', 6, 3],
    ['D/A', 4, 0],
  ])('the other bass of %s is string %d, fret %d', (symbol, string, fret) => {
    const chord = readSymbol(symbol);
    const [note] = zoneNotes(usualShape(chord), 'other-bass', pitchClass(chord.root));
    expect([note?.string, note?.fret]).toEqual([string, fret]);
  });

  test('the other bass of every shape is the chord’s fifth, or the root of a slash chord, within the hand’s reach', () => {
    for (const chord of [...CHORDS, ...INVERSIONS]) {
      // An augmented chord over its own fifth has no other one.
      if (chord.quality === 'augmented' && chord.bass !== undefined) continue;
      const root = pitchClass(chord.root);
      const fifths = chord.quality === 'diminished' ? [6] : chord.quality === 'augmented' ? [8] : [7];
      const wanted = chord.bass === undefined ? fifths : [0, ...fifths];
      for (const frets of shapesFor(chord)) {
        const [note] = zoneNotes(frets, 'other-bass', root);
        expect([written(frets), wanted.includes(((note?.midi ?? 0) - root + 120) % 12)]).toEqual([
          written(frets),
          true,
        ]);
        const fretted = [...frets, note?.fret ?? 0].filter((fret) => fret !== null && fret > 0) as number[];
        expect(Math.max(...fretted) - Math.min(...fretted)).toBeLessThanOrEqual(3);
      }
    }
  });

  test('bass and four high strings hold the whole chord in every shape, save a fifth beside an addition', () => {
    for (const chord of [...CHORDS, ...INVERSIONS]) {
      const fifth = (pitchClass(chord.root) + 7) % 12;
      const wanted = chordPitchClasses(chord).filter((sound) => chord.addition === undefined || sound !== fifth);
      for (const frets of shapesFor(chord)) {
        const notes = zoneNotes(frets, 'high').slice(-4);
        const sounded = new Set([bassOf(frets), ...notes.map((note) => note.midi)].map((midi) => midi % 12));
        expect([written(frets), wanted.filter((sound) => !sounded.has(sound))]).toEqual([written(frets), []]);
      }
    }
  });

  // Common practice: a D-form up the neck is no shape for a class.
  test.each([
    ['D', 5, ['x x 0 2 3 2', 'x 5 7 7 7 5']],
    ['Dm', 5, ['x x 0 2 3 1', 'x 5 7 7 6 5']],
    ['D5', 5, ['x 5 7 7 x x']],
    ['F', 5, ['1 3 3 2 1 1']],
    ['Eb', 5, []],
    ['Eb', 7, ['x 6 8 8 8 6']],
    ['E', 7, ['0 2 2 1 0 0', 'x 7 9 9 9 7']],
    ['D7', 5, ['x x 0 2 1 2', 'x 5 7 5 7 5']],
    ['C', 5, ['x 3 2 0 1 0', 'x 3 2 0 1 3', 'x 3 5 5 5 3']],
    ['Em', 5, ['0 2 2 0 0 0', '0 2 2 0 0 3']],
    ['D/F#', 5, ['2 x 0 2 3 2', '2 x 4 2 3 2']],
  ] as const)('%s up to fret %d is played as %j', (symbol, fret, shapes) => {
    expect(shapesInPosition(readSymbol(symbol), fret).map(written)).toEqual(shapes);
  });

  test('the low three strings of common shapes hold no third, save in G and C (common practice)', () => {
    const holdsThird = (symbol: string) => {
      const third = chordPitchClasses(parseChord(symbol))[1];
      return zoneNotes(usualShape(parseChord(symbol)), 'low').some((note) => note.midi % 12 === third);
    };
    const common = ['E', 'Em', 'A', 'Am', 'D', 'Dm', 'G', 'C', 'F', 'Bm', 'F#m'];
    expect(common.filter(holdsThird)).toEqual(['G', 'C']);
  });

  test.each([[[0, 2, 2]], [[null, null, null, null, null, null]], [[0, 2, 2, 1, 0, 25]], [[0.5, 2, 2, 1, 0, 0]]])(
    '%j is no shape',
    (frets) => {
      expect(() => shapeNotes(frets)).toThrow(RangeError);
    },
  );
});

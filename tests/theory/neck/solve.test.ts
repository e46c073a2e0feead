import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chordSymbol, readSymbol, SUFFIXES, type Chord } from '../../../shared-theory/chords.ts';
import { solveShapes } from '../../../shared-theory/neck/solve.ts';
import type { TuningId } from '../../../shared-theory/neck/tunings.ts';
import { pitchClass } from '../../../shared-theory/pitch.ts';
import type { Frets } from '../../../shared-theory/vamps.ts';

/** Notes of the open strings as players name them, lowest first, with the octave (common practice). */
const STRINGS: Readonly<Record<TuningId, string>> = {
  standard: 'E2 A2 D3 G3 B3 E4',
  'half-step-down': 'Eb2 Ab2 Db3 Gb3 Bb3 Eb4',
  'whole-step-down': 'D2 G2 C3 F3 A3 D4',
  'drop-d': 'D2 A2 D3 G3 B3 E4',
  'drop-c': 'C2 G2 C3 F3 A3 D4',
  'double-drop-d': 'D2 A2 D3 G3 B3 D4',
  'open-g': 'D2 G2 D3 G3 B3 D4',
  'open-d': 'D2 A2 D3 F#3 A3 D4',
  'open-e': 'E2 B2 E3 G#3 B3 E4',
  dadgad: 'D2 A2 D3 G3 A3 D4',
  'seven-string': 'B1 E2 A2 D3 G3 B3 E4',
  ukulele: 'G4 C4 E4 A4',
  'four-string-bass': 'E1 A1 D2 G2',
  'five-string-bass': 'B0 E1 A1 D2 G2',
};
const GUITARS = (Object.keys(STRINGS) as TuningId[]).filter((id) => !/ukulele|bass/.test(id));
const midiOf = (name: string) => pitchClass(name.slice(0, -1)) + 12 * (Number(name.slice(-1)) + 1);

/** Semitones of every chord symbol's suffix, written down a second time from the printed names of the intervals. */
const SEMITONES: Readonly<Record<string, readonly number[]>> = {
  '': [0, 4, 7],
  '7': [0, 4, 7, 10],
  maj7: [0, 4, 7, 11],
  '6': [0, 4, 7, 9],
  add9: [0, 2, 4, 7],
  m: [0, 3, 7],
  m7: [0, 3, 7, 10],
  'm(maj7)': [0, 3, 7, 11],
  m6: [0, 3, 7, 9],
  '5': [0, 7],
  sus4: [0, 5, 7],
  dim: [0, 3, 6],
  m7b5: [0, 3, 6, 10],
  dim7: [0, 3, 6, 9],
  aug: [0, 4, 8],
  sus2: [0, 2, 7],
};

/** Fingers that a shape takes: a string joins the finger of the one before it on its fret where nothing between lies lower. */
function fingers(frets: Frets): number {
  return frets.filter((fret, string) => {
    if (fret === null || fret === 0) return false;
    const before = frets.slice(0, string).findLastIndex((other) => other === fret);
    const between = frets.slice(before + 1, string);
    return before < 0 || between.some((other) => other !== null && other < fret);
  }).length;
}

function faults(chord: Chord, tuning: TuningId, capo: number, frets: Frets, leftOut: string | null): string[] {
  const strings = STRINGS[tuning].split(' ').map(midiOf);
  const played = frets.flatMap((fret, string) => (fret === null ? [] : [(strings[string] ?? 0) + capo + fret]));
  const suffix = chordSymbol({ ...chord, root: 'C' })
    .replace(/\/.*$/, '')
    .slice(1);
  const root = pitchClass(chord.root);
  const bass = pitchClass(chord.bass ?? chord.root);
  const wanted = new Set([...(SEMITONES[suffix] ?? []).map((up) => (root + up) % 12), bass]);
  if (leftOut !== null) wanted.delete(pitchClass(leftOut));
  const heard = new Set(played.map((midi) => midi % 12));
  const fretted = frets.filter((fret) => fret !== null && fret > 0) as number[];
  const first = frets.findIndex((fret) => fret !== null);
  const last = frets.findLastIndex((fret) => fret !== null);
  const checks: Readonly<Record<string, boolean>> = {
    strings: frets.length === strings.length,
    'every note': [...wanted].every((sound) => heard.has(sound)),
    'no other note': [...heard].every((sound) => wanted.has(sound)),
    'bass lowest': Math.min(...played) === played[0] && (played[0] ?? 0) % 12 === bass,
    'four frets': fretted.length === 0 || Math.max(...fretted) - Math.min(...fretted) <= 3,
    'four fingers': fingers(frets) <= 4,
    'on the neck': Math.max(0, ...fretted) <= Math.min(12, 17 - capo),
    'one string left out between at most': frets.slice(first, last).filter((fret) => fret === null).length <= 1,
    'only a perfect fifth left out': leftOut === null || (pitchClass(leftOut) - root + 12) % 12 === 7,
  };
  return Object.keys(checks).filter((check) => !checks[check]);
}

const anyTuning = fc.constantFrom(...GUITARS);
const anyRoot = fc.constantFrom('C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B');
const anyOverBass: fc.Arbitrary<Chord> = fc
  .record({ root: anyRoot, kind: fc.constantFrom(...SUFFIXES), bass: fc.option(anyRoot, { nil: undefined }) })
  .map(({ root, kind: { quality, addition }, bass }) => ({
    root,
    quality,
    ...(addition === null ? {} : { addition }),
    ...(bass === undefined || bass === root ? {} : { bass }),
  }));
const anyCapo = fc.integer({ min: 0, max: 9 });

describe('shapes solved on the neck', () => {
  test('every chord in every tuning under every capo is found as a hand can hold it, or refused with what is missing', () => {
    fc.assert(
      fc.property(anyOverBass, anyTuning, anyCapo, (chord, tuning, capo) => {
        const { shapes, refusal, leftOut } = solveShapes(chord, { tuning, capo });
        if (refusal) {
          expect([shapes, leftOut]).toEqual([[], null]);
          expect(['bass', 'notes']).toContain(refusal.reason);
          return;
        }
        expect(shapes.length).toBeGreaterThan(0);
        for (const { frets } of shapes)
          expect([chordSymbol(chord), tuning, capo, frets, faults(chord, tuning, capo, frets, leftOut)]).toEqual([
            chordSymbol(chord),
            tuning,
            capo,
            frets,
            [],
          ]);
      }),
      { numRuns: 300 },
    );
  });

  test('every chord over its root is found without a capo in every guitar tuning', () => {
    for (const tuning of GUITARS)
      for (const { quality, addition } of SUFFIXES)
        for (const root of ['C', 'Eb', 'F#', 'A']) {
          const chord: Chord = { root, quality, ...(addition === null ? {} : { addition }) };
          const { shapes, leftOut } = solveShapes(chord, { tuning });
          expect([chordSymbol(chord), tuning, shapes.length > 0]).toEqual([chordSymbol(chord), tuning, true]);
          expect(faults(chord, tuning, 0, shapes[0]?.frets ?? [], leftOut)).toEqual([]);
        }
  });

  test('shapes come by what they ask of the hand, the least first', () => {
    const costs = solveShapes(readSymbol('G7')).shapes.map(({ cost }) => cost);
    expect(costs).toEqual(costs.toSorted((one, other) => one - other));
  });

  test('a capo moves every shape with it', () => {
    fc.assert(
      fc.property(anyCapo, (capo) => {
        const roots = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
        const [one, other] = [roots[7], roots[(7 + capo) % 12]] as [string, string];
        const plain = solveShapes({ root: one, quality: 'major' }, { highestFret: 8 });
        const moved = solveShapes({ root: other, quality: 'major' }, { highestFret: 8, capo });
        expect(moved.shapes).toEqual(plain.shapes);
      }),
    );
  });

  test('the shape before draws near ones to the front', () => {
    const far = [null, 7, 9, 9, 9, 7];
    const [usual] = solveShapes(readSymbol('A')).shapes;
    const [near] = solveShapes(readSymbol('A'), { from: far }).shapes;
    const lowest = (frets: Frets | undefined) =>
      Math.min(...(frets ?? []).filter((fret) => fret !== null && fret > 0).map(Number));
    expect(Math.abs(lowest(near?.frets) - 7)).toBeLessThan(Math.abs(lowest(usual?.frets) - 7));
    // Near the nut the usual shape stays.
    expect(solveShapes(readSymbol('A'), { from: [0, 2, 2, 1, 0, 0] }).shapes[0]).toEqual(usual);
  });
});

describe('what cannot be played', () => {
  test('a ukulele has no low bass, a bass plays one note at a time', () => {
    const refusal = (tuning: TuningId) => solveShapes(readSymbol('C'), { tuning }).refusal;
    expect(refusal('ukulele')).toEqual({ reason: 'no-low-bass', tuning: 'ukulele' });
    expect(refusal('four-string-bass')).toEqual({ reason: 'one-note-at-a-time', tuning: 'four-string-bass' });
    expect(refusal('five-string-bass')).toEqual({ reason: 'one-note-at-a-time', tuning: 'five-string-bass' });
  });

  test('open strings alone hold neither the C of A minor 7 over E nor a bass for Eb', () => {
    expect(solveShapes(readSymbol('Am7/E'), { highestFret: 0 }).refusal).toEqual({ reason: 'notes', missing: ['C'] });
    expect(solveShapes(readSymbol('Eb'), { highestFret: 0 }).refusal).toEqual({ reason: 'bass', bass: 'Eb' });
  });

  test('a fifth is left out only where nothing else is playable, and named', () => {
    const { shapes, leftOut } = solveShapes(readSymbol('Ab7'), { highestFret: 3 });
    expect([leftOut, shapes[0]?.frets]).toEqual(['Eb', [null, null, null, 1, 1, 2]]);
    expect(solveShapes(readSymbol('Ab7')).leftOut).toBeNull();
  });

  test.each([
    [{ capo: 10 }, /capo sits on fret 1 to 9/],
    [{ capo: 1.5 }, /capo/],
    [{ highestFret: 13 }, /highest fret is 0 to 12/],
    [{ capo: 9, highestFret: 9 }, /0 to 8 from a capo on 9/],
    [{ from: [0, 2, 2] }, /3 strings; this guitar has 6/],
  ])('%j is no request', (request, message) => {
    expect(() => solveShapes(readSymbol('C'), request)).toThrow(message);
  });
});

import { describe, expect, test } from 'vitest';
import { readSymbol } from '../../../shared-theory/chords.ts';
import { cribShapes } from '../../../shared-theory/crib/shapes.ts';
import type { TuningId } from '../../../shared-theory/neck/tunings.ts';
import { solveShapes } from '../../../shared-theory/neck/solve.ts';
import type { Frets } from '../../../shared-theory/vamps.ts';

const written = (frets: Frets | null) => (frets ?? []).map((fret) => fret ?? 'x').join('');

function played(chords: string, tuning: TuningId = 'standard', capo = 0): string {
  const shapes = cribShapes(chords.split(' ').map(readSymbol), { tuning, capo });
  return shapes.map(({ frets }) => written(frets)).join(' ');
}

// Common practice: the usual shape stays usual, whatever came before; a barre goes to the barre beside it.
describe('chords one after the other', () => {
  test.each([
    ['G C D', '320003 x32010 xx0232'],
    ['Em C G D', '022000 x32010 320003 xx0232'],
    ['B C', 'x24442 x32010'],
    ['A E', 'x02220 022100'],
    ['A D E', 'x02220 xx0232 022100'],
    ['C#m A E B', 'x46654 x02220 022100 x24442'],
    ['Bm7b5 E7 Am', 'x2323x 020100 x02210'],
    ['E A B7', '022100 x02220 x21202'],
    ['Gb Cb Db', '244322 x24442 x46664'],
    ['F# B C#', '244322 x24442 x46664'],
    ['Fm Db Ab Eb', '133111 x46664 466544 x68886'],
    ['C Ab Bb', 'x32010 466544 x13331'],
    ['C Cm', 'x32010 x35543'],
    ['C Gm F', 'x32010 355333 133211'],
    ['Gm7 C7 Fmaj7', '353333 x35353 1x2210'],
    ['Em A', '022000 x02220'],
    ['C G/B Am F', 'x32010 x20003 x02210 133211'],
    ['G D/F# Em C', '320003 2x0232 022000 x32010'],
    ['G D7/F# Em', '320003 2x0212 022000'],
    ['Gm Eb Bb', '355333 x68886 688766'],
  ])('%s are held %s', (chords, shapes) => {
    expect(played(chords)).toBe(shapes);
  });

  test.each([
    ['Am F C G', 3, '244222 xx0232 x02220 022100'],
    ['Bb F Gm Eb', 3, '320003 xx0232 022000 x32010'],
  ])('%s with a capo on %d are held %s', (chords, capo, shapes) => {
    expect(played(chords, 'standard', capo)).toBe(shapes);
  });

  test.each([
    ['open-g', 'G C D', 'x00000 x55555 x77777'],
    ['open-d', 'D G A', '000000 555555 777777'],
    ['drop-d', 'D G A', '000232 5x0003 x02220'],
  ] as const)('in %s %s are held %s', (tuning, chords, shapes) => {
    expect(played(chords, tuning)).toBe(shapes);
  });

  test('far up the neck a chord is taken there, in a shape that is in use', () => {
    const [near] = solveShapes(readSymbol('A'), { from: [null, 7, 9, 9, 9, 7] }).shapes;
    expect(written(near?.frets ?? [])).toBe('577655');
  });

  test('the shape before takes no shape away', () => {
    const from: Frets = [3, 2, 0, 0, 0, 3];
    const costs = (shapes: readonly { readonly cost: number }[]) =>
      shapes.map(({ cost }) => cost).toSorted((one, other) => one - other);
    const plain = solveShapes(readSymbol('C'));
    expect(costs(solveShapes(readSymbol('C'), { from }).shapes)).toEqual(costs(plain.shapes));
  });
});

/** A finger that is not the index, flat over strings of one fret while a string nearer the floor is lower: its joint would press it. */
describe('what no hand holds', () => {
  test.each([
    ['Fadd9', '133213'],
    ['F#add9', '244324'],
    ['Abadd9', '466546'],
    ['F#aug', '210332'],
  ])('%s is never %s', (symbol, shape) => {
    expect(solveShapes(readSymbol(symbol)).shapes.map(({ frets }) => written(frets))).not.toContain(shape);
  });

  // Common practice: with a finger for each string the same frets are held.
  test.each([
    ['F', '133211'],
    ['B', 'x24442'],
    ['Gm', '355333'],
  ])('%s is held as %s', (symbol, shape) => {
    expect(solveShapes(readSymbol(symbol)).shapes.map(({ frets }) => written(frets))).toContain(shape);
  });
});

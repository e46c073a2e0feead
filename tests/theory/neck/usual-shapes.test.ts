import { describe, expect, test } from 'vitest';
import { readSymbol, type Addition, type Quality } from '../../../shared-theory/chords.ts';
import { shapesFor } from '../../../shared-theory/neck.ts';
import { solveShapes } from '../../../shared-theory/neck/solve.ts';
import type { Frets } from '../../../shared-theory/vamps.ts';

const written = (frets: Frets) => frets.map((fret) => fret ?? 'x').join('');

/** The shapes that guitarists take first (common practice); where several are usual, any of them. */
const USUAL = `
C x32010 | G 320003 320033 | D xx0232 | E 022100 | A x02220 | F 133211
B x24442 | Bb x13331 | Eb x68886 | Ab 466544 | F# 244322 | C# x46664
Dm xx0231 | Em 022000 | Am x02210 | Fm 133111 | Bm x24432 | F#m 244222
Gm 355333 | Cm x35543 | C#m x46654 | Bbm x13321 | G#m 466444 | Ebm x68876
E5 022xxx | A5 x022xx | D5 xx023x | G5 3x0033 355xxx | C5 x355xx | F5 133xxx
C7 x35353 | D7 xx0212 | E7 020100 022130 | F7 131211 | G7 320001 | A7 x02020 x02023 | B7 x21202
Am7 x02010 | Dm7 xx0211 | Em7 020000 022030 | Bm7 x24232 x20202 | Gm7 353333 | Cm7 x35343
Cmaj7 x32000 | Dmaj7 xx0222 | Emaj7 021100 | Fmaj7 xx3210 1x2210 | Gmaj7 320002 | Amaj7 x02120
Bm7b5 x2323x | Am7b5 x0101x | Cm7b5 x3434x | F#m7b5 2x2210 2x221x 2322xx
Bdim7 x2313x x20101 | Cdim7 x3424x | Ddim7 xx0101 | Am(maj7) x02110 | Em(maj7) 021000 | Dm(maj7) xx0221
G6 320000 | A6 x02222 | D6 xx0202 | E6 022120 | Am6 x02212 | Em6 022020 | Dm6 xx0201
Cadd9 x32030 x32033 | Gadd9 320203 | Aadd9 x02420 | Eadd9 024100 022102
Dsus2 xx0230 | Asus2 x02200 | Esus2 024400 | Csus2 x30033 x30013 x35533 | Gsus2 3x0233
Dsus4 xx0233 | Asus4 x02230 | Esus4 022200 | Csus4 x33011 | Gsus4 330013 3x0013 | Fsus4 133311
Bdim x2343x | Adim x0121x | Ddim xx0131 | Eaug 032110 | Caug x32110 | Aaug x03221 | Daug xx0332 | Gaug 321003
C/E 032010 | G/B x20033 x20003 | D/F# 2x0232 200232 | C/G 332010 3x2010 | Am/G 3x2210 | F/A x03211
D/A x00232 | A/E 002220 | E/B x22100 | F/C x33211 | Am/E 002210 | Am/C x32210 | Em/D xx0000
C/D xx0010 | C/B x22010 | G/D xx0003 xx0033 | Em/B x22000 | Dm/A x00231 | Em/G 322000 3x2000
F#aug xx4332 | Faug xx3221 | Abdim 4564xx | C#dim x4565x | Fdim 1231xx xx3101 | Bbdim x1232x
G#m7b5 4x443x | Gm7b5 3x332x | C#m7b5 x4545x | Abdim7 4x343x | Ebdim7 xx1212
Fadd9 xx3213 1x3213 | F#add9 xx4324 2x4324 | Abadd9 xx6546 4x6546 | Dadd9 x54230
Bbsus4 x13341 | C#sus4 x46674 | C#sus2 x46644 | F#sus2 2x4122 xx4122 | Fsus2 xx3011
D/C x30232 | Dm/C x30231 | A/G 3x2220 | Gm/Bb x10033 | D7/F# 2x0212 | Bm/D xx0432 | B/D# xx1442 x6444x
E/G# 4x2400 4x2100 422100 | A/C# x42220 | F/G 3x3211 | G/F 120003 1x0003 | G7/B x20001 | C/Bb x12010 | Cm/G 335543
`
  .trim()
  .split(/\s*[|\n]\s*/)
  .map((line) => {
    const [symbol = '', ...shapes] = line.split(' ');
    return { symbol, shapes };
  });

describe('the shape that comes first', () => {
  test.each(USUAL)('of $symbol is one of $shapes', ({ symbol, shapes }) => {
    expect(shapes).toContain(written(shapesFor(readSymbol(symbol))[0] ?? []));
  });

  // Common practice: the C7 near the nut has no fifth.
  test('of C7 is x32310 where the fifth may rest, and has it where every note must sound', () => {
    const first = (fifth: 'sounds' | 'may-rest') =>
      written(solveShapes(readSymbol('C7'), { fifth }).shapes[0]?.frets ?? []);
    expect([first('may-rest'), first('sounds')]).toEqual(['x32310', 'x35353']);
  });

  // Common practice: the usual shapes of the tunings themselves.
  test.each([
    ['drop-d', 'D5', ['000xxx']],
    ['drop-d', 'E5', ['222xxx']],
    ['open-g', 'G', ['x00000']],
    ['open-d', 'D', ['000000']],
    ['open-e', 'E', ['000000']],
    ['open-e', 'A', ['x02220', '555555']],
    ['half-step-down', 'Eb', ['022100']],
    ['half-step-down', 'Gb', ['320003']],
    ['whole-step-down', 'C', ['xx0232']],
    ['drop-c', 'C5', ['000xxx']],
    ['seven-string', 'B5', ['022xxxx']],
    ['open-g', 'C', ['x55555']],
    ['open-g', 'D', ['x77777']],
    ['open-d', 'G', ['555555']],
    ['open-d', 'A', ['777777']],
    ['drop-d', 'G', ['520003', '5x0003']],
    ['dadgad', 'G', ['520020', '5x0020', '5x0055']],
    ['standard', 'Cmaj7/E', ['032000']],
  ] as const)('in %s %s is played %j', (tuning, symbol, shapes) => {
    expect(shapes).toContain(written(solveShapes(readSymbol(symbol), { tuning }).shapes[0]?.frets ?? []));
  });

  // Common practice: shapes of the open position, moved up with the capo.
  test.each([
    [3, 'F', 'xx0232'],
    [2, 'A', '320003'],
    [5, 'Am', '022000'],
    [7, 'Bm', '022000'],
    [1, 'F', '022100'],
    [4, 'C#m', 'x02210'],
  ] as const)('with a capo on %d sounding %s is played %s', (capo, symbol, shape) => {
    expect(written(solveShapes(readSymbol(symbol), { capo }).shapes[0]?.frets ?? [])).toBe(shape);
  });
});

/** The E- and A-forms that every guitarist moves along the neck (common practice), by quality and addition. */
const FORMS: readonly (readonly [Quality, Addition | null, readonly string[]])[] = [
  ['major', null, ['022100', 'x02220']],
  ['minor', null, ['022000', 'x02210']],
  ['major', 'seventh', ['020100', 'x02020']],
  ['minor', 'seventh', ['020000', 'x02010']],
  ['major', 'major-seventh', ['021100', 'x02120']],
  ['suspended-fourth', null, ['022200', 'x02230']],
  ['suspended-second', null, ['x02200']],
  ['diminished', 'seventh', ['x0101x']],
];
const ROOTS = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];

describe('barres', () => {
  test.each(FORMS)('of %s %s stand in the list of their chord, up to the ninth fret', (quality, addition, forms) => {
    for (const form of forms) {
      const lowest = form.startsWith('x') ? ROOTS.indexOf('A') : ROOTS.indexOf('E');
      for (let fret = 1; fret <= 9; fret += 1) {
        const root = ROOTS[(lowest + fret) % 12] ?? '';
        const barre = Array.from(form, (sign) => (sign === 'x' ? null : Number(sign) + fret));
        const shapes = shapesFor({ root, quality, ...(addition ? { addition } : {}) }).map(written);
        expect(shapes).toContain(written(barre));
      }
    }
  });
});

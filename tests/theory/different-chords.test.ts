import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readSymbol } from '../../shared-theory/chords.ts';
import {
  chordIndices,
  differentChords,
  differentSlots,
  isSameSound,
  otherIndices,
} from '../../shared-theory/different-chords.ts';
import { anySymbolChord } from '../support/theory-arbitraries.ts';

const read = (text: string) => text.split(' ').map(readSymbol);

describe('the different chords of a loop', () => {
  // By the notes of each and the bass under them: common practice.
  test.each<[string, number[], number[], number[][]]>([
    ['C F C G', [0, 1, 0, 2], [0, 1, 0, 2], []],
    ['C C/E', [0, 0], [0, 1], []],
    ['C C/E C G', [0, 0, 0, 1], [0, 1, 0, 2], []],
    ['F#m Gbm', [0, 0], [0, 0], []],
    ['C6 Am7/C', [0, 0], [0, 0], []],
    ['G7 Bdim/G', [0, 0], [0, 0], []],
    ['Csus2 Gsus4/C', [0, 0], [0, 0], []],
    ['C6/G Am7/G', [0, 0], [0, 0], []],
    ['Caug Eaug/C', [0, 0], [0, 0], []],
    // The same notes over another bass: one chord or two.
    ['C6 Am7', [0, 1], [0, 1], [[0, 0]]],
    ['Csus2 Gsus4', [0, 1], [0, 1], [[0, 0]]],
    ['Bdim7 Ddim7', [0, 1], [0, 1], [[0, 0]]],
    ['Bdim7 Ddim7 Fdim7 Abdim7', [0, 1, 2, 3], [0, 1, 2, 3], [[0, 0, 0, 0]]],
    [
      'C6 Caug Am7 Eaug',
      [0, 1, 2, 3],
      [0, 1, 2, 3],
      [
        [0, 1, 0, 1],
        [0, 1, 2, 1],
        [0, 1, 0, 2],
      ],
    ],
    // A seventh or another third is another chord.
    ['C C7', [0, 1], [0, 1], []],
    ['C Cm', [0, 1], [0, 1], []],
    // C/A is C over another bass, and sounds as Am7: it may be put to either.
    [
      'C C/A Am7',
      [0, 0, 0],
      [0, 1, 1],
      [
        [0, 0, 1],
        [0, 1, 1],
      ],
    ],
  ])('%s: %j, another bass another chord %j, as right %j', (text, same, apart, others) => {
    const chords = read(text);
    expect(chordIndices(chords)).toEqual(same);
    expect(chordIndices(chords, { slashIsNew: true })).toEqual(apart);
    const written = (ways: readonly (readonly number[])[]) => ways.map((way) => way.join()).toSorted();
    expect(written(otherIndices(chords))).toEqual(written(others));
    expect(otherIndices(chords, { slashIsNew: true })).toEqual([]);
  });

  test('each is the first of its kind, as written', () => {
    expect(differentSlots(read('Am7/C F C6 G'))).toEqual([0, 1, 3]);
    expect(differentChords(read('Am7/C F C6 G'))).toEqual(read('Am7/C F G'));
    expect(isSameSound(readSymbol('C'), readSymbol('C/E'))).toBe(false);
  });

  test('are as many wherever a loop starts, and numbered as they come', () => {
    fc.assert(
      fc.property(
        fc.array(anySymbolChord, { minLength: 1, maxLength: 6 }),
        fc.nat(5),
        fc.boolean(),
        (loop, by, rule) => {
          const turned = [...loop.slice(by % loop.length), ...loop.slice(0, by % loop.length)];
          const numbers = (chords: typeof loop) => chordIndices(chords, { slashIsNew: rule });
          expect(new Set(numbers(turned)).size).toBe(new Set(numbers(loop)).size);
          for (const way of [numbers(loop), ...otherIndices(loop)]) {
            expect([...new Set(way)]).toEqual(Array.from({ length: new Set(way).size }, (_, index) => index));
          }
        },
      ),
    );
  });
});

import { describe, expect, test } from 'vitest';
import { chordSymbol, parseChord } from '../../shared-theory/chords.ts';
import { candidateKeys } from '../../shared-theory/candidates.ts';
import { keyOwns } from '../../shared-theory/degrees.ts';
import { LEVELS, levelOf } from '../../shared-theory/levels.ts';
import { poolOf as formPool, sameLoop } from '../../shared-theory/pools.ts';
import { voicingsOf } from '../../shared-theory/voicings.ts';
import { FORMS, type Level } from '../../shared-theory/level.ts';

/** All that a level draws, whatever its form. */
const poolOf = (level: Level) => FORMS.flatMap((form) => formPool(level, form));
const written = (level: number) => poolOf(levelOf(level)).map((loop) => loop.map(chordSymbol).join(' '));

// Common practice: chords on these roots are written with their other name.
const NOBODY_WRITES = /^(C#|D#|E#|G#|A#|B#|Fb)$|^(Db|Gb|Ab|Cb|Fb|E#|A#|B#)m$/;

describe.each(LEVELS.map((level) => [level.level, level] as const))('the pool of level %d', (_, level) => {
  const pool = poolOf(level);

  test('holds no loop twice, and more than a lesson can hear', () => {
    expect(pool.length).toBeGreaterThan(50);
    for (const [index, loop] of pool.entries()) expect(pool.findIndex((other) => sameLoop(loop, other))).toBe(index);
  });

  test('writes chords as musicians do', () => {
    const symbols = new Set(pool.flat().map(chordSymbol));
    expect([...symbols].filter((symbol) => NOBODY_WRITES.test(symbol))).toEqual([]);
  });
});

describe('loops of the pools', () => {
  test.each([
    [
      1,
      ['E', 'Em', 'C', 'E A', 'A E', 'Em Am', 'D G', 'C D', 'G A', 'G C G D', 'Am Dm Am G'],
      ['F', 'B', 'Em D', 'G Em', 'A A', 'C Am', 'E Am', 'A D A B', 'G D G D', 'A D A Dm', 'E B'],
    ],
    [
      2,
      ['E A', 'A E', 'Am Em', 'D C', 'C A', 'G G', 'Em Em', 'G D G C'],
      ['E Am', 'G Em', 'G C G Em', 'Bdim Bdim', 'C B', 'Ab Ab'],
    ],
    [
      3,
      ['E', 'Em', 'E5', 'E Em', 'Am A', 'A5 A', 'D G', 'Em A', 'Am D5', 'Gm G', 'Cm C', 'F5 Fm'],
      ['C E', 'G# G#m', 'Bdim', 'F#', 'G#m', 'Bbm', 'Bm', 'B B5', 'Em G'],
    ],
    [4, ['C', 'Em D', 'F#m', 'C Dm', 'D C', 'Bb F', 'Fm', 'C#m'], ['C C', 'C Cm', 'C E', 'Eb', 'Eb Bb']],
    [5, ['C G', 'G C', 'A Bm', 'D C', 'G Bm', 'F Em'], ['Em D', 'C E', 'Am']],
    [6, ['C Am', 'Am F', 'G D', 'Em D', 'Bm G', 'F Bb', 'Cm Bb'], ['C Bdim', 'Am Bb']],
    [
      7,
      ['Em D', 'C D', 'D C', 'A Bm', 'F Em', 'Em F', 'Am Bm', 'Bm Am', 'Bb Eb'],
      ['Am E', 'B C', 'F# B', 'Am E Am G'],
    ],
  ] as const)('level %d has %j but not %j', (level, some, none) => {
    const loops = written(level);
    for (const loop of some) expect(loops).toContain(loop);
    for (const loop of none) expect(loops).not.toContain(loop);
  });

  test('level 3 keeps to the roots E A D G C F', () => {
    expect(new Set(poolOf(levelOf(3)).flatMap((loop) => loop.map(({ root }) => root)))).toEqual(new Set('EADGCF'));
  });

  test('what the shapes of a level cannot play is left out', () => {
    // From the open E up to D is a minor seventh; from E on the seventh fret down to D a whole step.
    const chords = [parseChord('Em'), parseChord('D')];
    expect(voicingsOf(levelOf(1), chords)).toEqual([]);
    const written = voicingsOf(levelOf(4), chords).map((shapes) => shapes.map((frets) => frets.join()));
    expect(written).toContainEqual([',7,9,9,8,7', ',,0,2,3,2']);
    expect(written).not.toContainEqual(['0,2,2,0,0,0', ',,0,2,3,2']);
  });

  test('from level 4 on the chords are of one of the level’s keys', () => {
    for (const level of LEVELS.filter(({ level: number }) => number >= 4)) {
      for (const loop of poolOf(level)) {
        expect(candidateKeys(loop, 'majors').length).toBeGreaterThan(0);
        expect(level.keys.some((key) => loop.every((chord) => keyOwns(key, chord)))).toBe(true);
      }
    }
  });
});

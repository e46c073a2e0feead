import { describe, expect, test } from 'vitest';
import { chordSymbol, parseChord } from '../../shared-theory/chords.ts';
import { candidateKeys } from '../../shared-theory/candidates.ts';
import { keyOwns } from '../../shared-theory/degrees.ts';
import { parseKeyName } from '../../shared-theory/keys.ts';
import { LEVELS, levelOf } from '../../shared-theory/levels.ts';
import { addedBy, barsOf, poolOf as formPool, sameLoop } from '../../shared-theory/pools.ts';
import { pitchClass } from '../../shared-theory/pitch.ts';
import { isTonicOf, visitedKeys } from '../../shared-theory/visited-keys.ts';
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
    const firsts = new Map<string, number>();
    for (const [index, loop] of pool.entries()) {
      // The same sounds, however spelled.
      const name = loop
        .map(({ root, bass, quality, addition }) =>
          [pitchClass(root), quality, addition, pitchClass(bass ?? root)].join(),
        )
        .join(' ');
      expect(firsts.has(name)).toBe(false);
      firsts.set(name, index);
      if (index > 0) expect(sameLoop(loop, pool[index - 1] ?? [])).toBe(false);
    }
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
    [8, ['Em D', 'C D', 'F Em', 'Bb Eb'], ['Am E', 'B C', 'C G Am F']],
    [
      9,
      [
        'C G Am F',
        'G Am F C',
        'Am F C G',
        'F C G Am',
        'C Am Dm G',
        'Am G F Em',
        'G C G D',
        'C G D G',
        'Em D',
        'Eb Bb Cm Ab',
      ],
      ['C G Am E', 'C C G F', 'C G C G', 'C E Am F', 'C F Am C', 'Bdim C'],
    ],
    [
      10,
      [
        'Dm7 G7 Cmaj7',
        'Cmaj7 Am7 Dm7 G7',
        'Am7 Dm7 G7 Cmaj7',
        'A7 D7 A7 E7 D7 A7',
        'Amaj7 Bm',
        'A7 Bm',
        'Gmaj7 C6',
        'Cmaj7 Gsus4',
        'G#m7b5 C#m7 F#m7 Dmaj7',
      ],
      ['C7 D7', 'Dmaj7 G7', 'Bdim C', 'C7 G7', 'Dm7 G7 C7'],
    ],
    [
      11,
      [
        'C G/B Am G',
        'C C/E F G',
        'Am Am/G F G',
        'G D/F#',
        'C F/C',
        'Em C/E',
        'C F/C G/C F/C',
        'D A/C# Bm G',
        'A D/A',
        'G/B Am',
      ],
      ['C G Am F', 'C E/G#', 'Am E/G#', 'C C/Bb', 'C/C F', 'Am/C F', 'C Em/G', 'Dm/F G'],
    ],
    [
      12,
      [
        'Am D',
        'G F',
        'Em F',
        'C D',
        'Am G F G',
        'C Fm',
        'Fm C',
        'C Ab',
        'C Eb',
        'C D7',
        'C E7',
        'Am E',
        'D F G Gm',
        'C F Fm G',
        'Am G F E7',
        'C G Am F',
        'Am D Am G',
        'C Bb C F',
        'C Am',
      ],
      [
        'C C7',
        'C F#',
        'B D#',
        'Bdim C',
        'Dm Cm',
        // Two visitors from two places, or none that has a usual name.
        'Bm Gm D F#7',
        'Gm Ebm Bb D7',
        'C E F Fm',
        'G Dm Em Cm',
        'Fm C Gm Am',
        'Bb A G C',
        'F7 Em',
        'Bm C7',
        'Dm Eb7',
        'Am Bb7',
        'Gm Ab7',
        'C7 Bm',
        'C Bbm',
      ],
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

  test('from level 4 on the chords are of one of the level’s keys, until others come to visit', () => {
    for (const level of LEVELS.filter(({ level: number }) => number >= 4 && number <= 9)) {
      for (const loop of poolOf(level)) {
        expect(candidateKeys(loop, 'majors').length).toBeGreaterThan(0);
        expect(level.keys.some((key) => loop.every((chord) => keyOwns(key, chord)))).toBe(true);
      }
    }
  });

  test('level 10: all but the twelve-bars are of a major key; those are of no one key, three dominant sevenths', () => {
    for (const form of FORMS) {
      for (const loop of formPool(levelOf(10), form)) {
        const owned = candidateKeys(loop, 'majors').length > 0;
        expect([loop.map(chordSymbol).join(' '), owned]).toEqual([loop.map(chordSymbol).join(' '), form !== 'twelve']);
        if (form === 'twelve') expect(new Set(loop.map(chordSymbol)).size).toBe(3);
      }
    }
  });

  test('a twelve-bar lasts twelve bars, whatever its slots', () => {
    for (const loop of formPool(levelOf(10), 'twelve'))
      expect(barsOf('twelve', loop).reduce((sum, bars) => sum + bars, 0)).toBe(12);
    expect(() => barsOf('twelve', [])).toThrow(/No twelve-bar has 0 slots/);
  });

  test('level 11: every loop but a chord alone has a bass off its root; a foreign bass is a note of the key', () => {
    for (const form of FORMS) {
      for (const loop of formPool(levelOf(11), form)) {
        if (form !== 'held') expect(loop.some(({ bass }) => bass !== undefined)).toBe(true);
        expect(candidateKeys(loop, 'majors').length).toBeGreaterThan(0);
      }
    }
  });

  test('level 11: a loop opens on a root or on a major chord off it; a minor chord stands over its third in a walk down alone', () => {
    for (const form of FORMS) {
      for (const loop of formPool(levelOf(11), form)) {
        const [home] = loop;
        expect([loop.map(chordSymbol).join(' '), home?.bass === undefined || home.quality === 'major']).toEqual([
          loop.map(chordSymbol).join(' '),
          true,
        ]);
        const overThird = loop.filter(
          ({ root, bass, quality }) =>
            bass && quality === 'minor' && (pitchClass(bass) - pitchClass(root) + 12) % 12 === 3,
        );
        if (overThird.length > 0) expect(form).toBe('round');
      }
    }
  });

  test('level 12: every loop has a usual reading: a key owns it, a minor does with its seventh raised, or it visits a key whose tonic sounds', () => {
    const unread = poolOf(levelOf(12)).filter((loop) => {
      if (candidateKeys(loop, 'raised-seventh').length > 0) return false;
      const resting = visitedKeys(loop).filter(({ key }) => loop.some((chord) => isTonicOf(chord, parseKeyName(key))));
      // One visitor, or several from one place with home first.
      return !resting.some(({ key, visitors }) => {
        const [home] = loop;
        const alike = new Set(visitors.map(({ visit }) => visit)).size === 1;
        return visitors.length === 1 || (alike && home !== undefined && isTonicOf(home, parseKeyName(key)));
      });
    });
    expect(unread.map((loop) => loop.map(chordSymbol).join(' '))).toEqual([]);
  });

  test('level 12: what it adds stands beside loops that one key owns', () => {
    for (const form of ['pair', 'return', 'back', 'round'] as const) {
      const isAdded = addedBy(levelOf(12), form);
      const [added, familiar] = [true, false].map((so) =>
        formPool(levelOf(12), form).filter((loop) => isAdded(loop) === so),
      );
      expect(added?.length).toBeGreaterThan(40);
      expect(familiar?.length).toBeGreaterThan(40);
      for (const loop of familiar ?? []) expect(candidateKeys(loop, 'majors').length).toBeGreaterThan(0);
    }
  });

  test('level 12 holds all modal vamps and visitors, by their numerals from home', () => {
    const from = new Set(
      poolOf(levelOf(12)).flatMap((loop) => {
        const [home, ...others] = loop;
        return others.map((chord) => {
          const up = (pitchClass(chord.root) - pitchClass(home?.root ?? '') + 12) % 12;
          return `${home?.quality === 'minor' ? 'm' : 'M'} ${up}${chord.quality === 'minor' ? 'm' : 'M'}${chord.addition === 'seventh' ? '7' : ''}`;
        });
      }),
    );
    // Dorian i–IV, mixolydian I–bVII, phrygian i–bII, lydian I–II, aeolian i–bVII–bVI (common practice).
    for (const modal of ['m 5M', 'M 10M', 'm 1M', 'M 2M', 'm 10M', 'm 8M']) expect([...from]).toContain(modal);
    // Borrowed iv, bVI, bVII, bIII, minor v; II7 as V of V, III7 as V of vi; V of the harmonic minor (common practice).
    for (const visitor of ['M 5m', 'M 8M', 'M 3M', 'M 7m', 'M 2M7', 'M 4M7', 'm 7M', 'm 7M7'])
      expect([...from]).toContain(visitor);
  });
});

import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bluesOf, bluesOn } from '../../shared-theory/blues.ts';
import { candidateKeys } from '../../shared-theory/candidates.ts';
import { readSymbol, soundsAs } from '../../shared-theory/chords.ts';
import type { Chord } from '../../shared-theory/chords.ts';
import { keyOwns } from '../../shared-theory/degrees.ts';
import { parseKeyName } from '../../shared-theory/keys.ts';
import { pitchClass, transpose } from '../../shared-theory/pitch.ts';
import { visitedKeys } from '../../shared-theory/visited-keys.ts';
import { visitorOf } from '../../shared-theory/visitors.ts';

const chordsOf = (text: string) => text.split(' ').map((symbol) => readSymbol(symbol));
const told = (text: string) =>
  visitedKeys(chordsOf(text)).map(({ key, numerals, visitors }) => {
    const names = visitors.map(({ chord, visit, of }) => [chord, visit, ...(of ? [of] : [])].join(' '));
    return `${key} ${numerals.join('–')}: ${names.join(', ')}`;
  });

describe('visitors by their places', () => {
  // Mixture and applied chords as textbooks of harmony name them: common practice.
  test.each([
    ['C major', 'C', 'Bb', 'bVII', 'borrowed', undefined],
    ['C major', 'C', 'Bb7', 'bVII7', 'borrowed', undefined],
    ['C major', 'C', 'Bbmaj7', 'bVIImaj7', 'borrowed', undefined],
    ['C major', 'C', 'Bb5', 'bVII5', 'borrowed', undefined],
    ['C major', 'C', 'Eb', 'bIII', 'borrowed', undefined],
    ['C major', 'C', 'Ab', 'bVI', 'borrowed', undefined],
    ['C major', 'C', 'Abmaj7', 'bVImaj7', 'borrowed', undefined],
    ['C major', 'C', 'Fm', 'iv', 'borrowed', undefined],
    ['C major', 'C', 'Fm7', 'iv7', 'borrowed', undefined],
    ['C major', 'C', 'Fm6', 'ivadd6', 'borrowed', undefined],
    ['C major', 'C', 'Gm', 'v', 'borrowed', undefined],
    ['C major', 'C', 'Ddim', 'iio', 'borrowed', undefined],
    ['C major', 'C', 'Dm7b5', 'iim7b5', 'borrowed', undefined],
    ['C major', 'C', 'Bdim7', 'viio7', 'borrowed', undefined],
    ['C major', 'C', 'Cm', 'i', 'borrowed', undefined],
    ['C major', 'C', 'D', 'II', 'applied', 'V/V'],
    ['C major', 'C', 'D7', 'II7', 'applied', 'V7/V'],
    ['C major', 'C', 'E', 'III', 'applied', 'V/vi'],
    ['C major', 'C', 'E7', 'III7', 'applied', 'V7/vi'],
    ['C major', 'C', 'A7', 'VI7', 'applied', 'V7/ii'],
    ['C major', 'C', 'C7', 'I7', 'applied', 'V7/IV'],
    ['C major', 'C', 'B7', 'VII7', 'applied', 'V7/iii'],
    ['C major', 'C G', 'F#dim7', '#ivo7', 'applied', 'viio7/V'],
    ['C major', 'C G', 'F#m7b5', '#ivm7b5', 'applied', 'viim7b5/V'],
    // Between IV and I, where no V sounds.
    ['C major', 'F C', 'F#dim7', '#ivo7', 'applied', 'viio7/V'],
    ['C major', 'C Dm', 'C#dim', '#io', 'applied', 'viio/ii'],
    ['A minor', 'Am', 'D', 'IV', 'dorian', undefined],
    ['A minor', 'Am', 'D7', 'IV7', 'dorian', undefined],
    ['A minor', 'Am', 'Bm', 'ii', 'dorian', undefined],
    ['A minor', 'Am', 'Bb', 'bII', 'phrygian', undefined],
    ['A minor', 'Am', 'Bbmaj7', 'bIImaj7', 'phrygian', undefined],
    ['A minor', 'Am', 'E', 'V', 'raised-seventh', undefined],
    ['A minor', 'Am', 'E7', 'V7', 'raised-seventh', undefined],
    ['A minor', 'Am', 'G#dim', 'viio', 'raised-seventh', undefined],
    ['A minor', 'Am', 'G#dim7', 'viio7', 'raised-seventh', undefined],
    ['A minor', 'Am', 'A7', 'I7', 'applied', 'V7/iv'],
    ['A minor', 'Am', 'B7', 'II7', 'applied', 'V7/V'],
    ['A minor', 'Am', 'C7', 'III7', 'applied', 'V7/VI'],
  ] as const)('in %s beside %s: %s is %s, %s %s', (key, beside, symbol, numeral, visit, of) => {
    const chord = readSymbol(symbol);
    const parsed = parseKeyName(key);
    expect(keyOwns(parsed, chord)).toBe(false);
    const found = visitorOf(chord, parsed, [...chordsOf(beside), chord]);
    expect(found).toEqual({ chord: symbol, visit, numeral, ...(of === undefined ? {} : { of }) });
  });

  test.each([
    // A half step below nothing that sounds, a bright third on no degree, chords that nobody names from here.
    ['C major', 'C', 'F#dim'],
    ['C major', 'C', 'F#m'],
    ['C major', 'C', 'Db'],
    ['C major', 'C', 'Caug'],
    ['C major', 'F', 'Cm'],
    ['A minor', 'Am', 'A'],
    ['A minor', 'Am', 'C#m'],
    ['A minor', 'Am', 'Eb'],
  ])('in %s beside %s %s has no usual name', (key, beside, symbol) => {
    const chord = readSymbol(symbol);
    expect(visitorOf(chord, parseKeyName(key), [...chordsOf(beside), chord])).toBeNull();
  });

  test('a visitor is spelled by the key: the sixth of Db minor is Bbb, the leading note of G is F#', () => {
    expect(visitorOf(readSymbol('A'), parseKeyName('Db major'), [])?.chord).toBe('Bbb');
    expect(visitorOf(readSymbol('D#'), parseKeyName('C major'), [])?.chord).toBe('Eb');
    expect(visitorOf(readSymbol('Cdim7'), parseKeyName('C major'), chordsOf('C G'))).toMatchObject({
      chord: 'F#dim7',
      numeral: '#ivo7',
    });
  });
});

describe('keys with a visitor', () => {
  test.each([
    ['C Fm', 'C major I–iv: Fm borrowed'],
    ['D F G', 'D major I–bIII–IV: F borrowed'],
    ['C D7 G', 'C major I–II7–V: D7 applied V7/V'],
    ['C Ab Bb', 'C major I–bVI–bVII: Ab borrowed, Bb borrowed'],
    ['C E7 Am', 'C major I–III7–vi: E7 applied V7/vi'],
    ['Am E', 'A minor i–V: E raised-seventh'],
    ['Am D F', 'A minor i–IV–VI: D dorian'],
    ['Am Bb', 'A minor i–bII: Bb phrygian'],
    ['G F', 'G major I–bVII: F borrowed'],
    ['Db Fb', 'Db major I–bIII: Fb borrowed'],
    ['G#m C#', 'G# minor i–IV: C# dorian'],
    // The first chord's own key may have two visitors from two places.
    ['C E F Fm', 'C major I–III–IV–iv: E applied V/vi, Fm borrowed'],
    ['C Fm C Fm', 'C major I–iv–I–iv: Fm borrowed'],
    // The sixth and seventh of a minor rise together: one place.
    ['Am D Gm', 'G minor ii–V–i: Am dorian, D raised-seventh'],
    ['D E Am', 'A minor IV–V–i: D dorian, E raised-seventh'],
    ['Bm D E Am', 'A minor ii–IV–V–i: Bm dorian, D dorian, E raised-seventh'],
    // A minor that owns all goes before a first chord whose fifth is led to.
    ['Dm E7 Am C', 'A minor iv–V7–i–III: E7 raised-seventh'],
    ['Cm D', 'G minor iv–V: D raised-seventh'],
    // A home that sounds, with the chord as written, goes before a minor that needs another spelling.
    ['Bdim7 C', 'C major viio7–I: Bdim7 borrowed'],
    ['Bdim7 Am', 'A minor viio7–i: G#dim7 raised-seventh'],
    ['F F#dim7 C', 'C major IV–#ivo7–I: F#dim7 applied viio7/V'],
  ])('%s: first %s', (text, expected) => {
    expect(told(text)[0]).toBe(expected);
  });

  test('B C: E minor is there with its raised seventh, and E major with a bVI', () => {
    expect(told('B C')).toContain('E minor V–VI: B raised-seventh');
    expect(told('B C')).toContain('E major V–bVI: C borrowed');
  });

  test('only keys that are heard: none where neither the tonic sounds nor vi after its V', () => {
    expect(told('Am E')).toEqual([
      'A minor i–V: E raised-seventh',
      'E major iv–I: Am borrowed',
      'C major vi–III: E applied V/vi',
    ]);
    expect(told('Dm E').join()).not.toMatch(/C major|F major/);
  });

  test.each(['C7 F7 G7', 'C7 F7', 'A7 D7 E7', 'C F7 G'])('%s is a blues and nobody visits', (text) => {
    expect(visitedKeys(chordsOf(text))).toEqual([]);
    expect(bluesOf(chordsOf(text))).not.toBeNull();
  });

  test.each([
    ['C', 'one chord alone'],
    ['C G Am F', 'all owned by one key'],
    ['C F#', 'nobody has a name for the other'],
  ])('%s: %s', (text) => {
    expect(visitedKeys(chordsOf(text)).filter(({ key }) => key === 'C major')).toEqual([]);
  });

  test('at least one chord', () => {
    expect(() => visitedKeys([])).toThrow(RangeError);
  });

  const quality = fc.constantFrom('major' as const, 'minor' as const, 'diminished' as const);
  const root = fc.constantFrom(...'C Db D Eb E F F# G Ab A Bb B'.split(' '));
  const vamps: fc.Arbitrary<readonly Chord[]> = fc.array(
    fc.record({ root, quality }, { requiredKeys: ['root', 'quality'] }),
    { minLength: 2, maxLength: 4 },
  );

  test('every key owns some and not all; visitors are exactly those it does not own', () => {
    fc.assert(
      fc.property(vamps, (chords) => {
        for (const { key, numerals, visitors } of visitedKeys(chords)) {
          const parsed = parseKeyName(key);
          const strangers = chords.filter((chord) => !keyOwns(parsed, chord));
          const different = strangers.filter((one, at) => strangers.findIndex((other) => soundsAs(one, other)) === at);
          expect(numerals).toHaveLength(chords.length);
          expect(strangers.length).toBeGreaterThan(0);
          expect(strangers.length).toBeLessThan(chords.length);
          expect(visitors).toHaveLength(different.length);
          different.forEach((chord, place) => {
            const visitor = visitors[place];
            expect(visitor && soundsAs(readSymbol(visitor.chord), chord)).toBe(true);
            expect(numerals[chords.indexOf(chord)]).toBe(visitor?.numeral);
          });
          expect(candidateKeys(chords, 'relatives').map(({ name }) => name)).not.toContain(key);
        }
      }),
    );
  });

  test('a vamp moved up has the same keys moved up, with the same numerals', () => {
    const up = { steps: 1, semitones: 2 };
    fc.assert(
      fc.property(vamps, (chords) => {
        const sorted = (moved: readonly Chord[], by: number) =>
          visitedKeys(moved)
            .map(({ key, numerals }) => {
              const { tonic, mode } = parseKeyName(key);
              return `${(pitchClass(tonic) + 12 - by) % 12} ${mode} ${numerals.join(' ')}`;
            })
            .toSorted();
        const higher = chords.map((chord) => ({ ...chord, root: transpose(chord.root, up) }));
        expect(sorted(higher, 2)).toEqual(sorted(chords, 0));
      }),
    );
  });
});

describe('a blues', () => {
  // Twelve bars of I7, IV7 and V7: Open Music Theory, “Harmony in pop/rock music”.
  test.each([
    ['C7 F7 G7', 'C I7 IV7 V7'],
    ['C7 F7 C7 G7 F7 C7', 'C I7 IV7 I7 V7 IV7 I7'],
    ['A7 D7', 'A I7 IV7'],
    ['E7 B7', 'E I7 V7'],
    ['C F7 G', 'C I IV7 V'],
    ['Bb7 Eb7 F7', 'Bb I7 IV7 V7'],
  ])('%s: %s', (text, expected) => {
    const found = bluesOf(chordsOf(text));
    expect(found && [found.tonic, ...found.numerals].join(' ')).toBe(expected);
    // Never diatonic: no key under any policy owns it.
    for (const policy of ['majors', 'relatives', 'raised-seventh', 'modes'] as const)
      expect(candidateKeys(chordsOf(text), policy)).toEqual([]);
  });

  test.each(['C7', 'C7 C7', 'C F G', 'C F G7', 'C7 F', 'Dm7 G7', 'C7 F7 Am', 'C7 D7', 'Cmaj7 F7', 'Cm7 F7'])(
    '%s is none',
    (text) => {
      expect(bluesOf(chordsOf(text))).toBeNull();
    },
  );

  test('counted from another chord than the first', () => {
    expect(bluesOn('A', chordsOf('E7 A7'))?.numerals).toEqual(['V7', 'I7']);
    expect(bluesOn('D', chordsOf('E7 A7'))).toBeNull();
  });

  test('no chord at all is none', () => {
    expect(bluesOf([])).toBeNull();
  });
});

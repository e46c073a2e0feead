import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { candidateKeys, seventhsUnder } from '../../shared-theory/candidates.ts';
import { readSymbol } from '../../shared-theory/chords.ts';
import type { Chord } from '../../shared-theory/chords.ts';
import { decidersOf, holdsUnder } from '../../shared-theory/deciders.ts';
import { keyOwns } from '../../shared-theory/degrees.ts';
import { pitchClass } from '../../shared-theory/pitch.ts';
import { isolationsOf, settlingOf } from '../../shared-theory/settlers.ts';
import { POLICIES } from '../../shared-theory/truth.ts';
import type { Policy } from '../../shared-theory/truth.ts';
import { anyVamp } from '../support/theory-arbitraries.ts';

const chordsOf = (text: string) => text.split(' ').map((symbol) => readSymbol(symbol));
const under = (text: string, policy: Policy) => {
  const chords = chordsOf(text);
  const keys = candidateKeys(chords, policy);
  return {
    deciders: decidersOf(keys, policy).map(({ note, leaves }) => `${note}: ${leaves.join(', ')}`),
    settling: settlingOf(chords, keys, policy),
    isolations: isolationsOf(chords, keys, policy).map(
      ({ leaves, chords: thirds, notes, chordPair }) =>
        `${leaves.join(', ')}: ${thirds.join(' ')} | ${notes.join('+')}${chordPair.length > 0 ? ` | ${chordPair.join('+')}` : ''}`,
    ),
  };
};

describe('what leaves a key alone', () => {
  // C# minor has C#, never Db: a sheet mixes no sharps and flats in one row (common practice).
  test('is spelled as that key spells it', () => {
    const notes = under('Cdim7', 'raised-seventh').isolations.map((text) => text.replace(/:[^|]*\|/, ':'));
    expect(notes).toContain('C# minor: C#+B');
    expect(notes.join()).not.toMatch(/C# minor: [^,]*b/);
  });

  // The flat side's ii, IV, vii° and V7; the sharp side's V, iii, vii° and Imaj7 (common practice).
  test('two candidates', () => {
    expect(under('Em D', 'majors').isolations).toEqual([
      'G major: C Am D7 F#dim | C',
      'D major: A F#m Dmaj7 C#dim | C#',
    ]);
    expect(under('A Bm', 'majors').isolations).toEqual([
      'D major: G Em A7 C#dim | G',
      'A major: E C#m Amaj7 G#dim | G#',
    ]);
  });

  test('three candidates: the middle key takes both facts, two notes or its V7 or vii°', () => {
    const { isolations } = under('F Dm', 'majors');
    expect(isolations).toHaveLength(3);
    expect(isolations[1]).toBe('F major: C7 Edim | E+Bb | C+Bb');
    expect(isolations[0]).toMatch(/^Bb major: Cm Eb .*Adim \| Eb$/);
    expect(isolations[2]).toMatch(/^C major: G Em .*Bdim \| B$/);
  });

  test('C alone: the middle key by G7 or B°', () => {
    expect(under('C', 'majors').isolations[1]).toBe('C major: G7 Bdim | B+F | G+Dm');
  });

  test('relatives are left together: nothing tells them apart', () => {
    expect(under('Em D', 'relatives').isolations[0]).toBe('G major, E minor: C Am D7 F#dim | C');
  });

  test('where the raised seventh counts, it leaves a minor without its relative, by V or the note', () => {
    const { deciders, isolations } = under('Em D', 'raised-seventh');
    expect(deciders).toContain('D#: E minor');
    expect(isolations.find((line) => line.startsWith('E minor:'))).toBe('E minor: B D#dim | D#');
    expect(isolations.find((line) => line.startsWith('B minor:'))).toMatch(/F#.* \| A#$/);
  });

  test('under modes parents are told apart, with all their homes', () => {
    expect(under('Em D', 'modes').isolations.map((line) => line.split(':')[0])).toEqual([
      'E aeolian, D mixolydian',
      'E dorian, D ionian',
    ]);
  });

  test('one key, or none, has nothing to be told apart', () => {
    for (const text of ['C D', 'Am E']) {
      const { deciders, settling, isolations } = under(text, 'majors');
      expect([deciders, settling, isolations]).toEqual([[], { settlers: [], sevenths: [], open: [] }, []]);
    }
  });

  test('a seventh helps only where it throws out what its triad leaves in', () => {
    const { sevenths } = under('Em D', 'majors').settling;
    expect(sevenths).toEqual([
      { chord: 'D7', leaves: ['G major'] },
      { chord: 'Dmaj7', leaves: ['D major'] },
    ]);
  });
});

describe('in general', () => {
  test('every note and chord leaves exactly the keys it is said to, under every policy', () => {
    fc.assert(
      fc.property(anyVamp, fc.constantFrom(...POLICIES), (chords, policy) => {
        const keys = candidateKeys(chords, policy);
        const leftBy = (...thirds: readonly Chord[]) =>
          keys
            .filter((key) => thirds.every((third) => keyOwns(key, third, seventhsUnder(policy))))
            .map(({ name }) => name);
        const holding = (...notes: readonly string[]) =>
          keys
            .filter((key) => notes.every((note) => holdsUnder(key, pitchClass(note), policy)))
            .map(({ name }) => name);
        const { settlers, sevenths, open } = settlingOf(chords, keys, policy);
        for (const { chord, leaves } of [...settlers, ...sevenths]) expect(leftBy(readSymbol(chord))).toEqual(leaves);
        for (const chord of open) expect(leftBy(readSymbol(chord))).toHaveLength(keys.length);
        for (const { leaves, chords: thirds, notes, chordPair } of isolationsOf(chords, keys, policy)) {
          for (const third of thirds) expect(leftBy(readSymbol(third))).toEqual(leaves);
          if (notes.length > 0) expect(holding(...notes)).toEqual(leaves);
          if (chordPair.length > 0) expect(leftBy(...chordPair.map((each) => readSymbol(each)))).toEqual(leaves);
          // Some way is always found: a chord, two notes or two chords.
          expect(thirds.length + notes.length + chordPair.length).toBeGreaterThan(0);
        }
      }),
    );
  });

  test('of majors the outermost take one note, those between two', () => {
    fc.assert(
      fc.property(anyVamp, (chords) => {
        const found = isolationsOf(chords, candidateKeys(chords, 'majors'), 'majors');
        found.forEach(({ notes }, place) => {
          expect(notes).toHaveLength(place === 0 || place === found.length - 1 ? 1 : 2);
        });
      }),
    );
  });
});

import { describe, expect, test } from 'vitest';
import { candidateKeys } from '../../shared-theory/candidates.ts';
import { readSymbol } from '../../shared-theory/chords.ts';
import { policyChanges } from '../../shared-theory/policy-change.ts';
import type { PolicyChange } from '../../shared-theory/policy-change.ts';
import { policySentence } from '../../server/protocol/words/policy-sentences.ts';
import { policyWords } from '../../server/protocol/words/policy-words.ts';

const chordsOf = (text: string) => text.split(' ').map((symbol) => readSymbol(symbol));
const told = (change: PolicyChange): string => {
  switch (change.change) {
    case 'minor-by-raised-seventh':
    case 'minors-join-by-raised-seventh':
      return `${change.change}: ${change.keys
        .map(({ key, numerals, seventh }) => `${key} ${numerals.join('–')} by ${seventh}`)
        .join(', ')}`;
    case 'home-key-with-visitor':
    case 'home-in-a-mode':
      return `${change.change}: ${change.key} ${change.numerals.join('–')}`;
    case 'blues':
      return `blues: ${change.tonic} ${change.numerals.join('–')}`;
  }
};

describe('where the key policy changes the answer', () => {
  // Common practice: the raised seventh announces a minor home; a flat seventh degree or a major IV tells of a mode.
  test.each<[string, string[]]>([
    ['Am E', ['minor-by-raised-seventh: A minor i–V by G#']],
    ['Am G F E', ['minor-by-raised-seventh: A minor i–VII–VI–V by G#']],
    ['B C', ['minor-by-raised-seventh: E minor V–VI by D#']],
    ['C Fm', ['minor-by-raised-seventh: F minor V–i by E', 'home-key-with-visitor: C major I–iv']],
    ['D F G', ['home-key-with-visitor: D major I–bIII–IV']],
    ['Am D Gm', ['home-key-with-visitor: G minor ii–V–i']],
    ['Dm E7 Am C', ['minor-by-raised-seventh: A minor iv–V7–i–III by G#']],
    ['Bdim7 C', ['home-key-with-visitor: C major viio7–I', 'minor-by-raised-seventh: A minor viio7–III by G#']],
    ['C E F Fm', ['home-key-with-visitor: C major I–III–IV–iv']],
    ['C', ['minors-join-by-raised-seventh: F minor V by E']],
    ['Bdim G', ['minors-join-by-raised-seventh: C minor viio–V by B']],
    ['Caug', ['minor-by-raised-seventh: F minor III+ by E, A minor III+ by G#, C# minor III+ by B#']],
    ['G F', ['home-in-a-mode: G mixolydian I–bVII']],
    ['F#m B', ['home-in-a-mode: F# dorian i–IV']],
    ['Am D', ['home-in-a-mode: A dorian i–IV']],
    ['Am Bm', ['home-in-a-mode: A dorian i–ii']],
    ['F G', ['home-in-a-mode: F lydian I–II']],
    ['Em F', ['home-in-a-mode: E phrygian i–bII']],
    ['C Bb F', ['home-in-a-mode: C mixolydian I–bVII–IV']],
    ['C7 F7 G7', ['blues: C I7–IV7–V7']],
  ])('%s', (text, expected) => {
    expect(policyChanges(chordsOf(text)).map(told)).toEqual(expected);
  });

  // Relatives beside their majors are one family: no change. A parent whose own tonic sounds draws home there.
  test.each(['Em D', 'C Am', 'C G Am F', 'Am F C G', 'Dm G C', 'C Dm', 'E5 D5', 'Bdim C', 'Cmaj7', 'G#m Dm'])(
    '%s: no change',
    (text) => {
      expect(policyChanges(chordsOf(text))).toEqual([]);
    },
  );

  test('at least one chord', () => {
    expect(() => policyChanges([])).toThrow(RangeError);
  });

  test('every change is true of the candidates, and has its words', () => {
    const names = (text: string, policy: 'majors' | 'relatives' | 'raised-seventh' | 'modes') =>
      candidateKeys(chordsOf(text), policy).map(({ name }) => name);
    for (const text of ['Am E', 'C Fm', 'C', 'Caug', 'G F', 'D F G', 'C7 F7']) {
      for (const change of policyChanges(chordsOf(text))) {
        expect(policyWords[change.change]).toBeDefined();
        const majors = names(text, 'majors').length > 0;
        if (change.change === 'minor-by-raised-seventh' || change.change === 'minors-join-by-raised-seventh') {
          expect(majors).toBe(change.change === 'minors-join-by-raised-seventh');
          for (const { key } of change.keys) {
            expect(names(text, 'raised-seventh')).toContain(key);
            expect(names(text, 'relatives')).not.toContain(key);
          }
        }
        if (change.change === 'home-in-a-mode') {
          expect(names(text, 'modes')).toContain(change.key);
          expect(names(text, 'majors')).toEqual([change.parent]);
        }
        if (change.change === 'home-key-with-visitor') expect(majors).toBe(false);
      }
    }
  });
});

describe('the sentence of a visited home', () => {
  const as = (name: string) => name;
  const said = (text: string) =>
    policyChanges(chordsOf(text)).map((change) =>
      policySentence(change, { note: as, chord: as, key: as, numeral: as }),
    );

  test.each([
    ['C Fm', 'At home in C major as I–iv, with Fm borrowed from its minor.'],
    ['C Ab Bb', 'At home in C major as I–bVI–bVII, with Ab and Bb borrowed from its minor.'],
    ['C Ab Fm G', 'At home in C major as I–bVI–iv–V, with Ab and Fm borrowed from its minor.'],
    ['Am D Gm', 'At home in G minor as ii–V–i, with Am and D on its raised sixth and seventh.'],
    ['C E F Fm', 'At home in C major as I–III–IV–iv, with E and Fm as visitors.'],
    ['C D7 G E7', 'At home in C major as I–II7–V–III7, with D7 and E7 as visitors.'],
  ])('%s: %s', (text, sentence) => {
    expect(said(text).at(-1)).toBe(sentence);
  });

  test('never says that no key owns what a minor owns', () => {
    for (const text of ['C E7 Am', 'Dm E7 Am C', 'C Fm', 'Bdim7 C'])
      expect(said(text).join(' ')).not.toMatch(/no one key/);
  });
});

import { describe, expect, test } from 'vitest';
import { printCrib } from '../../../server/crib/print.ts';
import type { Policy } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';

const sheet = (text: string, policy: Policy = 'majors') =>
  printCrib(
    parseVamp(text, 4).map(({ chord }) => chord),
    policy,
  );

describe('the printed crib', () => {
  test('two keys', () => {
    expect(sheet('Em D')).toBe(`Em  D   (major keys only)

G major   vi–V
  [Em]   F♯°    G   Am   Bm    C   [D]
   vi    vii°   I   ii   iii   IV   V

D major   ii–I
  [Em]   F♯m   G    A   Bm   C♯°   [D]
   ii    iii   IV   V   vi   vii°   I

Deciding notes, and the keys they leave
  C   G major
  C♯  D major

Settlers: third chords, and the keys they leave
  C, Am, F♯°   G major
  A, F♯m, C♯°  D major

Third chords that all these keys own
  G, Bm`);
  });

  test('one key has nothing to decide', () => {
    expect(sheet('C D')).toBe(`C  D   (major keys only)

G major   IV–V
  [C]  [D]   Em   F♯°    G   Am   Bm
   IV   V    vi   vii°   I   ii   iii`);
  });

  test('no key, with the reason where the chords show one', () => {
    expect(sheet('Am E')).toBe(
      'Am  E   (major keys only)\n\nNo major key owns all of these. No major key has both C and G♯.\nA minor with its raised seventh: i–V',
    );
    expect(sheet('Am E', 'relatives')).toContain('No major key or natural minor has both C and G♯.\n');
    expect(sheet('Caug')).toBe('C+   (major keys only)\n\nNo major key owns all of these.');
    expect(sheet('Ab E', 'relatives')).toBe(
      'A♭  E   (major keys and their relative minors)\n\nNo major key and no natural minor owns all of these.',
    );
  });

  test('three keys: settlers of the same keys share a line', () => {
    expect(sheet('C Am')).toContain('  G, Em       C major, G major\n');
    expect(sheet('C Am')).not.toContain('all these keys own');
  });
});

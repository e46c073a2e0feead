import { describe, expect, test } from 'vitest';
import { sheetNames } from '../../../server/crib/names.ts';
import { printCrib } from '../../../server/crib/print.ts';
import { QUALITIES } from '../../../shared-theory/chords.ts';
import { typedCrib } from '../../../shared-theory/crib/typed.ts';
import type { Policy } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';

const sheet = (text: string, policy: Policy = 'majors', capo = 0) =>
  printCrib(
    typedCrib(parseVamp(text, 4), { policy, qualities: QUALITIES }, { tuning: 'standard', capo }),
    sheetNames(),
  );

describe('the printed crib', () => {
  test('a foreign bass counts for the keys, and its chord has one numeral', () => {
    const printed = sheet('C C/B Am F');
    expect(printed).toMatch(/^C {2}C\/B {2}Am {2}F /);
    expect(printed).toContain('numerals: I–vi–IV');
    expect(printed).toContain('keys: C major\n');
    expect(printed).not.toMatch(/^F major/m);
  });

  test('two keys: charts, shapes, safe notes and what settles it', () => {
    expect(sheet('Em D')).toContain(`Em  D   (major keys only)

G major   vi–V
  [Em]   F♯°    G   Am   Bm    C   [D]
   vi    vii°   I   ii   iii   IV   V

D major   ii–I
  [Em]   F♯m   G    A   Bm   C♯°   [D]
   ii    iii   IV   V   vi   vii°   I

Shapes
  Em  022000
  D   xx0232

Safe to solo on: E F♯ G A B D

What settles it
  leaves       sung over it  third chord
  G major      C             C, Am, F♯°, D7
  D major      C♯            A, F♯m, C♯°, Dmaj7
  all of them  E F♯ G A B D  G, Bm
`);
  });

  test('answers, with what will be heard instead, what to say and what to play', () => {
    expect(sheet('Em D')).toContain(`root: Em: E
  Em: B  The fifth is taken for the root.
    Say “Which of the two could you stop on?”
    Play Hold the chord; root and fifth by turns, ending on the root.
`);
    expect(sheet('Em D')).toContain('how far: D: distance ♭7, up\n');
    expect(sheet('Em D')).toContain('numerals: vi–V or ii–I\n');
    expect(sheet('Em D')).toContain('home: collected, never marked');
  });

  test('says nothing twice: the bass of plain chords, sevenths where there are none', () => {
    expect(sheet('Em D')).not.toMatch(/^(bass note|seventh):/m);
    expect(sheet('C/E Am')).toMatch(/^bass note: C\/E: E/m);
    expect(sheet('D7 Gmaj7')).toMatch(/^seventh: D7: leaning · Gmaj7: soft/m);
  });

  test('where no key owns all: the keys with visitors, three at most', () => {
    // Common practice: A is the V of D minor, and E minor has its raised sixth; E7 leads to A minor as V7 of vi.
    expect(sheet('Em A Dm A')).toContain(`Keys with visitors
  D minor: ii–V–i; ii: on the raised sixth; V: on the raised seventh
  A major: v–I–iv; v and iv: borrowed from the parallel minor
`);
    expect(sheet('C E7 Am G')).toContain('C major: I–III7–vi–V; III7: V7 of vi\n');
    expect(sheet('C Eb F')).toContain('C major: I–♭III–IV; ♭III: borrowed from the parallel minor\n');
    expect(sheet('Em D')).not.toContain('visitors');
    expect(sheet('C7 F7 G7')).not.toContain('visitors');
    expect(sheet('C Fm')).not.toContain('At home in');
  });

  test('right numerals have what more their chords have', () => {
    expect(sheet('Bm7b5 E7 Am')).toContain('numerals: iiø7–V7–i\n');
  });

  test('distances say no way where a bass lies off its root', () => {
    const printed = sheet('G G/B C D/F#');
    expect(printed).toContain('how far: C: distance 4 · D/F♯: distance 5\n');
    expect(printed).toContain('C: distance 5 · D/F♯: distance 4  Four and five change places.');
    // The wrong way would read as the right answer.
    expect(printed).not.toContain('on the wrong side of home');
    expect(sheet('G C D')).toContain('how far: C: distance 4, up · D: distance 5, ');
  });

  test('a wrong answer that shows nothing is said in a sentence', () => {
    expect(sheet('G C D')).toContain('  several keys  The nearest wrong answer; it shows no habit by itself.\n');
  });

  test('one key has nothing to decide', () => {
    expect(sheet('C D')).not.toContain('leaves');
  });

  test('no key, with the reason where the chords show one, and what other rules say', () => {
    expect(sheet('Am E')).toContain(
      'Am  E   (major keys only)\n\nNo major key owns all of these. No major key has both C and G♯.\n\nKeys with visitors\n  A minor: i–V; V: on the raised seventh\n  E major: iv–I; iv: borrowed from the parallel minor\n  C major: vi–III; III: V of vi\n\nNo major key owns these; A minor does with its seventh raised to G♯: i–V.\n',
    );
    expect(sheet('Am E', 'relatives')).toContain('No major key or natural minor has both C and G♯.\n');
    expect(sheet('Ab E', 'relatives')).toMatch(
      /^A♭ {2}E {3}\(major keys and their relative minors\)\n\nNo major key and no natural minor owns all of these\.\n/,
    );
  });

  test('a middle key stands alone by two notes, or by its fifth with a seventh', () => {
    expect(sheet('F Dm')).toMatch(/F major +E and B♭ together +E°, C7; C and B♭ together\n/);
  });

  test('under a capo the shape stands beside what sounds', () => {
    expect(sheet('F Dm', 'majors', 3)).toContain(
      'Shapes, frets counted from the capo\n  F   xx0232  shape D\n  Dm  x24432  shape Bm\n',
    );
  });

  test('modes are named with their numerals', () => {
    expect(sheet('G F', 'modes')).toContain('  G mixolydian  I–♭VII\n');
  });
});

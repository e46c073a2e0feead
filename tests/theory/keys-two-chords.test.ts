import { describe, expect, test } from 'vitest';
import type { Chord, Quality } from '../../shared-theory/chords.ts';
import { parseChord } from '../../shared-theory/chords.ts';
import { candidateKeys } from '../../shared-theory/candidates.ts';
import { usualKey } from '../../shared-theory/keys.ts';

/**
 * Every reading of two triads in the major keys, by arithmetic: first quality, second quality, semitones up from the first root to
 * the second, readings. What is not listed is in no major key. `M` major, `m` minor, `d` diminished.
 */
const TABLE = `
M M 2 : IV–V
M M 5 : I–IV V–I
M M 7 : I–V IV–I
M M 10 : V–IV
M m 2 : I–ii V–vi
M m 4 : I–iii IV–vi
M m 7 : V–ii
M m 9 : I–vi IV–ii V–iii
M m 11 : IV–iii
M d 4 : V–viio
M d 6 : IV–viio
M d 11 : I–viio
m M 1 : iii–IV
m M 3 : ii–IV iii–V vi–I
m M 5 : ii–V
m M 8 : iii–I vi–IV
m M 10 : ii–I vi–V
m m 2 : ii–iii
m m 5 : iii–vi vi–ii
m m 7 : ii–vi vi–iii
m m 10 : iii–ii
m d 2 : vi–viio
m d 7 : iii–viio
m d 9 : ii–viio
d M 1 : viio–I
d M 6 : viio–IV
d M 8 : viio–V
d m 3 : viio–ii
d m 5 : viio–iii
d m 10 : viio–vi
`
  .trim()
  .split('\n')
  .map((line) => line.split(' : '));
const READINGS = new Map(TABLE.map(([move = '', readings = '']) => [move, readings.split(' ')]));

const LETTER: Readonly<Partial<Record<Quality, string>>> = { major: 'M', minor: 'm', diminished: 'd' };
/** One of each quality on the same root is in one key at most; a chord with itself is not a pair. */
const SAME: ReadonlySet<string> = new Set(['M M 0', 'm m 0', 'd d 0']);

const chordOn =
  (quality: Quality) =>
  (root: number): Chord => ({ root: usualKey(`${root}M`).tonic, quality });
const TWELVE = Array.from({ length: 12 }, (_, root) => root);
const MAJ_MIN = [...TWELVE.map(chordOn('major')), ...TWELVE.map(chordOn('minor'))];
const THIRTY_SIX = [...MAJ_MIN, ...TWELVE.map(chordOn('diminished'))];

const count = (chords: readonly Chord[]) => candidateKeys(chords, 'majors').length;
const rootOf = (chord: Chord) => TWELVE.findIndex((root) => usualKey(`${root}M`).tonic === chord.root);

describe('two chords in the major keys', () => {
  test('all 36 × 36 ordered pairs of major, minor and diminished triads', () => {
    for (const first of THIRTY_SIX) {
      for (const second of THIRTY_SIX) {
        const semitones = (rootOf(second) - rootOf(first) + 12) % 12;
        const move = `${LETTER[first.quality]} ${LETTER[second.quality]} ${semitones}`;
        if (SAME.has(move)) continue;
        const found = candidateKeys([first, second], 'majors').map(({ numerals }) => numerals.join('–'));
        expect([move, found.toSorted()]).toEqual([move, (READINGS.get(move) ?? []).toSorted()]);
      }
    }
  });

  // Counted by arithmetic over all unordered pairs, triples and sets of four.
  test.each([
    ['pairs of the 24 major and minor triads', MAJ_MIN, 276, { 3: 12, 2: 48, 1: 48, 0: 168 }],
    ['pairs of the 36 with diminished', THIRTY_SIX, 630, { 3: 12, 2: 48, 1: 120, 0: 450 }],
  ] as const)('%s', (_, triads, total, expected) => {
    const counts = triads.flatMap((first, index) => triads.slice(index + 1).map((second) => count([first, second])));
    expect(counts).toHaveLength(total);
    expect(tally(counts)).toEqual(expected);
  });

  test('triples of the 24: 48 in two keys, 144 in one, 1832 in none', () => {
    const counts = MAJ_MIN.flatMap((first, i) =>
      MAJ_MIN.slice(i + 1).flatMap((second, j) =>
        MAJ_MIN.slice(i + j + 2).map((third) => count([first, second, third])),
      ),
    );
    expect(tally(counts)).toEqual({ 2: 48, 1: 144, 0: 1832 });
  });

  test('sets of four of the 24: 12 in two keys, 156 in one, 10458 in none', () => {
    const counts = MAJ_MIN.flatMap((first, i) =>
      MAJ_MIN.slice(i + 1).flatMap((second, j) =>
        MAJ_MIN.slice(i + j + 2).flatMap((third, k) =>
          MAJ_MIN.slice(i + j + k + 3).map((fourth) => count([first, second, third, fourth])),
        ),
      ),
    );
    expect(counts).toHaveLength(10626);
    expect(tally(counts)).toEqual({ 2: 12, 1: 156, 0: 10458 });
  });

  test('a pair with the home triad I of one of its keys is always open; the pairs that pin a key never hold it', () => {
    const pinned = TABLE.filter(([move = '']) => !move.includes('d') && READINGS.get(move)?.length === 1);
    expect(pinned.length).toBeGreaterThan(0);
    for (const [, readings = ''] of pinned) expect(readings.split('–')).not.toContain('I');
  });
});

function tally(counts: readonly number[]): Readonly<Record<number, number>> {
  const tallied: Record<number, number> = {};
  for (const each of counts) tallied[each] = (tallied[each] ?? 0) + 1;
  return tallied;
}

describe('loops', () => {
  // Loops of popular music as Open Music Theory names them (“Harmony in pop/rock music”); major keys by arithmetic.
  test.each([
    ['C G Am F', 'C I–V–vi–IV'],
    ['C Am F G', 'C I–vi–IV–V'],
    ['Am F C G', 'C vi–IV–I–V'],
    ['C Am Dm G', 'C I–vi–ii–V'],
    ['Am Dm G C', 'C vi–ii–V–I'],
    ['C F', 'F V–I, C I–IV'],
    ['C G', 'C I–V, G IV–I'],
    ['C Dm', 'F V–vi, C I–ii'],
    ['C D', 'G IV–V'],
    ['C Em', 'C I–iii, G IV–vi'],
    ['C Am', 'F V–iii, C I–vi, G IV–ii'],
    ['C Gm', 'F V–ii'],
    ['C Bm', 'G IV–iii'],
    ['C Bb F', 'F V–IV–I'],
    ['Em G D C', 'G vi–I–V–IV'],
    ['Am G F', 'C vi–V–IV'],
    ['Am G F E', ''],
    ['Am Dm E', ''],
    ['Dm E', ''],
    ['Am E', ''],
    ['C E', ''],
    ['F E', ''],
    ['C Eb', ''],
    ['G D Em Bm C G C D', 'G I–V–vi–iii–IV–I–IV–V'],
  ])('%s: %s', (loop, expected) => {
    const keys = candidateKeys(
      loop.split(' ').map((symbol) => parseChord(symbol)),
      'majors',
    );
    expect(keys.map(({ tonic, numerals }) => `${tonic} ${numerals.join('–')}`).join(', ')).toBe(expected);
  });

  // “Am–F–C–G can sound like VI–IV–I–V in C major, or like I–VI–III–VII in A minor” (the same page): both are named.
  test.each([
    ['Am F C G', 'vi–IV–I–V', 'i–VI–III–VII'],
    ['Am Dm G C', 'vi–ii–V–I', 'i–iv–VII–III'],
  ])('%s has both relatives', (loop, major, minor) => {
    const keys = candidateKeys(
      loop.split(' ').map((symbol) => parseChord(symbol)),
      'relatives',
    );
    expect(keys.map(({ name, numerals }) => [name, numerals.join('–')])).toEqual([
      ['C major', major],
      ['A minor', minor],
    ]);
  });
});

import { describe, expect, test } from 'vitest';
import type { Chord, Quality } from '../../../shared-theory/chords.ts';
import { chordSymbol, parseChord } from '../../../shared-theory/chords.ts';
import { distanceNumber } from '../../../shared-theory/distance-line.ts';
import { candidateKeys } from '../../../shared-theory/candidates.ts';
import { usualKey } from '../../../shared-theory/keys.ts';
import { pitchClass } from '../../../shared-theory/pitch.ts';
import { keysJudge } from '../../../shared-theory/questions/keys/judge.ts';
import { numeralAsk } from '../../../shared-theory/questions/numeral/ask.ts';
import { numeralJudge } from '../../../shared-theory/questions/numeral/judge.ts';
import { oneOrSeveralJudge } from '../../../shared-theory/questions/one-or-several/judge.ts';
import { settlerJudge } from '../../../shared-theory/questions/settler/judge.ts';
import { guitarTruth } from '../../../shared-theory/truth.ts';
import { context } from '../questions/given.ts';

/**
 * Two chords and every major key that owns both, as guitar teachers read them (common practice): first and second quality,
 * distance of the second from the first on the first one's major scale, numerals and, behind @, the distance of the key's tonic.
 */
const TABLE = `
M M 2 : IV V @5
M M 4 : I IV @1, V I @4
M M 5 : I V @1, IV I @5
M M b7 : V IV @4
M m 2 : I ii @1, V vi @4
M m 3 : I iii @1, IV vi @5
M m 5 : V ii @4
M m 6 : I vi @1, V iii @4, IV ii @5
M m 7 : IV iii @5
m M b2 : iii IV @b6
m M b3 : vi I @b3, iii V @b6, ii IV @b7
m M 4 : ii V @b7
m M b6 : vi IV @b3, iii I @b6
m M b7 : vi V @b3, ii I @b7
m m 2 : ii iii @b7
m m 4 : vi ii @b3, iii vi @b6
m m 5 : vi iii @b3, ii vi @b7
m m b7 : iii ii @b6
`
  .trim()
  .split('\n')
  .map((line) => {
    const [move = '', readings = ''] = line.split(' : ');
    return { move, readings: readings.split(', ').toSorted() };
  });
const READINGS = new Map(TABLE.map(({ move, readings }) => [move, readings]));

const TWELVE = Array.from({ length: 12 }, (_, sound) => usualKey(`${sound}M`).tonic);
const QUALITY: Readonly<Record<string, Quality>> = { M: 'major', m: 'minor' };

/** The round of chords that a teacher plays, one a bar. */
const roundOf = (chords: readonly Chord[]) => {
  const truth = guitarTruth(chords.map((chord) => ({ chord, beats: 4 })));
  return { truth, given: context(0, truth) };
};

describe('two chords of major and minor, on every root', () => {
  const moves = ['M', 'm'].flatMap((first) =>
    ['M', 'm'].flatMap((second) => Array.from({ length: 12 }, (_, up) => ({ first, second, up }))),
  );

  test.each(moves.filter(({ first, second, up }) => !(first === second && up === 0)))(
    '$first $second, $up semitones up',
    ({ first, second, up }) => {
      const readings = READINGS.get(`${first} ${second} ${distanceNumber(up)}`) ?? [];
      TWELVE.forEach((root, sound) => {
        const chords: readonly Chord[] = [
          { root, quality: QUALITY[first] ?? 'major' },
          { root: TWELVE[(sound + up) % 12] ?? '', quality: QUALITY[second] ?? 'major' },
        ];
        const { truth, given } = roundOf(chords);
        const right = numeralJudge.truth(given);
        if (readings.length === 0) {
          // A visitor is in the house: no single major key owns both. A minor may, with its seventh raised: then its numerals are right.
          expect([oneOrSeveralJudge.truth(given), keysJudge.truth(given), truth.settlers]).toEqual([null, [], []]);
          for (const { numerals } of candidateKeys(chords, 'raised-seventh'))
            expect(numeralJudge.mark(numerals, given).exact).toBe(true);
          return;
        }
        const inMajors = candidateKeys(chords, 'majors').map((key) => key.numerals);
        const numerals = readings.map((reading) => reading.replace(/ @.*/, ''));
        expect(inMajors.map(numeralAsk.key).toSorted()).toEqual(numerals.toSorted());
        expect(right).toEqual(inMajors[0]);
        for (const answer of inMajors) {
          const { exact, note } = numeralJudge.mark(answer, given);
          expect([exact, note]).toEqual([true, answer === inMajors[0] ? undefined : 'right-in-another-key']);
        }
        const tonics = truth.keys.majors.map((name) => distanceNumber(pitchClass(name.split(' ')[0] ?? '') - sound));
        expect(tonics.toSorted()).toEqual(readings.map((reading) => reading.replace(/.*@/, '')).toSorted());
        expect(oneOrSeveralJudge.truth(given)).toBe(readings.length === 1 ? 'one' : 'several');
        expect(keysJudge.truth(given)).toHaveLength(readings.length);
        // A chord and a note that settle it to each side, wherever there are sides; besides a chord that settles nothing at most.
        const left = truth.settlers.map((_, target) => settlerJudge.truth({ ...given, target })?.length);
        expect(left.filter((keys) => keys === 1)).toHaveLength(readings.length === 1 ? 0 : 4);
        expect([0, 1]).toContain(left.filter((keys) => keys === readings.length && keys > 1).length);
      });
    },
  );

  test('the four pairs that pin their key hold no I; every pair with an I is open', () => {
    for (const { readings } of TABLE) {
      const withHome = readings.some((reading) => reading.split(' ').includes('I'));
      expect(withHome && readings.length === 1).toBe(false);
    }
    const pinned = TABLE.filter(({ readings }) => readings.length === 1).flatMap(({ readings }) => readings);
    const pairs = pinned.map((reading) => reading.replace(/ @.*/, '').split(' ').toSorted().join(' '));
    expect([...new Set(pairs)].map(String).toSorted()).toEqual(['IV V', 'IV iii', 'V ii', 'ii iii']);
  });

  // Read from the first chord as home by those who play rock and modes: as right, and said to be so.
  test.each([
    ['D C', 'I bVII'],
    ['Dm G', 'i IV'],
    ['Dm Em', 'i ii'],
    ['G F', 'I bVII'],
    ['F#m B', 'i IV'],
  ])('%s as %s is counted from a modal home', (text, answer) => {
    const { given } = roundOf(text.split(' ').map((symbol) => parseChord(symbol)));
    const { exact, note } = numeralJudge.mark(answer.split(' '), given);
    expect([exact, note]).toEqual([true, 'counted-from-a-modal-home']);
  });
});

describe('worked loops', () => {
  type Row = {
    readonly loop: string;
    /** Candidate keys with the numerals of the loop, flat side first. */
    readonly keys: Readonly<Record<string, string>>;
    /** Third chords by the keys that they leave. */
    readonly thirds: Readonly<Record<string, string>>;
    /** The notes that leave only the key on the flat side, and only that on the sharp side. */
    readonly notes?: string;
  };
  // Candidates, and what each third chord leaves, as guitar teachers work them out: common practice.
  test.each<Row>([
    { loop: 'A Bm', keys: { D: 'V vi', A: 'I ii' }, thirds: { A: 'E C#m', D: 'G Em', 'D A': 'D F#m' }, notes: 'G G#' },
    { loop: 'Em D', keys: { G: 'vi V', D: 'ii I' }, thirds: { G: 'C Am', D: 'A F#m', 'G D': 'G Bm' }, notes: 'C C#' },
    { loop: 'Em Am', keys: { C: 'iii vi', G: 'vi ii' }, thirds: { C: 'F Dm', G: 'D Bm', 'C G': 'C G' }, notes: 'F F#' },
    {
      loop: 'F Dm',
      keys: { Bb: 'V iii', F: 'I vi', C: 'IV ii' },
      thirds: { Bb: 'Eb Cm', C: 'G Em', 'Bb F': 'Bb Gm', 'F C': 'C Am', F: 'Edim' },
      notes: 'Eb B',
    },
    {
      loop: 'D Bm G',
      keys: { G: 'V iii I', D: 'I vi IV' },
      thirds: { D: 'A F#m', G: 'C Am', 'G D': 'Em' },
      notes: 'C C#',
    },
    { loop: 'Bb C', keys: { F: 'IV V' }, thirds: {} },
    { loop: 'F#m B', keys: { E: 'ii V' }, thirds: {} },
    { loop: 'G F', keys: { C: 'V IV' }, thirds: {} },
    { loop: 'Am E', keys: {}, thirds: {} },
    { loop: 'C Fm', keys: {}, thirds: {} },
    { loop: 'B C', keys: {}, thirds: {} },
    { loop: 'D F G', keys: {}, thirds: {} },
  ])('$loop', ({ loop, keys, thirds, notes }) => {
    const chords = loop.split(' ').map((symbol) => parseChord(symbol));
    const { truth, given } = roundOf(chords);
    const names = Object.keys(keys);
    expect(truth.keys.majors).toEqual(names.map((tonic) => `${tonic} major`));
    for (const [place, numerals] of Object.values(keys).entries()) {
      const mark = numeralJudge.mark(numerals.split(' '), given);
      expect([mark.exact, mark.note]).toEqual([true, place === 0 ? undefined : 'right-in-another-key']);
    }
    const asked = names.length === 0 ? null : names.length === 1 ? 'one' : 'several';
    expect(oneOrSeveralJudge.truth(given)).toBe(asked);
    for (const [left, list] of Object.entries(thirds)) {
      for (const third of list.split(' ').map((symbol) => parseChord(symbol))) {
        const found = candidateKeys([...chords, third], 'majors').map(({ tonic }) => tonic);
        expect([chordSymbol(third), found.join(' ')]).toEqual([chordSymbol(third), left]);
      }
    }
    // The settlers are among the chords named, one to each side; a note to each side is the decider.
    const sides = names.length < 2 ? [] : [names[0], names.at(-1)].map((tonic) => `${tonic} major`).toSorted();
    const settling = truth.settlers.filter(({ keys: { majors } }) => majors.length === 1);
    const leftBy = (some: typeof settling) => some.flatMap(({ keys: { majors } }) => majors).toSorted();
    expect(leftBy(settling.filter(({ chord }) => chord !== null))).toEqual(sides);
    expect(leftBy(settling.filter(({ note }) => note !== null))).toEqual(sides);
    for (const { chord, note, keys: left } of truth.settlers) {
      const tonic = left.majors.map((name) => name.split(' ')[0]).join(' ');
      if (chord !== null) expect(thirds[tonic]?.split(' ')).toContain(chord);
      else expect(notes?.split(' ')[tonic === names[0] ? 0 : 1]).toBe(note);
    }
  });
});

import { Chord as TonalChord, Key as TonalKey, Progression } from 'tonal';
import { describe, expect, test } from 'vitest';
import { chordNotes, chordSymbol, parseChord } from '../../../shared-theory/chords.ts';
import { candidateKeys } from '../../../shared-theory/candidates.ts';
import { diatonicChart, keyOwns, numeralIn } from '../../../shared-theory/degrees.ts';
import { keyId, parseKeyName } from '../../../shared-theory/keys.ts';
import type { Answer } from '../../../shared-theory/questions/question.ts';
import { besideAll } from '../../../shared-theory/questions/beside.ts';
import { judgeOf } from '../../../shared-theory/questions/judges.ts';
import { guitarTruth } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';

/**
 * Places where tonal 6.4.3, which our tests use beside ours, answers otherwise than a guitar teacher would. Beside each
 * stands what it gives, so that nobody takes it for a source there, and what is right (common practice).
 */
describe('numerals to chords', () => {
  test.each([
    ['C major', 'C', 'I vi IV V', 'C A F G', 'C Am F G'],
    ['C major', 'C', 'ii V I', 'D G C', 'Dm G C'],
    ['A minor', 'A', 'i VI III VII', 'A F# C# G#', 'Am F C G'],
  ])('%s (%s): %s is not %s but %s', (key, tonic, numerals, theirs, right) => {
    expect(Progression.fromRomanNumerals(tonic, numerals.split(' ')).join(' ')).toBe(theirs);
    const chart = diatonicChart(parseKeyName(key));
    const ours = numerals.split(' ').map((each) => chart.find(({ numeral }) => numeral === each)?.chord);
    expect(ours.map((chord) => chord && chordSymbol(chord)).join(' ')).toBe(right);
    // And back: the right chords have these numerals in that key; theirs are not all of that key.
    const parsed = parseKeyName(key);
    const back = right.split(' ').map((each) => numeralIn(parseChord(each), parsed));
    expect(back.join(' ')).toBe(numerals);
    expect(theirs.split(' ').every((each) => keyOwns(parsed, parseChord(each)))).toBe(false);
  });

  test.each([
    ['C Am F G', 'C major', 'I vi IV V', 'I VIm IV V'],
    ['Dm G C', 'C major', 'ii V I', 'IIm V I'],
    ['Em D', 'G major', 'vi V', 'VIm V'],
    ['Em D', 'D major', 'ii I', 'IIm I'],
  ])('%s in %s is %s, lower case for minor, never %s', (chords, name, right, theirs) => {
    const key = parseKeyName(name);
    const list = chords.split(' ');
    expect(Progression.toRomanNumerals(key.tonic, list).join(' ')).toBe(theirs);
    const owner = candidateKeys(
      list.map((symbol) => parseChord(symbol)),
      'majors',
    ).find(({ id }) => id === keyId(key));
    expect(owner?.numerals.join(' ')).toBe(right);
  });

  test.each([
    ['C Am F G', ['I', 'vi', 'IV', 'V'], ['I', 'VI', 'IV', 'V']],
    ['Dm G C', ['ii', 'V', 'I'], ['II', 'V', 'I']],
  ])('%s: written by the teachers’ rule it is exact, without lower case it is not', (chords, right, wrong) => {
    const truth = guitarTruth(parseVamp(chords, 4), { groove: null, tempo: null, directions: null });
    const judge = judgeOf('numeral');
    const context = {
      truth,
      target: 0,
      beside: besideAll(truth),
      own: {},
      settings: { policy: 'majors', qualities: ['major', 'minor'] },
    } as const;
    const exact = (answer: Answer) => judge.mark(answer as readonly string[], context).exact;
    expect([exact(right), exact(wrong)]).toEqual([true, false]);
  });
});

describe('a chord is what was played, not what a set of notes is called first', () => {
  test.each([
    ['C', ['E', 'G', 'C'], 'Em#5'],
    ['C', ['E2', 'C3', 'G3', 'C4'], 'Em#5'],
    ['G', ['B', 'D', 'G'], 'Bm#5'],
    ['D', ['F#', 'A', 'D'], 'F#m#5'],
  ])('%s over its third, %j, is not %s', (symbol, notes, theirs) => {
    expect(TonalChord.detect(notes)[0]).toBe(theirs);
    const names = new Set(notes.map((note) => note.replace(/\d/, '')));
    expect(new Set(chordNotes(parseChord(symbol)))).toEqual(names);
    // The name they put first is none that may be typed here, so it can stand nowhere as an answer.
    expect(() => parseChord(theirs)).toThrow();
  });
});

describe('the chord on the second degree of a minor key is diminished', () => {
  test.each([
    ['D minor', 'Edim', 'Em7'],
    ['E minor', 'F#dim', 'F#m7'],
    ['A minor', 'Bdim', 'Bm7'],
  ])('%s: %s', (name, right, theirs) => {
    expect(TonalKey.majorKey('C').secondaryDominantSupertonics.concat('Bm7')).toContain(theirs);
    const second = diatonicChart(parseKeyName(name))[1];
    expect(second && [chordSymbol(second.chord), second.numeral]).toEqual([right, 'iio']);
  });

  test.each([
    ['F major', 'Gm', 'Gm7b5'],
    ['G major', 'Am', 'Am7b5'],
  ])('of %s it is minor: %s, not of the notes of %s', (name, right, theirs) => {
    expect(TonalKey.majorKey('C').secondaryDominantSupertonics).toContain(theirs);
    const second = diatonicChart(parseKeyName(name))[1];
    expect(second && [chordSymbol(second.chord), second.numeral]).toEqual([right, 'ii']);
  });
});

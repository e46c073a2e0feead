import teoria from 'teoria';
import { expect, test } from 'vitest';
import { parseChord } from '../../../shared-theory/chords.ts';
import { numeralJudge } from '../../../shared-theory/questions/numeral/judge.ts';
import { guitarTruth } from '../../../shared-theory/truth.ts';
import { MAJOR_TONICS } from '../../support/theory-arbitraries.ts';
import { context } from '../questions/given.ts';

/*
 * An independent library of music theory, teoria 2.5.0 (MIT): the scale of a major key and the notes of a chord are taken from
 * it, and a triad is the one that a degree carries where its notes are every other note of that scale.
 */
const ROMAN = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'];
const SUFFIXES = {
  '': (roman: string) => roman,
  m: (roman: string) => roman.toLowerCase(),
  dim: (roman: string) => `${roman.toLowerCase()}o`,
};
const upper = (note: string) => note[0]?.toUpperCase() + note.slice(1);
const scaleOf = (tonic: string) => teoria.scale(tonic, 'major').simple();
const notesOf = (symbol: string) => teoria.chord(symbol).simple();

/** The seven triads of a major key with their numerals, by the library. */
const chartOf = (tonic: string) => {
  const scale = scaleOf(tonic);
  return scale.map((root, degree) => {
    const stacked = [0, 2, 4].map((step) => scale[(degree + step) % 7]);
    const found = Object.entries(SUFFIXES).find(([suffix]) => notesOf(upper(root) + suffix).join() === stacked.join());
    expect(found).toBeDefined();
    const [suffix = '', numeral] = found ?? [];
    return { symbol: upper(root) + suffix, numeral: numeral?.(ROMAN[degree] ?? '') ?? '' };
  });
};

test.each(MAJOR_TONICS)('every two triads of %s major have the numerals of their degrees', (tonic) => {
  const chart = chartOf(tonic);
  expect(chart.map(({ numeral }) => numeral)).toEqual(['I', 'ii', 'iii', 'IV', 'V', 'vi', 'viio']);
  for (const one of chart) {
    for (const other of chart) {
      if (one === other) continue;
      const chords = [one, other].map(({ symbol }) => parseChord(symbol));
      const truth = { roots: chords.map(({ root }) => root), qualities: chords.map(({ quality }) => quality) };
      const mark = numeralJudge.mark([one.numeral, other.numeral], context(0, truth));
      expect([one.symbol, other.symbol, mark.exact, mark.note === 'other-minor-frame']).toEqual([
        one.symbol,
        other.symbol,
        true,
        false,
      ]);
    }
  }
});

test.each(MAJOR_TONICS)('what settles two triads of %s major is in the one key it leaves, and in no other', (tonic) => {
  const chart = chartOf(tonic);
  for (const [place, one] of chart.entries()) {
    for (const other of chart.slice(place + 1)) {
      const { keys, settlers } = guitarTruth(
        [one, other].map(({ symbol }) => ({ chord: parseChord(symbol), beats: 4 })),
      );
      for (const settler of settlers) {
        const sounding = settler.chord === null ? [settler.note?.toLowerCase() ?? ''] : notesOf(settler.chord);
        const owning = keys.majors.filter((name) => {
          const scale = scaleOf(name.split(' ')[0] ?? '');
          return sounding.every((note) => scale.includes(note));
        });
        expect([one.symbol, other.symbol, settler.chord ?? settler.note, owning]).toEqual([
          one.symbol,
          other.symbol,
          settler.chord ?? settler.note,
          settler.keys.majors,
        ]);
      }
    }
  }
});

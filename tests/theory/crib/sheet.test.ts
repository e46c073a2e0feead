import { describe, expect, test } from 'vitest';
import { QUALITIES } from '../../../shared-theory/chords.ts';
import { directionsOf, cribShapes } from '../../../shared-theory/crib/shapes.ts';
import type { Guitar } from '../../../shared-theory/crib/shapes.ts';
import { typedCrib } from '../../../shared-theory/crib/typed.ts';
import type { Policy } from '../../../shared-theory/truth.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';

const STANDARD: Guitar = { tuning: 'standard', capo: 0 };
const crib = (text: string, policy: Policy = 'majors', guitar: Guitar = STANDARD) =>
  typedCrib(parseVamp(text, 4), { policy, qualities: QUALITIES }, guitar);
const keys = (text: string, policy: Policy = 'majors') =>
  crib(text, policy).keys.map(({ key, numerals }) => `${key} ${numerals.join('-')}`);
const says = (text: string) => crib(text).melodyNotes.map(({ note, leaves }) => `${note}: ${leaves.join(', ')}`);

/** Vamps whose keys, numerals and deciding notes every teacher of harmony gives alike: common practice. */
describe('worked examples under majors only', () => {
  test.each([
    ['A Bm', ['D major V-vi', 'A major I-ii'], ['G: D major', 'G#: A major']],
    ['Em D', ['G major vi-V', 'D major ii-I'], ['C: G major', 'C#: D major']],
    ['Em Am', ['C major iii-vi', 'G major vi-ii'], ['F: C major', 'F#: G major']],
    [
      'F Dm',
      ['Bb major V-iii', 'F major I-vi', 'C major IV-ii'],
      ['Eb: Bb major', 'B: C major', 'E: F major, C major', 'Bb: Bb major, F major'],
    ],
    ['D Bm G', ['G major V-iii-I', 'D major I-vi-IV'], ['C: G major', 'C#: D major']],
    ['Bb C', ['F major IV-V'], []],
    ['F#m B', ['E major ii-V'], []],
    ['G F', ['C major V-IV'], []],
    ['Amaj7 Bm', ['A major Imaj7-ii'], []],
    ['A7 Bm', ['D major V7-vi'], []],
    ['Am E', [], []],
    ['C Fm', [], []],
    ['B C', [], []],
    ['D F G', [], []],
  ])('%s', (text, owners, deciders) => {
    expect(keys(text)).toEqual(owners);
    expect(says(text).toSorted()).toEqual([...deciders].toSorted());
  });

  test.each([
    ['A Bm', { 'A major': ['E', 'C#m'], 'D major': ['G', 'Em'] }, ['D', 'F#m']],
    ['Em D', { 'G major': ['C', 'Am'], 'D major': ['A', 'F#m'] }, ['G', 'Bm']],
    ['Em Am', { 'C major': ['F', 'Dm'], 'G major': ['D', 'Bm'] }, ['C', 'G']],
    ['F Dm', { 'Bb major': ['Eb', 'Cm'], 'C major': ['G', 'Em'], 'F major': ['C7', 'Edim'] }, []],
    ['D Bm G', { 'D major': ['A', 'F#m'], 'G major': ['C', 'Am'] }, ['Em']],
  ])('%s: third chords that settle it and that do not', (text, settles, open) => {
    const sheet = crib(text);
    for (const [key, chords] of Object.entries(settles)) {
      const leaving = [...sheet.settlers, ...sheet.sevenths].filter(({ leaves }) => leaves.join() === key);
      expect(leaving.map(({ chord }) => chord)).toEqual(expect.arrayContaining(chords));
    }
    expect(sheet.open).toEqual(expect.arrayContaining(open));
  });
});

describe('worked examples under the other policies', () => {
  test('the raised seventh makes Am E one of A minor; a mode makes the first chord home', () => {
    expect(keys('Am E', 'raised-seventh')).toEqual(['A minor i-V']);
    expect(keys('F#m B', 'modes')).toContain('F# dorian i-IV');
    expect(keys('G F', 'modes')).toContain('G mixolydian I-bVII');
    expect(keys('Em D', 'relatives')).toEqual(['G major vi-V', 'E minor i-VII', 'D major ii-I', 'B minor iv-III']);
  });

  test('the sheet names the keys of every policy', () => {
    expect(crib('Am E').policies).toEqual({
      majors: [],
      relatives: [],
      'raised-seventh': ['A minor'],
      modes: [],
    });
  });

  test('keys are named by their scales and a home under modes', () => {
    const { answer } = crib('Em D', 'modes').questions.find(({ kind }) => kind === 'keys') ?? {};
    expect(answer).toEqual(expect.arrayContaining(['G major', 'D major']));
  });
});

describe('shapes', () => {
  const shapes = (text: string, guitar: Guitar = STANDARD) =>
    crib(text, 'majors', guitar).shapes.map(
      ({ shape, frets }) => `${shape} ${(frets ?? []).map((fret) => fret ?? 'x').join('')}`,
    );

  test('are the usual ones, named as the hand holds them under a capo', () => {
    expect(shapes('Em D')).toEqual(['Em 022000', 'D xx0232']);
    // A capo on the third fret makes D sound F, and Bm sound Dm (common practice).
    expect(shapes('F Dm', { tuning: 'standard', capo: 3 })).toEqual(['D xx0232', 'Bm x24432']);
    expect(shapes('Eb Cm', { tuning: 'half-step-down', capo: 0 })[0]).toBe('E 022100');
  });

  test('say why there are none, and then the way of the bass is not asked', () => {
    const sheet = crib('G D', 'majors', { tuning: 'ukulele', capo: 0 });
    expect(sheet.shapes.map(({ frets, refusal }) => [frets, refusal?.reason])).toEqual([
      [null, 'no-low-bass'],
      [null, 'no-low-bass'],
    ]);
    expect(sheet.directionsKnown).toBe(false);
    expect(sheet.questions.map(({ kind }) => kind)).not.toContain('direction');
  });

  test('send the bass where the sheet says it goes', () => {
    const guitar = { tuning: 'drop-d', capo: 2 } as const;
    const sheet = crib('Em G', 'majors', guitar);
    const all = cribShapes(
      parseVamp('Em G', 4).map(({ chord }) => chord),
      guitar,
    );
    expect(sheet.questions.find(({ kind }) => kind === 'direction')?.answer).toBe(directionsOf(all, guitar)?.[0]);
  });
});

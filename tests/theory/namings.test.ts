import { describe, expect, test } from 'vitest';
import { NAMINGS as OFFERED } from '../../server/protocol/messages.ts';
import { lateNames } from '../../shared-theory/namings/late-names.ts';
import { namesOf } from '../../shared-theory/namings/names-of.ts';
import { writeNote } from '../../shared-theory/pitch.ts';
import type { Letter } from '../../shared-theory/pitch.ts';
import { NAMINGS, printChord, printKey, printNote } from '../../shared-theory/printer.ts';
import type { Naming } from '../../shared-theory/printer.ts';

/** The twelve notes from C up, with sharps and with flats, as each naming has them (common practice). */
const TWELVE: Readonly<Record<Naming, readonly [sharps: string, flats: string]>> = {
  english: ['C C♯ D D♯ E F F♯ G G♯ A A♯ B', 'C D♭ D E♭ E F G♭ G A♭ A B♭ B'],
  german: ['C Cis D Dis E F Fis G Gis A Ais H', 'C Des D Es E F Ges G As A B H'],
  mixed: ['C Cis D Dis E F Fis G Gis A Ais H', 'C Des D Es E F Ges G As A B♭ H'],
  dutch: ['C Cis D Dis E F Fis G Gis A Ais B', 'C Des D Es E F Ges G As A Bes B'],
  'fixed-do': ['Do Do♯ Re Re♯ Mi Fa Fa♯ Sol Sol♯ La La♯ Si', 'Do Re♭ Re Mi♭ Mi Fa Sol♭ Sol La♭ La Si♭ Si'],
};
const SHARPS = 'C C# D D# E F F# G G# A A# B'.split(' ');
const FLATS = 'C Db D Eb E F Gb G Ab A Bb B'.split(' ');

const notes = (list: readonly string[], naming: Naming) =>
  list.map((note) => printNote(note, namesOf(naming)).text).join(' ');

test.each(NAMINGS)('the twelve notes in %s', (naming) => {
  expect([notes(SHARPS, naming), notes(FLATS, naming)]).toEqual(TWELVE[naming]);
});

describe('signs that seldom stand', () => {
  test.each([
    ['german', 'Cb Fb E# B# F## Bbb Ebb Abb Dbb', 'Ces Fes Eis His Fisis Heses Eses Asas Deses'],
    ['mixed', 'Bbb B# Cb', 'Heses His Ces'],
    ['dutch', 'Bbb B# Cb F##', 'Beses Bis Ces Fisis'],
    ['fixed-do', 'Cb F## Bbb', 'Do♭ Fa𝄪 Si𝄫'],
  ] as const)('%s: %s is %s', (naming, list, expected) => expect(notes(list.split(' '), naming)).toBe(expected));

  test.each(NAMINGS)('%s: no two notes have the same name, up to three signs', (naming) => {
    const all = Array.from('CDEFGAB').flatMap((letter) =>
      [-3, -2, -1, 0, 1, 2, 3].map((alteration) => writeNote({ letter: letter as Letter, alteration })),
    );
    expect(new Set(all.map((note) => printNote(note, namesOf(naming)).text)).size).toBe(all.length);
    expect(new Set(all.map((note) => printNote(note, namesOf(naming)).spoken)).size).toBe(all.length);
  });

  test('mixed names no note with a bare B', () => {
    const all = Array.from('CDEFGAB').flatMap((letter) => ['bb', 'b', '', '#', '##'].map((signs) => letter + signs));
    const names = all.map((note) => printNote(note, namesOf('mixed')).text);
    expect(names.filter((name) => /B(?!♭)/.test(name))).toEqual([]);
  });
});

describe('chords and keys', () => {
  test.each([
    ['german', 'Bbm7', 'Bm7'],
    ['german', 'B/D#', 'H/Dis'],
    ['german', 'F#m7b5', 'Fisø7'],
    ['german', 'Ebsus4', 'Essus4'],
    ['mixed', 'Bbm7', 'B♭m7'],
    ['mixed', 'Bdim', 'H°'],
    ['mixed', 'Gm/Bb', 'Gm/B♭'],
    ['dutch', 'Bbmaj7', 'Besmaj7'],
    ['fixed-do', 'Am', 'Lam'],
    ['fixed-do', 'C#m7', 'Do♯m7'],
    ['fixed-do', 'G7/B', 'Sol7/Si'],
  ] as const)('%s: %s is %s', (naming, symbol, text) => {
    const printed = printChord(symbol, namesOf(naming));
    expect(printed.text).toBe(text);
    expect(printed.letter + printed.sign + printed.suffix).toBe(text);
  });

  test.each([
    ['german', 'Bb major', 'B major'],
    ['mixed', 'Bb major', 'B♭ major'],
    ['german', 'B minor', 'H minor'],
    ['german', 'F# minor', 'Fis minor'],
    ['fixed-do', 'Eb mixolydian', 'Mi♭ mixolydian'],
  ] as const)('%s: the key %s is %s', (naming, name, text) => {
    expect(printKey(name, namesOf(naming)).text).toBe(text);
  });
});

test.each([
  ['german', 'Ab', 'Ahs'],
  ['german', 'Eb', 'Ess'],
  ['german', 'A#', 'A-is'],
  ['german', 'C#', 'Tsis'],
  ['german', 'Cb', 'Tses'],
  ['german', 'B', 'H'],
  ['mixed', 'Bb', 'B flat'],
  ['dutch', 'Bb', 'Bes'],
  ['fixed-do', 'C', 'Doh'],
  ['fixed-do', 'Bb', 'See flat'],
] as const)('for screen readers, %s has its own way to say %s: %s', (naming, note, spoken) => {
  expect(printNote(note, namesOf(naming)).spoken).toBe(spoken);
});

test('a class is offered the namings that there are', () => expect(OFFERED).toEqual(NAMINGS));

test.each(NAMINGS)('%s can be had late as well', async (naming) => {
  expect(await lateNames(naming)).toBe(namesOf(naming));
});

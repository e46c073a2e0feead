import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseChord } from '../../shared-theory/chord-reading.ts';
import { canBeWritten, readSuffix } from '../../shared-theory/chord-reading/suffixes.ts';
import { chordNotes, chordSymbol, SUFFIXES } from '../../shared-theory/chords.ts';
import type { Chord } from '../../shared-theory/chords.ts';
import { namesOf } from '../../shared-theory/namings/names-of.ts';
import { NAMINGS, printChord } from '../../shared-theory/printer.ts';
import type { Naming } from '../../shared-theory/printer.ts';
import { ReadingError } from '../../shared-theory/reading-error.ts';
import { anySymbolChord, ROOTS } from '../support/theory-arbitraries.ts';

const read = (text: string, naming?: Naming) => chordSymbol(parseChord(text, naming));

/** Ways in which chord symbols are typed (common practice), by what they mean. */
const WAYS: Readonly<Record<string, string>> = {
  C: 'C CM Cmaj CMaj CMAJ Cma CMa Cmajor C-Dur',
  Cm: 'Cm Cmin CMin CMIN Cmi CMi CMI C- C− C– Cminor C-moll',
  C7: 'C7 C(7) Cdom7',
  Cmaj7: 'Cmaj7 CMaj7 CMAJ7 Cma7 CMa7 CM7 C△ C△7 CΔ CΔ7 C∆ C∆7 Cj7 C7M C^7 C(maj7) Cmajor7',
  Cm7: 'Cm7 C-7 C−7 Cmi7 Cmin7 CMin7 CMI7 Cminor7',
  'Cm(maj7)': 'Cm(maj7) CmM7 CmMaj7 Cmmaj7 Cm/maj7 Cm/M7 Cmin(maj7) C-Δ7 C-maj7 CmΔ Cm(M7)',
  Cm7b5: 'Cm7b5 Cm7♭5 Cm7(b5) C-7b5 C-7♭5 C-7(♭5) Cmi7b5 Cmin7b5 Cm7-5 Cø Cø7 CØ CØ7 C⌀7',
  Cdim: 'Cdim CDim CDIM C° Cº C˚ Co Cmb5 Cm(b5) Cm♭5',
  Cdim7: 'Cdim7 CDim7 C°7 Cº7 Co7',
  Caug: 'Caug C+ C(#5) C(♯5) C+5',
  C6: 'C6 CM6 Cmaj6 Cadd6 C(6)',
  Cm6: 'Cm6 C-6 Cmin6 Cmi6',
  Csus4: 'Csus4 Csus CSus4 C(sus4)',
  Csus2: 'Csus2 C(sus2)',
  C5: 'C5 Cno3 C(no3)',
  Cadd9: 'Cadd9 C(add9) Cadd2 C2',
  'C#m': 'C#m C♯m C♯- C#min',
  Bb: 'Bb B♭ BbM',
  Bbdim: 'Bbdim B♭° Bbo',
  'F##dim': 'F##dim F𝄪° F♯♯dim',
  Bbb: 'Bbb B𝄫 B♭♭',
  // A sign beside a letter is the root's: C flat with its fifth, C sharp with its fifth.
  Cb5: 'Cb5 C♭5',
  'C#5': 'C#5 C♯5',
  'D/F#': 'D/F# D/F♯ D/f# D/f♯',
  'Am7/G': 'Am7/G A-7/G Amin7/g',
  'Gm(maj7)/Bb': 'GmM7/Bb Gm/maj7/B♭ Gm(maj7)/bb',
  // Over its own root a chord is itself.
  A: 'A A/A A/a A/G##',
};

describe('a chord as it is typed', () => {
  test.each(Object.entries(WAYS).flatMap(([symbol, ways]) => ways.split(' ').map((way) => [way, symbol])))(
    '%s is %s',
    (way, symbol) => expect(read(way)).toBe(symbol),
  );

  test.each([
    ['  Em  ', 'Em'],
    ['C / E', 'C/E'],
    ['C /E', 'C/E'],
    ['C over E', 'C/E'],
    ['Am7 Over g', 'Am7/G'],
    ['C moll', 'Cm'],
    ['C Dur', 'C'],
    ['C major', 'C'],
    ['C maj7', 'Cmaj7'],
    ['Cm (maj7)', 'Cm(maj7)'],
  ])('with spaces: %j is %s', (text, symbol) => expect(read(text)).toBe(symbol));

  test('every suffix is written as the program itself writes it, and no way of typing has two meanings', () => {
    for (const { suffix, quality, addition } of SUFFIXES) {
      expect(readSuffix(suffix)).toEqual({ symbol: suffix, quality, ...(addition === null ? {} : { addition }) });
    }
  });

  test('roots of two signs are read where their chords can be written, and there alone', () => {
    const doubles = Array.from('CDEFGAB').flatMap((letter) => [`${letter}##`, `${letter}bb`]);
    const refused: string[] = [];
    for (const root of doubles) {
      for (const { suffix, quality, addition } of SUFFIXES) {
        const chord: Chord = { root, quality, ...(addition === null ? {} : { addition }) };
        if (canBeWritten(root, { symbol: suffix, quality, ...(addition === null ? {} : { addition }) })) {
          expect(chordNotes(chord)).toHaveLength(chordNotes({ ...chord, root: 'C' }).length);
          expect(parseChord(root + suffix)).toEqual(chord);
        } else {
          expect(() => chordNotes(chord)).toThrow(RangeError);
          expect(refusal(root + suffix).fault).toBe('too-many-accidentals');
          refused.push(root + suffix);
        }
      }
    }
    expect(refused).toEqual(['Cbbdim7', 'Fbbdim7', 'B##aug']);
  });
});

describe('under each naming', () => {
  const under: Readonly<Record<Exclude<Naming, 'english'>, readonly (readonly [string, string])[]>> = {
    german: [
      ['Cis', 'C#'],
      ['Des', 'Db'],
      ['Es', 'Eb'],
      ['As', 'Ab'],
      ['Ais', 'A#'],
      ['B', 'Bb'],
      ['B7', 'Bb7'],
      ['Bb', 'Bb'],
      ['H', 'B'],
      ['Hm7b5', 'Bm7b5'],
      ['His', 'B#'],
      ['Heses', 'Bbb'],
      ['Asas', 'Abb'],
      ['Ases', 'Abb'],
      ['Fisis°', 'F##dim'],
      ['C#m', 'C#m'],
      // The ending or the suffix: what leaves something that can be read.
      ['Esus4', 'Esus4'],
      ['Essus4', 'Ebsus4'],
      ['Asus2', 'Asus2'],
      ['Esm', 'Ebm'],
      // Small roots are minor chords, as in song sheets.
      ['c', 'Cm'],
      ['a', 'Am'],
      ['h', 'Bm'],
      ['b', 'Bbm'],
      ['es', 'Ebm'],
      ['as7', 'Abm7'],
      ['cism', 'C#m'],
      ['fis6', 'F#m6'],
      ['a/e', 'Am/E'],
      ['a-Moll', 'Am'],
      ['C moll', 'Cm'],
      ['C-Dur', 'C'],
      ['c-Dur', 'C'],
      ['H-Dur', 'B'],
      ['C/e', 'C/E'],
      ['C/b', 'C/Bb'],
      ['G/H', 'G/B'],
      ['F/es', 'F/Eb'],
    ],
    mixed: [
      ['Bb', 'Bb'],
      ['B♭m', 'Bbm'],
      ['bb', 'Bbm'],
      ['H', 'B'],
      ['h7', 'Bm7'],
      ['c', 'Cm'],
      ['Cis', 'C#'],
      ['C#', 'C#'],
      ['Es', 'Eb'],
      ['G/H', 'G/B'],
      ['Gm/Bb', 'Gm/Bb'],
    ],
    dutch: [
      ['Cis', 'C#'],
      ['Des', 'Db'],
      ['Es', 'Eb'],
      ['As', 'Ab'],
      ['Bes', 'Bb'],
      ['Bb', 'Bb'],
      ['B', 'B'],
      ['Besm7', 'Bbm7'],
      ['G/b', 'G/B'],
    ],
    'fixed-do': [
      ['Do', 'C'],
      ['Re', 'D'],
      ['Ré', 'D'],
      ['Re\u0301m', 'Dm'],
      ['Mi', 'E'],
      ['Fa', 'F'],
      ['Sol', 'G'],
      ['La', 'A'],
      ['Si', 'B'],
      ['Dó', 'C'],
      ['Fá', 'F'],
      ['Lá', 'A'],
      ['Lam', 'Am'],
      ['La-', 'Am'],
      ['Do M', 'C'],
      ['Dó M', 'C'],
      ['Do#m7', 'C#m7'],
      ['Reb', 'Db'],
      ['Si♭', 'Bb'],
      ['sol/si', 'G/B'],
      ['Do over Mi', 'C/E'],
      ['Mim', 'Em'],
      ['Misus4', 'Esus4'],
      ['Faadd9', 'Fadd9'],
      ['Doo', 'Cdim'],
      ['Do7M', 'Cmaj7'],
      ['La menor', 'Am'],
      ['До', 'C'],
      ['Ре', 'D'],
      ['Ми', 'E'],
      ['Фа', 'F'],
      ['Соль', 'G'],
      ['Ля', 'A'],
      ['Си', 'B'],
      ['ляm', 'Am'],
      ['Си♭7', 'Bb7'],
    ],
  };
  test.each(Object.entries(under).flatMap(([naming, rows]) => rows.map((row) => [naming as Naming, ...row] as const)))(
    '%s: %s is %s',
    (naming, text, symbol) => expect(read(text, naming)).toBe(symbol),
  );

  test.each(NAMINGS)('%s: every chord reads back as it is printed', (naming) => {
    fc.assert(
      fc.property(anySymbolChord, (chord) => {
        const { text } = printChord(chordSymbol(chord), namesOf(naming));
        expect([text, parseChord(text, naming)]).toEqual([text, chord]);
      }),
    );
  });

  test.each(NAMINGS)(
    '%s: every root with every suffix, alone and over a bass, reads back as it is printed',
    (naming) => {
      const names = namesOf(naming);
      const symbols = ROOTS.flatMap((root) =>
        SUFFIXES.flatMap(({ suffix }) =>
          ['', '/C', '/Bb', '/B', '/E', '/F#', '/Ab'].map((bass) => root + suffix + bass),
        ),
      ).map((symbol) => read(symbol));
      expect(symbols.filter((symbol) => read(printChord(symbol, names).text, naming) !== symbol)).toEqual([]);
    },
  );
});

describe('what cannot be read', () => {
  // What is wrong, where the first unreadable character stands, and what to write instead.
  test.each([
    ['', 'nothing', 0, 'Em D'],
    ['   ', 'nothing', 3, 'Em D'],
    ['H', 'german-h', 0, 'B'],
    ['Hm7', 'german-h', 0, 'Bm7'],
    ['h', 'german-h', 0, 'B'],
    ['Cis', 'german-ending', 0, 'C#'],
    ['Esm7', 'german-ending', 0, 'Ebm7'],
    // It would be D diminished, and who writes it means C.
    ['Do', 'syllable-name', 0, 'C or Ddim'],
    ['Do7', 'syllable-name', 0, 'C7 or Ddim7'],
    ['Dom', 'syllable-name', 0, 'Cm'],
    ['Ré', 'syllable-name', 0, 'D'],
    ['mi', 'syllable-name', 0, 'E'],
    ['Fa#m', 'syllable-name', 0, 'F#m'],
    ['Sib', 'syllable-name', 0, 'Bb'],
    ['Sol-7', 'syllable-name', 0, 'Gm7'],
    ['Соль', 'syllable-name', 0, 'G'],
    ['e', 'lower-case-root', 0, 'E or Em'],
    ['em', 'lower-case-root', 0, 'Em'],
    ['bb', 'lower-case-root', 0, 'Bb'],
    ['b7', 'lower-case-root', 0, 'B7'],
    ['#C', 'no-letter', 0, 'C#'],
    ['bG', 'no-letter', 0, 'Gb'],
    ['X', 'no-letter', 0, 'Em'],
    ['<b>', 'no-letter', 0, 'Em'],
    ['N.C.', 'no-chord', 0, ''],
    ['NC', 'no-chord', 0, ''],
    ['n.c.', 'no-chord', 0, ''],
    ['%', 'same-again', 0, 'Em Em'],
    ['C###', 'too-many-accidentals', 3, 'Eb'],
    ['Bbbb', 'too-many-accidentals', 3, 'Ab'],
    ['C#b', 'too-many-accidentals', 2, 'C'],
    ['Cbbdim7', 'too-many-accidentals', 3, 'Bbdim7'],
    ['C9', 'not-ours', 1, 'C7'],
    ['F#9', 'not-ours', 2, 'F#7'],
    ['C11', 'not-ours', 1, 'C7'],
    ['C13', 'not-ours', 1, 'C7'],
    ['Cm9', 'not-ours', 2, 'Cm7'],
    ['Cmaj9', 'not-ours', 4, 'Cmaj7'],
    ['Cm(maj9)', 'not-ours', 2, 'Cm(maj7)'],
    ['C7sus4', 'not-ours', 2, 'Csus4'],
    ['C9sus4', 'not-ours', 1, 'Csus4'],
    ['Csus2sus4', 'not-ours', 5, 'Csus4'],
    ['Cmadd9', 'not-ours', 3, 'Cm'],
    ['Calt', 'not-ours', 1, 'C7'],
    ['C7alt', 'not-ours', 2, 'C7'],
    ['C7(b9)', 'not-ours', 2, 'C7'],
    ['C7#9', 'not-ours', 2, 'C7'],
    ['C7#5', 'not-ours', 2, 'Caug'],
    ['C+7', 'not-ours', 2, 'Caug'],
    ['C(b5)', 'not-ours', 1, 'C'],
    ['C4', 'not-ours', 1, 'Csus4'],
    ['C6/9', 'not-ours', 3, 'C6'],
    ['C69', 'not-ours', 2, 'C6'],
    ['Cm/maj9', 'not-ours', 3, 'Cm(maj7)'],
    ['Am7(b13)', 'not-ours', 3, 'Am7'],
    ['Ebm9/Bb', 'not-ours', 3, 'Ebm7/Bb'],
    ['  G9', 'not-ours', 3, 'G7'],
    ['C/', 'slash-bass', 2, 'C/G'],
    ['C/x', 'slash-bass', 2, 'C/G'],
    ['C/E/G', 'slash-bass', 3, 'C/E'],
    ['C/Em', 'slash-bass', 3, 'C/E'],
    ['C over', 'slash-bass', 6, 'C/G'],
    ['C E', 'unknown-suffix', 1, 'C'],
    ['C♮', 'unknown-suffix', 1, 'C'],
    ['C(', 'unknown-suffix', 1, 'C'],
    ['Cmaj)', 'unknown-suffix', 4, 'C'],
    ['C()', 'unknown-suffix', 1, 'C'],
    ['Cconstructor', 'unknown-suffix', 1, 'C'],
    ['C__proto__', 'unknown-suffix', 1, 'C'],
  ])('%j is refused: %s at %i, write %s', (text, fault, place, right) => {
    expectRefused(refusal(text), text, fault, place, right);
  });

  test.each([
    ['german', '', 'nothing', 0, 'Em D'],
    ['german', 'Do', 'syllable-name', 0, 'C or Ddim'],
    ['german', 'Sib', 'syllable-name', 0, 'B'],
    ['german', 'H9', 'not-ours', 1, 'H7'],
    ['german', 'cmaj7', 'lower-case-root', 0, 'Cmaj7'],
    ['german', 'B#', 'too-many-accidentals', 1, 'H'],
    ['german', 'Es/x', 'slash-bass', 3, 'Es/B'],
    // A bare B has two meanings there; both are offered.
    ['mixed', 'B', 'bare-b', 0, 'Bb or H'],
    ['mixed', 'B7', 'bare-b', 0, 'Bb7 or H7'],
    ['mixed', 'Bm', 'bare-b', 0, 'Bbm or Hm'],
    ['mixed', 'b', 'bare-b', 0, 'Bbm or Hm'],
    ['mixed', 'b7', 'bare-b', 0, 'Bbm7 or Hm7'],
    ['mixed', 'G/B', 'bare-b', 2, 'G/Bb or G/H'],
    ['mixed', 'G/b', 'bare-b', 2, 'G/Bb or G/H'],
    ['dutch', 'H', 'german-h', 0, 'B'],
    ['dutch', 'a', 'lower-case-root', 0, 'A or Am'],
    ['dutch', 'B♭9', 'not-ours', 2, 'Bes7'],
    ['fixed-do', '', 'nothing', 0, 'Mim Re'],
    ['fixed-do', 'C', 'letter-name', 0, 'Do'],
    ['fixed-do', 'F#m7', 'letter-name', 0, 'Fa#m7'],
    ['fixed-do', 'Fadd9', 'letter-name', 0, 'Faadd9'],
    ['fixed-do', 'H', 'letter-name', 0, 'Si'],
    ['fixed-do', 'Es', 'letter-name', 0, 'Mib'],
    ['fixed-do', 'Do9', 'not-ours', 2, 'Do7'],
    ['fixed-do', 'Do/E', 'slash-bass', 3, 'Do/Sol'],
    ['fixed-do', 'x', 'no-syllable', 0, 'Mim'],
    ['fixed-do', '%', 'same-again', 0, 'Mim Mim'],
  ] as const)('%s: %j is refused: %s at %i, write %s', (naming, text, fault, place, right) => {
    expectRefused(refusal(text, naming), text, fault, place, right);
  });

  test.each(NAMINGS)('%s: what is suggested can be read, whatever was typed', (naming) => {
    const typed = fc.stringMatching(/^[A-Ha-h♯♭#bsimxoIlaDRMSF2457+°/ -]{1,7}$/);
    const near = fc
      .tuple(anySymbolChord, fc.constantFrom(...NAMINGS), fc.stringMatching(/^[#b/9x)( ]{0,2}$/))
      .map(([chord, other, more]) => printChord(chordSymbol(chord), namesOf(other)).text + more);
    fc.assert(
      fc.property(fc.oneof(typed, near, fc.string({ maxLength: 8 })), (text) => {
        let error: unknown;
        try {
          parseChord(text, naming);
        } catch (thrown) {
          error = thrown;
        }
        if (error === undefined) return;
        expect(error).toBeInstanceOf(ReadingError);
        const { fault, right, place } = error as ReadingError;
        const several = fault === 'nothing' || fault === 'same-again' ? right.split(' ') : right.split(' or ');
        for (const symbol of several.filter((each) => each !== '')) parseChord(symbol, naming);
        expect(place).toBeGreaterThanOrEqual(0);
        expect(place).toBeLessThanOrEqual(text.length);
      }),
      { numRuns: 400 },
    );
  });
});

function expectRefused(error: ReadingError, text: string, fault: string, place: number, right: string): void {
  expect(error).toMatchObject({ name: 'ReadingError', fault, place, right, found: text.trim() });
  expect(error.suggestion).toContain(right);
  expect(error.message).toContain(error.suggestion);
}

function refusal(text: string, naming?: Naming): ReadingError {
  try {
    parseChord(text, naming);
  } catch (error) {
    if (error instanceof ReadingError) return error;
    throw error;
  }
  throw new Error(`${JSON.stringify(text)} was read`);
}

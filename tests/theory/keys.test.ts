import * as fc from 'fast-check';
import teoria from 'teoria';
import { Key as TonalKey } from 'tonal';
import { describe, expect, test } from 'vitest';
import { chordPitchClasses, chordSymbol, parseChord, readSymbol } from '../../shared-theory/chords.ts';
import { candidateKeys, raisedSevenths } from '../../shared-theory/candidates.ts';
import { diatonicChart, keyHolds, keyOwns, numeralIn, respellIn } from '../../shared-theory/degrees.ts';
import {
  keyId,
  keyName,
  keySignature,
  parseKeyName,
  relativeKey,
  scaleNotes,
  usualKey,
} from '../../shared-theory/keys.ts';
import type { Key } from '../../shared-theory/keys.ts';
import { fifthsFromC, pitchClass } from '../../shared-theory/pitch.ts';
import { anyVamp, MAJOR_TONICS } from '../support/theory-arbitraries.ts';

/**
 * The fifteen keys: signature, major, relative minor, scale, triads I to vii. Signatures and relatives as in Open Music Theory
 * (Shaffer, Hughes, Moseley), page “Key signatures”; chords as in its page “Triads and seventh chords”; scales by arithmetic.
 */
const FIFTEEN = `
-7 Cb Ab : Cb Db Eb Fb Gb Ab Bb : Cb Dbm Ebm Fb Gb Abm Bbdim
-6 Gb Eb : Gb Ab Bb Cb Db Eb F : Gb Abm Bbm Cb Db Ebm Fdim
-5 Db Bb : Db Eb F Gb Ab Bb C : Db Ebm Fm Gb Ab Bbm Cdim
-4 Ab F : Ab Bb C Db Eb F G : Ab Bbm Cm Db Eb Fm Gdim
-3 Eb C : Eb F G Ab Bb C D : Eb Fm Gm Ab Bb Cm Ddim
-2 Bb G : Bb C D Eb F G A : Bb Cm Dm Eb F Gm Adim
-1 F D : F G A Bb C D E : F Gm Am Bb C Dm Edim
0 C A : C D E F G A B : C Dm Em F G Am Bdim
1 G E : G A B C D E F# : G Am Bm C D Em F#dim
2 D B : D E F# G A B C# : D Em F#m G A Bm C#dim
3 A F# : A B C# D E F# G# : A Bm C#m D E F#m G#dim
4 E C# : E F# G# A B C# D# : E F#m G#m A B C#m D#dim
5 B G# : B C# D# E F# G# A# : B C#m D#m E F# G#m A#dim
6 F# D# : F# G# A# B C# D# E# : F# G#m A#m B C# D#m E#dim
7 C# A# : C# D# E# F# G# A# B# : C# D#m E#m F# G# A#m B#dim
`
  .trim()
  .split('\n')
  .map((line) => {
    const [head = '', scale = '', chords = ''] = line.split(' : ');
    const [signature = '', major = '', minor = ''] = head.split(' ');
    return { signature: Number(signature), major, minor, scale: scale.split(' '), chords: chords.split(' ') };
  });

const ALL_KEYS: readonly Key[] = FIFTEEN.flatMap(({ major, minor }): Key[] => [
  { tonic: major, mode: 'major' },
  { tonic: minor, mode: 'minor' },
]);

const symbols = (key: Key) => diatonicChart(key).map(({ chord }) => chordSymbol(chord));
const numerals = (key: Key) =>
  diatonicChart(key)
    .map(({ numeral }) => numeral)
    .join(' ');
/** From the sixth degree on: a relative minor's view of its major. */
const fromSixth = <T>(items: readonly T[]) => [...items.slice(5), ...items.slice(0, 5)];

describe.each(FIFTEEN)('$major major and $minor minor', ({ signature, major, minor, scale, chords }) => {
  const majorKey: Key = { tonic: major, mode: 'major' };
  const minorKey: Key = { tonic: minor, mode: 'minor' };

  test('signature and relatives', () => {
    expect([keySignature(majorKey), keySignature(minorKey)]).toEqual([signature, signature]);
    expect(relativeKey(majorKey)).toEqual(minorKey);
    expect(relativeKey(minorKey)).toEqual(majorKey);
    expect(TonalKey.majorKey(major).alteration).toBe(signature);
    expect(TonalKey.majorKey(major).minorRelative).toBe(minor);
  });

  test('scales, also by tonal 6.4.3, teoria 2.5.0 and the signature itself', () => {
    expect(scaleNotes(majorKey)).toEqual(scale);
    expect(scaleNotes(minorKey)).toEqual(fromSixth(scale));
    expect(TonalKey.majorKey(major).scale).toEqual(scale);
    expect(TonalKey.minorKey(minor).natural.scale).toEqual(fromSixth(scale));
    expect(teoria.scale(major, 'major').simple()).toEqual(scale.map((note) => note.toLowerCase()));
    expect(teoria.scale(minor, 'minor').simple()).toEqual(fromSixth(scale).map((note) => note.toLowerCase()));
    // Sharps come in the order F C G D A E B, flats in B E A D G C F.
    const signed =
      signature > 0 ? Array.from('FCGDAEB').slice(0, signature) : Array.from('BEADGCF').slice(0, -signature);
    const signs = signature > 0 ? '#' : 'b';
    expect(scale.filter((note) => note.length > 1).toSorted()).toEqual(
      signed.map((letter) => letter + signs).toSorted(),
    );
  });

  test('chords, also by tonal', () => {
    expect(symbols(majorKey)).toEqual(chords);
    expect(symbols(minorKey)).toEqual(fromSixth(chords));
    expect(TonalKey.majorKey(major).triads).toEqual(chords);
    expect(TonalKey.minorKey(minor).natural.triads).toEqual(fromSixth(chords));
  });

  test('numerals', () => {
    expect(numerals(majorKey)).toBe('I ii iii IV V vi viio');
    expect(numerals(minorKey)).toBe('i iio III iv v VI VII');
  });

  test('every chord reads back, its notes are every other note of the scale, its numeral is found again', () => {
    for (const key of [majorKey, minorKey]) {
      const notes = scaleNotes(key);
      expect(new Set(notes.map((note) => note[0])).size).toBe(7);
      diatonicChart(key).forEach(({ chord, numeral, notes: sounding }, degree) => {
        expect(parseChord(chordSymbol(chord))).toEqual(chord);
        expect(sounding).toEqual([0, 2, 4].map((step) => notes[(degree + step) % 7]));
        expect(keyOwns(key, chord)).toBe(true);
        expect(numeralIn(chord, key)).toBe(numeral);
        expect(respellIn(chord, key)).toEqual(chord);
      });
    }
  });
});

describe('what a musician tries first', () => {
  test('IV of G flat is C flat, iii of E is G sharp minor, the fourth of A minor is D minor', () => {
    expect(symbols(parseKeyName('Gb major'))[3]).toBe('Cb');
    expect(symbols(parseKeyName('E major'))[2]).toBe('G#m');
    expect(symbols(parseKeyName('A minor'))[3]).toBe('Dm');
  });

  test('I vi IV V in C is C Am F G; i VI III VII in A minor is Am F C G', () => {
    const find = (key: Key, wanted: string) =>
      wanted.split(' ').map((each) => symbols(key)[diatonicChart(key).findIndex(({ numeral }) => numeral === each)]);
    expect(find(parseKeyName('C major'), 'I vi IV V')).toEqual(['C', 'Am', 'F', 'G']);
    expect(find(parseKeyName('A minor'), 'i VI III VII')).toEqual(['Am', 'F', 'C', 'G']);
  });

  test('root motions between degrees of a major key, up and down, add to twelve; only IV to vii is a tritone', () => {
    // Semitones up from row to column, by arithmetic on the major scale.
    const up = [[2, 4, 5, 7, 9, 11], [2, 3, 5, 7, 9], [1, 3, 5, 7], [2, 4, 6], [2, 4], [2]];
    for (const key of MAJOR_TONICS.map((tonic): Key => ({ tonic, mode: 'major' }))) {
      const roots = diatonicChart(key).map(({ chord }) => pitchClass(chord.root));
      const found = roots.map((low, degree) => roots.slice(degree + 1).map((high) => (high - low + 12) % 12));
      expect(found.slice(0, 6)).toEqual(up);
      expect(found.flat().filter((semitones) => semitones === 6)).toHaveLength(1);
    }
  });

  test('F sharp belongs to D major and is its third', () => {
    expect(scaleNotes(parseKeyName('D major'))[2]).toBe('F#');
    expect(keyHolds(parseKeyName('D major'), 66 % 12)).toBe(true);
    expect(keyHolds(parseKeyName('D major'), 5)).toBe(false);
  });
});

describe('names and ids', () => {
  test('a name reads back', () => {
    for (const key of ALL_KEYS) expect(parseKeyName(keyName(key))).toEqual(key);
  });

  test.each([
    '',
    'G',
    'Am',
    'G Major',
    'G  major',
    'H major',
    'B♭ major',
    'G major key',
    'G# major',
    'Fb major',
    'Db minor',
  ])('%j names no key', (name) => {
    expect(() => parseKeyName(name)).toThrow(RangeError);
  });

  test('keys beyond seven signs have no scale', () => {
    expect(() => scaleNotes({ tonic: 'G#', mode: 'major' })).toThrow(/more than seven signs/);
    expect(() => relativeKey({ tonic: 'Cb', mode: 'minor' })).toThrow(RangeError);
    expect(() => diatonicChart({ tonic: '', mode: 'major' })).toThrow(RangeError);
  });

  test('7M is G major, 4m E minor; keys that sound alike share an id', () => {
    expect(keyId(parseKeyName('G major'))).toBe('7M');
    expect(keyId(parseKeyName('E minor'))).toBe('4m');
    expect(new Set(ALL_KEYS.map(keyId)).size).toBe(24);
    for (const [one, other] of [
      ['F#', 'Gb'],
      ['C#', 'Db'],
      ['B', 'Cb'],
    ] as const) {
      expect(keyId({ tonic: one, mode: 'major' })).toBe(keyId({ tonic: other, mode: 'major' }));
    }
  });

  test('the usual spelling has the fewest signs, sharps where six stand against six', () => {
    const usual = (mode: string) =>
      Array.from({ length: 12 }, (_, sound) => usualKey(`${sound}${mode}`).tonic).join(' ');
    expect(usual('M')).toBe('C Db D Eb E F F# G Ab A Bb B');
    expect(usual('m')).toBe('C C# D D# E F F# G G# A Bb B');
    for (const key of ALL_KEYS) expect(keyId(usualKey(keyId(key)))).toBe(keyId(key));
  });

  test.each(['', 'M', '12M', '-1M', '7', '7X', '07M', 'G major'])('%j is no key id', (id) => {
    expect(() => usualKey(id)).toThrow(RangeError);
  });
});

const majorsOf = (text: string) =>
  candidateKeys(
    text.split(' ').map((symbol) => parseChord(symbol)),
    'majors',
  );
const read = (text: string) =>
  majorsOf(text)
    .map(({ tonic, numerals: found }) => `${tonic} ${found.join('–')}`)
    .join(', ');

describe('how many keys own one chord', () => {
  // By arithmetic: in how many of the twelve major scales all notes of the chord lie.
  test.each([
    ['C', 3, 'F V, C I, G IV'],
    ['Cm', 3, 'Ab iii, Eb vi, Bb ii'],
    ['Cdim', 1, 'Db viio'],
    ['Caug', 0, ''],
    ['C5', 6, 'Ab iii5, Eb vi5, Bb ii5, F V5, C I5, G IV5'],
    ['Csus2', 5, 'Eb visus2, Bb iisus2, F Vsus2, C Isus2, G IVsus2'],
    ['Csus4', 5, 'Ab iiisus4, Eb visus4, Bb iisus4, F Vsus4, C Isus4'],
  ])('%s: %i major keys, %s', (chord, count, readings) => {
    expect(majorsOf(chord)).toHaveLength(count);
    expect(read(chord)).toBe(readings);
    expect(candidateKeys([parseChord(chord)], 'relatives')).toHaveLength(2 * count);
  });

  test('twelve keys of seven triads: 84 readings of the 36 major, minor and diminished triads', () => {
    const roots = Array.from({ length: 12 }, (_, sound) => usualKey(`${sound}M`).tonic);
    const readings = roots.flatMap((root) => ['', 'm', 'dim'].flatMap((suffix) => majorsOf(root + suffix)));
    expect(readings).toHaveLength(84);
  });
});

describe('one spelling for each sounding key, the one that the chords use', () => {
  test.each([
    ['F#', 'B V, F# I, C# IV'],
    ['Gb', 'Cb V, Gb I, Db IV'],
    ['F♯ C♯', 'F# I–V, C# IV–I'],
    ['Gb Db', 'Gb I–V, Db IV–I'],
    ['B', 'E V, B I, F# IV'],
    // No key of eight flats: all three by their sharps.
    ['Cb', 'E V, B I, F# IV'],
    ['G# C#', 'Db V–I, Ab I–IV'],
    ['C#', 'Gb V, Db I, Ab IV'],
    ['Gb B', 'B V–I, F# I–IV'],
    ['G#m E', 'E iii–I, B vi–IV'],
    ['Bbm', 'Gb iii, Db vi, Ab ii'],
    ['F Bbm', ''],
    // One of each: neither side writes both, so the one with fewer signs stands.
    ['F# Db', 'Gb I–V, Db IV–I'],
  ])('%s', (text, readings) => {
    expect(read(text)).toBe(readings);
  });

  test('a chord is spelled anew as the key spells it', () => {
    expect(chordSymbol(respellIn(parseChord('B'), parseKeyName('Gb major')))).toBe('Cb');
    expect(chordSymbol(respellIn(parseChord('Abm'), parseKeyName('E major')))).toBe('G#m');
    expect(() => respellIn(parseChord('B'), parseKeyName('C major'))).toThrow('C major does not own B.');
    expect(() => numeralIn(parseChord('Caug'), parseKeyName('C major'))).toThrow(RangeError);
  });
});

describe('minor keys with their seventh raised', () => {
  // Minor with its raised seventh: common practice. Natural and raised seventh may stand in one loop (i–VII–VI–V, III–V).
  test.each([
    ['Am E', 'A minor i–V'],
    ['Am Dm E', 'A minor i–iv–V'],
    ['F E', 'A minor VI–V'],
    ['C Fm', 'F minor V–i'],
    ['Bdim E', 'A minor iio–V'],
    ['G#dim Am', 'A minor viio–i'],
    ['Caug F', 'A minor III+–VI'],
    ['Am E E5', 'A minor i–V–V5'],
    ['G#m D#', 'G# minor i–V'],
    ['Abm Eb', 'Ab minor i–V'],
    ['Am G F E', 'A minor i–VII–VI–V'],
    ['C E', 'A minor III–V'],
    ['Am Em E', 'A minor i–v–V'],
    // What has no third is read by what stands beside it.
    ['Am Esus4 E', 'A minor i–Vsus4–V'],
    ['Am E5 Em E', 'A minor i–v5–v–V'],
    ['Am E7', 'A minor i–V7'],
    ['G#dim7 Am', 'A minor viio7–i'],
    // The same sound, written as the vii of another minor key: there its own root leads.
    ['Bdim7 Cm', 'C minor viio7–i'],
    ['Am/C E/G#', 'A minor i–V'],
    ['B C', 'E minor V–VI'],
    ['D F G', ''],
    // Three minor keys have it by sound: C E G#, E G# B#, Ab C E.
    ['Caug', ''],
  ])('%s: %s', (text, found) => {
    const raised = raisedSevenths(text.split(' ').map(readSymbol));
    expect(raised.map(({ key, numerals: degrees }) => `${keyName(key)} ${degrees.join('–')}`).join(', ')).toBe(found);
  });
});

describe('candidate keys in general', () => {
  test('up to four owners are spelled on one side: their signatures are neighbours too', () => {
    fc.assert(
      fc.property(anyVamp, (chords) => {
        const keys = candidateKeys(chords, 'majors');
        if (keys.length > 4) return;
        const signatures = keys.map(keySignature);
        signatures.slice(1).forEach((signature, index) => expect(signature).toBe((signatures[index] ?? 0) + 1));
      }),
    );
  });

  test('at least one chord', () => {
    expect(() => candidateKeys([], 'majors')).toThrow(RangeError);
  });

  test('under relatives each major is followed by its relative minor', () => {
    const keys = candidateKeys(
      ['Em', 'D'].map((symbol) => parseChord(symbol)),
      'relatives',
    );
    expect(keys.map(({ id, name, numerals: found }) => [id, name, found.join('–')])).toEqual([
      ['7M', 'G major', 'vi–V'],
      ['4m', 'E minor', 'i–VII'],
      ['2M', 'D major', 'ii–I'],
      ['11m', 'B minor', 'iv–III'],
    ]);
  });

  test('exactly the keys whose notes hold all notes of the chords', () => {
    fc.assert(
      fc.property(anyVamp, (chords) => {
        const sounding = chords.flatMap(chordPitchClasses);
        const expected = Array.from({ length: 12 }, (_, tonic) => tonic).filter((tonic) =>
          sounding.every((sound) => [0, 2, 4, 5, 7, 9, 11].includes((sound - tonic + 12) % 12)),
        );
        const found = candidateKeys(chords, 'majors').map(({ id }) => id);
        expect(found.toSorted()).toEqual(expected.map((tonic) => `${tonic}M`).toSorted());
        const relatives = expected.flatMap((tonic) => [`${tonic}M`, `${(tonic + 9) % 12}m`]);
        expect(
          candidateKeys(chords, 'relatives')
            .map(({ id }) => id)
            .toSorted(),
        ).toEqual(relatives.toSorted());
      }),
    );
  });

  test('they are neighbours on the circle of fifths, flat side first (common practice)', () => {
    fc.assert(
      fc.property(anyVamp, (chords) => {
        const places = candidateKeys(chords, 'majors').map(({ tonic }) => (fifthsFromC(tonic) + 24) % 12);
        places.slice(1).forEach((place, index) => expect(place).toBe(((places[index] ?? 0) + 1) % 12));
      }),
    );
  });
});

import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chordPitchClasses, parseChord, readSymbol, soundsAs } from '../../shared-theory/chords.ts';
import { chartRows, cribOf } from '../../shared-theory/crib.ts';
import { candidateKeys, seventhsUnder } from '../../shared-theory/candidates.ts';
import { diatonicChart, keyHolds, keyOwns, spelledScale } from '../../shared-theory/degrees.ts';
import { parseKeyName, scaleNotes } from '../../shared-theory/keys.ts';
import { pitchClass } from '../../shared-theory/pitch.ts';
import { POLICIES } from '../../shared-theory/truth.ts';
import { anyVamp, MAJOR_TONICS } from '../support/theory-arbitraries.ts';

const chordsOf = (text: string) => text.split(' ').map((symbol) => parseChord(symbol));
const crib = (text: string) => cribOf(chordsOf(text), 'majors');
const keysIn = (text: string) => crib(text).keys.map(({ key, numerals }) => `${key} ${numerals.join('–')}`);
const decidersIn = (text: string) =>
  crib(text).deciders.map(({ note, leaves }) => `${note} leaves ${leaves.join(' and ')}`);
const settlersIn = (text: string) => crib(text).settlers.map(({ chord, leaves }) => `${chord} ${leaves.join(' ')}`);

describe('Em D', () => {
  test('the whole crib', () => {
    expect(crib('Em D')).toEqual({
      chords: ['Em', 'D'],
      policy: 'majors',
      keys: [
        { key: 'G major', numerals: ['vi', 'V'] },
        { key: 'D major', numerals: ['ii', 'I'] },
      ],
      deciders: [
        { note: 'C', leaves: ['G major'] },
        { note: 'C#', leaves: ['D major'] },
      ],
      settlers: [
        { chord: 'C', leaves: ['G major'] },
        { chord: 'A', leaves: ['D major'] },
        { chord: 'Am', leaves: ['G major'] },
        { chord: 'F#m', leaves: ['D major'] },
        { chord: 'F#dim', leaves: ['G major'] },
        { chord: 'C#dim', leaves: ['D major'] },
      ],
      open: ['G', 'Bm'],
    });
  });

  test('under relatives each decider leaves a major with its relative minor', () => {
    const { keys, deciders, settlers } = cribOf(chordsOf('Em D'), 'relatives');
    expect(keys.map(({ key }) => key)).toEqual(['G major', 'E minor', 'D major', 'B minor']);
    expect(deciders).toEqual([
      { note: 'C', leaves: ['G major', 'E minor'] },
      { note: 'C#', leaves: ['D major', 'B minor'] },
    ]);
    expect(settlers[0]).toEqual({ chord: 'C', leaves: ['G major', 'E minor'] });
  });
});

describe('worked examples of the trade (common practice, by arithmetic)', () => {
  test.each([
    ['A Bm', ['D major V–vi', 'A major I–ii'], ['G leaves D major', 'G# leaves A major']],
    ['Em Am', ['C major iii–vi', 'G major vi–ii'], ['F leaves C major', 'F# leaves G major']],
    ['D Bm G', ['G major V–iii–I', 'D major I–vi–IV'], ['C leaves G major', 'C# leaves D major']],
    ['G#m E', ['E major iii–I', 'B major vi–IV'], ['A leaves E major', 'A# leaves B major']],
    ['Bb C', ['F major IV–V'], []],
    ['F#m B', ['E major ii–V'], []],
    ['G F', ['C major V–IV'], []],
    ['C D', ['G major IV–V'], []],
    ['Am E', [], []],
    ['C Fm', [], []],
    ['B C', [], []],
    ['D F G', [], []],
  ])('%s', (text, keys, deciders) => {
    expect(keysIn(text)).toEqual(keys);
    expect(decidersIn(text)).toEqual(deciders);
  });

  test.each([
    ['A Bm', ['G D major', 'E A major', 'Em D major', 'C#m A major', 'C#dim D major', 'G#dim A major'], ['D', 'F#m']],
    ['Em Am', ['D G major', 'Dm C major', 'F C major', 'Bm G major', 'Bdim C major', 'F#dim G major'], ['G', 'C']],
    ['D Bm G', ['C G major', 'A D major', 'Am G major', 'F#m D major', 'F#dim G major', 'C#dim D major'], ['Em']],
  ])('%s: third chords that settle and that do not', (text, settlers, open) => {
    expect(settlersIn(text)).toEqual(settlers);
    expect(crib(text).open).toEqual(open);
  });

  test('F Dm: three keys, two letters, and no single major or minor triad isolates the middle one', () => {
    expect(keysIn('F Dm')).toEqual(['Bb major V–iii', 'F major I–vi', 'C major IV–ii']);
    expect(decidersIn('F Dm')).toEqual([
      'Eb leaves Bb major',
      'E leaves F major and C major',
      'Bb leaves Bb major and F major',
      'B leaves C major',
    ]);
    expect(settlersIn('F Dm')).toEqual([
      'G C major',
      'Em C major',
      'Cm Bb major',
      'Eb Bb major',
      'C F major C major',
      'Am F major C major',
      'Bb Bb major F major',
      'Gm Bb major F major',
      'Adim Bb major',
      'Edim F major',
      'Bdim C major',
    ]);
  });

  // By arithmetic on the line of fifths: a key writes seven neighbours of it, so never two notes more than six places apart.
  test.each([
    ['Am E', ['C', 'G#']],
    ['C Fm', ['Ab', 'E']],
    ['B C', ['C', 'D#']],
    ['D F G', ['F', 'F#']],
  ])('%s: no key writes both of %j', (text, clash) => {
    expect(crib(text).clash).toEqual(clash);
  });

  test('chords spelled farther apart than they sound name no clash, and neither do chords with a key', () => {
    expect(crib('Ab E')).not.toHaveProperty('clash');
    expect(crib('Ab E').keys).toEqual([]);
    expect(crib('C D')).not.toHaveProperty('clash');
    // Any of its notes may name an augmented chord: C E G# is E G# B# and Ab C E.
    expect(crib('Caug')).not.toHaveProperty('clash');
  });

  test('where no key owns all, a minor key that does with its seventh raised', () => {
    expect(crib('Am E').raisedSeventh).toEqual([{ key: 'A minor', numerals: ['i', 'V'] }]);
    // III–V and the lament i–VII–VI–V: natural and raised seventh stand together in one loop (common practice).
    expect(crib('C E').raisedSeventh).toEqual([{ key: 'A minor', numerals: ['III', 'V'] }]);
    expect(crib('Am G F E').raisedSeventh).toEqual([{ key: 'A minor', numerals: ['i', 'VII', 'VI', 'V'] }]);
    for (const text of ['Caug', 'D F G', 'Am Em']) expect(crib(text)).not.toHaveProperty('raisedSeventh');
  });

  test('keys of one vamp share their letters, whichever side its chords are written on', () => {
    expect(keysIn('G# C#')).toEqual(['Db major V–I', 'Ab major I–IV']);
    expect(decidersIn('G# C#')).toEqual(['Gb leaves Db major', 'G leaves Ab major']);
    const rows = ['Db major', 'Ab major'].map((key) => chartRows(chordsOf('G# C#'), parseKeyName(key)));
    expect(rows.map(({ notes }) => notes.join(' '))).toEqual(['Ab Bb C Db Eb F Gb', 'Ab Bb C Db Eb F G']);
    expect(rows.map(({ row }) => row.filter(({ inVamp }) => inVamp).map(({ symbol }) => symbol))).toEqual([
      ['Ab', 'Db'],
      ['Ab', 'Db'],
    ]);
  });

  test('one key under relatives: nothing decides between relatives', () => {
    expect(cribOf(chordsOf('C D'), 'relatives')).toMatchObject({ deciders: [], settlers: [], open: [] });
  });
});

describe('cribs in general', () => {
  test('at least one chord', () => {
    expect(() => cribOf([], 'majors')).toThrow(RangeError);
  });

  test('the deciders are exactly the notes that leave some of the keys and not all', () => {
    fc.assert(
      fc.property(anyVamp, fc.constantFrom(...POLICIES), (chords, policy) => {
        const keys = candidateKeys(chords, policy);
        const expected = Array.from({ length: 12 }, (_, note) => note).filter((note) => {
          const holding = keys.filter((key) => keyHolds(key, note, seventhsUnder(policy))).length;
          return holding > 0 && holding < keys.length;
        });
        const { deciders } = cribOf(chords, policy);
        expect(new Set(deciders.map(({ note }) => pitchClass(note)))).toEqual(new Set(expected));
        expect(deciders).toHaveLength(expected.length);
        for (const { note, leaves } of deciders) {
          const holding = keys.filter((key) => keyHolds(key, pitchClass(note), seventhsUnder(policy)));
          expect(leaves).toEqual(holding.map(({ name }) => name));
          expect(holding.some((key) => [false, true].some((raised) => spelledScale(key, raised).includes(note)))).toBe(
            true,
          );
        }
      }),
    );
  });

  test('settlers and open chords are all triads of the keys that the vamp does not have; a settler leaves what owns it', () => {
    fc.assert(
      fc.property(anyVamp, fc.constantFrom(...POLICIES), (chords, policy) => {
        const keys = candidateKeys(chords, policy);
        const { settlers, open, deciders } = cribOf(chords, policy);
        const named = [...settlers.map(({ chord }) => chord), ...open].map(readSymbol);
        const triads = deciders.length === 0 ? [] : keys.flatMap((key) => diatonicChart(key)).map(({ chord }) => chord);
        // Where the raised seventh counts, V and vii° of the minors are third chords as well.
        if (policy === 'raised-seventh' && deciders.length > 0)
          for (const key of keys.filter(({ mode }) => mode === 'minor')) {
            const notes = spelledScale(key, true);
            triads.push({ root: notes[4] ?? '', quality: 'major' }, { root: notes[6] ?? '', quality: 'diminished' });
          }
        const thirds = triads.filter((triad) => !chords.some((chord) => soundsAs(chord, triad)));
        for (const third of thirds) expect(named.filter((chord) => soundsAs(chord, third))).toHaveLength(1);
        for (const chord of named) expect(thirds.some((third) => soundsAs(third, chord))).toBe(true);
        for (const { chord, leaves } of settlers) {
          const longer = candidateKeys([...chords, readSymbol(chord)], policy).map(({ id }) => id);
          const left = keys.filter(({ name }) => leaves.includes(name)).map(({ id }) => id);
          // Under modes the third chord may be home as well; the parents are what it leaves.
          expect(new Set(left)).toEqual(new Set(longer));
        }
        const firstDiminished = settlers.findIndex(({ chord }) => chord.endsWith('dim'));
        const last = firstDiminished < 0 ? [] : settlers.slice(firstDiminished);
        expect(last.every(({ chord }) => chord.endsWith('dim'))).toBe(true);
      }),
    );
  });

  test('where no key owns all, the notes of a clash are of the chords and lie more than six fifths apart', () => {
    fc.assert(
      fc.property(anyVamp, (chords) => {
        const { clash, keys } = cribOf(chords, 'majors');
        if (!clash) return;
        expect(keys).toEqual([]);
        const [low, high] = clash;
        const scales = MAJOR_TONICS.map((tonic) => scaleNotes({ tonic, mode: 'major' }));
        expect(scales.some((scale) => scale.includes(low) && scale.includes(high))).toBe(false);
      }),
    );
  });
});

describe('chart rows', () => {
  const shown = (text: string, key: string) =>
    chartRows(chordsOf(text), parseKeyName(key)).row.map(
      ({ symbol, numeral, inVamp, holdsDecider }) =>
        `${symbol} ${numeral}${inVamp ? ' vamp' : ''}${holdsDecider ? ' decides' : ''}`,
    );

  test('start on the first chord of the vamp', () => {
    expect(chartRows(chordsOf('D G'), parseKeyName('D major'))).toMatchObject({
      key: 'D major',
      id: '2M',
      notes: ['D', 'E', 'F#', 'G', 'A', 'B', 'C#'],
    });
    expect(shown('D G', 'D major')).toEqual([
      'D I vamp',
      'Em ii',
      'F#m iii decides',
      'G IV vamp',
      'A V decides',
      'Bm vi',
      'C#dim viio decides',
    ]);
    expect(shown('D G', 'G major')).toEqual([
      'D V vamp',
      'Em vi',
      'F#dim viio decides',
      'G I vamp',
      'Am ii decides',
      'Bm iii',
      'C IV decides',
    ]);
    expect(chartRows(chordsOf('D G'), parseKeyName('G major')).notes).toEqual(['D', 'E', 'F#', 'G', 'A', 'B', 'C']);
  });

  test('in the relative minor the same row has the minor numerals', () => {
    expect(shown('Em D', 'E minor').slice(0, 3)).toEqual(['Em i vamp', 'F#dim iio decides', 'G III']);
  });

  test('with one key nothing decides', () => {
    expect(shown('C D', 'G major')).toEqual(['C IV vamp', 'D V vamp', 'Em vi', 'F#dim viio', 'G I', 'Am ii', 'Bm iii']);
  });

  test("a power or sus chord of the vamp stands in its triad's place, unless the triad is in the vamp too", () => {
    expect(shown('C5 G', 'C major').slice(0, 2)).toEqual(['C5 I5 vamp', 'Dm ii decides']);
    expect(shown('Csus4 C F', 'C major')[0]).toBe('C I vamp');
  });

  test('chords are spelled as the key spells them', () => {
    expect(shown('B', 'Gb major').slice(0, 2)).toEqual(['Cb IV vamp', 'Db V decides']);
    expect(chartRows(chordsOf('F#'), parseKeyName('Gb major')).key).toBe('Gb major');
  });

  test('under every policy each candidate has its rows, on its own degrees', () => {
    const raised = chartRows(chordsOf('Am E'), parseKeyName('A minor'), 'raised-seventh');
    expect(raised.row.filter(({ inVamp }) => inVamp).map(({ symbol, numeral }) => `${symbol} ${numeral}`)).toEqual([
      'Am i',
      'E V',
    ]);
    expect(raised.notes.join(' ')).toBe('A B C D E F G#');
    // G and G# in one loop: the notes are those of the signature.
    const lament = chartRows(chordsOf('Am G F E'), parseKeyName('A minor'), 'raised-seventh');
    expect(lament.notes.join(' ')).toBe('A B C D E F G');
    const leading = chartRows(chordsOf('G#dim Am'), parseKeyName('A minor'), 'raised-seventh').row[0];
    expect([leading?.symbol, leading?.numeral, leading?.inVamp]).toEqual(['G#dim', 'viio', true]);
    const dorian = chartRows(chordsOf('Am D'), parseKeyName('A dorian'), 'modes');
    expect(dorian.row.map(({ numeral }) => numeral).join(' ')).toBe('i ii bIII IV v vio bVII');
    expect(() => chartRows(chordsOf('Am E'), parseKeyName('A minor'))).toThrow('A minor does not own all of Am E.');
    fc.assert(
      fc.property(anyVamp, fc.constantFrom(...POLICIES), (chords, policy) => {
        for (const key of candidateKeys(chords, policy)) {
          const { row, notes } = chartRows(chords, key, policy);
          expect([row.length, notes.length, row[0]?.inVamp]).toEqual([7, 7, true]);
          for (const { symbol, numeral, inVamp } of row)
            if (inVamp) expect(key.numerals).toContain(numeral);
            else expect(keyOwns(key, readSymbol(symbol))).toBe(true);
        }
      }),
    );
  });

  test('a key that does not own the vamp has no rows', () => {
    expect(() => chartRows(chordsOf('Em D'), parseKeyName('C major'))).toThrow('C major does not own all of Em D.');
    expect(() => chartRows([], parseKeyName('C major'))).toThrow(RangeError);
  });

  test('seven places, the first the first chord, every chord of the vamp marked once, symbols that read back', () => {
    fc.assert(
      fc.property(anyVamp, (chords) => {
        for (const key of candidateKeys(chords, 'relatives')) {
          const { row, notes } = chartRows(chords, key);
          expect(row).toHaveLength(7);
          expect(notes).toHaveLength(7);
          const roots = new Set(chords.map(({ root }) => pitchClass(root)));
          expect(row.filter(({ inVamp }) => inVamp)).toHaveLength(roots.size);
          expect(pitchClass(notes[0] ?? '')).toBe(pitchClass(chords[0]?.root ?? ''));
          row.forEach(({ symbol }, place) => {
            const chord = parseChord(symbol);
            expect(chord.root).toBe(notes[place]);
            expect(keyOwns(key, chord)).toBe(true);
            for (const sound of chordPitchClasses(chord)) expect(keyHolds(key, sound)).toBe(true);
          });
        }
      }),
    );
  });
});

import { describe, expect, test } from 'vitest';
import { candidateKeys } from '../../../shared-theory/candidates.ts';
import { chordNotes, chordPitchClasses, chordSymbol, readSymbol } from '../../../shared-theory/chords.ts';
import type { Chord } from '../../../shared-theory/chords.ts';
import { keyOwns, numeralIn, numeralsIn, spelledScale } from '../../../shared-theory/degrees.ts';
import { relativeKey, scaleNotes } from '../../../shared-theory/keys.ts';
import type { Key } from '../../../shared-theory/keys.ts';
import { pitchClass } from '../../../shared-theory/pitch.ts';
import { guitarTruth } from '../../../shared-theory/truth.ts';
import type { Policy } from '../../../shared-theory/truth.ts';
import { MAJOR_TONICS } from '../../support/theory-arbitraries.ts';

const MAJORS: readonly Key[] = MAJOR_TONICS.map((tonic) => ({ tonic, mode: 'major' }));
const MINORS = MAJORS.map(relativeKey);
const chordsOf = (text: string) => text.split(' ').map((symbol) => readSymbol(symbol));

/*
 * Chords on every degree: Open Music Theory (Shaffer, Hughes, Moseley), page “Triads and seventh chords”, and R. T. Kelley,
 * “Diatonic chord qualities”; both agree with stacking thirds of the scale. `x` stands for augmented with a major seventh,
 * which has no symbol here.
 */
describe.each([
  ['major', MAJORS, false, ' m m   m dim', 'I ii iii IV V vi viio'],
  ['major', MAJORS, false, 'maj7 m7 m7 maj7 7 m7 m7b5', 'Imaj7 ii7 iii7 IVmaj7 V7 vi7 viim7b5'],
  ['natural minor', MINORS, false, 'm dim  m m  ', 'i iio III iv v VI VII'],
  ['natural minor', MINORS, false, 'm7 m7b5 maj7 m7 m7 maj7 7', 'i7 iim7b5 IIImaj7 iv7 v7 VImaj7 VII7'],
  ['harmonic minor', MINORS, true, 'm dim aug m   dim', 'i iio III+ iv V VI viio'],
  ['harmonic minor', MINORS, true, 'm(maj7) m7b5 x m7 7 maj7 dim7', 'imaj7 iim7b5 x iv7 V7 VImaj7 viio7'],
] as const)('%s: %#', (_, keys, raised, qualities, numerals) => {
  test(`${qualities}: ${numerals}`, () => {
    for (const key of keys) {
      const notes = spelledScale(key, raised);
      const wanted = numerals.split(' ');
      qualities.split(' ').forEach((suffix, degree) => {
        if (suffix === 'x') return;
        const chord = readSymbol(`${notes[degree]}${suffix}`);
        // Every other note of the scale, by its letter.
        const stacked = chordNotes(chord).map((_note, step) => notes[(degree + 2 * step) % 7]);
        expect([key.tonic, chordSymbol(chord), ...chordNotes(chord)]).toEqual([
          key.tonic,
          chordSymbol(chord),
          ...stacked,
        ]);
        expect(numeralIn(chord, key, raised ? 'raised-too' : 'natural')).toBe(wanted[degree]);
      });
      expect(qualities.split(' ')).toHaveLength(7);
    }
  });
});

// V and vii° of each relative minor on its raised seventh, by arithmetic; the majors from seven flats to seven sharps.
test.each(
  `Cb:Eb G Gb:Bb D Db:F A Ab:C E Eb:G B Bb:D F# F:A C# C:E G# G:B D# D:F# A# A:C# E# E:G# B# B:D# F## F#:A# C## C#:E# G##`
    .split(/ (?=[A-G][b#]?:)/)
    .map((line) => line.split(/[: ]/)),
)('%s major: V and vii° of its relative minor are %s and %s°', (tonic, dominant, leading) => {
  const minor = relativeKey({ tonic, mode: 'major' });
  const [five, seven] = [readSymbol(dominant ?? ''), readSymbol(`${leading}dim`)];
  for (const chord of [five, seven]) expect(keyOwns(minor, chord)).toBe(false);
  expect(numeralsIn([five, seven], minor, 'raised-too')).toEqual(['V', 'viio']);
  expect(spelledScale(minor, true)[4]).toBe(dominant);
  expect(spelledScale(minor, true)[6]).toBe(leading);
  expect(chordNotes(five)[1]).toBe(leading);
});

/*
 * In how many keys a chord on C lies: major and natural minor scales, and harmonic minor scales by sound alone (arithmetic on the
 * scales); then of how many minor keys, seventh raised or not, it is a degree: there its notes have to be thirds of the scale.
 */
describe('how many keys fit a chord', () => {
  test.each([
    ['C', 3, 3, 2, 4, 'I IV V'],
    ['Cm', 3, 3, 3, 3, 'ii iii vi'],
    ['Cdim', 1, 1, 4, 2, 'viio'],
    ['Caug', 0, 0, 3, 3, ''],
    ['C5', 6, 6, 4, 6, 'I5 IV5 V5 ii5 iii5 vi5'],
    ['Csus2', 5, 5, 2, 5, 'IVsus2 Isus2 Vsus2 iisus2 visus2'],
    ['Csus4', 5, 5, 2, 5, 'Isus4 Vsus4 iiisus4 iisus4 visus4'],
    ['Cadd9', 3, 3, 0, 3, 'IVadd9 Iadd9 Vadd9'],
    ['C6', 3, 3, 1, 3, 'IVadd6 Iadd6 Vadd6'],
    ['C7', 1, 1, 1, 2, 'V7'],
    ['Cmaj7', 2, 2, 1, 2, 'IVmaj7 Imaj7'],
    ['Cm7', 3, 3, 1, 3, 'ii7 iii7 vi7'],
    ['Cm7b5', 1, 1, 2, 1, 'viim7b5'],
    ['Cdim7', 0, 0, 4, 4, ''],
    ['Cm(maj7)', 0, 0, 2, 1, ''],
  ])('%s: %i majors, %i natural minors, %i harmonic minors by sound, %i minors by degree', (symbol, ...row) => {
    const [majors, minors, harmonic, degrees, numerals] = row;
    const chord = readSymbol(symbol);
    const owners = candidateKeys([chord], 'majors');
    expect(owners).toHaveLength(majors);
    const heard = new Set(
      MAJORS.filter((key) => holdsAll(scaleNotes(key), chord)).map(({ tonic }) => pitchClass(tonic)),
    );
    expect(heard.size).toBe(majors);
    expect(
      owners
        .flatMap((key) => key.numerals)
        .toSorted()
        .join(' '),
    ).toBe(numerals);
    const natural = candidateKeys([chord], 'relatives').filter(({ mode }) => mode === 'minor');
    expect(natural).toHaveLength(minors);
    const bySound = new Set(
      MINORS.filter((key) => holdsAll(spelledScale(key, true), chord)).map(({ tonic }) => pitchClass(tonic)),
    );
    expect(bySound.size).toBe(harmonic);
    const byDegree = candidateKeys([chord], 'raised-seventh').filter(({ mode }) => mode === 'minor');
    expect(byDegree).toHaveLength(degrees);
  });

  const holdsAll = (notes: readonly string[], chord: Chord) => {
    const sounds = new Set(notes.map(pitchClass));
    return chordPitchClasses(chord).every((sound) => sounds.has(sound));
  };
});

/*
 * One loop in two independent sources: Open Music Theory names it after its composer, and GuitarSet (Xi, Bittner, Ye, Pauwels, Bello,
 * ISMIR 2018) has it as a guitarist was asked to play it, eight chords of four beats at 119 beats a minute in G major.
 */
test('G D Em Bm C G C D: five different chords, three of them major, and G alone', () => {
  const chords = chordsOf('G D Em Bm C G C D');
  const truth = guitarTruth(
    chords.map((chord) => ({ chord, beats: 4 })),
    { tempo: 119 },
  );
  expect(truth).toMatchObject({ count: 5, tempo: 119, settlers: [] });
  const different = chords.filter((chord, slot) => truth.chords.indexOf(chordSymbol(chord)) === slot);
  expect(different.map(({ quality }) => quality)).toEqual(['major', 'major', 'minor', 'minor', 'major']);
  expect(truth.keys.majors).toEqual(['G major']);
  const [key] = candidateKeys(chords, 'majors');
  expect(key?.numerals.join(' ')).toBe('I V vi iii IV I IV V');
});

describe('loops under every policy', () => {
  const under = (text: string, policy: Policy) =>
    candidateKeys(chordsOf(text), policy)
      .map(({ name, numerals }) => `${name} ${numerals.join('–')}`)
      .join(', ');

  // Major keys by arithmetic; minor readings with v and V, vii° as textbooks have them (Open Music Theory, “Harmony in pop/rock music”).
  test.each([
    ['Am F C G', 'C major vi–IV–I–V', 'C major vi–IV–I–V, A minor i–VI–III–VII'],
    ['Am Dm G C', 'C major vi–ii–V–I', 'C major vi–ii–V–I, A minor i–iv–VII–III'],
    ['Am G F', 'C major vi–V–IV', 'C major vi–V–IV, A minor i–VII–VI'],
    ['Am G F E', '', 'A minor i–VII–VI–V'],
    ['Am Dm E', '', 'A minor i–iv–V'],
    ['Dm E', '', 'A minor iv–V'],
    ['Am E', '', 'A minor i–V'],
    ['C E', '', 'A minor III–V'],
    ['F E', '', 'A minor VI–V'],
    ['B C', '', 'E minor V–VI'],
    ['C Fm', '', 'F minor V–i'],
    ['D F G', '', ''],
    ['C7 F7', '', ''],
  ])('%s', (text, majors, raised) => {
    expect([under(text, 'majors'), under(text, 'raised-seventh')]).toEqual([majors, raised]);
  });

  // What a seventh says: 7 is V alone, m7b5 vii alone, maj7 I or IV, m7 ii, iii or vi (common practice).
  test.each([
    ['G7', 'C major V7'],
    ['Bm7b5', 'C major viim7b5'],
    ['Cmaj7', 'C major Imaj7, G major IVmaj7'],
    ['Cm7', 'Ab major iii7, Eb major vi7, Bb major ii7'],
    ['Dm7 G7', 'C major ii7–V7'],
    ['Cmaj7 Fmaj7', 'C major Imaj7–IVmaj7'],
    ['Dm7 Em7', 'C major ii7–iii7'],
    ['Am7 Dm7', 'F major iii7–vi7, C major vi7–ii7'],
    ['Amaj7 Bm', 'A major Imaj7–ii'],
    ['A7 Bm', 'D major V7–vi'],
    ['C7 F7', ''],
    ['C/E F', 'F major V–I, C major I–IV'],
    ['C/Bb F', 'F major V–I'],
  ])('%s: %s', (text, majors) => {
    expect(under(text, 'majors')).toBe(majors);
  });

  // Parents with every chord of the loop that can be home, counted from there on the major scale (common practice).
  test.each([
    ['G F', 'G mixolydian I–bVII, F lydian II–I'],
    ['F#m B', 'F# dorian i–IV, B mixolydian v–I'],
    ['Am D', 'A dorian i–IV, D mixolydian v–I'],
    ['C Bb F', 'C mixolydian I–bVII–IV, Bb lydian II–I–V, F ionian V–IV–I'],
    ['Am F C G', 'A aeolian i–bVI–bIII–bVII, F lydian iii–I–V–II, C ionian vi–IV–I–V, G mixolydian ii–bVII–IV–I'],
    ['Em F', 'E phrygian i–bII, F lydian vii–I'],
    // Nothing rests on a diminished chord.
    ['Bdim C', 'C ionian viio–I'],
    ['Bdim', ''],
    // What has no third rests as well as another, and one root is one home.
    ['E5 E A5', 'B:'],
    ['Am E', ''],
  ])('%s in modes: %s', (text, expected) => {
    const found = under(text, 'modes');
    if (expected === 'B:') {
      const parents = candidateKeys(chordsOf(text), 'majors').length;
      expect(candidateKeys(chordsOf(text), 'modes')).toHaveLength(2 * parents);
    } else expect(found).toBe(expected);
  });

  /*
   * The first chord as V of a minor key: what the raised seventh adds to two chords of which one is major (common practice).
   * Semitones to the second chord, its quality, the reading.
   */
  test.each([
    [5, 'm', 'V–i'],
    [10, 'm', 'V–iv'],
    [1, '', 'V–VI'],
    [3, '', 'V–VII'],
    [8, '', 'V–III'],
  ])('from V by %i semitones to “%s”: %s', (up, suffix, reading) => {
    const roots = 'C Db D Eb E F F# G Ab A Bb B'.split(' ');
    roots.forEach((root, sound) => {
      const chords = chordsOf(`${root} ${roots[(sound + up) % 12]}${suffix}`);
      const minors = candidateKeys(chords, 'raised-seventh').filter(({ mode }) => mode === 'minor');
      const read = minors.map(({ numerals }) => numerals.join('–'));
      expect(read.filter((each) => each === reading)).toHaveLength(1);
      const dominantOf = minors.find(({ numerals }) => numerals.join('–') === reading);
      expect(dominantOf && pitchClass(dominantOf.tonic)).toBe((sound + 5) % 12);
    });
  });
});

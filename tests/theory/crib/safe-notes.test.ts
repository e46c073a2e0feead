import { Key, Scale } from 'tonal';
import { describe, expect, test } from 'vitest';
import { safeSentence } from '../../../server/protocol/words/safe-sentences.ts';
import { candidateKeys } from '../../../shared-theory/candidates.ts';
import { chordPitchClasses } from '../../../shared-theory/chords.ts';
import { sharedNotes } from '../../../shared-theory/crib/shared-notes.ts';
import { soloNotes } from '../../../shared-theory/crib/solo-notes.ts';
import { pitchClass } from '../../../shared-theory/pitch.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';

const chordsOf = (text: string) => parseVamp(text, 4).map(({ chord }) => chord);
const sounds = (notes: readonly string[]) => new Set(notes.map(pitchClass));

/** The scale of a key by the library tonal (6.4.3), a general-purpose reference for keys. */
function scaleByReference(name: string): ReadonlySet<number> {
  const [tonic = '', mode] = name.split(' ');
  return sounds(mode === 'minor' ? Key.minorKey(tonic).natural.scale : Key.majorKey(tonic).scale);
}

describe('the notes that all candidate keys share', () => {
  test.each([
    'Em D',
    'F Dm',
    'C Am',
    'Bb C',
    'A Bm',
    'D Bm G',
    'C Am F G',
    'Gb Cb',
    'F#m B',
    'C5 G5',
    'Eb Gm',
    'G#m E',
  ])('%s: the intersection of the scales, by an independent library', (text) => {
    const chords = chordsOf(text);
    const keys = candidateKeys(chords, 'relatives');
    const scales = keys.map(({ name }) => scaleByReference(name));
    const shared = Array.from({ length: 12 }, (_, sound) => sound).filter((sound) =>
      scales.every((scale) => scale.has(sound)),
    );
    expect([...sounds(sharedNotes(chords, keys))].toSorted((one, other) => one - other)).toEqual(shared);
  });

  test('stand from the first root up, spelled by key', () => {
    const safe = (text: string) => sharedNotes(chordsOf(text), candidateKeys(chordsOf(text), 'majors')).join(' ');
    expect(safe('Em D')).toBe('E F# G A B D');
    expect(safe('F Dm')).toBe('F G A C D');
    // Gb major and Cb major: the fourth of the first is Cb, never B (common practice).
    expect(safe('Gb Cb')).toBe('Gb Ab Bb Cb Db Eb');
  });

  test('take the raised seventh where it alone sounds, none where both do', () => {
    const safe = (text: string) => sharedNotes(chordsOf(text), [{ tonic: 'A', mode: 'minor' }]).join(' ');
    expect(safe('Am E')).toBe('A B C D E F G#');
    expect(safe('Am Em')).toBe('A B C D E F G');
    expect(safe('Am Em E')).toBe('A B C D E F');
  });

  test('are none where no keys are', () => {
    expect(sharedNotes(chordsOf('C Fm'), [])).toEqual([]);
  });
});

describe('the notes to solo on where no key owns a vamp', () => {
  const as = (name: string) => name;
  const solo = (text: string) => soloNotes(chordsOf(text), candidateKeys(chordsOf(text), 'majors'));
  const said = (text: string) => {
    const { notes, of } = solo(text);
    return safeSentence(notes, of, { note: as, chord: as, key: as });
  };

  // A minor key with its seventh raised over V alone; the home key less what a visitor alters; the pentatonic of a blues: common practice.
  test.each([
    ['Am E', 'A B C D E F G (A minor; over E G# in place of G)'],
    ['Am G F E', 'A B C D E F G (A minor; over E G# in place of G)'],
    ['Dm E7 Am C', 'D E F G A B C (A minor; over E7 G# in place of G)'],
    ['C E7 Am', 'C D E F A B (C major without G, altered in E7)'],
    ['C G Bb F', 'C D E F G A (C major without B, altered in Bb)'],
    ['C Ab Bb', 'C D F G (C major without E, A and B, altered in Ab and Bb)'],
    ['A7 D7 E7', 'A C D E G (minor pentatonic on A)'],
    ['C F7 G', 'C Eb F G Bb (minor pentatonic on C)'],
    ['Em D', 'E F# G A B D'],
    ['Caug', 'no note by itself: play the notes of each chord'],
  ])('%s: %s', (text, expected) => {
    expect(said(text)).toBe(expected);
  });

  test('a pentatonic is that of an independent library', () => {
    for (const tonic of ['A', 'C', 'E', 'Bb', 'F#']) {
      expect(solo(`${tonic}7 ${Scale.get(`${tonic} major`).notes[3]}7`).notes).toEqual(
        Scale.get(`${tonic} minor pentatonic`).notes,
      );
    }
  });

  test('none that a visitor alters is among them, and every chord has one at least', () => {
    for (const text of ['C E7 Am', 'C Fm', 'D F G', 'Am D Gm', 'F F#dim7 C', 'Bdim7 C', 'C Bb7 F']) {
      const { notes, of } = solo(text);
      if (of?.source !== 'visited-key') continue;
      for (const note of of.without) expect(notes).not.toContain(note);
      for (const chord of chordsOf(text)) {
        expect(chordPitchClasses(chord).some((sound) => notes.map(pitchClass).includes(sound))).toBe(true);
      }
    }
  });
});

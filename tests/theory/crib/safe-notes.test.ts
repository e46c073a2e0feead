import { Key } from 'tonal';
import { describe, expect, test } from 'vitest';
import { candidateKeys } from '../../../shared-theory/candidates.ts';
import { sharedNotes } from '../../../shared-theory/crib/shared-notes.ts';
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

  test('are none where no key owns all', () => {
    expect(sharedNotes(chordsOf('C Fm'), [])).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { sheetNames } from '../../../server/crib/names.ts';
import { shapeRefusals } from '../../../server/crib/shape-refusals.ts';
import { cribShapes, type Guitar } from '../../../shared-theory/crib/shapes.ts';
import { parseVamp } from '../../../shared-theory/vamps.ts';

const on = (chords: string, guitar: Guitar, names = sheetNames()) =>
  shapeRefusals(
    cribShapes(
      parseVamp(chords, 4).map(({ chord }) => chord),
      guitar,
    ),
    guitar,
    names,
  );

describe('what cannot be played is named, with what would be right', () => {
  test('where every chord has a shape nothing is said', () => {
    expect(on('Em D Bm7b5 C/E', { tuning: 'standard', capo: 0 })).toEqual([]);
  });

  // Common practice: a ukulele's fourth string lies above its third, and a bass plays one note at a time.
  test('strings that carry no chord over a bass: once, with all the chords', () => {
    expect(on('Em D', { tuning: 'ukulele', capo: 0 })).toEqual([
      'Em and D cannot be played: ukulele has no low string for the bass. Take the tuning of a guitar, standard for one.',
    ]);
    expect(on('Em', { tuning: 'four-string-bass', capo: 0 })).toEqual([
      'Em cannot be played: a bass of four strings plays one note at a time. Take the tuning of a guitar, standard for one.',
    ]);
  });

  test('a bass out of reach and notes out of reach, in the class’s own names', () => {
    const german = sheetNames('german');
    const chord = { chord: 'Bm7b5', shape: 'Bm7b5', frets: null };
    const guitar = { tuning: 'open-d', capo: 0 } as const;
    expect(shapeRefusals([{ ...chord, refusal: { reason: 'bass', bass: 'B' } }], guitar, german)).toEqual([
      'Hø7 cannot be played: no string has the bass H below the other notes. Take another bass, or standard tuning.',
    ]);
    expect(
      shapeRefusals([{ ...chord, refusal: { reason: 'bass', bass: 'B' } }], { ...guitar, capo: 7 }, german)[0],
    ).toContain('a lower capo');
    expect(shapeRefusals([{ ...chord, refusal: { reason: 'notes', missing: ['F', 'A'] } }], guitar, german)).toEqual([
      'Hø7 cannot be played: a hand that holds the rest does not reach F and A. Leave F and A out, or take another bass or tuning.',
    ]);
  });
});
